// The balance of a project as the screen shows it; worked out once for each state of the project.

import { useDeferredValue } from 'react';
import { type Analysis, analyse } from '../balance/analyse';
import type { Project } from '../model/project';

const known = new WeakMap<Project, Analysis>();

/** The analysis of a project; while a large wall is worked out, the one before stays. */
export function useAnalysis(project: Project): Analysis {
  return analysisOf(useDeferredValue(project));
}

export function analysisOf(project: Project): Analysis {
  const found = known.get(project);
  if (found) return found;
  const made = analyse(project);
  known.set(project, made);
  return made;
}

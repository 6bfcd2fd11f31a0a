// The balance of the project as the screen shows it.
import { useDeferredValue } from 'react';
import type { Analysis } from '../balance/analyse';
import type { Project } from '../model/project';
import { analysisOf } from '../store/analysis';

/** The analysis of a project; while a large wall is worked out, the one before stays. */
export function useAnalysis(project: Project): Analysis {
  return analysisOf(useDeferredValue(project));
}

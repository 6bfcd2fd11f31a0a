// The balance of a project, prints included, worked out once for each state of it.
import { type Analysis, analyse } from '../balance/analyse';
import { printMix } from '../geometry/print/printMix';
import type { Project } from '../model/project';

const known = new WeakMap<Project, Analysis>();

/** The analysis of a sound project; kept for each state. */
export function analysisOf(project: Project): Analysis {
  const found = known.get(project);
  if (found) return found;
  const made = analyse(project, { cloth: printMix });
  known.set(project, made);
  return made;
}

// The balance of a project, as the person wants it measured, worked out once for each state of it, from the state before where that helps.
import { type Analysis, analyse, reanalyse } from '../balance/analyse';
import { wishesOf } from '../balance/wishes';
import type { Preferences, Project } from '../model/project';

const known = new WeakMap<Project, Analysis>();
let latest: Analysis | null = null;

/** The analysis of a sound project; kept for each state. */
export function analysisOf(project: Project): Analysis {
  const found = known.get(project);
  if (found) return found;
  const made =
    latest && sameWishes(latest.project.preferences, project.preferences)
      ? reanalyse(latest, project)
      : analyse(project, wishesOf(project.preferences));
  known.set(project, made);
  latest = made;
  return made;
}

function sameWishes(one: Preferences, other: Preferences): boolean {
  return (
    one.lookalikes === other.lookalikes &&
    one.intent.value === other.intent.value &&
    one.intent.colour === other.intent.colour
  );
}

/** The analysis of a project that is not the one on the wall (a colourway): worked out by itself. */
export function analysisApart(project: Project): Analysis {
  const found = known.get(project);
  if (found) return found;
  const made = analyse(project, wishesOf(project.preferences));
  known.set(project, made);
  return made;
}

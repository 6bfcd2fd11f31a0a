// The balance of a project as screens and pictures show it, prints included: what the analysis of balance/ comes to, without
// the tables it is worked out on. Worked out beside the page by analysisClient; here at once, for what is asked for outright.
import { type Analysis, analyse, reanalyse } from '../balance/analyse';
import type { WedgeSeams } from '../balance/wallModel';
import { wishesOf } from '../balance/wishes';
import type { Preferences, Project } from '../model/project';

/** What is shown of an analysis. */
export interface Balance extends Pick<Analysis, 'project' | 'findings' | 'clashes' | 'value'> {
  /** What meets between two wedges side by side. */
  readonly seams: WedgeSeams;
}

const known = new WeakMap<Project, Balance>();

/** The balance of a project where it has been worked out; it is kept for each state. */
export function knownBalance(project: Project): Balance | null {
  return known.get(project) ?? null;
}

export function keepBalance(balance: Balance): void {
  known.set(balance.project, balance);
}

/** The balance of a sound project at once, however long it takes: for a picture, a colourway, a page without workers. */
export function balanceAtOnce(project: Project): Balance {
  const found = known.get(project);
  if (found) return found;
  const made = balanceOf(analysisAfter(null, project));
  known.set(project, made);
  return made;
}

export function balanceOf(analysis: Analysis): Balance {
  const { project, findings, clashes, value, model } = analysis;
  const { cloths, kindBands, kindRim, perBlock, fabricCount, radialMemo } = model;
  return {
    project,
    findings,
    clashes,
    value,
    seams: { cloths, kindBands, kindRim, perBlock, fabricCount, radialMemo },
  };
}

/** The analysis of a project, from the one before where that is by the same wishes. */
export function analysisAfter(before: Analysis | null, project: Project): Analysis {
  return before && sameWishes(before.project.preferences, project.preferences)
    ? reanalyse(before, project)
    : analyse(project, wishesOf(project.preferences));
}

function sameWishes(one: Preferences, other: Preferences): boolean {
  return (
    one.lookalikes === other.lookalikes &&
    one.intent.value === other.intent.value &&
    one.intent.colour === other.intent.colour
  );
}

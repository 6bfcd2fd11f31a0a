// The balance of a project as screens and pictures show it, prints included: the results of balance/analyse.ts without its
// tables. analysisClient.ts has it computed in a worker; balanceAtOnce computes it in the page.
import { type Analysis, analyse, reanalyse } from '../../balance/analyse';
import type { WedgeSeams } from '../../balance/clashes/wedgeSeams';
import { wishesOf } from '../../balance/score/wishes';
import type { Preferences, Project } from '../../model/project';

/** The figures of an analysis that are shown. */
export type BalanceFigures = Pick<
  Analysis,
  'findings' | 'clashes' | 'value' | 'fabrics' | 'dominant' | 'evenness' | 'wholeTop' | 'valueOrder' | 'terms'
>;

/** What is shown of an analysis. */
export interface Balance extends BalanceFigures {
  readonly project: Project;
  /** What lies between two wedges side by side. */
  readonly seams: WedgeSeams;
}

const known = new WeakMap<Project, Balance>();

/** Returns the balance of a project if it is known; each state of a project keeps its own. */
export function knownBalance(project: Project): Balance | null {
  return known.get(project) ?? null;
}

/** Makes a balance known for its project. */
export function keepBalance(balance: Balance): void {
  known.set(balance.project, balance);
}

/** Computes the balance of a sound project in the page, however long it takes: for a picture saved with its marks. */
export function balanceAtOnce(project: Project): Balance {
  const found = known.get(project);
  if (found) return found;
  const made = balanceOf(analysisAfter(null, project), project);
  known.set(project, made);
  return made;
}

/** Takes the figures out of an analysis; a worker sends these. */
export function figuresOf(analysis: BalanceFigures): BalanceFigures {
  const { findings, clashes, value, fabrics, dominant, evenness, wholeTop, valueOrder, terms } = analysis;
  return { findings, clashes, value, fabrics, dominant, evenness, wholeTop, valueOrder, terms };
}

function balanceOf(analysis: Analysis, project: Project): Balance {
  const { cloths, typeBands, typeRim, perBlock, fabricCount, radialMemo } = analysis.model;
  return {
    ...figuresOf(analysis),
    project,
    seams: { cloths, typeBands, typeRim, perBlock, fabricCount, radialMemo },
  };
}

/** Analyses a project, from the analysis before it if that one has the same wishes. */
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

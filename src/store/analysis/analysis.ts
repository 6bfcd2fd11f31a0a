// The balance of a project as screens and pictures show it, prints included: the results of balance/analyse.ts without its
// tables. analysisClient.ts has it computed in a worker; atOnce.ts computes it in the page.
import type { Analysis } from '../../balance/analyse';
import type { WedgeSeams } from '../../balance/clashes/wedgeSeams';
import type { Project } from '../../model/project';

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

/** Takes the figures out of an analysis; a worker sends these. */
export function figuresOf(analysis: BalanceFigures): BalanceFigures {
  const { findings, clashes, value, fabrics, dominant, evenness, wholeTop, valueOrder, terms } = analysis;
  return { findings, clashes, value, fabrics, dominant, evenness, wholeTop, valueOrder, terms };
}

// What the worker that analyses is asked and answers (see workers/protocol.ts), and how the seams of an analysis become plain
// data and seams again.
import type { Effect, Proposal } from '../../arrange/mend/proposals';
import type { WedgeOffers } from '../../arrange/mend/wedgeOffers';
import { fabricIndex } from '../../cloth/cloths';
import { printMix } from '../../cloth/print/printMix';
import type { Move } from '../../model/moves';
import type { BlockId, Project } from '../../model/project';
import type { Balance, BalanceFigures } from './analysis';

/** Each is about an analysis, by its number; null where that has made room for later ones. */
interface About {
  readonly about: number;
}

export interface AnalysisJobs {
  /** `parts` are those of the project that are not as they were when it was last asked; all of them the first time. */
  readonly analyse: {
    readonly ask: { readonly analysis: number; readonly parts: Partial<Project> };
    readonly progress: never;
    readonly answer: BalanceNews;
  };
  /** Ways to mend a finding or a single clash. */
  readonly propose: {
    readonly ask: About & { readonly finding: string };
    readonly progress: never;
    readonly answer: readonly Proposal[] | null;
  };
  /** What these moves would do. */
  readonly effect: {
    readonly ask: About & { readonly moves: readonly Move[] };
    readonly progress: never;
    readonly answer: Effect | null;
  };
  /** The wedges that could lie in a place of a block, from 0. */
  readonly offers: {
    readonly ask: About & { readonly block: BlockId; readonly place: number };
    readonly progress: never;
    readonly answer: WedgeOffers | null;
  };
}

/** A balance without its project, which the page has; without what is the same as in the analysis told before it. */
export interface BalanceNews extends BalanceFigures {
  readonly seams: SeamsData | null;
}

type Seams = Balance['seams'];

/** Seams as plain data: without how a fabric's colours are found, the index of fabrics, and what was measured so far. */
export interface SeamsData extends Omit<Seams, 'cloths' | 'radialMemo'> {
  readonly cloths: Omit<Seams['cloths'], 'clothOf' | 'index'>;
}

export function seamsData({ cloths, typeBands, typeRim, perBlock, fabricCount }: Seams): SeamsData {
  const { clothOf: _, index: __, ...data } = cloths;
  return { cloths: data, typeBands, typeRim, perBlock, fabricCount };
}

export function seamsOf(data: SeamsData): Seams {
  const { cloths } = data;
  return {
    ...data,
    cloths: { ...cloths, clothOf: printMix, index: fabricIndex(cloths.fabrics) },
    radialMemo: new Map(),
  };
}

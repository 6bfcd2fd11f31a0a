// The messages of the worker that analyses (workers/protocol.ts has the protocol), and the conversion of an analysis's seams to
// plain data and back.
import type { Effect, Proposal } from '../../arrange/mend/proposals';
import type { WedgeOffers } from '../../arrange/mend/wedgeOffers';
import type { Standing } from '../../balance/standing';
import { fabricIndex } from '../../cloth/cloths';
import { printMix } from '../../cloth/print/printMix';
import type { Move } from '../../model/moves';
import type { BlockId, Project } from '../../model/project';
import type { Balance, BalanceFigures } from './analysis';

/** The number of the analysis that a question is about; the answer is null if the worker has dropped that analysis. */
interface About {
  readonly about: number;
}

export interface AnalysisJobs {
  /** Analyses a project. `parts` are those parts of it that differ from the last ask; the first time all of them. */
  readonly analyse: {
    readonly ask: { readonly analysis: number; readonly parts: Partial<Project> };
    readonly progress: never;
    readonly answer: BalanceNews;
  };
  /** Finds proposals to mend a finding or a single clash. */
  readonly propose: {
    readonly ask: About & { readonly finding: string };
    readonly progress: never;
    readonly answer: readonly Proposal[] | null;
  };
  /** Computes the effect of moves. */
  readonly effect: {
    readonly ask: About & { readonly moves: readonly Move[] };
    readonly progress: never;
    readonly answer: Effect | null;
  };
  /** Says how the top would stand after moves, without looking for what to say of it. */
  readonly standing: {
    readonly ask: About & { readonly moves: readonly Move[] };
    readonly progress: never;
    readonly answer: Standing | null;
  };
  /** Finds the wedges that could lie in a place of a block, from 0. */
  readonly offers: {
    readonly ask: About & { readonly block: BlockId; readonly place: number };
    readonly progress: never;
    readonly answer: WedgeOffers | null;
  };
}

/** A balance without its project, which the page has; `seams` is null where they are the same as in the analysis before. */
export interface BalanceNews extends BalanceFigures {
  readonly seams: SeamsData | null;
}

type Seams = Balance['seams'];

/** Seams as plain data: without the function for a fabric's colours, the index of fabrics, and the memo. */
export interface SeamsData extends Omit<Seams, 'cloths' | 'radialMemo'> {
  readonly cloths: Omit<Seams['cloths'], 'clothOf' | 'index'>;
}

/** The plain data of seams, to send to the page. */
export function seamsData({ cloths, typeBands, typeRim, perBlock, fabricCount }: Seams): SeamsData {
  const { clothOf: _, index: __, ...data } = cloths;
  return { cloths: data, typeBands, typeRim, perBlock, fabricCount };
}

/** The seams of plain data, with an empty memo. */
export function seamsOf(data: SeamsData): Seams {
  const { cloths } = data;
  return {
    ...data,
    cloths: { ...cloths, clothOf: printMix, index: fabricIndex(cloths.fabrics) },
    radialMemo: new Map(),
  };
}

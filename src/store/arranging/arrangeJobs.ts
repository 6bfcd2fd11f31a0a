// The messages of a worker that arranges; workers/protocol.ts has the protocol.
import type { Alternative, Share, Tries } from '../../arrange/alternatives';
import type { FewBlocks, FewBlocksWish } from '../../arrange/byHand/fewBlocks';
import type { ProvingProgress } from '../../arrange/provingFurther';
import type { ShuffleProgress, ShuffleWish } from '../../arrange/shuffle';
import type { ArrangeResult } from '../../arrange/verdict';
import type { LayingProgress, LayingWish, QuiltLaid } from '../../editing/whole/layingQuilt';
import type { Project } from '../../model/project';

/** The search that the jobs `try` and `choose` share: `count` orders that differ. */
interface SeekingAsk {
  readonly project: Project;
  readonly wish: ShuffleWish;
  readonly count: number;
}

export interface ArrangeJobs {
  readonly shuffle: {
    readonly ask: { readonly project: Project; readonly wish: ShuffleWish };
    readonly progress: ShuffleProgress;
    readonly answer: ArrangeResult;
  };
  /** Takes the search to the end up where `from` has left it. */
  readonly prove: {
    readonly ask: { readonly project: Project; readonly wish: ShuffleWish; readonly from: ArrangeResult };
    readonly progress: ProvingProgress;
    readonly answer: ArrangeResult;
  };
  /** Lays the whole quilt out. */
  readonly lay: {
    readonly ask: { readonly project: Project; readonly wish: LayingWish };
    readonly progress: LayingProgress;
    readonly answer: QuiltLaid;
  };
  /** Does one share of the searches. Its progress is the part of its budget that is spent, 0–1. */
  readonly try: {
    readonly ask: SeekingAsk & { readonly share: Share };
    readonly progress: number;
    readonly answer: Tries;
  };
  /** Finds what few blocks moved by hand can do. Its progress is how far it is, 0–1. */
  readonly byHand: {
    readonly ask: { readonly project: Project; readonly wish: FewBlocksWish };
    readonly progress: number;
    readonly answer: FewBlocks;
  };
  /** Chooses from the orders that all workers have found. */
  readonly choose: {
    readonly ask: SeekingAsk & { readonly tries: readonly Tries[] };
    readonly progress: never;
    readonly answer: readonly Alternative[];
  };
}

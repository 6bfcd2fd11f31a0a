// The messages of a worker that arranges; workers/protocol.ts has the protocol.
import type { Alternative, Share, Tries } from '../../arrange/alternatives';
import type { ArrangeResult, ShuffleProgress, ShuffleWish } from '../../arrange/shuffle';
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
  /** Chooses from the orders that all workers have found. */
  readonly choose: {
    readonly ask: SeekingAsk & { readonly tries: readonly Tries[] };
    readonly progress: never;
    readonly answer: readonly Alternative[];
  };
}

// The messages of a worker that arranges; workers/protocol.ts has the protocol.
import type { Alternative, Share, Tries } from '../../arrange/alternatives';
import type { ArrangeResult, ShuffleProgress, ShuffleWish } from '../../arrange/shuffle';
import type { Project } from '../../model/project';

/** What is wanted of several orders that differ. */
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
  /** Searches for orders that differ: a share of them. Tells the part of its budget that is spent, 0–1. */
  readonly try: {
    readonly ask: SeekingAsk & { readonly share: Share };
    readonly progress: number;
    readonly answer: Tries;
  };
  /** Chooses among what all workers have found. */
  readonly choose: {
    readonly ask: SeekingAsk & { readonly tries: readonly Tries[] };
    readonly progress: never;
    readonly answer: readonly Alternative[];
  };
}

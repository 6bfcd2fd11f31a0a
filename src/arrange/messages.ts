// What goes between the store and the worker that arranges: plain data both ways.
import type { Project } from '../model/project';
import type { Alternative, Share, Tries } from './alternatives';
import type { ArrangeResult, ShuffleProgress, ShuffleWish } from './shuffle';

export type ToWorker =
  | { readonly kind: 'shuffle'; readonly project: Project; readonly wish: ShuffleWish }
  | {
      readonly kind: 'alternatives';
      readonly project: Project;
      readonly wish: ShuffleWish;
      readonly count: number;
      readonly share: Share;
    }
  /** Choose among what all workers have found. */
  | {
      readonly kind: 'choose';
      readonly project: Project;
      readonly wish: ShuffleWish;
      readonly count: number;
      readonly tries: readonly Tries[];
    }
  /** Answer with what there is so far. */
  | { readonly kind: 'stop' };

export type FromWorker =
  | { readonly kind: 'progress'; readonly progress: ShuffleProgress }
  | { readonly kind: 'done'; readonly result: ArrangeResult }
  /** Part of the budget for alternatives that is spent. */
  | { readonly kind: 'share'; readonly share: number }
  | { readonly kind: 'tried'; readonly tries: Tries }
  | { readonly kind: 'found'; readonly alternatives: readonly Alternative[] }
  | { readonly kind: 'failed'; readonly reason: string };

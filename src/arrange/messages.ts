// What goes between the store and the worker that arranges: plain data both ways.
import type { Project } from '../model/project';
import type { ArrangeResult, ShuffleProgress, ShuffleWish } from './shuffle';

export type ToWorker =
  | { readonly kind: 'shuffle'; readonly project: Project; readonly wish: ShuffleWish }
  /** Answer with the best so far. */
  | { readonly kind: 'stop' };

export type FromWorker =
  | { readonly kind: 'progress'; readonly progress: ShuffleProgress }
  | { readonly kind: 'done'; readonly result: ArrangeResult }
  | { readonly kind: 'failed'; readonly reason: string };

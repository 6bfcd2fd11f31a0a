// Has a worker search on from a shuffle's answer, until no better layout can exist or it is stopped, so that the page stays free.
import type { ProvingProgress } from '../../arrange/provingFurther';
import type { ShuffleWish } from '../../arrange/shuffle';
import type { ArrangeResult } from '../../arrange/verdict';
import type { Project } from '../../model/project';
import type { Running } from '../workers/workerClient';
import { askOnce, newArrangeWorker, type StartArrangeWorker } from './arrangeClients';

const WHY = 'The search could not go on: {reason}. The layout found so far is still there.';

/** Starts searching on from `from`. A stop gives what was found so far, and what is left to search. */
export function startProving(
  project: Project,
  wish: ShuffleWish,
  from: ArrangeResult,
  onProgress: (progress: ProvingProgress) => void = () => {},
  start: StartArrangeWorker = newArrangeWorker,
): Running<ArrangeResult> {
  return askOnce('prove', { project, wish, from }, WHY, onProgress, start);
}

// Has a worker search on from a shuffle's answer, until no better layout can exist or it is stopped, so that the page stays free.
import type { ProvingProgress } from '../../arrange/provingFurther';
import type { ShuffleWish } from '../../arrange/shuffle';
import type { ArrangeResult } from '../../arrange/verdict';
import { phrase } from '../../model/phrase';
import type { Project } from '../../model/project';
import { type Running, WorkerClient } from '../workers/workerClient';
import { newArrangeWorker, type StartArrangeWorker } from './arrangeClients';
import type { ArrangeJobs } from './arrangeJobs';

/** Starts searching on from `from`. A stop gives what was found so far, and what is left to search. */
export function startProving(
  project: Project,
  wish: ShuffleWish,
  from: ArrangeResult,
  onProgress: (progress: ProvingProgress) => void = () => {},
  start: StartArrangeWorker = newArrangeWorker,
): Running<ArrangeResult> {
  const client = new WorkerClient<ArrangeJobs>({
    start,
    explain: (reason) =>
      phrase('The search could not go on: {reason}. The layout found so far is still there.', { reason }),
  });
  const answer = client
    .ask('prove', () => ({ project, wish, from }), onProgress)
    .finally(() => client.close());
  return { answer, stop: () => client.stop(), cancel: () => client.close() };
}

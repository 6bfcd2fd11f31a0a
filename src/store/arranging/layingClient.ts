// Has a whole quilt laid out in a worker, so that the page stays free.
import type { LayingProgress, LayingWish, QuiltLaid } from '../../editing/whole/layingQuilt';
import { phrase } from '../../model/phrase';
import type { Project } from '../../model/project';
import { type Running, WorkerClient } from '../workers/workerClient';
import { newArrangeWorker, type StartArrangeWorker } from './arrangeClients';
import type { ArrangeJobs } from './arrangeJobs';

/** Starts laying out; the same project and wish give the same answer. */
export function startLaying(
  project: Project,
  wish: LayingWish,
  onProgress: (progress: LayingProgress) => void = () => {},
  start: StartArrangeWorker = newArrangeWorker,
): Running<QuiltLaid> {
  const client = new WorkerClient<ArrangeJobs>({
    start,
    explain: (reason) =>
      phrase('The quilt could not be laid out: {reason}. Nothing has changed.', { reason }),
  });
  const answer = client.ask('lay', () => ({ project, wish }), onProgress).finally(() => client.close());
  return { answer, stop: () => client.stop(), cancel: () => client.close() };
}

// Has a worker find what few blocks moved by hand can do, so that the page stays free.
import type { FewBlocks, FewBlocksWish } from '../../arrange/byHand/fewBlocks';
import { phrase } from '../../model/phrase';
import type { Project } from '../../model/project';
import { type Running, WorkerClient } from '../workers/workerClient';
import { newArrangeWorker, type StartArrangeWorker } from './arrangeClients';
import type { ArrangeJobs } from './arrangeJobs';

/** Starts looking; the same project and wish give the same answer. A stop gives what was found so far. */
export function startByHand(
  project: Project,
  wish: FewBlocksWish,
  onProgress: (share: number) => void = () => {},
  start: StartArrangeWorker = newArrangeWorker,
): Running<FewBlocks> {
  const client = new WorkerClient<ArrangeJobs>({
    start,
    explain: (reason) =>
      phrase('The moves by hand could not be found: {reason}. Nothing has changed.', { reason }),
  });
  const answer = client.ask('byHand', () => ({ project, wish }), onProgress).finally(() => client.close());
  return { answer, stop: () => client.stop(), cancel: () => client.close() };
}

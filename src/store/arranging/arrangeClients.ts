// Starts workers that arrange: two, one for each of two cores, that share a budget, or one for a single job.
import type { ShuffleWish } from '../../arrange/shuffle';
import { type Phrase, phrase } from '../../model/phrase';
import type { WorkerLike } from '../workers/protocol';
import { type Running, WorkerClient } from '../workers/workerClient';
import type { ArrangeJobs } from './arrangeJobs';

/** Number of workers that share a search. */
export const WORKERS = 2;

const EXPLAIN = 'The shuffle could not run: {reason}. The quilt is as it was.';

export type StartArrangeWorker = () => WorkerLike<ArrangeJobs>;

/** A client for each worker. */
export function arrangeClients(start: StartArrangeWorker = newArrangeWorker): WorkerClient<ArrangeJobs>[] {
  const explain = (reason: string | Phrase) => phrase(EXPLAIN, { reason });
  return Array.from({ length: WORKERS }, () => new WorkerClient({ start, explain }));
}

/** Makes the wish for one worker: its share of the steps, and a seed of its own, far from the others'. */
export function shareOf(wish: ShuffleWish, worker: number): ShuffleWish {
  const { steps } = wish.budget;
  const budget = steps === undefined ? wish.budget : { ...wish.budget, steps: Math.ceil(steps / WORKERS) };
  return { ...wish, seed: (wish.seed + worker * 0x9e3779b9) | 0, budget };
}

/** Asks one worker for one job and lets it go then. `sentence` tells the person why there is no answer, by {reason}. */
export function askOnce<K extends keyof ArrangeJobs>(
  job: K,
  ask: ArrangeJobs[K]['ask'],
  sentence: string,
  onProgress: (progress: ArrangeJobs[K]['progress']) => void,
  start: StartArrangeWorker,
): Running<ArrangeJobs[K]['answer']> {
  const client = new WorkerClient<ArrangeJobs>({ start, explain: (reason) => phrase(sentence, { reason }) });
  const answer = client.ask(job, () => ask, onProgress).finally(() => client.close());
  return { answer, stop: () => client.stop(), cancel: () => client.close() };
}

/** Starts a worker that arranges. */
export function newArrangeWorker(): WorkerLike<ArrangeJobs> {
  return new Worker(new URL('./arrangeWorker.ts', import.meta.url), { type: 'module' });
}

// Has strip sets made at random in a worker, so that the page stays free.
import type { MadeSets, SetMaking } from '../../cutting/sets/randomSets';
import { phrase } from '../../model/phrase';
import type { WorkerLike } from '../workers/protocol';
import { type Running, WorkerClient } from '../workers/workerClient';
import type { SetsJobs } from './setsJobs';

/** Seconds. The worker makes all sets in one go and says nothing until it is done: a minute for hundreds of fabrics. */
const PATIENCE = 600;

export type RunningMaking = Omit<Running<MadeSets>, 'stop'>;

/** Starts making sets; the same `making` gives the same answer. */
export function startMaking(making: SetMaking, start: () => WorkerLike<SetsJobs> = newWorker): RunningMaking {
  const client = new WorkerClient<SetsJobs>({
    start,
    explain: (reason) => phrase('The sets could not be made: {reason}. Nothing has changed.', { reason }),
    patience: PATIENCE,
  });
  const answer = client.ask('make', () => making).finally(() => client.close());
  return { answer, cancel: () => client.close() };
}

function newWorker(): WorkerLike<SetsJobs> {
  return new Worker(new URL('./setsWorker.ts', import.meta.url), { type: 'module' });
}

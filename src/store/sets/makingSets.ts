// Has strip sets made at random in a worker, so that the page stays free.
import type { MadeSets, MakingShare, SetMaking } from '../../cutting/sets/randomSets';
import { phrase } from '../../model/phrase';
import type { WorkerLike } from '../workers/protocol';
import { type Running, WorkerClient } from '../workers/workerClient';
import type { SetsJobs } from './setsJobs';

export type RunningMaking = Omit<Running<MadeSets>, 'stop'>;

/** Starts making sets; the same `making` gives the same answer. `onShare` gets how far it is. */
export function startMaking(
  making: SetMaking,
  start: () => WorkerLike<SetsJobs> = newWorker,
  onShare: (share: MakingShare) => void = () => {},
): RunningMaking {
  const client = new WorkerClient<SetsJobs>({
    start,
    explain: (reason) => phrase('The sets could not be made: {reason}. Nothing has changed.', { reason }),
  });
  const answer = client.ask('make', () => making, onShare).finally(() => client.close());
  return { answer, cancel: () => client.close() };
}

function newWorker(): WorkerLike<SetsJobs> {
  return new Worker(new URL('./setsWorker.ts', import.meta.url), { type: 'module' });
}

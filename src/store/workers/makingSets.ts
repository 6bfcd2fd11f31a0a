// Makes sets at random in a worker of their own, so that the page stays free; a worker that breaks becomes a Problem.
import type { MadeSets, SetMaking } from '../../cutting/sets/randomSets';
import { phrase } from '../../model/phrase';
import { failed, ok, type Result } from '../../model/result';
import type { MadeOrReason } from './setsMessages';

/** The part of a Worker that is used. */
export interface SetsWorker {
  onmessage: ((event: MessageEvent<MadeOrReason>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  postMessage(making: SetMaking): void;
  terminate(): void;
}

export interface RunningMaking {
  /** Settles once; never rejects. Null after `cancel`. */
  readonly answer: Promise<Result<MadeSets> | null>;
  readonly cancel: () => void;
}

/** Starts making sets; the same making gives the same answer. */
export function startMaking(making: SetMaking, makeWorker: () => SetsWorker = newWorker): RunningMaking {
  const worker = makeWorker();
  let settle: (answer: Result<MadeSets> | null) => void = () => {};
  const answer = new Promise<Result<MadeSets> | null>((resolve) => {
    settle = (outcome) => {
      worker.terminate();
      resolve(outcome);
    };
  });
  const broken = (reason: string) => {
    const message = phrase('The sets could not be made: {reason}. Nothing has changed.', { reason });
    settle(failed('worker-failed', 'stripSets', message));
  };
  worker.onmessage = ({ data }) => ('made' in data ? settle(ok(data.made)) : broken(data.reason));
  worker.onerror = (event) => broken(event.message || 'its helper did not start');
  worker.postMessage(making);
  return { answer, cancel: () => settle(null) };
}

function newWorker(): SetsWorker {
  return new Worker(new URL('./setsWorker.ts', import.meta.url), { type: 'module' });
}

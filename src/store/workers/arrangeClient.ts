// Starts the workers that arrange, one for each of two cores, passes on how they stand, and joins their answers: the lower
// score wins, the first worker where they are equal. A worker that breaks becomes a Problem, never an unheard error.
import type { Alternative, Tries } from '../../arrange/alternatives';
import type { FromWorker, ToWorker } from '../../arrange/messages';
import type { ArrangeResult, ShuffleProgress, ShuffleWish } from '../../arrange/shuffle';
import { phrase } from '../../model/phrase';
import type { Project } from '../../model/project';
import { failed, ok, type Problem, type Result } from '../../model/result';

/** The part of a Worker that is used. */
export interface ArrangeWorker {
  onmessage: ((event: MessageEvent<FromWorker>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  onmessageerror: ((event: MessageEvent) => void) | null;
  postMessage(message: ToWorker): void;
  terminate(): void;
}

/** An answer, with the revision of the project it is for. The caller refuses it when the project has moved on. */
export interface ShuffleAnswer {
  readonly revision: number;
  readonly result: ArrangeResult;
}

export interface RunningShuffle {
  /** Settles once; never rejects. Code 'cancelled' after cancel, 'worker-failed' when no worker could answer. */
  readonly answer: Promise<Result<ShuffleAnswer>>;
  /** Ends the search; the answer is the best so far. */
  readonly stop: () => void;
  /** Ends the workers at once, without an answer. */
  readonly cancel: () => void;
}

const WORKERS = 2;
/** Milliseconds the second worker has for its answer when the first has answered a stop. */
const SECOND = 120;

/** Seeds of the two workers, far apart, both from the person's seed. */
function seedOf(seed: number, worker: number): number {
  return (seed + worker * 0x9e3779b9) | 0;
}

/**
 * Starts a shuffle. `onProgress` hears the best of all workers, with moves only when there is a better arrangement than was
 * told before. With a budget in steps the answer is the same every time; each worker gets its half of the steps.
 */
export function startShuffle(
  project: Project,
  revision: number,
  wish: ShuffleWish,
  onProgress: (progress: ShuffleProgress) => void = () => {},
  makeWorker: () => ArrangeWorker = newWorker,
): RunningShuffle {
  const workers: ArrangeWorker[] = [];
  const orientation: (ShuffleProgress | null)[] = Array.from({ length: WORKERS }, () => null);
  const results: (ArrangeResult | null)[] = Array.from({ length: WORKERS }, () => null);
  const reasons: string[] = [];
  let waiting = WORKERS;
  let told = Number.POSITIVE_INFINITY;
  let stopping = false;
  let settle: (answer: Result<ShuffleAnswer>) => void = () => {};
  const answer = new Promise<Result<ShuffleAnswer>>((resolve) => {
    settle = resolve;
  });
  const end = (outcome: Result<ShuffleAnswer>) => {
    for (const worker of workers) worker.terminate();
    settle(outcome);
  };
  const endWithBest = () => {
    const best = bestOf(results);
    if (best) end(ok({ revision, result: joined(best, results) }));
  };
  const oneDone = () => {
    waiting -= 1;
    const best = bestOf(results);
    // Both are heard, so that the answer is the same whichever is done first; who stops does not wait long for the second.
    if (waiting > 0) {
      if (stopping && best) setTimeout(endWithBest, SECOND);
      return;
    }
    end(best ? ok({ revision, result: joined(best, results) }) : workerFailed(reasons[0] ?? ''));
  };
  const fail = (reason: string) => {
    reasons.push(reason);
    oneDone();
  };
  const hear = (index: number, message: FromWorker) => {
    if (message.kind === 'failed') fail(message.reason);
    else if (message.kind === 'done') {
      results[index] = message.result;
      oneDone();
    } else if (message.kind === 'progress') {
      orientation[index] = message.progress;
      const all = orientation.filter((one) => one !== null);
      const better = message.progress.moves !== null && message.progress.best < told - 1e-9;
      if (better) told = message.progress.best;
      onProgress({
        steps: all.reduce((sum, one) => sum + one.steps, 0),
        share: Math.min(...all.map((one) => one.share)),
        start: message.progress.start,
        best: Math.min(...all.map((one) => one.best)),
        moves: better ? message.progress.moves : null,
        closing: all.length === WORKERS && all.every((one) => one.closing),
      });
    }
  };
  for (let index = 0; index < WORKERS; index++) {
    try {
      const worker = makeWorker();
      workers.push(worker);
      worker.onmessage = (event) => hear(index, event.data);
      worker.onerror = (event) => fail(event.message);
      worker.onmessageerror = () => fail('a message could not be read');
      worker.postMessage({ kind: 'shuffle', project, wish: shareOf(wish, index) });
    } catch (error) {
      fail(error instanceof Error ? error.message : String(error));
    }
  }
  return {
    answer,
    stop: () => {
      stopping = true;
      for (const worker of workers) worker.postMessage({ kind: 'stop' });
      if (bestOf(results)) setTimeout(endWithBest, SECOND);
    },
    cancel: () => end(putAside()),
  };
}

/** Alternatives for the wall, with the revision they are for. */
export interface AlternativesAnswer {
  readonly revision: number;
  readonly alternatives: readonly Alternative[];
  /** The cap in milliseconds cut the search short: another run may find others. */
  readonly capped: boolean;
}

export interface RunningAlternatives {
  /** Settles once; never rejects. Codes as for a shuffle. */
  readonly answer: Promise<Result<AlternativesAnswer>>;
  readonly stop: () => void;
  readonly cancel: () => void;
}

/**
 * Seeks `count` good arrangements that differ, beside the page: the workers share the searches, and when all are done the
 * first chooses. With a budget in steps the answer is the same every time. `onShare` hears the part of the budget spent, 0–1.
 */
export function startAlternatives(
  project: Project,
  revision: number,
  wish: ShuffleWish,
  count: number,
  onShare: (share: number) => void = () => {},
  makeWorker: () => ArrangeWorker = newWorker,
): RunningAlternatives {
  const workers: ArrangeWorker[] = [];
  const shares = Array.from({ length: WORKERS }, () => 0);
  const tries: Tries[] = [];
  let working = WORKERS;
  const reasons: string[] = [];
  let settle: (answer: Result<AlternativesAnswer>) => void = () => {};
  const answer = new Promise<Result<AlternativesAnswer>>((resolve) => {
    settle = resolve;
  });
  const end = (outcome: Result<AlternativesAnswer>) => {
    for (const worker of workers) worker.terminate();
    settle(outcome);
  };
  const alive = new Set<ArrangeWorker>();
  /** When nobody works any more, one that is left chooses from what all have found. */
  const oneDone = () => {
    working -= 1;
    if (working > 0) return;
    const [chooser] = alive;
    if (!chooser || tries.length === 0) {
      end(workerFailed(reasons[0] ?? ''));
      return;
    }
    working = 1;
    chooser.postMessage({ kind: 'choose', project, wish, count, tries });
  };
  const fail = (reason: string) => {
    reasons.push(reason);
    oneDone();
  };
  for (let index = 0; index < WORKERS; index++) {
    try {
      const worker = makeWorker();
      workers.push(worker);
      alive.add(worker);
      const broken = (reason: string) => {
        alive.delete(worker);
        fail(reason);
      };
      worker.onmessage = ({ data }) => {
        if (data.kind === 'share') {
          shares[index] = data.share;
          onShare(Math.min(...shares));
        } else if (data.kind === 'tried') {
          tries.push(data.tries);
          oneDone();
        } else if (data.kind === 'found') {
          const capped = tries.some((one) => one.capped);
          end(ok({ revision, alternatives: data.alternatives, capped }));
        } else if (data.kind === 'failed') broken(data.reason);
      };
      worker.onerror = (event) => broken(event.message);
      worker.onmessageerror = () => broken('a message could not be read');
      worker.postMessage({
        kind: 'alternatives',
        project,
        wish,
        count,
        share: { first: index, of: WORKERS },
      });
    } catch (error) {
      fail(error instanceof Error ? error.message : String(error));
    }
  }
  return {
    answer,
    stop: () => {
      for (const worker of workers) worker.postMessage({ kind: 'stop' });
    },
    cancel: () => end(putAside()),
  };
}

function putAside(): { ok: false; problems: readonly Problem[] } {
  return failed('cancelled', '', phrase('The shuffle was put aside.'));
}

function newWorker(): ArrangeWorker {
  return new Worker(new URL('../../arrange/worker.ts', import.meta.url), { type: 'module' });
}

function shareOf(wish: ShuffleWish, worker: number): ShuffleWish {
  const { steps } = wish.budget;
  const budget = steps === undefined ? wish.budget : { ...wish.budget, steps: Math.ceil(steps / WORKERS) };
  return { ...wish, seed: seedOf(wish.seed, worker), budget };
}

function bestOf(results: readonly (ArrangeResult | null)[]): ArrangeResult | null {
  return results.reduce<ArrangeResult | null>(
    (best, one) => (one && (!best || one.after.total < best.after.total - 1e-9) ? one : best),
    null,
  );
}

function joined(best: ArrangeResult, results: readonly (ArrangeResult | null)[]): ArrangeResult {
  return {
    ...best,
    steps: results.reduce((sum, one) => sum + (one?.steps ?? 0), 0),
    capped: results.some((one) => one?.capped),
  };
}

function workerFailed(reason: string): { ok: false; problems: readonly Problem[] } {
  const say = 'The shuffle could not run: {reason}. The quilt is as it was.';
  return failed('worker-failed', '', phrase(say, { reason: reason || 'no reason was given' }));
}

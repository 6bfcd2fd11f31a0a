// Runs a shuffle in the workers, passes on their progress and joins their answers. The lower score wins; of equal scores the
// first worker's.
import type { ShuffleProgress, ShuffleWish } from '../../arrange/shuffle';
import type { ArrangeResult } from '../../arrange/verdict';
import type { Project } from '../../model/project';
import { ok } from '../../model/result';
import type { Running, Settled } from '../workers/workerClient';
import { arrangeClients, type StartArrangeWorker, shareOf, WORKERS } from './arrangeClients';

/** Milliseconds that the second worker has for its answer once the first has answered a stop. */
const SECOND = 120;
/** The same where the second found the layout that the wall shows, and the first a worse one. */
const SECOND_SHOWN = 2000;
/** Scores that differ by less are told of the same layout. */
const SAME = 1e-6;

/**
 * Starts a shuffle. `onProgress` gets the best of all workers, with moves only when they are better than the last ones it got.
 * With a budget in steps the answer is the same every time; each worker gets half of the steps.
 */
export function startShuffle(
  project: Project,
  wish: ShuffleWish,
  onProgress: (progress: ShuffleProgress) => void = () => {},
  start?: StartArrangeWorker,
): Running<ArrangeResult> {
  const clients = arrangeClients(start);
  const outcomes: Settled<ArrangeResult>[] = clients.map(() => null);
  let shown = Number.POSITIVE_INFINITY;
  const tell = bestOfAll((progress) => {
    if (progress.moves) shown = progress.best;
    onProgress(progress);
  });
  let waiting = WORKERS;
  let stopping = false;
  let settle: (answer: Settled<ArrangeResult>) => void = () => {};
  const answer = new Promise<Settled<ArrangeResult>>((resolve) => {
    settle = resolve;
  });
  const end = (outcome: Settled<ArrangeResult>) => {
    settle(outcome);
    for (const client of clients) client.close();
  };
  // It waits for both workers, so that the answer is the same whichever is done first. A stop does not wait long for the second.
  const endSoon = () => {
    const scores = outcomes.flatMap((one) => (one?.ok ? [one.value.after.total] : []));
    if (scores.length === 0) return;
    const asShown = Math.min(...scores) <= shown + SAME;
    setTimeout(() => end(joined(outcomes)), asShown ? SECOND : SECOND_SHOWN);
  };
  clients.forEach((client, index) => {
    const ask = () => ({ project, wish: shareOf(wish, index) });
    void client
      .ask('shuffle', ask, (progress) => tell(index, progress))
      .then((outcome) => {
        outcomes[index] = outcome;
        waiting -= 1;
        if (waiting === 0) end(joined(outcomes));
        else if (stopping) endSoon();
      });
  });
  return {
    answer,
    stop: () => {
      stopping = true;
      for (const client of clients) client.stop();
      endSoon();
    },
    cancel: () => end(null),
  };
}

/** Joins the progress of the workers. */
function bestOfAll(
  onProgress: (progress: ShuffleProgress) => void,
): (worker: number, progress: ShuffleProgress) => void {
  const standing: (ShuffleProgress | null)[] = Array.from({ length: WORKERS }, () => null);
  let told = Number.POSITIVE_INFINITY;
  return (worker, progress) => {
    standing[worker] = progress;
    const all = standing.filter((one) => one !== null);
    const better = progress.moves !== null && progress.best < told - 1e-9;
    if (better) told = progress.best;
    onProgress({
      steps: all.reduce((sum, one) => sum + one.steps, 0),
      share: Math.min(...all.map((one) => one.share)),
      start: progress.start,
      best: Math.min(...all.map((one) => one.best)),
      moves: better ? progress.moves : null,
      closing: all.length === WORKERS && all.every((one) => one.closing),
    });
  };
}

/** The better answer, with the steps of both workers; the first failure where no worker has an answer. */
function joined(outcomes: readonly Settled<ArrangeResult>[]): Settled<ArrangeResult> {
  const results = outcomes.flatMap((one) => (one?.ok ? [one.value] : []));
  const [first, ...others] = results;
  if (!first) return outcomes.find((one) => one !== null) ?? null;
  const best = others.reduce((best, one) => (one.after.total < best.after.total - 1e-9 ? one : best), first);
  return ok({
    ...best,
    steps: results.reduce((sum, one) => sum + one.steps, 0),
    capped: results.some((one) => one.capped),
  });
}

import { describe, expect, it } from 'vitest';
import { chooseAlternatives, tryingAlternatives } from '../../../src/arrange/alternatives';
import type { FromWorker, ToWorker } from '../../../src/arrange/messages';
import { ALL_SCOPES } from '../../../src/arrange/score';
import {
  type ArrangeResult,
  arrange,
  type ShuffleProgress,
  type ShuffleWish,
} from '../../../src/arrange/shuffle';
import {
  type ArrangeWorker,
  startAlternatives,
  startShuffle,
} from '../../../src/store/workers/arrangeClient';
import { scrappyTop } from '../../balance/tops';

const PROJECT = scrappyTop({ rows: 4, columns: 5, seed: 2 });
const WISH: ShuffleWish = { seed: 5, scopes: ALL_SCOPES, budget: { steps: 8000 } };

/** A worker the test speaks for. */
class StandIn implements ArrangeWorker {
  onmessage: ((event: MessageEvent<FromWorker>) => void) | null = null;
  onerror: ((event: ErrorEvent) => void) | null = null;
  onmessageerror: ((event: MessageEvent) => void) | null = null;
  readonly heard: ToWorker[] = [];
  ended = false;

  postMessage(message: ToWorker): void {
    this.heard.push(structuredClone(message));
  }

  terminate(): void {
    this.ended = true;
  }

  say(message: FromWorker): void {
    if (!this.ended) this.onmessage?.({ data: structuredClone(message) } as MessageEvent<FromWorker>);
  }

  wish(): ShuffleWish {
    const [first] = this.heard;
    if (first?.kind !== 'shuffle') throw new Error('no shuffle was asked for');
    return first.wish;
  }

  finish(): ArrangeResult {
    const result = arrange(PROJECT, this.wish());
    this.say({ kind: 'done', result });
    return result;
  }
}

function start(wish = WISH) {
  const workers: StandIn[] = [];
  const told: ShuffleProgress[] = [];
  const running = startShuffle(
    PROJECT,
    12,
    wish,
    (progress) => told.push(progress),
    () => {
      const worker = new StandIn();
      workers.push(worker);
      return worker;
    },
  );
  return { workers: workers as [StandIn, StandIn], told, running };
}

function progress(best: number, share: number, moves: ShuffleProgress['moves'] = []): FromWorker {
  return { kind: 'progress', progress: { steps: 100, share, start: 9, best, moves, closing: share >= 1 } };
}

describe('a shuffle beside the page', () => {
  it('shares the steps between two workers with seeds of their own and gives the better answer, with the revision', async () => {
    const { workers, running } = start();
    expect(workers).toHaveLength(2);
    expect(workers.map((worker) => worker.wish().budget)).toEqual([{ steps: 4000 }, { steps: 4000 }]);
    expect(workers[0].wish().seed).not.toBe(workers[1].wish().seed);
    const second = workers[1].finish();
    const first = workers[0].finish();
    const answer = await running.answer;
    if (!answer.ok) throw new Error('no answer');
    expect(answer.value.revision).toBe(12);
    expect(answer.value.result.after.total).toBe(Math.min(first.after.total, second.after.total));
    expect(answer.value.result.steps).toBe(first.steps + second.steps);
    expect(workers.every((worker) => worker.ended)).toBe(true);
  });

  it('answers the same whichever worker is done first', async () => {
    const one = start();
    one.workers[0].finish();
    one.workers[1].finish();
    const other = start();
    other.workers[1].finish();
    other.workers[0].finish();
    expect(await one.running.answer).toEqual(await other.running.answer);
  });

  it('tells of the best of both, with moves only when they are better than those told before', () => {
    const { workers, told } = start();
    workers[0].say(progress(5, 0.2));
    workers[1].say(progress(6, 0.1));
    workers[1].say(progress(4, 0.3));
    expect(told.map(({ best, share, moves }) => [best, share, moves !== null])).toEqual([
      [5, 0.2, true],
      [5, 0.1, false],
      [4, 0.2, true],
    ]);
    expect(told.at(-1)!.steps).toBe(200);
  });

  it('passes a stop on, and ends without an answer when it is put aside', async () => {
    const { workers, running } = start();
    running.stop();
    expect(workers.map((worker) => worker.heard.at(-1)!.kind)).toEqual(['stop', 'stop']);
    running.cancel();
    const answer = await running.answer;
    expect(answer.ok ? '' : answer.problems[0]!.code).toBe('cancelled');
    expect(workers.every((worker) => worker.ended)).toBe(true);
  });

  it('goes on with one worker when the other breaks', async () => {
    const { workers, running } = start();
    workers[0].onerror?.({ message: 'out of memory' } as ErrorEvent);
    const result = workers[1].finish();
    const answer = await running.answer;
    expect(answer.ok && answer.value.result.after.total).toBe(result.after.total);
  });

  it('names the reason when no worker can answer', async () => {
    const { workers, running } = start();
    workers[0].say({ kind: 'failed', reason: 'no memory' });
    workers[1].say({ kind: 'failed', reason: 'no memory either' });
    const answer = await running.answer;
    if (answer.ok) throw new Error('an answer from nobody');
    expect(answer.problems[0]!.code).toBe('worker-failed');
    expect(answer.problems[0]!.message.with).toEqual({ reason: 'no memory' });
  });

  it('names the reason when no worker can be started', async () => {
    const running = startShuffle(
      PROJECT,
      1,
      WISH,
      () => {},
      () => {
        throw new Error('workers are not allowed here');
      },
    );
    const answer = await running.answer;
    expect(answer.ok ? null : answer.problems[0]!.message.with).toEqual({
      reason: 'workers are not allowed here',
    });
  });

  it('hears both of two proofs, so that the answer is not that of the faster worker', async () => {
    const answers = [0, 1].map((faster) => {
      const { workers, running } = start();
      for (const worker of faster === 0 ? workers : workers.toReversed()) {
        const result = arrange(PROJECT, worker.wish());
        const after = { ...result.after, total: 1 };
        worker.say({ kind: 'done', result: { ...result, after, verdict: { kind: 'proved' } } });
      }
      return running.answer;
    });
    expect(await answers[0]).toEqual(await answers[1]);
  });
});

describe('alternatives beside the page', () => {
  it('are handed on with the revision, and the part of the budget on the way', async () => {
    const seek = (order: readonly [number, number]) => {
      const workers: StandIn[] = [];
      const shares: number[] = [];
      const running = startAlternatives(
        PROJECT,
        4,
        WISH,
        3,
        (share) => shares.push(share),
        () => {
          const worker = new StandIn();
          workers.push(worker);
          return worker;
        },
      );
      for (const at of order) {
        const [asked] = workers[at]!.heard;
        if (asked?.kind !== 'alternatives') throw new Error('no alternatives were asked for');
        const going = tryingAlternatives(PROJECT, WISH, 3, asked.share);
        let step = going.next(false);
        while (!step.done) step = going.next(false);
        workers[at]!.say({ kind: 'share', share: 0.5 });
        workers[at]!.say({ kind: 'tried', tries: step.value });
      }
      const chooser = workers.find((worker) => worker.heard.at(-1)!.kind === 'choose')!;
      const asked = chooser.heard.at(-1)!;
      if (asked.kind !== 'choose') throw new Error('nobody was asked to choose');
      expect(asked.tries).toHaveLength(2);
      const found = chooseAlternatives(PROJECT, WISH, 3, asked.tries);
      chooser.say({ kind: 'found', alternatives: found });
      return { workers, shares, running, found };
    };
    const { workers, shares, running, found } = seek([0, 1]);
    expect(await running.answer).toEqual({
      ok: true,
      value: { revision: 4, alternatives: found, capped: false },
    });
    expect(shares).toEqual([0, 0.5]);
    expect(workers.every((worker) => worker.ended)).toBe(true);
    expect(seek([1, 0]).found).toEqual(found);
  });

  it('pass a stop on to both workers', () => {
    const workers: StandIn[] = [];
    const running = startAlternatives(
      PROJECT,
      4,
      WISH,
      3,
      () => {},
      () => {
        const worker = new StandIn();
        workers.push(worker);
        return worker;
      },
    );
    running.stop();
    expect(workers.map((worker) => worker.heard.at(-1)!.kind)).toEqual(['stop', 'stop']);
    running.cancel();
  });

  it('are chosen from what one worker has found when the other breaks', async () => {
    const workers = [new StandIn(), new StandIn()];
    let made = 0;
    const running = startAlternatives(
      PROJECT,
      4,
      WISH,
      3,
      () => {},
      () => workers[made++]!,
    );
    workers[0]!.onerror?.({ message: 'out of memory' } as ErrorEvent);
    workers[1]!.say({ kind: 'tried', tries: { found: [], capped: true } });
    expect(workers[1]!.heard.at(-1)!.kind).toBe('choose');
    workers[1]!.say({ kind: 'found', alternatives: [] });
    expect(await running.answer).toEqual({
      ok: true,
      value: { revision: 4, alternatives: [], capped: true },
    });
  });

  it('name the reason when the workers break', async () => {
    const worker = new StandIn();
    const running = startAlternatives(
      PROJECT,
      4,
      WISH,
      3,
      () => {},
      () => worker,
    );
    worker.onerror?.({ message: 'out of memory' } as ErrorEvent);
    worker.onerror?.({ message: 'and the other' } as ErrorEvent);
    const answer = await running.answer;
    expect(answer.ok ? null : answer.problems[0]!.message.with).toEqual({ reason: 'out of memory' });
  });
});

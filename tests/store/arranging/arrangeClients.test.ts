import { describe, expect, it } from 'vitest';
import { chooseAlternatives, tryingAlternatives } from '../../../src/arrange/alternatives';
import { findingFewBlocks } from '../../../src/arrange/byHand/fewBlocks';
import { ALL_SCOPES } from '../../../src/arrange/score';
import type { ShuffleProgress, ShuffleWish } from '../../../src/arrange/shuffle';
import type { ArrangeResult } from '../../../src/arrange/verdict';
import { atOnce } from '../../../src/model/work/parts';
import { startAlternatives } from '../../../src/store/arranging/alternativesClient';
import type { ArrangeJobs } from '../../../src/store/arranging/arrangeJobs';
import { startByHand } from '../../../src/store/arranging/byHandClient';
import { startShuffle } from '../../../src/store/arranging/shuffleClient';
import { arrange } from '../../arrange/toTheEnd';
import { scrappyTop } from '../../balance/tops';
import { type StubWorker, settled, stubs } from '../workers/stubWorker';

const PROJECT = scrappyTop({ rows: 4, columns: 5, seed: 2 });
const WISH: ShuffleWish = { seed: 5, scopes: ALL_SCOPES, budget: { steps: 3000 } };

type Stub = StubWorker<ArrangeJobs>;

function wishOf(worker: Stub): ShuffleWish {
  return worker.asked('shuffle').ask.wish;
}

const shuffles = new Map<string, ArrangeResult>();

/** The shuffle that was wished for, worked out once: the same wish gives the same answer. */
function shuffled(wish: ShuffleWish): ArrangeResult {
  const key = JSON.stringify(wish);
  const result = shuffles.get(key) ?? arrange(PROJECT, wish);
  shuffles.set(key, result);
  return result;
}

function finish(worker: Stub): ArrangeResult {
  const result = shuffled(wishOf(worker));
  worker.answer('shuffle', result);
  return result;
}

function shuffle() {
  const { workers, start } = stubs<ArrangeJobs>();
  const told: ShuffleProgress[] = [];
  const running = startShuffle(PROJECT, WISH, (progress) => told.push(progress), start);
  return { workers, pair: workers.slice(0, 2) as [Stub, Stub], told, running };
}

function progress(best: number, share: number, moves: ShuffleProgress['moves'] = []): ShuffleProgress {
  return { steps: 100, share, start: 9, best, moves, closing: share >= 1 };
}

describe('a shuffle beside the page', () => {
  it('shares the steps between two workers with seeds of their own and gives the better answer', async () => {
    const { workers, pair, running } = shuffle();
    expect(workers).toHaveLength(2);
    expect(pair.map((worker) => wishOf(worker).budget)).toEqual([{ steps: 1500 }, { steps: 1500 }]);
    expect(wishOf(pair[0]).seed).not.toBe(wishOf(pair[1]).seed);
    const second = finish(pair[1]);
    const first = finish(pair[0]);
    const answer = await running.answer;
    if (!answer?.ok) throw new Error('no answer');
    expect(answer.value.after.total).toBe(Math.min(first.after.total, second.after.total));
    expect(answer.value.steps).toBe(first.steps + second.steps);
    expect(workers.every((worker) => worker.ended)).toBe(true);
  });

  it('answers the same whichever worker is done first', async () => {
    const one = shuffle();
    finish(one.pair[0]);
    finish(one.pair[1]);
    const other = shuffle();
    finish(other.pair[1]);
    finish(other.pair[0]);
    expect(await one.running.answer).toEqual(await other.running.answer);
  });

  it('tells of the best of both, with moves only when they are better than those told before', () => {
    const { pair, told } = shuffle();
    pair[0].tell('shuffle', progress(5, 0.2));
    pair[1].tell('shuffle', progress(6, 0.1));
    pair[1].tell('shuffle', progress(4, 0.3));
    expect(told.map(({ best, share, moves }) => [best, share, moves !== null])).toEqual([
      [5, 0.2, true],
      [5, 0.1, false],
      [4, 0.2, true],
    ]);
    expect(told.at(-1)!.steps).toBe(200);
  });

  it('passes a stop on, and ends without an answer when it is put aside', async () => {
    const { workers, running } = shuffle();
    running.stop();
    expect(workers.map((worker) => worker.stops)).toEqual([1, 1]);
    running.cancel();
    expect(await running.answer).toBeNull();
    expect(workers.every((worker) => worker.ended)).toBe(true);
  });

  it('is put aside without an answer though one worker has answered', async () => {
    const { pair, running } = shuffle();
    finish(pair[0]);
    await settled();
    running.cancel();
    expect(await running.answer).toBeNull();
  });

  it.each([0, 1])('stops with what worker %i has found, though the other never answers', async (first) => {
    for (const stopFirst of [true, false]) {
      const { pair, running } = shuffle();
      if (stopFirst) running.stop();
      const result = finish(pair[first]!);
      await settled();
      if (!stopFirst) running.stop();
      const answer = await running.answer;
      expect(answer?.ok && answer.value.after.total).toBe(result.after.total);
      expect(pair.every((worker) => worker.ended)).toBe(true);
    }
  });

  it('stops with the layout that the wall shows, though the other worker answers first', async () => {
    const { pair, running } = shuffle();
    const found = pair.map((worker) => ({ worker, result: arrange(PROJECT, wishOf(worker)) }));
    const [shown, worse] = found.toSorted((one, other) => one.result.after.total - other.result.after.total);
    expect(shown!.result.after.total).toBeLessThan(worse!.result.after.total);
    shown!.worker.tell('shuffle', progress(shown!.result.after.total, 1, shown!.result.moves));
    running.stop();
    worse!.worker.answer('shuffle', worse!.result);
    // Longer than an answer that is as good waits for the second.
    await new Promise((resolve) => setTimeout(resolve, 300));
    shown!.worker.answer('shuffle', shown!.result);
    const answer = await running.answer;
    expect(answer?.ok && answer.value.moves).toEqual(shown!.result.moves);
  });

  it('asks another worker the same when one breaks, and goes on with one when that breaks too', async () => {
    const { workers, pair, running } = shuffle();
    const wish = wishOf(pair[0]);
    pair[0].break('out of memory');
    expect(wishOf(workers[2]!)).toEqual(wish);
    workers[2]!.break('out of memory');
    const result = finish(pair[1]);
    const answer = await running.answer;
    expect(answer?.ok && answer.value.after.total).toBe(result.after.total);
  });

  it('names the reason when no worker can answer', async () => {
    const { pair, running } = shuffle();
    pair[0].fail('shuffle', 'no memory');
    pair[1].fail('shuffle', 'no memory either');
    const answer = await running.answer;
    if (!answer || answer.ok) throw new Error('an answer from nobody');
    expect(answer.problems[0]!.code).toBe('worker-failed');
    expect(answer.problems[0]!.message.with).toEqual({ reason: 'no memory' });
  });

  it('names the reason when no worker can be started', async () => {
    const start = () => {
      throw new Error('workers are not allowed here');
    };
    const answer = await startShuffle(PROJECT, WISH, () => {}, start).answer;
    expect(answer?.ok === false && answer.problems[0]!.message.with).toEqual({
      reason: 'workers are not allowed here',
    });
  });

  it('hears both of two proofs, so that the answer is not that of the faster worker', async () => {
    const answers = [0, 1].map((faster) => {
      const { pair, running } = shuffle();
      for (const worker of faster === 0 ? pair : pair.toReversed()) {
        const result = shuffled(wishOf(worker));
        const after = { ...result.after, total: 1 };
        worker.answer('shuffle', { ...result, after, verdict: { kind: 'proved' } });
      }
      return running.answer;
    });
    expect(await answers[0]).toEqual(await answers[1]);
  });
});

describe('alternatives beside the page', () => {
  const seek = () => {
    const { workers, start } = stubs<ArrangeJobs>();
    const shares: number[] = [];
    const running = startAlternatives(PROJECT, WISH, 3, (share) => shares.push(share), start);
    return { workers, shares, running };
  };

  it('are the same whoever is done first, and the part of the budget is told on the way', async () => {
    const found = await Promise.all(
      [[0, 1] as const, [1, 0] as const].map(async (order) => {
        const { workers, shares, running } = seek();
        for (const at of order) {
          const going = tryingAlternatives(PROJECT, WISH, 3, workers[at]!.asked('try').ask.share);
          let step = going.next(false);
          while (!step.done) step = going.next(false);
          workers[at]!.tell('try', 0.5);
          workers[at]!.answer('try', step.value);
        }
        await settled();
        const { tries } = workers[0]!.asked('choose').ask;
        expect(tries).toHaveLength(2);
        const alternatives = chooseAlternatives(PROJECT, WISH, 3, tries);
        workers[0]!.answer('choose', alternatives);
        expect(await running.answer).toEqual({ ok: true, value: { alternatives, cut: null } });
        expect(shares).toEqual([0, 0.5]);
        expect(workers.every((worker) => worker.ended)).toBe(true);
        return alternatives;
      }),
    );
    expect(found[0]!.length).toBeGreaterThan(0);
    expect(found[0]).toEqual(found[1]);
  });

  it('pass a stop on to both workers', () => {
    const { workers, running } = seek();
    running.stop();
    expect(workers.map((worker) => worker.stops)).toEqual([1, 1]);
    running.cancel();
  });

  it('are chosen from what one worker has found when the other fails', async () => {
    const { workers, running } = seek();
    workers[0]!.fail('try', 'out of memory');
    workers[1]!.answer('try', { found: [], cut: 'time' });
    await settled();
    expect(workers[1]!.asked('choose').ask.tries).toHaveLength(1);
    workers[1]!.answer('choose', []);
    expect(await running.answer).toEqual({ ok: true, value: { alternatives: [], cut: 'time' } });
  });

  it('end without an answer when they are put aside, also when all is found but nothing chosen', async () => {
    const { workers, running } = seek();
    for (const worker of workers) worker.answer('try', { found: [], cut: null });
    running.cancel();
    expect(await running.answer).toBeNull();
    expect(workers).toHaveLength(2);
    expect(workers.every((worker) => worker.ended)).toBe(true);
  });

  it('name the reason when the workers fail', async () => {
    const { workers, running } = seek();
    workers[0]!.fail('try', 'out of memory');
    workers[1]!.fail('try', 'and the other');
    const answer = await running.answer;
    expect(answer?.ok === false && answer.problems[0]!.message.with).toEqual({ reason: 'out of memory' });
  });
});

describe('moves by hand beside the page', () => {
  it('are found by one worker, which is told what is asked and ended after its answer', async () => {
    const { workers, start } = stubs<ArrangeJobs>();
    const wish = { most: 2, scopes: { swap: true, turn: true } };
    const told: number[] = [];
    const running = startByHand(PROJECT, wish, (share) => told.push(share), start);
    const worker = workers[0]!;
    expect(worker.asked('byHand').ask).toEqual({ project: PROJECT, wish });
    worker.tell('byHand', 0.5);
    const found = atOnce(findingFewBlocks(PROJECT, wish));
    worker.answer('byHand', found);
    expect(await running.answer).toEqual({ ok: true, value: found });
    expect(found.offers.map(({ blocks }) => blocks)).toEqual([1, 2]);
    expect(told).toEqual([0.5]);
    expect(worker.ended).toBe(true);
  });
});

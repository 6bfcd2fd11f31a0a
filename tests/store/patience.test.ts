// A worker that has begun and then says nothing: the page is told within seconds, whichever worker it is.
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { setMakingOf } from '../../src/cutting/sets/randomSets';
import { createProject } from '../../src/model/create';
import { speak } from '../../src/model/phrase';
import type { Result } from '../../src/model/result';
import type { ArrangeJobs } from '../../src/store/arranging/arrangeJobs';
import { startLaying } from '../../src/store/arranging/layingClient';
import { startMaking } from '../../src/store/sets/makingSets';
import type { SetsJobs } from '../../src/store/sets/setsJobs';
import { type StubWorker, stubs } from './workers/stubWorker';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

const project = createProject('p1', 'Test');
/** Seconds until a silent worker is given up, at the most: that of the shuffle and the analysis is 20. */
const SOON = 25;

function making() {
  const { workers, start } = stubs<SetsJobs>();
  return { workers, running: startMaking(setMakingOf(project, 'most', 1), start) };
}
function laying() {
  const { workers, start } = stubs<ArrangeJobs>();
  return { workers, running: startLaying(project, { seed: 1, want: 'most', cut: false }, () => {}, start) };
}

interface Asked {
  readonly workers: readonly Pick<StubWorker<never>, 'ended'>[];
  readonly running: { readonly answer: Promise<Result<unknown> | null> };
  readonly begin: () => void;
  readonly tell: () => void;
}
const CASES: [string, () => Asked, string][] = [
  [
    'the one that makes sets',
    () => {
      const { workers, running } = making();
      const last = () => workers.at(-1)!;
      return {
        workers,
        running,
        begin: () => last().say({ kind: 'heard', number: last().asked('make').number }),
        tell: () => last().tell('make', 0.5),
      };
    },
    'The sets could not be made: its helper no longer answers. Nothing has changed.',
  ],
  [
    'the one that lays a quilt out',
    () => {
      const { workers, running } = laying();
      const last = () => workers.at(-1)!;
      return {
        workers,
        running,
        begin: () => last().say({ kind: 'heard', number: last().asked('lay').number }),
        tell: () => last().tell('lay', { stage: 'sets', share: null }),
      };
    },
    'The quilt could not be laid out: its helper no longer answers. Nothing has changed.',
  ],
];

it.each(CASES)('is started anew once, then given up, within seconds: %s', async (_who, ask, words) => {
  const { workers, running, begin, tell } = ask();
  const settled = vi.fn<(answer: Result<unknown> | null) => void>();
  void running.answer.then(settled);
  begin();
  // One that tells how far it is may work for as long as it takes.
  for (let second = 0; second < 10 * SOON; second += 1) {
    await vi.advanceTimersByTimeAsync(1_000);
    tell();
  }
  expect([workers.length, workers[0]!.ended]).toEqual([1, false]);
  await vi.advanceTimersByTimeAsync(1_000 * SOON);
  expect([workers.length, workers[0]!.ended]).toEqual([2, true]);
  begin();
  await vi.advanceTimersByTimeAsync(1_000 * SOON);
  expect(workers[1]!.ended).toBe(true);
  const answer = settled.mock.calls[0]![0];
  expect(answer && !answer.ok && speak(answer.problems[0]!.message)).toBe(words);
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { phrase, speak } from '../../../src/model/phrase';
import type { FromWorker, WorkerLike } from '../../../src/store/workers/protocol';
import { type Settled, WorkerClient, type WorkerOptions } from '../../../src/store/workers/workerClient';
import { runs } from '../../runs';
import { StubWorker, settled, stubs } from './stubWorker';

interface CountJobs {
  readonly count: { readonly ask: number; readonly progress: number; readonly answer: string };
  readonly name: { readonly ask: string; readonly progress: never; readonly answer: string };
}

const START = 10;
const PATIENCE = 4;

/** A client of stub workers, with a clock the test moves. */
function desk(options: Partial<WorkerOptions<CountJobs>> = {}) {
  const { workers, start } = stubs<CountJobs>();
  const ticking = new Set<() => void>();
  const client = new WorkerClient<CountJobs>({
    start,
    explain: (reason) => phrase('It failed: {reason}.', { reason }),
    patience: PATIENCE,
    everySecond: (tick) => {
      ticking.add(tick);
      return () => ticking.delete(tick);
    },
    ...options,
  });
  const wait = (seconds: number) => {
    for (let second = 0; second < seconds; second++) for (const tick of ticking) tick();
  };
  return { client, workers, wait, ticking };
}

function words(outcome: Settled<unknown>): string {
  if (!outcome || outcome.ok) throw new Error('it did not fail');
  expect(outcome.problems[0]!.code).toBe('worker-failed');
  return speak(outcome.problems[0]!.message);
}

describe('a worker that is asked', () => {
  it('is started when it is first asked, tells its progress, and answers each ask', async () => {
    const { client, workers, ticking } = desk();
    expect(workers).toHaveLength(0);
    const told: number[] = [];
    const first = client.ask(
      'count',
      () => 3,
      (progress) => told.push(progress),
    );
    expect(workers[0]!.asked('count').ask).toBe(3);
    workers[0]!.tell('count', 1);
    workers[0]!.tell('count', 2);
    workers[0]!.answer('count', 'three');
    expect(await first).toEqual({ ok: true, value: 'three' });
    expect(told).toEqual([1, 2]);
    const second = client.ask('name', () => 'four');
    workers[0]!.answer('name', 'Four');
    expect(await second).toEqual({ ok: true, value: 'Four' });
    expect(workers).toHaveLength(1);
    expect(ticking.size).toBe(0);
  });

  it('is heard for the ask that waits alone, and settles it once, whatever is said in whatever order', async () => {
    const message = fc.record({
      kind: fc.constantFrom('heard', 'progress', 'answer', 'failed'),
      number: fc.integer({ min: 0, max: 4 }),
      at: fc.integer(),
    });
    await fc.assert(
      fc.asyncProperty(fc.array(message, { maxLength: 30 }), async (said) => {
        const { client, workers } = desk();
        const told: number[] = [];
        const outcomes: Settled<string>[] = [];
        void client.ask('count', () => 1);
        workers[0]!.answer('count', 'one');
        const ask = client.ask(
          'count',
          () => 2,
          (progress) => told.push(progress),
        );
        void ask.then((outcome) => outcomes.push(outcome));
        const { number } = workers[0]!.asked('count');
        const messages = said.map(({ at, ...one }): FromWorker<CountJobs> => {
          const more = { progress: at, answer: String(at), reason: String(at) };
          return { ...one, ...more } as FromWorker<CountJobs>;
        });
        for (const one of messages) workers[0]!.say(one);
        await settled();
        const mine = said.filter((one) => one.number === number);
        const end = mine.findIndex((one) => one.kind === 'answer' || one.kind === 'failed');
        const before = end < 0 ? mine : mine.slice(0, end);
        expect(told).toEqual(before.filter((one) => one.kind === 'progress').map((one) => one.at));
        expect(outcomes.length).toBe(end < 0 ? 0 : 1);
        if (end < 0) return;
        const { kind, at } = mine[end]!;
        if (kind === 'answer') expect(outcomes[0]).toEqual({ ok: true, value: String(at) });
        else expect(words(outcomes[0]!)).toBe(`It failed: ${at}.`);
      }),
      { numRuns: runs(67, 200) },
    );
  });

  it('is put aside with an ask that still waits when the next comes; its late answer is refused', async () => {
    const { client, workers } = desk();
    const older = client.ask('count', () => 1);
    const { number } = workers[0]!.asked('count');
    const newer = client.ask('count', () => 2);
    expect(await older).toBeNull();
    expect(workers[0]!.ended).toBe(true);
    workers[0]!.say({ kind: 'answer', number, answer: 'one' });
    workers[1]!.say({ kind: 'answer', number, answer: 'one' });
    workers[1]!.answer('count', 'two');
    expect(await newer).toEqual({ ok: true, value: 'two' });
  });

  it('gives its reason when the work fails, and is there for the next ask', async () => {
    const { client, workers } = desk();
    const first = client.ask('count', () => 1);
    workers[0]!.fail('count', 'no memory');
    expect(words(await first)).toBe('It failed: no memory.');
    const second = client.ask('count', () => 2);
    workers[0]!.answer('count', 'two');
    expect(await second).toEqual({ ok: true, value: 'two' });
    expect(workers).toHaveLength(1);
  });

  it('is told to stop once, and again when it was started anew since', () => {
    const { client, workers } = desk();
    client.stop();
    void client.ask('count', () => 1);
    client.stop();
    expect(workers[0]!.stops).toBe(1);
    workers[0]!.break('out of memory');
    expect(workers[1]!.heard.map((one) => one.kind)).toEqual(['ask', 'stop']);
    void client.ask('count', () => 2);
    expect(workers[2]!.stops).toBe(0);
  });

  it('ends for good when it is closed: what waits and what is asked later is null', async () => {
    const { client, workers, ticking } = desk();
    const waiting = client.ask('count', () => 1);
    client.close();
    expect(await waiting).toBeNull();
    expect(workers[0]!.ended).toBe(true);
    expect(await client.ask('count', () => 2)).toBeNull();
    expect(workers).toHaveLength(1);
    expect(ticking.size).toBe(0);
  });
});

describe('a worker that fails to work', () => {
  it('never starts: it is started anew once, then that is said', async () => {
    const { client, workers, wait, ticking } = desk();
    const asked = client.ask('count', () => 1);
    wait(START - 1);
    expect(workers).toHaveLength(1);
    wait(1);
    expect(workers).toHaveLength(2);
    expect(workers[0]!.ended).toBe(true);
    wait(START);
    expect(words(await asked)).toBe('It failed: its helper did not start.');
    expect(workers.map((one) => one.ended)).toEqual([true, true]);
    expect(ticking.size).toBe(0);
  });

  it('hangs at its work: it is started anew once and asked the same, then that is said', async () => {
    const { client, workers, wait } = desk({ standIn: () => new StubWorker<CountJobs>() });
    const asked = client.ask('count', () => 7);
    for (const at of [0, 1]) {
      expect(workers[at]!.asked('count').ask).toBe(7);
      workers[at]!.say({ kind: 'heard', number: 1 });
      wait(PATIENCE - 1);
      workers[at]!.tell('count', 1);
      wait(PATIENCE - 1);
      expect(workers[at]!.ended).toBe(false);
      wait(1);
      expect(workers[at]!.ended).toBe(true);
    }
    expect(words(await asked)).toBe('It failed: its helper no longer answers.');
    expect(workers).toHaveLength(2);
  });

  it('answers late, when another was started in its place: it is not heard', async () => {
    const { client, workers, wait } = desk();
    const asked = client.ask('count', () => 1);
    const { number } = workers[0]!.asked('count');
    wait(START);
    workers[0]!.say({ kind: 'answer', number, answer: 'late' });
    workers[1]!.answer('count', 'one');
    expect(await asked).toEqual({ ok: true, value: 'one' });
  });

  it('cannot be started: the reason is given, and it is tried again at the next ask', async () => {
    let tries = 0;
    const { client } = desk({
      start: () => {
        tries += 1;
        throw new Error('workers are not allowed here');
      },
    });
    expect(words(await client.ask('count', () => 1))).toBe('It failed: workers are not allowed here.');
    expect(tries).toBe(2);
    await client.ask('count', () => 1);
    expect(tries).toBe(4);
  });

  it('throws at a message: it is started anew once, then the reason is given', async () => {
    const { client, workers } = desk();
    const asked = client.ask('count', () => 1);
    workers[0]!.break('out of memory');
    workers[1]!.onmessageerror?.({} as MessageEvent);
    expect(words(await asked)).toBe('It failed: a message could not be read.');
  });

  it('breaks without a word: that it did not start is said', async () => {
    const { client, workers } = desk();
    const asked = client.ask('count', () => 1);
    for (const at of [0, 1]) workers[at]!.break('');
    expect(words(await asked)).toBe('It failed: its helper did not start.');
  });

  it('breaks at rest: the next ask starts another', async () => {
    const { client, workers } = desk();
    const first = client.ask('count', () => 1);
    workers[0]!.answer('count', 'one');
    await first;
    workers[0]!.break('out of memory');
    const second = client.ask('count', () => 2);
    workers[1]!.answer('count', 'two');
    expect(await second).toEqual({ ok: true, value: 'two' });
  });

  it('cannot be sent what is asked: the reason is given', async () => {
    const { client } = desk();
    const bad = client.ask('count', () => (() => 1) as unknown as number);
    expect(words(await bad)).toMatch(/function/);
  });

  it('breaks twice: who stands in for it is asked, that time and from then on', async () => {
    const standIn = new StubWorker<CountJobs>();
    let started = 0;
    const { client, workers } = desk({
      standIn: () => standIn,
      onStart: () => {
        started += 1;
      },
    });
    const first = client.ask('count', () => 1);
    workers[0]!.break('out of memory');
    workers[1]!.break('out of memory');
    standIn.answer('count', 'one');
    expect(await first).toEqual({ ok: true, value: 'one' });
    const second = client.ask('count', () => 2);
    standIn.answer('count', 'two');
    expect(await second).toEqual({ ok: true, value: 'two' });
    expect([workers.length, started]).toEqual([2, 3]);
  });
});

/** Held by the compiler: a job that is not plain data has no client. */
interface FunctionJobs {
  readonly paint: {
    readonly ask: { readonly how: () => void };
    readonly progress: never;
    readonly answer: null;
  };
}
interface MemoJobs {
  readonly paint: {
    readonly ask: { readonly seen: readonly { readonly memo: Map<number, string> }[] };
    readonly progress: never;
    readonly answer: null;
  };
}
interface WeakJobs {
  readonly paint: { readonly ask: null; readonly progress: never; readonly answer: WeakMap<object, number> };
}

describe('what is sent to a worker', () => {
  it('is plain data, or there is no client for it', () => {
    // @ts-expect-error a function
    type A = WorkerClient<FunctionJobs>;
    // @ts-expect-error a memo
    type B = WorkerLike<MemoJobs>;
    // @ts-expect-error a memo in an answer
    type C = WorkerClient<WeakJobs>;
    const held: [A?, B?, C?] = [];
    expect(held).toEqual([]);
  });
});

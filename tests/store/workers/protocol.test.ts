import { describe, expect, it } from 'vitest';
import { type Answers, answering, type FromWorker, inPage } from '../../../src/store/workers/protocol';
import { notPlain } from './plainData';
import { sent, settled } from './stubWorker';

interface CountJobs {
  readonly count: { readonly ask: number; readonly progress: number; readonly answer: string };
}

/** Counts until it is told to stop, or to the number asked. */
function* counting(to: number): Generator<number, string, boolean> {
  for (let at = 1; at <= to; at++) if (yield at) return `stopped at ${at}`;
  return `all ${to}`;
}

function worker(answers: Answers<CountJobs>) {
  const said: FromWorker<CountJobs>[] = [];
  const hear = answering(answers, (message) => said.push(sent(message)));
  const end = async (number: number) => {
    while (!said.some((one) => one.number === number && ['answer', 'failed'].includes(one.kind)))
      await settled();
    return said.filter((one) => one.number === number);
  };
  return { said, hear, end };
}

const inParts: Answers<CountJobs> = {
  count: (ask, work) => work.run(counting(ask), (at) => work.tell(at)),
};

describe("the worker's side", () => {
  it('says that it has begun, tells how it stands, and answers once', async () => {
    const { hear, end } = worker(inParts);
    hear({ kind: 'ask', number: 1, job: 'count', ask: 3 });
    expect(await end(1)).toEqual([
      { kind: 'heard', number: 1 },
      { kind: 'progress', number: 1, progress: 1 },
      { kind: 'progress', number: 1, progress: 2 },
      { kind: 'progress', number: 1, progress: 3 },
      { kind: 'answer', number: 1, answer: 'all 3' },
    ]);
  });

  it('hears a stop between two parts, for the ask it is meant for alone', async () => {
    const { said, hear, end } = worker(inParts);
    const endless = Number.POSITIVE_INFINITY;
    hear({ kind: 'ask', number: 1, job: 'count', ask: endless });
    while (said.length < 5) await settled();
    hear({ kind: 'stop', number: 1 });
    expect((await end(1)).at(-1)).toMatchObject({
      kind: 'answer',
      answer: expect.stringMatching(/^stopped/),
    });
    hear({ kind: 'ask', number: 2, job: 'count', ask: 4 });
    expect((await end(2)).at(-1)).toEqual({ kind: 'answer', number: 2, answer: 'all 4' });
  });

  it('goes on with two asks at once, each by itself', async () => {
    const { hear, end } = worker(inParts);
    hear({ kind: 'ask', number: 1, job: 'count', ask: 20 });
    hear({ kind: 'ask', number: 2, job: 'count', ask: 5 });
    expect((await end(1)).at(-1)).toMatchObject({ answer: 'all 20' });
    expect((await end(2)).at(-1)).toMatchObject({ answer: 'all 5' });
  });

  it.each<[string, Answers<CountJobs>['count'], RegExp]>([
    [
      'thrown at once',
      () => {
        throw new Error('no memory');
      },
      /^no memory$/,
    ],
    ['thrown later', () => Promise.reject(new Error('no memory later')), /^no memory later$/],
    ['that cannot be sent', () => (() => 1) as unknown as string, /function/],
  ])('says what went wrong: %s', async (_what, count, reason) => {
    const { hear, end } = worker({ count });
    hear({ kind: 'ask', number: 1, job: 'count', ask: 3 });
    expect((await end(1)).at(-1)).toMatchObject({ kind: 'failed', reason: expect.stringMatching(reason) });
  });

  it('works in the page itself after the screen has had a turn, and not when it was ended', async () => {
    const here = inPage<CountJobs>(async () => inParts);
    const said: FromWorker<CountJobs>[] = [];
    here.onmessage = ({ data }) => said.push(data);
    here.postMessage({ kind: 'ask', number: 1, job: 'count', ask: 1 });
    expect(said).toEqual([]);
    while (said.length < 3) await settled();
    expect(said.at(-1)).toMatchObject({ answer: 'all 1' });
    here.terminate();
    here.postMessage({ kind: 'ask', number: 2, job: 'count', ask: 1 });
    await settled();
    await settled();
    expect(said).toHaveLength(3);
  });

  it('says why, when its code for the page itself cannot be had', async () => {
    const here = inPage<CountJobs>(() => Promise.reject(new Error('away')));
    const said: FromWorker<CountJobs>[] = [];
    here.onmessage = ({ data }) => said.push(data);
    here.postMessage({ kind: 'ask', number: 7, job: 'count', ask: 1 });
    while (said.length < 1) await settled();
    expect(said).toEqual([{ kind: 'failed', number: 7, reason: 'away' }]);
  });
});

describe('the look for what is not plain', () => {
  it.each<[unknown, string | null]>([
    [{ a: [1, 'b', null, undefined, true, new Float64Array(2)], c: { d: Number.NaN } }, null],
    [Object.freeze({ a: Object.freeze([]) }), null],
    [{ a: { how: () => 1 } }, 'message.a.how is a function'],
    [[{ memo: new Map() }], 'message.0.memo is a Map'],
    [{ a: new Date(0) }, 'message.a is a Date'],
    [new (class Wall {})(), 'message is a Wall'],
  ])('%# names the first part', (value, fault) => {
    expect(notPlain(value)).toBe(fault);
  });
});

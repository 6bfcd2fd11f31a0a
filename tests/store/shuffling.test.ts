import { describe, expect, it } from 'vitest';
import { shuffleWish } from '../../src/arrange/asked';
import { askedOf } from '../../src/arrange/search/effort';
import type { ShuffleProgress } from '../../src/arrange/shuffle';
import type { ArrangeResult } from '../../src/arrange/verdict';
import { changePreferences } from '../../src/editing/commands/setting';
import { keepShuffle, turnBlock } from '../../src/editing/commands/wall';
import { phrase } from '../../src/model/phrase';
import { ok } from '../../src/model/result';
import { createApp } from '../../src/store/app';
import type { paced } from '../../src/store/arranging/pace';
import type { startProving } from '../../src/store/arranging/provingClient';
import type { startShuffle } from '../../src/store/arranging/shuffleClient';
import { createShuffling } from '../../src/store/shuffling';
import type { Settled } from '../../src/store/workers/workerClient';
import { arrange } from '../arrange/toTheEnd';
import { scrappyTop } from '../balance/tops';

const PROJECT = scrappyTop({ rows: 2, columns: 3, seed: 4 });

/** A shuffle whose workers are spoken for by the test. */
function room() {
  const app = createApp(PROJECT);
  const asked: Parameters<typeof startShuffle>[] = [];
  let answer: (outcome: Settled<ArrangeResult>) => void = () => {};
  const heard: string[] = [];
  const proving: Parameters<typeof startProving>[] = [];
  const begin = ((...given: Parameters<typeof startShuffle>) => {
    asked.push(given);
    return {
      answer: new Promise<Settled<ArrangeResult>>((settle) => {
        answer = settle;
      }),
      stop: () => heard.push('stop'),
      cancel: () => heard.push('cancel'),
    };
  }) as typeof startShuffle;
  const atOnce: typeof paced = (_, draw) => {
    let ended = false;
    return {
      tell: (news) => {
        if (!ended) draw(news);
      },
      end: () => {
        ended = true;
      },
    };
  };
  const further = ((...given: Parameters<typeof startProving>) => {
    proving.push(given);
    return (begin as (...given: unknown[]) => ReturnType<typeof startProving>)();
  }) as typeof startProving;
  const shuffling = createShuffling(app, begin, atOnce, further);
  const result: ArrangeResult = arrange(PROJECT, {
    ...shuffleWish(app.getState().project),
    budget: { steps: 20_000 },
  });
  return {
    app,
    shuffling,
    heard,
    result,
    tell: (progress: Partial<ShuffleProgress>) =>
      asked.at(-1)![2]!({
        steps: 9,
        share: 0.5,
        start: 2,
        best: 1,
        moves: null,
        closing: false,
        ...progress,
      }),
    proving,
    finish: async (outcome: Settled<ArrangeResult> = ok(result)) => {
      answer(outcome);
      await Promise.resolve();
      await Promise.resolve();
    },
  };
}

const state = (one: ReturnType<typeof room>) => one.shuffling.getState().shuffle;
const saying = (one: ReturnType<typeof room>) => one.app.getState().announced.words.say;

describe('the shuffle of the open quilt', () => {
  it('lays its best so far on the wall, and its answer when it is done', async () => {
    const one = room();
    one.shuffling.getState().start();
    expect(state(one)).toEqual({ kind: 'running', progress: null });
    const first = one.result.moves.slice(0, 1);
    one.tell({ moves: first });
    expect(one.app.getState().preview?.command.moves).toEqual(first);
    await one.finish();
    expect(state(one)).toMatchObject({ kind: 'done', result: one.result });
    expect(one.app.getState().preview?.command.moves).toEqual(one.result.moves);
    expect(one.app.getState().project).toBe(PROJECT);
  });

  it('goes on while another step is on show, keeps the wall as the quilt is there, and is back with the Wall step', async () => {
    const one = room();
    one.shuffling.getState().start();
    one.tell({ moves: one.result.moves.slice(0, 1) });
    one.app.getState().goTo('fabrics');
    expect(one.app.getState().preview).toBeNull();
    expect(saying(one)).toMatch(/goes on/);
    one.tell({ moves: one.result.moves.slice(0, 2) });
    expect(one.app.getState().preview).toBeNull();
    one.app.getState().goTo('wall');
    expect(one.app.getState().preview?.command.moves).toHaveLength(2);
    one.app.getState().goTo('finishing');
    await one.finish();
    expect(one.heard).toEqual([]);
    expect(one.app.getState().preview).toBeNull();
    expect(saying(one)).toMatch(/done/);
    one.app.getState().goTo('wall');
    expect(one.app.getState().preview?.command.moves).toEqual(one.result.moves);
    expect(state(one).kind).toBe('done');
  });

  it('searches on from its answer as it was asked, as often as it is stopped, and until nothing is left', async () => {
    const one = room();
    const left = [{ settled: [], bound: 0, share: 1 }];
    const found = { ...one.result, left };
    one.shuffling.getState().goOn();
    one.shuffling.getState().start();
    const wish = shuffleWish(one.app.getState().project);
    one.shuffling.getState().goOn();
    expect(one.proving).toEqual([]);
    await one.finish(ok(found));
    const asked = { ...askedOf(PROJECT.preferences), scopes: { ...wish.scopes, turn: false } };
    expect(one.app.getState().run(changePreferences({ shuffle: asked }))).toEqual([]);
    one.shuffling.getState().goOn();
    expect(one.proving[0]!.slice(0, 3)).toEqual([one.app.getState().project, wish, found]);
    expect(state(one)).toMatchObject({ kind: 'proving', result: found, progress: null });
    const better = found.moves.slice(0, 2);
    one.proving[0]![3]!({ share: 0.5, points: 2.5, from: 4, moves: better });
    expect(state(one)).toMatchObject({ kind: 'proving', progress: { points: 2.5 } });
    expect(one.app.getState().preview?.command.moves).toEqual(better);
    one.shuffling.getState().stop();
    expect(one.heard).toEqual(['stop']);
    await one.finish(ok({ ...found, moves: better }));
    expect(state(one)).toMatchObject({ kind: 'done', result: { moves: better, left } });
    one.shuffling.getState().goOn();
    await one.finish(ok({ ...found, left: null }));
    one.shuffling.getState().goOn();
    expect(one.proving).toHaveLength(2);
    expect(state(one).kind).toBe('done');
  });

  it('keeps what it has found when searching on fails, and says why', async () => {
    const one = room();
    one.shuffling.getState().start();
    const found = { ...one.result, left: [{ settled: [], bound: 0, share: 1 }] };
    await one.finish(ok(found));
    one.shuffling.getState().goOn();
    const problem = { code: 'worker', path: '', message: phrase('No worker') };
    await one.finish({ ok: false, problems: [problem] });
    expect(state(one)).toMatchObject({ kind: 'done', result: found, problems: [problem] });
    expect(one.app.getState().preview?.command.moves).toEqual(found.moves);
  });

  it('is put aside, in words, when the quilt is changed meanwhile, and does not lay its answer over the change', async () => {
    const one = room();
    one.shuffling.getState().start();
    one.tell({ moves: one.result.moves });
    one.app.getState().goTo('blocks');
    expect(one.app.getState().run(turnBlock(PROJECT, PROJECT.blocks[0]!.id, 1))).toEqual([]);
    expect(one.heard).toEqual(['cancel']);
    const now = state(one);
    expect(now.kind === 'idle' && now.problems[0]?.code).toBe('stale');
    one.app.getState().goTo('wall');
    await one.finish();
    expect(state(one)).toBe(now);
    expect(one.app.getState().preview).toBeNull();
  });

  it('gives up an answer that no longer fits, and one of another quilt without a word', async () => {
    const one = room();
    one.shuffling.getState().start();
    await one.finish();
    one.app.getState().run(turnBlock(PROJECT, PROJECT.blocks[0]!.id, 1));
    const changed = state(one);
    expect(changed.kind === 'idle' && changed.problems).toHaveLength(1);
    const other = room();
    other.shuffling.getState().start();
    other.app.getState().open({ ...PROJECT, id: 'another' });
    expect(state(other)).toEqual({ kind: 'idle', problems: [] });
    expect(other.heard).toEqual(['cancel']);
  });

  it('stays, and stays on the wall, when only the flannel, the unit or what is asked of it is changed', async () => {
    const one = room();
    one.shuffling.getState().start();
    await one.finish();
    const { showPreview, run } = one.app.getState();
    const order = one.app.getState().preview;
    expect(order?.command.moves).toEqual(one.result.moves);
    const { seed, scopes, effort } = askedOf(PROJECT.preferences);
    for (const change of [{ wallLightness: 90 }, { shuffle: { seed: seed + 1, scopes, effort } }]) {
      expect(run(changePreferences(change))).toEqual([]);
      expect(state(one).kind).toBe('done');
      expect(one.app.getState().preview?.command).toBe(order?.command);
      expect(one.app.getState().preview?.project.preferences).toMatchObject(change);
    }
    one.app.getState().measureIn('cm');
    expect(state(one).kind).toBe('done');
    expect(one.app.getState().preview?.command).toBe(order?.command);
    expect(one.app.getState().preview?.project.preferences.unit).toBe('cm');
    showPreview(null);
    run(changePreferences({ lookalikes: 3 }));
    expect(state(one).kind).toBe('idle');
    expect(one.app.getState().preview).toBeNull();
  });

  it('is stopped with its best, kept or left', async () => {
    const one = room();
    one.shuffling.getState().start();
    one.shuffling.getState().stop();
    expect(one.heard).toEqual(['stop']);
    one.tell({ moves: one.result.moves.slice(0, 1) });
    expect(one.app.getState().preview).toBeNull();
    await one.finish();
    expect(one.app.getState().run(keepShuffle(one.result.moves))).toEqual([]);
    one.shuffling.getState().leave();
    expect(state(one)).toEqual({ kind: 'idle', problems: [] });
    expect(one.app.getState().preview).toBeNull();
    expect(one.app.getState().history.done).toHaveLength(1);
  });
});

import { describe, expect, it } from 'vitest';
import { shuffleWish } from '../../src/arrange/asked';
import { askedOf } from '../../src/arrange/search/effort';
import type { ShuffleProgress } from '../../src/arrange/shuffle';
import type { ArrangeResult } from '../../src/arrange/verdict';
import { changePreferences } from '../../src/editing/commands/setting';
import { keepShuffle, turnBlock } from '../../src/editing/commands/wall';
import { ok } from '../../src/model/result';
import { createApp } from '../../src/store/app';
import type { paced } from '../../src/store/arranging/pace';
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
  const atOnce: typeof paced<ShuffleProgress> = (_, draw) => {
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
  const shuffling = createShuffling(app, begin, atOnce);
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
    finish: async () => {
      answer(ok(result));
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

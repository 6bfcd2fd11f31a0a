import { describe, expect, it } from 'vitest';
import { renameProject } from '../../src/editing/commands/setting';
import { writeDownStrips } from '../../src/editing/commands/stripsOnHand';
import type { LayingProgress, LayingWish, QuiltLaid } from '../../src/editing/whole/layingQuilt';
import { speak } from '../../src/model/phrase';
import type { Project } from '../../src/model/project';
import { ok, type Result } from '../../src/model/result';
import { createApp } from '../../src/store/app';
import type { ArrangeJobs } from '../../src/store/arranging/arrangeJobs';
import { startLaying } from '../../src/store/arranging/layingClient';
import { createLaying } from '../../src/store/laying';
import { plainFabrics, projectOf, stripsOf } from '../cutting/fabrics';
import { laidOut } from '../editing/whole/toTheEnd';
import { settled, stubs } from './workers/stubWorker';

const fabrics = plainFabrics(8);
const PROJECT = projectOf({ fabrics, stripsOnHand: stripsOf(fabrics, [[1.5, 3], [2, 1]]) }); // biome-ignore format: short
const ASKED = { want: 'most', cut: false } as const;

/** An app with a worker that the test speaks for. */
function desk(project: Project = PROJECT) {
  const app = createApp(project);
  app.getState().goTo('fabrics');
  const asks: { wish: LayingWish; tell: (progress: LayingProgress) => void; stopped: boolean; cancelled: boolean; answer: (laid: Result<QuiltLaid>) => Promise<void> }[] = []; // biome-ignore format: a row
  const laying = createLaying(app, (_, wish, tell = () => {}) => {
    let settle: (answer: Result<QuiltLaid> | null) => void = () => {};
    const answer = new Promise<Result<QuiltLaid> | null>((resolve) => {
      settle = resolve;
    });
    const ask = {
      wish,
      tell,
      stopped: false,
      cancelled: false,
      answer: (laid: Result<QuiltLaid>) => {
        settle(laid);
        return settled();
      },
    };
    asks.push(ask);
    return {
      answer,
      stop: () => {
        ask.stopped = true;
      },
      cancel: () => {
        ask.cancelled = true;
        settle(null);
      },
    };
  });
  return { app, laying, asks, state: () => laying.getState().state };
}

describe('laying out the open quilt', () => {
  it('is one change, one undo, says what it did and shows the wall', async () => {
    const { app, laying, asks, state } = desk();
    laying.getState().start(ASKED);
    expect(asks[0]!.wish.seed).toBe(PROJECT.preferences.seed);
    const laid = laidOut(PROJECT, asks[0]!.wish);
    await asks[0]!.answer(ok(laid));
    expect(app.getState().project.blocks).toEqual(laid.parts!.blocks);
    expect(app.getState().step).toBe('wall');
    expect(speak(app.getState().announced.words)).toMatch(/^\d+ sets from/);
    expect(state()).toMatchObject({ kind: 'done', words: laid.words, changed: true });
    app.getState().undo();
    expect(app.getState().project).toEqual(PROJECT);
    expect(state()).toEqual({ kind: 'idle', problems: [] });
  });

  it('is put aside with a reason when the strips change meanwhile, not when the quilt is renamed', async () => {
    const { app, laying, asks, state } = desk();
    laying.getState().start(ASKED);
    app.getState().run(renameProject('Harbour'));
    expect(state().kind).toBe('running');
    app.getState().run(writeDownStrips([{ fabric: 'f1', width: 2, length: 40, count: 1 }]));
    expect(asks[0]!.cancelled).toBe(true);
    expect(state()).toMatchObject({ kind: 'idle', problems: [{ code: 'stale' }] });
    await asks[0]!.answer(ok(laidOut(PROJECT)));
    expect(app.getState().project.blocks).toEqual([]);
  });

  it('stops with the order found so far while it shuffles; before that nothing is changed', () => {
    const { laying, asks, state } = desk();
    laying.getState().start(ASKED);
    laying.getState().stop();
    expect(asks[0]).toMatchObject({ stopped: false, cancelled: true });
    expect(state()).toEqual({ kind: 'idle', problems: [] });
    laying.getState().start(ASKED);
    asks[1]!.tell({ stage: 'shuffle', share: 0.25 });
    expect(state()).toMatchObject({ kind: 'running', progress: { share: 0.25 } });
    laying.getState().stop();
    expect(asks[1]).toMatchObject({ stopped: true, cancelled: false });
  });

  it('gives another mix of the same strips, in place of the last one', async () => {
    const { app, laying, asks } = desk();
    laying.getState().start(ASKED);
    await asks[0]!.answer(ok(laidOut(PROJECT, asks[0]!.wish)));
    laying.getState().another();
    expect(app.getState().project).toEqual(PROJECT);
    expect(asks[1]!.wish).toEqual({ ...asks[0]!.wish, seed: asks[0]!.wish.seed + 1 });
    await asks[1]!.answer(ok(laidOut(PROJECT, asks[1]!.wish)));
    expect(app.getState().history.done).toHaveLength(1);
  });

  it('says so where there is nothing to lay out, and stays at its step', async () => {
    const empty = projectOf({});
    const { app, laying, asks, state } = desk(empty);
    laying.getState().start(ASKED);
    await asks[0]!.answer(ok(laidOut(empty)));
    expect(app.getState().project).toBe(empty);
    expect(app.getState().step).toBe('fabrics');
    expect(state()).toMatchObject({ kind: 'done', changed: false });
  });
});

describe('laying out beside the page', () => {
  it('asks one worker for all of it, passes a stop on and ends the worker with the answer', async () => {
    const { workers, start } = stubs<ArrangeJobs>();
    const told: LayingProgress[] = [];
    const wish: LayingWish = { seed: 4, ...ASKED, budget: { steps: 500 } };
    const running = startLaying(PROJECT, wish, (progress) => told.push(progress), start);
    expect(workers).toHaveLength(1);
    expect(workers[0]!.asked('lay').ask).toEqual({ project: PROJECT, wish });
    workers[0]!.tell('lay', { stage: 'blocks', share: 0 });
    running.stop();
    expect(workers[0]!.stops).toBe(1);
    const laid = laidOut(PROJECT, wish);
    workers[0]!.answer('lay', laid);
    expect(await running.answer).toEqual(ok(laid));
    expect(told).toEqual([{ stage: 'blocks', share: 0 }]);
    await settled();
    expect(workers[0]!.ended).toBe(true);
  });
});

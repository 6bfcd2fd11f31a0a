import { expect, it } from 'vitest';
import { changePreferences } from '../../src/editing/commands/setting';
import { turnBlock } from '../../src/editing/commands/wall';
import { phrase } from '../../src/model/phrase';
import { ok } from '../../src/model/result';
import { createApp } from '../../src/store/app';
import { createOffering } from '../../src/store/offering';
import type { Settled } from '../../src/store/workers/workerClient';
import { scrappyTop } from '../balance/tops';

/** A search that the test speaks for. */
function room(isLost?: () => boolean) {
  const app = createApp(scrappyTop({ rows: 2, columns: 2, seed: 4 }));
  const heard: string[] = [];
  const searches: {
    settle: (answer: Settled<number>) => void;
    hear: (share: number) => void;
  }[] = [];
  const offering = createOffering(app, {
    begin: (_, [from]: [from: number], hear) => {
      const number = searches.length;
      let settle: (answer: Settled<number>) => void = () => {};
      const answer = new Promise<Settled<number>>((done) => {
        settle = done;
      });
      searches.push({ settle, hear });
      heard.push(`begin ${from}`);
      return {
        answer,
        stop: () => heard.push(`stop ${number}`),
        cancel: () => heard.push(`cancel ${number}`),
      };
    },
    offer: (count) => ({ count }),
    stale: phrase('No longer.'),
    found: ({ count }) => heard.push(`found ${count}`),
    ...(isLost ? { isLost } : {}),
  });
  return { app, offering, heard, searches };
}

const turned = (app: ReturnType<typeof room>['app']) =>
  app.getState().run(turnBlock(app.getState().project, app.getState().project.blocks[0]!.id, 1));

it('tells how far it is, and offers what was found', async () => {
  const { offering, heard, searches } = room();
  offering.getState().start(3);
  searches[0]!.hear(0.5);
  expect(offering.getState().state).toEqual({ kind: 'running', share: 0.5 });
  offering.getState().stop();
  searches[0]!.settle(ok(7));
  await Promise.resolve();
  expect(offering.getState().state).toEqual({ kind: 'offered', count: 7 });
  expect(heard).toEqual(['begin 3', 'stop 0', 'found 7']);
  offering.getState().close();
  expect(offering.getState().state).toEqual({ kind: 'idle', problems: [] });
});

it('ends the search before, whose words and answer count no more', async () => {
  const { offering, heard, searches } = room();
  offering.getState().start(1);
  offering.getState().start(2);
  searches[0]!.hear(0.9);
  searches[0]!.settle(ok(1));
  await Promise.resolve();
  expect(offering.getState().state).toEqual({ kind: 'running', share: 0 });
  expect(heard).toEqual(['begin 1', 'cancel 0', 'begin 2']);
});

it('goes with a change of the quilt, which is told where something is lost, and outlives one that changes no layout', async () => {
  for (const lost of [true, false]) {
    const { app, offering, searches } = room(() => lost);
    offering.getState().start(1);
    searches[0]!.settle(ok(1));
    await Promise.resolve();
    app.getState().run(changePreferences({ wallLightness: 40 }));
    expect(offering.getState().state.kind).toBe('offered');
    expect(turned(app)).toEqual([]);
    const { state } = offering.getState();
    expect(state.kind === 'idle' && state.problems.map(({ code }) => code)).toEqual(lost ? ['stale'] : []);
  }
});

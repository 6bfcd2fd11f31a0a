// How the wall is seen belongs to the screen: a fabric that stays lit, and a photograph that goes with the quilt on show.
import { expect, it } from 'vitest';
import { removeFabric } from '../../src/editing/commands/fabrics';
import { createApp, documentOf } from '../../src/store/app';
import { seeNext } from '../../src/ui/seeing/ways';
import { demo, unsewn } from '../demo';

const quilt = () => unsewn(demo('kiln-shed'));

it('a fabric that stays lit comes back when another is no longer pointed at, and goes with the fabric', () => {
  const app = createApp(quilt());
  const { light, holdLit, run } = app.getState();
  const [one, other] = app.getState().project.fabrics.map(({ id }) => id) as [string, string];
  const lit = () => app.getState().lit;
  light(one);
  light(null);
  expect(lit()).toBeNull();
  holdLit(one);
  light(other);
  expect(lit()).toBe(other);
  light(null);
  expect(lit()).toBe(one);
  const spare = app.getState().project.fabrics.find(({ id }) => {
    const before = app.getState().project;
    holdLit(id);
    return run(removeFabric(before, id), 'here').length === 0;
  });
  expect(spare).toBeDefined();
  expect([lit(), app.getState().heldLit]).toEqual([null, null]);
});

it('all ways of seeing come round in both directions, each is told, and none changes the quilt', () => {
  const app = createApp(quilt());
  const before = documentOf(app.getState());
  for (const step of [1, -1] as const) {
    const seen: string[] = [];
    do {
      seeNext(app.getState(), step);
      seen.push(app.getState().look.way);
      expect(app.getState().announced.words.say).toMatch(/^Seen /);
    } while (app.getState().look.way !== 'colour');
    expect(new Set(seen).size).toBe(7);
  }
  expect(documentOf(app.getState())).toBe(before);
  expect(app.getState().revision).toBe(0);
});

it('another quilt comes without the photograph of this wall, in the same way of seeing', () => {
  const app = createApp(quilt());
  const photo = { name: 'wall.jpg', image: new Blob(), width: 4, height: 3 };
  app.getState().lookAt({ photo, way: 'tones', distance: 90 });
  app.getState().holdLit(quilt().fabrics[0]!.id);
  app.getState().open({ ...quilt(), id: 'other' });
  const { look, heldLit, lit } = app.getState();
  expect([look.photo, look.way, look.distance, heldLit, lit]).toEqual([null, 'tones', 90, null, null]);
});

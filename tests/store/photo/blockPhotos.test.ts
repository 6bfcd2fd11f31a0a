// Photographs of blocks at work: one light for a sitting, and the strip that a fabric is made of.
import { describe, expect, it } from 'vitest';
import { addPictured } from '../../../src/editing/pictured/addPictured';
import { apothem } from '../../../src/geometry/wedge';
import { phrase } from '../../../src/model/phrase';
import { createApp } from '../../../src/store/app';
import { createBlockPhotos, isInQuilt } from '../../../src/store/photo/blockPhotos';
import type { PhotoReader } from '../../../src/store/photo/photoReader';
import { scrappyTop } from '../../balance/tops';

const OPENED = { width: 900, height: 600, shown: { width: 900 }, white: null };
const CORNERS = [{ x: 0, y: 0 }, { x: 90, y: 0 }, { x: 90, y: 90 }, { x: 0, y: 90 }]; // biome-ignore format: corners
const BANDS = [1.5, 1, 2].map((width) => ({ fabric: null, width, sure: 0.5, light: [0.2, 0.2, 0.2] }));

interface Asked {
  readonly job: string;
  readonly file: number;
  readonly ask: { readonly sitting?: unknown; readonly strip?: Record<string, unknown> };
}

/** Photographs of which those with these keys tell their light themselves. */
function room(telling: readonly number[]) {
  const app = createApp(scrappyTop({ rows: 2, columns: 3, seed: 4 }));
  const asked: Asked[] = [];
  const read = (file: number, sitting: unknown) => {
    const ownLight = telling.includes(file);
    const light = ownLight ? { terms: [file], over: {} } : (sitting ?? null);
    return { wedges: [BANDS], shown: [], known: null, picture: {}, allowance: 0.25, light, ownLight };
  };
  const reader = {
    ask: (job: string, { key }: { key: number }, ask: Asked['ask']) => {
      asked.push({ job, file: key, ask });
      const value = { open: OPENED, corners: { corners: CORNERS, bend: 0.1 }, block: read(key, ask.sitting) };
      return Promise.resolve({ ok: true, value: value[job as keyof typeof value] });
    },
    stop: () => {},
    close: () => {},
  } as unknown as PhotoReader;
  const work = createBlockPhotos(app, reader, { make: () => '', revoke: () => {} });
  const take = (count: number) =>
    work.take(Array.from({ length: count }, (_, at) => new File([new Uint8Array([255, 216])], `${at}.jpg`)));
  const light = (at: number) => work.state.getState().photos[at]!.read!.block.light;
  const readings = () => asked.filter(({ job }) => job === 'block').map(({ file }) => file);
  return { app, work, take, light, readings, asked };
}

describe('photographs of blocks', () => {
  it('have the light of the first one that tells it, those before it too, and none is read for ever', async () => {
    const { take, light, readings } = room([2, 4]);
    await take(5);
    expect([0, 1, 2, 3, 4].map((at) => light(at)?.terms)).toEqual([[2], [2], [2], [4], [2]]);
    // The first was read before any light was known, and once more with it.
    expect(readings().toSorted((one, other) => one - other)).toEqual([1, 1, 2, 3, 4, 5]);
  });

  it('have no light taken out where none tells it', async () => {
    const { take, light, readings } = room([]);
    await take(2);
    expect([light(0), light(1)]).toEqual([null, null]);
    expect(readings()).toEqual([1, 2]);
  });

  it('wait again once an undo has taken back what became of them', async () => {
    const { work, take, app } = room([1]);
    await take(1);
    const block = { wedges: Array.from({ length: 8 }, () => ({ bands: [] })), cornerShift: 0 };
    const picture = 'a'.repeat(64);
    const added = { ...block, cornerFabric: null, picture, number: null, hang: 'sideTable' as const };
    expect(app.getState().run(addPictured([added]))).toEqual([]);
    work.finish(1, phrase('It is block 7 now.'), picture);
    const [photo] = work.state.getState().photos;
    expect(isInQuilt(photo!, app.getState().project)).toBe(true);
    app.getState().undo();
    expect(isInQuilt(photo!, app.getState().project)).toBe(false);
  });

  it('give a strip by the radii of its seams', async () => {
    const { work, take, asked } = room([1]);
    await take(1);
    await work.fabricOf(1, 0, 1);
    const { wedge } = scrappyTop({ rows: 2, columns: 3, seed: 4 });
    const outer = apothem(wedge) - 1.5;
    expect(asked.at(-1)!.ask.strip).toEqual({
      corners: CORNERS,
      bend: 0.1,
      allowance: 0.25,
      place: 0,
      outer,
      inner: Math.max(0, outer - 1),
      light: { terms: [1], over: {} },
    });
    expect(await work.fabricOf(7, 0, 0)).toBeNull();
  });
});

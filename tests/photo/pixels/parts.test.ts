// Work on large photographs goes on in parts, so that a stop is heard amid one: between two pauses few pixels are worked on. Counted,
// because a clock would tell of the machine.
import { describe, expect, it } from 'vitest';
import type { InParts } from '../../../src/model/work/parts';
import { findCorners } from '../../../src/photo/block/corners';
import { readBlock } from '../../../src/photo/block/readBlock';
import { knowledgeOf } from '../../../src/photo/block/readLook';
import { shapeOf } from '../../../src/photo/block/shape';
import { readFabric } from '../../../src/photo/fabric/readFabric';
import { DAYLIGHT } from '../../../src/photo/light/light';
import { wholeFrame } from '../../../src/photo/pixels/frame';
import { blankPixels, type Pixels } from '../../../src/photo/pixels/pixels';
import { PAUSE_PIXELS, shrinkingTo, shrunkTo } from '../../../src/photo/pixels/resize';
import { linesOf } from '../../../src/photo/plane/edges';
import { quadsOf } from '../../../src/photo/plane/quads';
import { findGrid } from '../../../src/photo/wall/grid';
import { likenessOf } from '../../../src/photo/wall/gridBy';
import { readWall } from '../../../src/photo/wall/readWall';
import { dice } from '../render/dice';
import { randomQuilt } from '../render/quilts';

/** A picture that counts how many of its numbers are taken, one by one or by the row; the rows taken are as any. */
function counting(width: number, height: number): { pixels: Pixels; read: () => number } {
  const { data } = blankPixels(width, height);
  let count = 0;
  const subarray = (from: number, to: number) => {
    count += to - from;
    return data.subarray(from, to);
  };
  const get = (target: Uint8ClampedArray, key: string | symbol) => {
    if (key === 'subarray') return subarray;
    if (typeof key === 'string' && key <= ':') count += 1;
    return Reflect.get(target, key, target) as unknown;
  };
  const pixels = { width, height, data: new Proxy(data, { get }) };
  return { pixels, read: () => count };
}

/** The most numbers of a picture that one part of some work reads. */
function mostInOnePart(going: InParts<unknown>, read: () => number): number {
  let [most, before] = [0, read()];
  for (;;) {
    const { done } = going.next();
    most = Math.max(most, read() - before);
    before = read();
    if (done) return most;
  }
}

const ALLOWED = 4 * PAUSE_PIXELS;
const quilt = randomQuilt(dice(1), 2, 2);
const shape = shapeOf(quilt.wedge, 0);
const [WIDE, HIGH] = [640, 420];
const corners = [{ x: 20, y: 20 }, { x: 610, y: 20 }, { x: 610, y: 400 }, { x: 20, y: 400 }]; // biome-ignore format: corners
const wish = { light: DAYLIGHT, uneven: null, perInch: null, seed: 1 };
const grid = { rows: 2, columns: 2, gap: 0, bend: 0, corners };

describe('between two pauses no more is read of a photograph than may be,', () => {
  it.each<[string, (pixels: Pixels) => InParts<unknown>]>([
    ['where it is made smaller', (pixels) => shrinkingTo(pixels, 300)],
    ['where corners are looked for', (pixels) => findCorners(pixels, shape)],
    ['where a grid is looked for', (pixels) => findGrid(pixels, shape)],
    ['where empty cells are looked for', (pixels) => likenessOf(pixels, grid, quilt.wedge)],
    ['where a block is read', (pixels) => readBlock(pixels, corners, knowledgeOf(quilt))],
    ['where a wall is read', (pixels) => readWall(pixels, { cells: [corners], likeness: [0], bend: 0 }, knowledgeOf(quilt))],
    ['where a fabric is read', (pixels) => readFabric(pixels, { ...wish, frame: wholeFrame(pixels) })],
    ['where a turned frame of it is read', (pixels) => readFabric(pixels, { ...wish, frame: { x: 320, y: 210, width: 520, height: 300, angle: 8 } })],
  ])('%s', (_, work) => {
    const { pixels, read } = counting(WIDE, HIGH);
    const most = mostInOnePart(work(pixels), read);
    expect(read()).toBeGreaterThan(ALLOWED);
    expect(most).toBeLessThanOrEqual(ALLOWED);
  }); // biome-ignore format: a table
});

it('a picture made smaller in parts is the same as at once', () => {
  const pixels = blankPixels(WIDE, HIGH);
  for (let at = 0; at < pixels.data.length; at += 1) pixels.data[at] = (at * 7919) % 256;
  const going = shrinkingTo(pixels, 200);
  for (;;) {
    const part = going.next();
    if (!part.done) continue;
    expect(part.value).toEqual(shrunkTo(pixels, 200));
    return;
  }
});

it('quadrilaterals are looked for in a part for each line and each two of them', () => {
  const edges = { width: 400, height: 400, count: 0 };
  const none = new Float32Array();
  const all = { ...edges, x: none, y: none, nx: none, ny: none, strength: none };
  expect(linesOf(all, 8)).toEqual([]);
  const lines = Array.from({ length: 12 }, (_, at) => ({
    nx: at % 2,
    ny: 1 - (at % 2),
    off: 30 + 30 * at,
    votes: 10,
  }));
  const parts = Array.from(quadsOf(lines, all, { least: 0.1, skew: 0.5, ratio: 9 }, 50));
  expect(parts.length).toBeGreaterThan(12 + 2 * 10);
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Point } from '../../../src/geometry/point';
import { blankPixels, type Pixels } from '../../../src/photo/pixels/pixels';
import { projected, squareTo } from '../../../src/photo/plane/homography';
import { bent, lensOf } from '../../../src/photo/plane/lens';
import { rectified } from '../../../src/photo/plane/rectify';
import { runs } from '../../runs';

const SIZE = { width: 240, height: 200 };

/** A picture of a square in four quarters, each of a grey of its own, seen through corners and a lens. */
function quartered(corners: readonly Point[], bend: number): Pixels {
  const pixels = blankPixels(SIZE.width, SIZE.height);
  const to = squareTo(corners);
  const lens = lensOf(SIZE, bend);
  const steps = 450;
  for (let row = 0; row < steps; row += 1)
    for (let column = 0; column < steps; column += 1) {
      const on = { x: (2 * column + 1) / steps - 1, y: (2 * row + 1) / steps - 1 };
      const { x, y } = bent(lens, projected(to, on));
      const at = (Math.floor(y) * SIZE.width + Math.floor(x)) * 4;
      const grey = 60 + 50 * ((on.x > 0 ? 1 : 0) + (on.y > 0 ? 2 : 0));
      pixels.data.fill(grey, at, at + 3);
    }
  return pixels;
}

const near = (x: number, y: number) =>
  fc.record({
    x: fc.double({ min: x - 22, max: x + 22, noNaN: true }),
    y: fc.double({ min: y - 22, max: y + 22, noNaN: true }),
  });
const quads = fc.tuple(near(45, 40), near(195, 40), near(195, 160), near(45, 160));

describe('a quadrilateral laid flat', () => {
  it('shows each quarter where it belongs, whatever the camera and the lens', () => {
    fc.assert(
      fc.property(quads, fc.double({ min: -0.1, max: 0.06, noNaN: true }), (straight, bend) => {
        const lens = lensOf(SIZE, bend);
        const flat = { width: 80, height: 80, across: 1, down: 1 };
        const seen = rectified(
          quartered(straight, bend),
          straight.map((one) => bent(lens, one)),
          bend,
          flat,
        );
        for (const [x, y] of [
          [20, 20],
          [60, 20],
          [20, 60],
          [60, 60],
        ] as const) {
          const grey = 60 + 50 * ((x > 40 ? 1 : 0) + (y > 40 ? 2 : 0));
          expect(Math.abs(seen.data[(y * 80 + x) * 4]! - grey)).toBeLessThanOrEqual(2);
        }
      }),
      { numRuns: runs(5, 40) },
    );
  });

  it('shows the middle alone where less than all of it is wanted', () => {
    const corners = [{ x: 20, y: 20 }, { x: 220, y: 20 }, { x: 220, y: 180 }, { x: 20, y: 180 }]; // biome-ignore format: corners
    const pixels = blankPixels(SIZE.width, SIZE.height);
    for (let at = 0; at < pixels.data.length; at += 4) {
      const x = (at / 4) % SIZE.width;
      pixels.data.set(x < 70 || x >= 170 ? [0, 0, 0, 255] : [200, 200, 200, 255], at);
    }
    const { data } = rectified(pixels, corners, 0, { width: 50, height: 50, across: 0.5, down: 1 });
    const row = Array.from({ length: 50 }, (_, x) => data[(25 * 50 + x) * 4]!);
    expect(row.slice(2, -2).every((one) => Math.abs(one - 200) <= 1)).toBe(true);
  });
});

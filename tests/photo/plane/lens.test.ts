// Lens distortion: there and back, and found again from edges that are straight in truth.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bent,
  crossing,
  lensFromEdges,
  lensOf,
  lineThrough,
  straightened,
} from '../../../src/photo/plane/lens';

const size = { width: 1200, height: 900 };

describe('a lens', () => {
  it('bends and straightens back', () => {
    const inside = fc.record({
      x: fc.double({ min: 0, max: 1200, noNaN: true }),
      y: fc.double({ min: 0, max: 900, noNaN: true }),
    });
    fc.assert(
      fc.property(inside, fc.double({ min: -0.25, max: 0.25, noNaN: true }), (point, bend) => {
        const lens = lensOf(size, bend);
        const back = bent(lens, straightened(lens, point));
        expect(Math.hypot(back.x - point.x, back.y - point.y)).toBeLessThan(1e-6);
      }),
    );
  });

  it('is found from the edges of a square', () => {
    for (const bend of [-0.15, -0.05, 0.04, 0.12]) {
      const lens = lensOf(size, bend);
      const corners = [[250, 120], [1010, 160], [960, 800], [200, 760]]; // biome-ignore format: corners
      const edges = corners.map(([x, y], at) => {
        const [toX, toY] = corners[(at + 1) % 4]!;
        return Array.from({ length: 50 }, (_, step) => {
          const share = step / 49;
          return bent(lens, {
            x: x! + share * (toX! - x!) + 0.3 * Math.sin(step * 91.7 + at),
            y: y! + share * (toY! - y!) + 0.3 * Math.cos(step * 47.1 + at),
          });
        });
      });
      expect(Math.abs(lensFromEdges(size, edges).bend - bend)).toBeLessThan(0.012);
    }
  });

  it('is next to none where edges are straight already', () => {
    const edge = Array.from({ length: 30 }, (_, at) => ({
      x: 100 + at * 30,
      y: 200 + at * 2 + 0.4 * Math.sin(at * 12.9),
    }));
    expect(Math.abs(lensFromEdges(size, [edge]).bend)).toBeLessThan(0.01);
  });
});

describe('a line', () => {
  it('goes through its points, and two of them cross where they should', () => {
    const level = lineThrough([{ x: 0, y: 5 }, { x: 10, y: 5 }, { x: 20, y: 5 }]);
    const steep = lineThrough([{ x: 7, y: 0 }, { x: 7, y: 9 }]);
    expect(level.spread).toBeLessThan(1e-12);
    const at = crossing(level, steep)!;
    expect(at.x).toBeCloseTo(7, 9);
    expect(at.y).toBeCloseTo(5, 9);
    expect(crossing(level, level)).toBeNull();
  }); // biome-ignore format: points
});

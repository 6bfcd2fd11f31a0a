// The corner square against the figures of the trade for a 7½ wedge at ¼ seams, and against the triangle drawn out with its
// seam allowances in plain coordinates.
import { expect, test } from 'vitest';
import { cornerLeg } from '../../src/geometry/block';
import { cornerSquare } from '../../src/geometry/cornerSquare';

const wedge = { perBlock: 8, cutHeight: 7.5, seam: 0.25, assemblySeam: 0.25, outerSeam: 0.25 } as const;

test('a 7 1/2 wedge wants corner squares of 5, or 5 1/2 to be comfortable', () => {
  // Finished leg 4.1005; leg + 7/8 = 4.976 just fits, 5 1/2 is the comfortable oversize (common practice, no source).
  const square = cornerSquare(wedge);
  expect(square.exact).toBeLessThan(cornerLeg(wedge) + 7 / 8);
  expect(square.exact).toBeGreaterThan(cornerLeg(wedge) + 6.5 / 8);
  expect(square.fits).toBe(5);
  expect(square.comfortable).toBe(5.5);
});

test('the halved square holds the finished triangle with its seam on all three sides, and not a hair more', () => {
  for (const outerSeam of [0.25, 0.375, 0.5]) {
    const plan = { ...wedge, outerSeam };
    const leg = cornerLeg(plan);
    const { exact } = cornerSquare(plan);
    // Right angle of the cut triangle at the origin: the finished one stands a seam in from both legs; its long side lies
    // on x + y = leg + 2so, and the cut one's on x + y = exact, a seam further on.
    const between = (exact - (leg + 2 * outerSeam)) / Math.SQRT2;
    expect(between).toBeCloseTo(outerSeam, 9);
  }
});

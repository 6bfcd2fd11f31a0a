// Pieces with their seam allowance: against the published square for corner triangles and against areas by another way.
import { describe, expect, it } from 'vitest';
import { withAllowance } from '../../src/cutting/top/bulk';
import { cutOutline, sideLengths } from '../../src/geometry/allowance';
import { cornerLeg, cornerOutlines } from '../../src/geometry/block';
import { area } from '../../src/geometry/point';
import { WEDGE_COUNTS } from '../../src/model/project';
import { usualWedge } from './strips';

describe('a piece with its seam allowance', () => {
  it('of a square is the square and two seams', () => {
    const square = [{ x: 0, y: 0 }, { x: 3, y: 0 }, { x: 3, y: 3 }, { x: 0, y: 3 }]; // biome-ignore format: a square
    expect(sideLengths(cutOutline(square, 0.25))).toEqual([3.5, 3.5, 3.5, 3.5]);
    expect(sideLengths(cutOutline(square.toReversed(), 0.25))).toEqual([3.5, 3.5, 3.5, 3.5]);
    expect(cutOutline([...square, { x: 0, y: 3 }], 0.25)).toHaveLength(4);
  });

  it('of a corner triangle has legs of the finished leg and 7/8, the usual allowance of a halved square (common practice)', () => {
    const triangle = cornerOutlines(usualWedge)[0]!;
    const legs = sideLengths(cutOutline(triangle, 0.25)).toSorted((one, other) => one - other);
    expect(legs[0]).toBeCloseTo(cornerLeg(usualWedge) + 0.25 * (2 + Math.SQRT2), 9);
    expect(Math.abs(legs[0]! - (cornerLeg(usualWedge) + 0.875))).toBeLessThan(0.025);
  });

  it.each(WEDGE_COUNTS)(
    'has, for each setting piece of %i wedges, the area worked out from sides and turns',
    (perBlock) => {
      for (const outline of cornerOutlines({ ...usualWedge, perBlock })) {
        expect(area(cutOutline(outline, 0.25))).toBeCloseTo(withAllowance(outline, 0.25), 9);
      }
    },
  );

  it('is its own mirror image across the diagonal where the block is square, and not where it is a rectangle', () => {
    for (const perBlock of WEDGE_COUNTS) {
      const sides = sideLengths(cutOutline(cornerOutlines({ ...usualWedge, perBlock })[0]!, 0.25));
      const alike = sides.every((side, at) => Math.abs(side - sides.at(-1 - at)!) < 1e-9);
      expect(alike, `${perBlock} wedges`).toBe(perBlock % 4 === 0);
    }
  });
});

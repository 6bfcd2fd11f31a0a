// Pieces with their seam allowance: against the published square for corner triangles and against areas by another way.
import { describe, expect, it } from 'vitest';
import { cutOutline, sideLengths, sizeWithSeams } from '../../src/geometry/allowance';
import { cornerLeg, cornerOutlines } from '../../src/geometry/block';
import { area, type Outline } from '../../src/geometry/point';
import { WEDGE_COUNTS } from '../../src/model/project';
import { usualWedge } from './strips';

/** Area with an allowance all round, mitred at the corners: A + P·s + s² Σ tan(turn / 2), inward turns counted against it. */
function grownArea(outline: Outline, seam: number): number {
  const perimeter = sideLengths(outline).reduce((sum, side) => sum + side, 0);
  const corners = outline.reduce((sum, point, at) => {
    const next = outline[(at + 1) % outline.length]!;
    const after = outline[(at + 2) % outline.length]!;
    const one = { x: next.x - point.x, y: next.y - point.y };
    const other = { x: after.x - next.x, y: after.y - next.y };
    const turn = Math.atan2(one.x * other.y - one.y * other.x, one.x * other.x + one.y * other.y);
    return sum + Math.tan(turn / 2);
  }, 0);
  return area(outline) + perimeter * seam + corners * seam ** 2;
}

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
        expect(area(cutOutline(outline, 0.25))).toBeCloseTo(grownArea(outline, 0.25), 9);
      }
    },
  );

  it('stays open where it bends inwards', () => {
    const notch = [[0, 0], [4, 0], [4, 4], [2, 4], [2, 2], [0, 2]].map(([x, y]) => ({ x: x!, y: y! })); // biome-ignore format: a table
    // Grown by 1/2: a 5 × 5 square less the 2 × 2 notch that stays open: its inner corner moves too.
    expect(area(cutOutline(notch, 0.5))).toBeCloseTo(25 - 4, 12);
    expect(grownArea(notch, 0.5)).toBeCloseTo(25 - 4, 12);
  });

  it('of a finished size is a seam more on every side', () => {
    expect(sizeWithSeams({ width: 3, height: 4 }, 0.25)).toEqual({ width: 3.5, height: 4.5 });
  });

  it('is its own mirror image across the diagonal where the block is square, and not where it is a rectangle', () => {
    for (const perBlock of WEDGE_COUNTS) {
      const sides = sideLengths(cutOutline(cornerOutlines({ ...usualWedge, perBlock })[0]!, 0.25));
      const alike = sides.every((side, at) => Math.abs(side - sides.at(-1 - at)!) < 1e-9);
      expect(alike, `${perBlock} wedges`).toBe(perBlock % 4 === 0);
    }
  });
});

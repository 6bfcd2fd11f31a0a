// The corner pieces of a block against its rims: what the cutting list gives holds them with their seams, and they fit the rims
// they are sewn to. Plane geometry throughout.
import { describe, expect, it } from 'vitest';
import { cornerPieces } from '../../../src/cutting/yardage/cornerPieces';
import { cutOutline, sideLengths } from '../../../src/geometry/allowance';
import { cornerOutlines, inwardCorners } from '../../../src/geometry/block';
import { finishedBlock, rimLength } from '../../../src/geometry/wedge';
import type { Project } from '../../../src/model/project';
import { randomProject } from '../../drawing/samples';
import { blockOutline } from '../../geometry/blockOutline';

const COUNTS = [6, 8, 10, 12] as const;

function sample(
  perBlock: (typeof COUNTS)[number],
  corners: 'fits' | 'comfortable',
  unit: 'in' | 'cm',
): Project {
  const project = randomProject(8, perBlock, 2, 2);
  return {
    ...project,
    buying: { ...project.buying, corners },
    preferences: { ...project.preferences, unit },
  };
}

describe('corner pieces', () => {
  it.each(COUNTS)(
    'of a block of %i come from their squares or rectangles, four to each block',
    (perBlock) => {
      for (const corners of ['fits', 'comfortable'] as const) {
        for (const unit of ['in', 'cm'] as const) {
          const project = sample(perBlock, corners, unit);
          const rows = cornerPieces(project, 'whole');
          const each = perBlock <= 8 ? 2 : 1;
          expect(rows.reduce((sum, row) => sum + row.count * each, 0)).toBe(4 * 4);
          const { width, height } = rows[0]!;
          // All four, so both hands: the square corner in the corner of the rectangle, which is turned or on its other diagonal.
          for (const outline of cornerOutlines(project.wedge)) {
            const cut = cutOutline(outline, project.wedge.outerSeam);
            const corner = cut[0]!;
            for (const { x, y } of cut) {
              const [across, down] = [Math.abs(x - corner.x), Math.abs(y - corner.y)];
              if (each === 2) expect(across / width + down / height).toBeLessThan(1 + 1e-9);
              expect(across).toBeLessThan(width + 1e-9);
              expect(down).toBeLessThan(height + 1e-9);
            }
          }
        }
      }
    },
  );

  it.each(COUNTS)('of a block of %i are sewn to whole rims and leave the block a rectangle', (perBlock) => {
    const { wedge } = randomProject(8, perBlock);
    const { width, height } = finishedBlock(wedge);
    const rim = blockOutline(wedge);
    for (const outline of cornerOutlines(wedge)) {
      // All sides but the two at the square corner are rims.
      for (const side of sideLengths(outline).slice(1, -1)) expect(side).toBeCloseTo(rimLength(wedge), 9);
      for (const { x, y } of outline.slice(1)) {
        expect(rim.some((point) => Math.hypot(point.x - x, point.y - y) < 1e-9)).toBe(true);
      }
      const [corner] = outline;
      expect(Math.abs(corner!.x)).toBeCloseTo(width / 2, 9);
      expect(Math.abs(corner!.y)).toBeCloseTo(height / 2, 9);
    }
  });

  it('bend inwards once with 10 and 12 wedges, by the outer angle of the block, and not with 6 and 8', () => {
    for (const perBlock of COUNTS) {
      for (const outline of cornerOutlines(randomProject(8, perBlock).wedge)) {
        const inward = inwardCorners(outline);
        expect(inward).toHaveLength(perBlock >= 10 ? 1 : 0);
        for (const at of inward) {
          const [before, dot, after] = [outline[at - 1]!, outline[at]!, outline[at + 1]!];
          const way = (from: typeof dot, to: typeof dot) => Math.atan2(to.y - from.y, to.x - from.x);
          const turn = Math.abs(way(before, dot) - way(dot, after));
          expect(Math.min(turn, 2 * Math.PI - turn)).toBeCloseTo((2 * Math.PI) / perBlock, 9);
        }
      }
    }
  });
});

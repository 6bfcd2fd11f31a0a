// The cell under a finger: the one that covers the point, else the nearest within reach.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawProject } from '../../../../src/drawing/drawProject';
import { cellAt, cellNear } from '../../../../src/ui/wall/hands/cellAt';
import { demo } from '../../../demo';
import { runs } from '../../../runs';

/** A wall of straight rows and one on point. */
const WALLS = ['harbour-reading-corner', 'river-ferry'].map((name) => drawProject(demo(name)));
const places = fc.record({
  wall: fc.constantFrom(...WALLS),
  across: fc.double({ min: -0.3, max: 1.3, noNaN: true }),
  down: fc.double({ min: -0.3, max: 1.3, noNaN: true }),
  reach: fc.double({ min: 0, max: 6, noNaN: true }),
});

describe('the cell at a point', () => {
  it('is the nearest in reach: none is nearer, and more reach finds no other', () => {
    fc.assert(
      fc.property(places, ({ wall, across, down, reach }) => {
        const point = { x: across * wall.width, y: down * wall.height };
        const near = cellNear(wall, point, reach);
        const covered = cellAt(wall, point);
        if (covered !== null) expect(near).toBe(covered);
        if (near === null) return;
        expect(cellNear(wall, point, reach + 3)).toBe(near);
        // From the point on the way to its middle the cell is reached within `reach`.
        const { centre } = wall.blocks.find((one) => one.cell === near)!;
        const far = Math.hypot(centre.x - point.x, centre.y - point.y);
        const half = Math.hypot(wall.block.width, wall.block.height) / 2;
        expect(far).toBeLessThanOrEqual(reach + half + 1e-9);
      }),
      { numRuns: runs(670, 2_000) },
    );
  });

  it('is found from every point of a block, on point too', () => {
    for (const wall of WALLS)
      for (const { cell, centre } of wall.blocks) {
        expect(cellAt(wall, centre)).toBe(cell);
        const inside = wall.tilt === 0 ? wall.block.width * 0.49 : wall.block.width * 0.69;
        expect(cellAt(wall, { x: centre.x + inside, y: centre.y })).toBe(cell);
      }
  });
});

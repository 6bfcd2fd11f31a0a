// Lattices that lie on the same cells: what makes a start needless, and what does not.
import { describe, expect, it } from 'vitest';
import { blankPlane } from '../../../src/photo/pixels/pixels';
import { projected } from '../../../src/photo/plane/homography';
import { isSame, liesOn } from '../../../src/photo/wall/agree';
import { type Lattice, latticeTo } from '../../../src/photo/wall/lattice';

const plane = blankPlane(560, 420, 3);
const wall: Lattice = {
  rows: 4,
  columns: 6,
  gap: 0.1,
  corners: [{ x: 40, y: 50 }, { x: 500, y: 30 }, { x: 520, y: 390 }, { x: 60, y: 370 }],
  bend: 0,
}; // biome-ignore format: corners

/** Rows and columns of the wall as a lattice of their own, moved by a share of a block. */
function part(row: number, column: number, rows: number, columns: number, by = 0): Lattice {
  const to = latticeTo(wall, 1);
  const [left, top] = [column * 1.1 + by, row * 1.1 + by];
  const [right, bottom] = [left + columns * 1.1 - 0.1, top + rows * 1.1 - 0.1];
  const corners = [{ x: left, y: top }, { x: right, y: top }, { x: right, y: bottom }, { x: left, y: bottom }]; // biome-ignore format: corners
  return { ...wall, rows, columns, corners: corners.map((point) => projected(to, point)) };
}

describe('a start', () => {
  it.each([
    ['all of a wall', part(0, 0, 4, 6), true],
    ['one cell of it', part(2, 3, 1, 1), true],
    ['some rows, a little off', part(1, 0, 2, 6, 0.08), true],
    ['cells that are half a block off', part(1, 1, 2, 2, 0.5), false],
    ['cells beyond its edge', part(2, 4, 2, 3), false],
    ['the same place in other columns', { ...part(0, 0, 4, 6), columns: 5 }, false],
    ['the same place in other rows', { ...part(0, 0, 4, 6), rows: 8 }, false],
  ] as const)('on %s', (_, start, lies) => {
    expect(liesOn(plane, start, wall, 1)).toBe(lies);
  });

  it('is the same wall only with the same rows and columns', () => {
    expect(isSame(plane, part(0, 0, 4, 6, 0.05), wall, 1)).toBe(true);
    expect(isSame(plane, part(0, 0, 4, 5), wall, 1)).toBe(false);
  });

  it('lies on a wall through a bent lens as it is photographed, not as it would be straight', () => {
    const bent = { ...wall, bend: 0.1 };
    expect(liesOn(plane, bent, bent, 1)).toBe(true);
    expect(liesOn(plane, { ...bent, bend: 0 }, { ...bent, bend: 0.4 }, 1)).toBe(false);
  });
});

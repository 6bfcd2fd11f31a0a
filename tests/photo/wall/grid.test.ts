// Walls in rendered pictures: the grid is found, and blocks are known again in their cells.
import { describe, expect, it } from 'vitest';
import { atOnce } from '../../../src/model/work/parts';
import { knowledgeOf } from '../../../src/photo/block/readLook';
import { shapeOf } from '../../../src/photo/block/shape';
import { blankPixels } from '../../../src/photo/pixels/pixels';
import { findGrid, gridBetween } from '../../../src/photo/wall/grid';
import { readWall } from '../../../src/photo/wall/readWall';
import { dice } from '../render/dice';
import { isGridFound } from '../render/marks';
import { randomQuilt } from '../render/quilts';
import { wallShot } from '../render/shots';

describe('a wall in a picture', () => {
  it.each([0])('has its grid found and its blocks read (picture %i)', async (seed) => {
    const shot = await wallShot(seed, 1000, [4, 4]);
    const grid = findGrid(shot.pixels, shapeOf(shot.project.wedge, 0))!;
    expect(isGridFound(grid, shot)).toBe(true);
    const read = atOnce(readWall(shot.pixels, grid, knowledgeOf(shot.project)));
    const empty = read.filter((block, at) => (block === null) !== (shot.cells[at] === null));
    expect(empty).toEqual([]);
    const right = read.filter((block, at) => {
      const truth = shot.cells[at];
      return !truth || (block?.known?.number === truth.number && block.known.quarters === truth.quarters);
    });
    expect(right.length).toBeGreaterThanOrEqual(0.9 * read.length);
  });

  it('is laid on its seams from corners that a person set roughly', async () => {
    const shot = await wallShot(12, 900, [4, 4]);
    const { rows, columns, boxes } = shot;
    const at = [boxes[0]![0]!, boxes[columns - 1]![1]!, boxes.at(-1)![2]!, boxes[(rows - 1) * columns]![3]!];
    const wide = boxes[0]![1]!.x - boxes[0]![0]!.x;
    const rough = at.map(({ x, y }, corner) => ({
      x: x + 0.04 * wide * Math.sin(corner + 1),
      y: y + 0.04 * wide * Math.cos(2 * corner),
    }));
    const shape = shapeOf(shot.project.wedge, 0);
    expect(isGridFound(gridBetween(shot.pixels, shape, { rows, columns, corners: rough }), shot)).toBe(true);
    expect(gridBetween(shot.pixels, shape, { rows, columns, corners: rough.toReversed() })).toBeNull();
  });

  it('is not there where a picture is empty', () => {
    const { wedge } = randomQuilt(dice(1), 2, 2);
    expect(findGrid(blankPixels(200, 160), shapeOf(wedge, 0))).toBeNull();
  });
});

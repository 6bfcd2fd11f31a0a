import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { apply } from '../../../src/editing/apply';
import { setLayout } from '../../../src/editing/commands/layout';
import { pinBlocks } from '../../../src/editing/commands/wall';
import {
  hangPhotographed,
  type PhotographedCell,
  type PhotographedWall,
  whatHappens,
} from '../../../src/editing/pictured/hangPhotographed';
import { turnsOf } from '../../../src/model/find';
import type { Project } from '../../../src/model/project';
import { scrappyTop } from '../../balance/tops';

const PROJECT = scrappyTop({ rows: 2, columns: 3, seed: 4 });
const READ = {
  picture: 'a'.repeat(64),
  wedges: Array.from({ length: PROJECT.wedge.perBlock }, () => ({ bands: [] })),
  cornerShift: 0,
  cornerFabric: null,
};

/** Walls in which each block of the quilt hangs once at most, with new ones and empty cells between them. */
const walls: fc.Arbitrary<PhotographedWall> = fc
  .record({
    rows: fc.integer({ min: 1, max: 4 }),
    columns: fc.integer({ min: 1, max: 4 }),
    order: fc.shuffledSubarray(
      [...PROJECT.blocks.map(({ id }) => id), ...Array.from({ length: 10 }, (_, at) => `new ${at}`)],
      { minLength: 16, maxLength: 16 },
    ),
    turn: fc.nat(turnsOf(PROJECT.wedge.perBlock) - 1),
    empty: fc.array(fc.boolean(), { minLength: 16, maxLength: 16 }),
  })
  .map(({ rows, columns, order, turn, empty }) => ({
    rows,
    columns,
    cells: Array.from({ length: rows * columns }, (_, at): PhotographedCell => {
      if (empty[at]) return null;
      const block = order[at]!;
      return block.startsWith('new') ? { kind: 'new', read: READ } : { kind: 'known', block, turn };
    }),
  }));

function hung(project: Project, wall: PhotographedWall): Project {
  const outcome = apply(project, hangPhotographed(wall));
  if (!outcome.ok) throw new Error(outcome.problems[0]!.message.say);
  return outcome.project;
}

describe('a wall hung as photographed', () => {
  it('loses no block, hangs each as the picture has it, and says before what happens', () => {
    fc.assert(
      fc.property(walls, (wall) => {
        const after = hung(PROJECT, wall);
        const told = whatHappens(PROJECT, wall);
        for (const block of PROJECT.blocks) expect(after.blocks).toContainEqual(block);
        expect(after.blocks.length).toBe(PROJECT.blocks.length + told.added);
        wall.cells.forEach((cell, at) => {
          const there = after.wall.cells[at];
          if (cell === null) expect(there).toBeNull();
          else if (cell.kind === 'known') expect(there).toMatchObject({ block: cell.block, turn: cell.turn });
          else expect(PROJECT.blocks.some(({ id }) => id === there!.block)).toBe(false);
        });
        const hangs = new Set(after.wall.cells.map((cell) => cell?.block));
        for (const block of told.toTable) expect(hangs.has(block)).toBe(false);
        expect(told.moved.length + told.stay.length + told.toTable.length).toBe(PROJECT.blocks.length);
      }),
    );
  });

  it('is refused where a pinned block would move or come down, and goes where it stays', () => {
    const [first] = PROJECT.wall.cells;
    const id = first!.block;
    const pinned = apply(PROJECT, pinBlocks(PROJECT, [id], true));
    if (!pinned.ok) throw new Error('not pinned');
    const away = { rows: 1, columns: 1, cells: [null] };
    const refused = apply(pinned.project, hangPhotographed(away));
    expect(refused).toMatchObject({ ok: false, problems: [{ code: 'held' }] });
    const stays: PhotographedWall = { ...PROJECT.wall, cells: PROJECT.wall.cells.map((cell) => cell && { kind: 'known', block: cell.block, turn: cell.turn }) }; // biome-ignore format: one wall
    expect(hung(pinned.project, stays).wall).toEqual(pinned.project.wall);
  });

  it('is refused on point', () => {
    const point = apply(PROJECT, setLayout('onPoint'));
    if (!point.ok) throw new Error('not on point');
    const outcome = apply(point.project, hangPhotographed({ rows: 1, columns: 1, cells: [null] }));
    expect(outcome).toMatchObject({ ok: false, problems: [{ code: 'on-point' }] });
  });
});

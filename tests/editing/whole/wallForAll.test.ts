// A larger wall for the blocks that wait on the side table.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { apply } from '../../../src/editing/apply';
import { addBlocks } from '../../../src/editing/commands/blocks';
import { wallForAll } from '../../../src/editing/whole/hangBlocks';
import { createProject } from '../../../src/model/create';
import { cellIndexOf, sideTable } from '../../../src/model/find';
import type { Project } from '../../../src/model/project';
import { isPlain, rowAndColumn } from '../../../src/model/wallCells';
import { runs } from '../../runs';
import { done } from '../outcomes';
import { partlySewn } from '../randomMoves';

const placeOf = (project: Project, block: string) => rowAndColumn(cellIndexOf(project, block), project);

describe('a wall for all blocks', () => {
  it('hangs every block, keeps the wedges, and leaves pinned and joined blocks in their places', () => {
    fc.assert(
      fc.property(fc.nat(100_000), fc.integer({ min: 0, max: 30 }), (seed, more) => {
        const project = more === 0 ? partlySewn(seed) : done(partlySewn(seed), addBlocks(more));
        const larger = wallForAll(project);
        const places = project.wall.cells.filter((_, at) => !isPlain(at, project)).length;
        if (places >= project.blocks.length) {
          expect(larger).toBeNull();
          return;
        }
        const outcome = apply(project, larger!.command);
        if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
        const after = outcome.project;
        expect(sideTable(after)).toEqual([]);
        expect([after.wall.rows, after.wall.columns]).toEqual([larger!.rows, larger!.columns]);
        expect(after.blocks.map(({ places: wedges }) => wedges)).toEqual(
          project.blocks.map(({ places: wedges }) => wedges),
        );
        for (const { id, progress } of project.blocks) {
          const at = cellIndexOf(project, id);
          if (at < 0 || !(project.wall.cells[at]!.pinned || progress === 'joined')) continue;
          expect(placeOf(after, id)).toEqual(placeOf(project, id));
        }
      }),
      { numRuns: runs(41, 200) },
    );
  });

  it('of six places for twelve blocks is four rows of three', () => {
    const project = done(createProject('p', 'Sewn'), addBlocks(12));
    expect(project.wall.cells).toHaveLength(6);
    expect(wallForAll(project)).toMatchObject({ rows: 4, columns: 3 });
  });
});

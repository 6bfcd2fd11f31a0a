// What is marked on a size on offer: new cells and blocks that come down, counted by hand from rows and columns.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { apply } from '../../../src/editing/apply';
import { takeOffer } from '../../../src/editing/commands/takeOffer';
import { sizeMarks } from '../../../src/ui/stage/wall/sizeMarks';
import { scrappyTop } from '../../balance/tops';
import { runs } from '../../runs';

const side = fc.integer({ min: 1, max: 6 });

describe('marks on a size on offer', () => {
  it('are on every cell beyond the rows and columns now, and on every block beyond those offered', () => {
    fc.assert(
      fc.property(side, side, side, side, (rows, columns, offeredRows, offeredColumns) => {
        const now = scrappyTop({ rows, columns, seed: 7 });
        const { where, width } = now.setting.sashing;
        const command = takeOffer({
          rows: offeredRows,
          columns: offeredColumns,
          sashing: { where, width },
          borders: [],
          width: 1,
          height: 1,
          off: { width: 0, height: 0 },
          blocks: offeredRows * offeredColumns,
        });
        const outcome = apply(now, command);
        if (!outcome.ok) throw new Error('the offer was refused');
        const { newCells, down, words } = sizeMarks(now, outcome.project);
        const beyond = [];
        for (let row = 0; row < offeredRows; row++) {
          for (let column = 0; column < offeredColumns; column++) {
            if (row >= rows || column >= columns) beyond.push(row * offeredColumns + column);
          }
        }
        expect([...newCells]).toEqual(beyond);
        const gone = now.wall.cells.flatMap((cell, at) =>
          Math.floor(at / columns) >= offeredRows || at % columns >= offeredColumns ? [cell!.block] : [],
        );
        expect([...down]).toEqual(gone);
        const counts = words.flatMap((one) => (one.with ? [one.with.count] : []));
        expect(counts).toEqual([beyond.length, gone.length].filter((count) => count > 0));
      }),
      { numRuns: runs(50, 150) },
    );
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hangsAs, listBetween, listFits, movesOfList, tick } from '../../src/editing/handList';
import { turnsOf } from '../../src/model/find';
import { type Move, moved } from '../../src/model/moves';
import { scrappyTop } from '../balance/tops';

const PROJECT = scrappyTop({ rows: 2, columns: 3, seed: 4 });

/** Some swaps and turns of the six blocks. */
const shuffles = fc
  .array(
    fc.oneof(
      fc
        .tuple(fc.nat(5), fc.nat(5))
        .filter(([cell, other]) => cell !== other)
        .map(([cell, other]): Move => ({ kind: 'swap', cell, other })),
      fc
        .tuple(fc.nat(5), fc.nat(turnsOf(PROJECT.wedge.perBlock) - 1))
        .map(([at, turn]): Move => ({ kind: 'turn', block: PROJECT.blocks[at]!.id, turn })),
    ),
    { minLength: 1, maxLength: 9 },
  )
  .map((moves) => moved(PROJECT, moves));

describe('a list of moves by hand', () => {
  it('takes the wall from how it hung to how it will hang', () => {
    fc.assert(
      fc.property(shuffles, (wished) => {
        const list = listBetween(PROJECT, wished);
        fc.pre(list !== null);
        expect(hangsAs(PROJECT, list)).toBe('before');
        expect(hangsAs(wished, list)).toBe('after');
        const hung = moved(PROJECT, movesOfList(list));
        // Blocks that look alike may stand for each other; here no two do.
        expect(hangsAs(hung, list)).toBe('after');
      }),
    );
  });

  it('is none where more than places and turns differs, and where nothing does', () => {
    const shifted = moved(PROJECT, [{ kind: 'place', block: PROJECT.blocks[0]!.id, place: 0, wedge: null }]);
    expect(listBetween(PROJECT, shifted)).toBeNull();
    expect(listBetween(PROJECT, PROJECT)).toBeNull();
  });

  it('keeps ticks in order, each once', () => {
    const list = listBetween(PROJECT, moved(PROJECT, [{ kind: 'swap', cell: 0, other: 5 }, { kind: 'swap', cell: 1, other: 4 }]))!; // biome-ignore format: one wall
    const both = tick(tick(tick(list, 1, true), 0, true), 1, true);
    expect(both.ticked).toEqual([0, 1]);
    expect(tick(both, 0, false).ticked).toEqual([1]);
    expect(both.steps).toBe(list.steps);
  });

  it('is of another wall once a block of it is gone', () => {
    const list = listBetween(PROJECT, moved(PROJECT, [{ kind: 'swap', cell: 0, other: 5 }]))!;
    expect(listFits(PROJECT, list)).toBe(true);
    const gone = { ...PROJECT, blocks: PROJECT.blocks.slice(1) };
    expect(listFits(gone, list)).toBe(false);
    const wider = { ...list, from: { ...list.from, columns: 4 } };
    expect(listFits(PROJECT, wider)).toBe(false);
  });
});

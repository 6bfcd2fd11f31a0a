// What is ringed in a layout on offer: the blocks that hang otherwise than now, or where that is most of them, those that stay; where
// nearly all change, what tells the layout from the first one.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Move, moved } from '../../../src/model/moves';
import type { BlockId, Project } from '../../../src/model/project';
import { foundWords, ringedIn } from '../../../src/ui/stage/wall/layouts';
import { scrappyTop } from '../../balance/tops';
import { runs } from '../../runs';

const PICKS = fc.array(fc.tuple(fc.nat(11), fc.nat(11), fc.boolean()), { maxLength: 14 });

it('of what was found no more is said than is known: another run may find more, and a search that was cut short says so', () => {
  const said = (...of: Parameters<typeof foundWords>) => foundWords(...of).map((one) => one.say);
  expect(said(0, null)).toEqual(['Nothing is free to move, so there is no other layout.']);
  for (const cut of [null, 'time', 'stop'] as const) {
    expect(said(1, cut)[0]).toContain('was found');
    expect(said(1, cut)[0]).not.toMatch(/^No layout/);
    expect(said(4, cut)[0]).toContain('The best that was found, then others');
  }
  expect(said(1, 'stop')[1]).toBe('Stopped before all were tried: another run may find others.');
  expect(said(4, 'time')[1]).toMatch(/^Time ran out/);
  expect(said(4, null)).toHaveLength(1);
});

describe('rings in a layout on offer', () => {
  it('are round what changes or round what stays; round more than half only where every block changes', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 500 }), PICKS, (seed, picks) => {
        const now = scrappyTop({ rows: 3, columns: 4, seed });
        const seen = changed(now, picks);
        const { blocks, words } = ringedIn(now, seen);
        const staying = alike(now, seen);
        const differing = now.blocks.map((block) => block.id).filter((id) => !staying.includes(id));
        const most = 2 * differing.length > now.blocks.length;
        const expected = most && staying.length > 0 ? staying : differing;
        expect([...blocks].sort()).toEqual([...expected].sort());
        expect(words.say.startsWith('All change') || words.say === 'Ringed: every block changes.').toBe(most);
      }),
      { numRuns: runs(67, 200) },
    );
  });

  it('tell a layout from the first where nearly every block changes, so that no difference goes unmarked', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 500 }), fc.nat(4), PICKS, (seed, kept, picks) => {
        const now = scrappyTop({ rows: 3, columns: 4, seed });
        // Every block but a few gets a quarter turn.
        const turns = now.wall.cells.slice(kept).map((cell) => ({ ...cell!, turn: (cell!.turn + 1) % 4 }));
        const first = moved(
          now,
          turns.map(({ block, turn }): Move => ({ kind: 'turn', block, turn })),
        );
        if (kept === 0) {
          expect(ringedIn(now, first, first).blocks.size).toBe(now.blocks.length);
        }
        const seen = changed(first, picks);
        const staying = alike(now, seen);
        const asInFirst = alike(first, seen);
        fc.pre(4 * staying.length < now.blocks.length && asInFirst.length < now.blocks.length);
        const { blocks, words } = ringedIn(now, seen, first);
        const otherwise = now.blocks.map((block) => block.id).filter((id) => !asInFirst.includes(id));
        expect([...blocks].sort()).toEqual([...otherwise].sort());
        expect(words.say).toMatch(/differs? from layout 1/);
        expect(words.with).toMatchObject({ count: otherwise.length });
      }),
      { numRuns: runs(67, 200) },
    );
  });
});

/** The top after swaps of cells and turns of blocks. */
function changed(top: Project, picks: readonly (readonly [number, number, boolean])[]): Project {
  let seen = top;
  for (const [one, other, turns] of picks) {
    const hung = seen.wall.cells[one]!;
    const move: Move = turns
      ? { kind: 'turn', block: hung.block, turn: other % 4 }
      : { kind: 'swap', cell: one, other };
    if (turns || one !== other) seen = moved(seen, [move]);
  }
  return seen;
}

/** The blocks that hang alike in two tops. */
function alike(one: Project, other: Project): BlockId[] {
  return one.wall.cells.flatMap((cell, at) => {
    const there = other.wall.cells[at]!;
    return cell!.block === there.block && cell!.turn === there.turn ? [cell!.block] : [];
  });
}

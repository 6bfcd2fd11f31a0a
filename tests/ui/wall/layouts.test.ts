// What is ringed in a layout on offer: the blocks that hang otherwise than now, or where that is most of them, those that stay.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Move, moved } from '../../../src/model/moves';
import { ringedIn } from '../../../src/ui/stage/wall/layouts';
import { scrappyTop } from '../../balance/tops';

describe('rings in a layout on offer', () => {
  it('are round what changes or round what stays, never round more than half', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 500 }),
        fc.array(fc.tuple(fc.nat(11), fc.nat(11), fc.boolean()), { maxLength: 14 }),
        (seed, picks) => {
          const now = scrappyTop({ rows: 3, columns: 4, seed });
          let seen = now;
          for (const [one, other, turns] of picks) {
            const hung = seen.wall.cells[one]!;
            const move: Move = turns
              ? { kind: 'turn', block: hung.block, turn: other % 4 }
              : { kind: 'swap', cell: one, other };
            if (turns || one !== other) seen = moved(seen, [move]);
          }
          const { blocks, words } = ringedIn(now, seen);
          const stays = (at: number) => {
            const [before, after] = [now.wall.cells[at]!, seen.wall.cells[at]!];
            return before.block === after.block && before.turn === after.turn;
          };
          const staying = now.wall.cells.flatMap((cell, at) => (stays(at) ? [cell!.block] : []));
          const differing = now.blocks.map((block) => block.id).filter((id) => !staying.includes(id));
          const expected = 2 * differing.length <= now.blocks.length ? differing : staying;
          expect([...blocks].sort()).toEqual([...expected].sort());
          expect(blocks.size * 2).toBeLessThanOrEqual(now.blocks.length);
          expect(words.say.startsWith('All change') || words.say === 'Every block changes.').toBe(
            2 * differing.length > now.blocks.length,
          );
        },
      ),
      { numRuns: 200 },
    );
  });
});

// What a block is told to clash with while the wall is analysed anew is what the analysis then finds; and an edit of one block of a large
// wall puts few others in doubt.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { wishesOf } from '../../../src/balance/score/wishes';
import { apply } from '../../../src/editing/apply';
import { type Move, moved } from '../../../src/model/moves';
import { phrase } from '../../../src/model/phrase';
import type { BlockId, Project } from '../../../src/model/project';
import { clashesToTell } from '../../../src/ui/wall/standing/clashesToTell';
import { clashList } from '../../balance/clashList';
import { scrappyTop } from '../../balance/tops';
import { anyMoves, partlySewn } from '../../editing/randomMoves';
import { runs } from '../../runs';

const balanceOf = (project: Project) => ({
  project,
  clashes: clashList(project, wishesOf(project.preferences)),
});
/** What is said of a clash in the name of its block. */
const told = (clashes: readonly { id: string; numbers: readonly number[] }[]) =>
  clashes.map(({ id, numbers }) => `${id} ${numbers.join()}`).toSorted();
const hanging = (project: Project): BlockId[] =>
  project.wall.cells.flatMap((cell) => (cell ? [cell.block] : []));

/** The quilt after a move, where that may be made. */
const tried = (project: Project, move: Move): Project => {
  const outcome = apply(project, { label: phrase(''), moves: [move] });
  return outcome.ok ? outcome.project : project;
};

describe('clashes that are told while the wall is analysed anew', () => {
  test('are those that the analysis then finds', () => {
    let kept = 0;
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 5000 }), fc.integer({ min: 1, max: 3 }), (seed, count) => {
        const before = partlySewn(seed);
        const now = anyMoves(before, seed, count).reduce(tried, before);
        const tell = clashesToTell(balanceOf(before), now);
        const after = clashesToTell(balanceOf(now), now);
        for (const block of hanging(now)) {
          const clashes = tell(block);
          if (clashes === null) continue;
          kept += 1;
          expect(told(clashes)).toEqual(told(after(block)!));
        }
      }),
      { numRuns: runs(60, 1000) },
    );
    expect(kept).toBeGreaterThan(100);
  });

  test('are not known of the block that was turned and of those on its sides, and of all others they are', () => {
    const before = scrappyTop({ rows: 8, columns: 10, seed: 3 });
    const { block, turn } = before.wall.cells[34]!;
    const now = moved(before, [{ kind: 'turn', block, turn: (turn + 1) % 4 }]);
    const tell = clashesToTell(balanceOf(before), now);
    const unknown = hanging(now).flatMap((id, cell) => (tell(id) === null ? [cell] : []));
    expect(unknown).toEqual([24, 33, 34, 35, 44]);
  });

  test('are not known at all where fabrics, the setting or what counts as alike changed in between', () => {
    const before = scrappyTop({ rows: 3, columns: 3, seed: 4 });
    const balance = balanceOf(before);
    const others: Project[] = [
      { ...before, fabrics: structuredClone(before.fabrics) },
      { ...before, setting: structuredClone(before.setting) },
      { ...before, preferences: structuredClone(before.preferences) },
    ];
    for (const now of others)
      expect(new Set(hanging(now).map(clashesToTell(balance, now)))).toEqual(new Set([null]));
  });
});

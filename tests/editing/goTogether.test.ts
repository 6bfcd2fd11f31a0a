// Moves that touch nothing in common come to the same in either order.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { apply } from '../../src/editing/apply';
import { rearrange } from '../../src/editing/commands/wall';
import { canGoTogether, type Move } from '../../src/model/moves';
import { phrase, speak } from '../../src/model/phrase';
import type { Project } from '../../src/model/project';
import { scrappyTop } from '../balance/tops';
import { runs } from '../runs';
import { anyMoves, partlySewn } from './randomMoves';

const outcome = (project: Project, moves: readonly Move[]) =>
  apply(project, rearrange(moves, phrase('mend it')));

/** What comes of moves: the project or the refusal, without how it is undone. */
function left(project: Project, moves: readonly Move[]) {
  const one = outcome(project, moves);
  return one.ok ? one.project : one.problems;
}

describe('two changes that can go together', () => {
  it('leave the same quilt, or are refused with the same words, whichever is done first', () => {
    const kinds = new Set<string>();
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 1e6 }),
        fc.integer({ min: 1, max: 3 }),
        fc.integer({ min: 1, max: 3 }),
        (seed, first, second) => {
          const project = partlySewn(seed);
          const one = anyMoves(project, seed + 1, first);
          const other = anyMoves(project, seed + 2, second);
          fc.pre(outcome(project, one).ok && outcome(project, other).ok);
          fc.pre(canGoTogether(project, one, other));
          expect(canGoTogether(project, other, one)).toBe(true);
          expect(left(project, [...one, ...other])).toEqual(left(project, [...other, ...one]));
          for (const { kind } of [...one, ...other]) kinds.add(kind);
        },
      ),
      { numRuns: runs(38, 150), maxSkipsPerRun: 1000 },
    );
    expect(kinds.size).toBe(7);
  });

  it('are not two orders of the strips of one set, though no block has its wedges', () => {
    const project = partlySewn(3);
    const { strips } = project.stripSets.find(({ id }) => id === 'spare')!;
    const turned: Move = { kind: 'strips', set: 'spare', strips: strips.toReversed() };
    expect(canGoTogether(project, [turned], [{ ...turned, strips }])).toBe(false);
    expect(canGoTogether(project, [turned], [])).toBe(true);
  });

  it('may both want the last wedge of a set, which is refused with its sentence', () => {
    const project = scrappyTop({ rows: 1, columns: 2, seed: 1, sets: 2 });
    const spare = {
      ...structuredClone(project.stripSets[0]!),
      id: 'spare',
      label: 'Spare',
      cut: { up: 1, down: 0 },
    };
    project.stripSets.push(spare);
    const last = (block: string): Move => ({
      kind: 'place',
      block,
      place: 0,
      wedge: { set: 'spare', tip: 'up' },
    });
    const [one, other] = [[last('b0')], [last('b1')]] as const;
    expect(canGoTogether(project, one, other)).toBe(true);
    expect([outcome(project, one).ok, outcome(project, other).ok]).toEqual([true, true]);
    const both = outcome(project, [...one, ...other]);
    expect(both.ok ? '' : speak(both.problems[0]!.message)).toBe(
      'Set Spare gives 1 wedge tip up, but the blocks use 2.',
    );
  });
});

describe('a move of a block on the side table', () => {
  it('to another turn is refused: it must hang first', () => {
    const project = scrappyTop({ rows: 1, columns: 2, seed: 1 });
    const turned = outcome(project, [
      { kind: 'take', block: 'b1' },
      { kind: 'turn', block: 'b1', turn: 1 },
    ]);
    expect(turned.ok ? '' : speak(turned.problems[0]!.message)).toBe(
      'Block 2 waits on the side table; hang it before it is turned.',
    );
  });
});

// What runs out first: only what the plan uses up, and only where no other fabric would have run out before it.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Piece } from '../../../src/cutting/plan/clothPieces';
import { runsOut } from '../../../src/cutting/plan/runsOut';
import { speak } from '../../../src/model/phrase';
import { runs } from '../../runs';
import { plainFabrics } from '../fabrics';

const WIDTHS = [1, 1.5, 2];
const fabrics = plainFabrics(4);

interface PieceCut {
  readonly fabric: string;
  readonly depth: number;
  readonly parts: number;
  /** Strips of each of the widths. */
  readonly strips: readonly number[];
}

const cutPiece: fc.Arbitrary<PieceCut> = fc
  .record({
    fabric: fc.constantFrom(...fabrics.map((one) => one.id)),
    parts: fc.integer({ min: 1, max: 3 }),
    strips: fc.array(fc.integer({ min: 0, max: 4 }), { minLength: 3, maxLength: 3 }),
    rest: fc.integer({ min: 0, max: 16 }),
  })
  .map(({ rest, ...cut }) => ({ ...cut, depth: widthOf(cut.strips) + rest / 4 }));

function widthOf(strips: readonly number[]): number {
  return strips.reduce((sum, count, at) => sum + count * WIDTHS[at]!, 0);
}

function found(pieces: readonly PieceCut[], sets: number) {
  return runsOut(
    fabrics,
    pieces.map((one): Piece => ({ of: 'cloth', row: 'r', fabric: one.fabric, length: 40, depth: one.depth })),
    pieces.map(({ strips, parts }) =>
      strips.flatMap((count, at) => (count > 0 ? [{ width: WIDTHS[at]!, count, parts }] : [])),
    ),
    WIDTHS,
    [{ count: sets }],
  );
}

/**
 * Strips a fabric gives in the plan, and how many more of the narrowest could still be cut from it, one after another: cut
 * across as the others of their piece are, whole where the piece is not cut.
 */
function giving(pieces: readonly PieceCut[], id: string): { given: number; more: number } {
  let [given, more] = [0, 0];
  for (const { fabric, depth, strips, parts } of pieces) {
    if (fabric !== id) continue;
    given += parts * strips.reduce((sum, count) => sum + count, 0);
    let rest = depth - widthOf(strips);
    for (; rest >= Math.min(...WIDTHS); rest -= Math.min(...WIDTHS)) more += widthOf(strips) > 0 ? parts : 1;
  }
  return { given, more };
}

describe('what runs out first', () => {
  const plans = fc.tuple(fc.array(cutPiece, { minLength: 1, maxLength: 8 }), fc.integer({ min: 1, max: 12 }));

  it('is used up in the plan, and no other fabric has fewer strips in it', () => {
    let [named, none] = [0, 0];
    fc.assert(
      fc.property(plans, ([pieces, sets]) => {
        const first = found(pieces, sets);
        const used = fabrics.filter((one) => pieces.some((piece) => piece.fabric === one.id));
        // Cloth too narrow for any strip has no part in it.
        const all = used
          .map((one) => ({ id: one.id, ...giving(pieces, one.id) }))
          .filter((one) => one.given + one.more > 0);
        const least = Math.min(...all.map((one) => one.given + one.more));
        const gone = all.filter((one) => one.more === 0 && one.given > 0 && one.given === least);
        if (all.length < 2 || gone.length === 0) {
          none += 1;
          expect(first).toBeNull();
          return;
        }
        named += 1;
        expect(first!.fabrics).toEqual(gone.map((one) => one.id));
      }),
      { seed: 41, numRuns: runs(670, 2000) },
    );
    expect(Math.min(named, none)).toBeGreaterThan(runs(60, 200));
  });

  it('lasts for the sets that can be dealt when each takes from all fabrics in turn', () => {
    fc.assert(
      fc.property(plans, ([pieces, sets]) => {
        const first = found(pieces, sets);
        if (!first) return;
        const left = new Map(
          fabrics.flatMap(({ id }): [string, number][] => {
            const { given, more } = giving(pieces, id);
            return given + more > 0 ? [[id, given + more]] : [];
          }),
        );
        const total = pieces.reduce((sum, one) => sum + giving([one], one.fabric).given, 0);
        // Dealt one from each in turn until the first has given its last.
        let dealt = 0;
        while ([...left.values()].every((count) => count > 0)) {
          for (const [id, count] of left) left.set(id, count - 1);
          dealt += left.size;
        }
        expect(first.after).toBe(Math.min(sets, Math.floor((dealt * sets) / total + 1e-9)));
      }),
      { seed: 42, numRuns: 1000 },
    );
  });

  it('is not the fabric with more strips where another has cloth for a strip more, and fewer', () => {
    const twelve = { fabric: 'f1', depth: 12, parts: 1, strips: [12, 0, 0] };
    const sixAtMost = { fabric: 'f2', depth: 6, parts: 1, strips: [5, 0, 0] };
    expect(found([twelve, sixAtMost], 3)).toBeNull();
    expect(found([twelve, { ...sixAtMost, depth: 5 }], 3)?.fabrics).toEqual(['f2']);
  });

  it('that does not last for a set says so', () => {
    const many = ['f1', 'f2'].map((fabric) => ({ fabric, depth: 12, parts: 1, strips: [12, 0, 0] }));
    const one = { fabric: 'f3', depth: 1, parts: 1, strips: [1, 0, 0] };
    expect(speak(found([...many, one], 4)!.words)).toBe(
      'Used evenly, Fabric 3 runs out first, within the first of 4 sets.',
    );
  });
});

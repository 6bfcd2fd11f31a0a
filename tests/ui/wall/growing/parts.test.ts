// However large a wall is and whatever becomes of it, no step draws more than a part of its blocks, and a few steps draw all.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { HungBlock } from '../../../../src/drawing/drawing';
import { drawProject } from '../../../../src/drawing/drawProject';
import { FEW } from '../../../../src/drawing/wholeNewWall';
import type { Project } from '../../../../src/model/project';
import {
  begun,
  type Drawn,
  FIRST,
  isWhole,
  PART,
  shownOf,
  withBlocks,
  withNextPart,
} from '../../../../src/ui/wall/growing/parts';
import { scrappyTop } from '../../../balance/tops';

const QUILT = scrappyTop({ rows: 20, columns: 20, seed: 5 });
const IN_ORDER = drawn(QUILT);

function drawn(project: Project): readonly HungBlock[] {
  return drawProject(project).blocks.toSorted((one, other) => one.number - other.number);
}

/** The blocks of the wall with so many cells exchanged for the one that lies `by` cells further on. */
function exchanged(count: number, by: number): readonly HungBlock[] {
  const cells = [...QUILT.wall.cells];
  for (let at = 0; at < count; at += 1) {
    const other = (at + by) % cells.length;
    [cells[at], cells[other]] = [cells[other]!, cells[at]!];
  }
  return drawn({ ...QUILT, wall: { ...QUILT.wall, cells } });
}

/** How many blocks lie elsewhere than before. */
function drawnAnew(before: readonly HungBlock[], now: readonly HungBlock[]): number {
  const lie = ({ block, cell, quarters }: HungBlock) => `${block} ${cell} ${quarters}`;
  const old = new Set(before.map(lie));
  return now.filter((hung) => !old.has(lie(hung))).length;
}

/** Every step until all is drawn. */
function steps(from: Drawn): Drawn[] {
  const all = [from];
  while (!isWhole(all.at(-1)!)) all.push(withNextPart(all.at(-1)!));
  return all;
}

describe('a large wall', () => {
  test('of another quilt comes in parts', () => {
    const all = steps(begun('a quilt', IN_ORDER, FIRST));
    expect(all.map((one) => shownOf(one).length)).toEqual([100, 150, 200, 250, 300, 350, 400]);
    expect(shownOf(all.at(-1)!)).toBe(IN_ORDER);
  });

  test('goes into a whole new order in parts, with every block on show once at each step', () => {
    const order = fc.record({
      exchanges: fc.integer({ min: 0, max: 400 }),
      by: fc.integer({ min: 1, max: 399 }),
      parts: fc.integer({ min: 0, max: 9 }),
    });
    fc.assert(
      fc.property(fc.array(order, { minLength: 1, maxLength: 5 }), (orders) => {
        let now = steps(begun('a quilt', IN_ORDER, FIRST)).at(-1)!;
        for (const { exchanges, by, parts } of orders) {
          const wished = exchanged(exchanges, by);
          const begins = withBlocks(now, 'a quilt', wished, FIRST);
          const all = [now, ...steps(begins).slice(0, 1 + parts)];
          all.slice(1).forEach((one, at) => {
            expect(drawnAnew(shownOf(all[at]!), shownOf(one))).toBeLessThanOrEqual(Math.max(PART, FEW));
            expect(new Set(shownOf(one).map(({ block }) => block)).size).toBe(400);
            expect(shownOf(one)).toHaveLength(400);
          });
          now = all.at(-1)!;
        }
        expect(shownOf(steps(now).at(-1)!)).toBe(now.blocks);
      }),
      { numRuns: 40 },
    );
  });

  test('shows an exchange of two blocks at once, also while it comes in parts', () => {
    const wished = exchanged(1, 1);
    const whole = steps(begun('a quilt', IN_ORDER, FIRST)).at(-1)!;
    expect(shownOf(withBlocks(whole, 'a quilt', wished, FIRST))).toBe(wished);
    const coming = withBlocks(begun('a quilt', IN_ORDER, FIRST), 'a quilt', wished, FIRST);
    expect(shownOf(coming)).toEqual(wished.slice(0, 100));
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cellSymmetries } from '../../../src/arrange/branch/cellSymmetries';
import { pairCosts } from '../../../src/arrange/branch/convexAssignment';
import { eigenvaluesOf } from '../../../src/arrange/branch/eigenvalues';
import { patternsOf } from '../../../src/arrange/products/patterns';
import { ProductBound } from '../../../src/arrange/products/productBound';
import { ProductTable } from '../../../src/arrange/products/productTable';
import { runs } from '../../runs';
import { anyProblem, everyArrangement, leastOf } from '../branch/problems';
import { spreadWall } from '../groups/spreadWall';

/** Even seeds have nothing that belongs to a cell, so that the wall has the symmetries of its grid. */
const wall = (rows: number, columns: number, seed: number) => spreadWall(rows, columns, 2 * seed).problem;

/** The table of an arrangement, even over the symmetries: entries as productTable.ts lays them out. */
function tableOf(cellOf: readonly number[], first: ArrayLike<number>, group: readonly Int32Array[]) {
  const size = cellOf.length;
  const table = new Float64Array(size * first.length * size * size);
  for (const image of group) {
    cellOf.forEach((cell, item) => {
      const orbit = Array.from(first).indexOf(image[cell]!);
      if (orbit < 0) return;
      cellOf.forEach((there, other) => {
        table[(item * first.length + orbit) * size * size + other * size + image[there]!]! +=
          1 / group.length;
      });
    });
  }
  return table;
}

const shapes = fc.constantFrom<readonly [number, number]>([2, 3], [1, 6], [2, 2], [3, 2]);

describe('the bound by products', () => {
  it('is never above the best of all arrangements, gone through one by one, whenever it is taken', () => {
    fc.assert(
      fc.property(anyProblem(6), (problem) => {
        const least = leastOf(problem);
        const bounding = new ProductBound(problem);
        for (const _ of bounding.ascending(40)) expect(bounding.bound).toBeLessThanOrEqual(least + 1e-8);
        expect(bounding.bound).toBeGreaterThan(Number.NEGATIVE_INFINITY);
      }),
      { numRuns: runs(38, 150) },
    );
  });

  it('comes near the best of walls whose blocks are to be spread', () => {
    const shares: number[] = [];
    fc.assert(
      fc.property(fc.nat({ max: 1e6 }), shapes, (seed, [rows, columns]) => {
        const problem = wall(rows, columns, seed);
        const least = leastOf(problem);
        const bounding = new ProductBound(problem);
        for (const _ of bounding.ascending(150)) expect(bounding.bound).toBeLessThanOrEqual(least + 1e-9);
        shares.push((bounding.bound - problem.constant) / (least - problem.constant));
      }),
      { numRuns: runs(8, 30) },
    );
    expect(shares.filter((one) => one > 0.9).length).toBeGreaterThan(runs(6, 25));
  });
});

describe('the table of products', () => {
  it('of an arrangement is whole again from its small tables, which have no negative eigenvalue', () => {
    fc.assert(
      fc.property(fc.nat({ max: 1e6 }), shapes, (seed, [rows, columns]) => {
        const problem = wall(rows, columns, seed);
        const patterns = patternsOf(cellSymmetries(problem, pairCosts(problem)), problem.size);
        const whole = new ProductTable(problem.size, patterns);
        // Any arrangement, even over all symmetries, is even over those of them that are used.
        const group = cellSymmetries(problem, pairCosts(problem));
        const arrangements = everyArrangement(problem.size);
        const table = tableOf(arrangements[seed % arrangements.length]!, patterns.first, group);
        const again = new Float64Array(table.length);
        for (const part of whole.parts) {
          const small = part.from(table);
          const least = Math.min(...eigenvaluesOf(small, part.width));
          expect(least).toBeGreaterThan(-1e-9);
          part.addTo(again, small);
        }
        again.forEach((one, at) => {
          expect(one).toBeCloseTo(table[at]!, 9);
        });
      }),
      { numRuns: runs(20, 60) },
    );
  });

  it('falls apart by the symmetries of the wall, and not at all without any', () => {
    const problem = wall(4, 5, 1);
    const even = patternsOf(cellSymmetries(problem, pairCosts(problem)), 20);
    expect(even.sorts.map(({ orbits }) => orbits.length).toSorted((a, b) => a - b)).toEqual([4, 4, 6, 6]);
    expect(Array.from(even.count).reduce((sum, one) => sum + one, 0)).toBe(20);
    expect(new ProductTable(20, even).parts.map(({ width }) => width).toSorted((a, b) => a - b)).toEqual([
      76, 76, 96, 114,
    ]);
    const alone = patternsOf([Int32Array.from({ length: 4 }, (_, cell) => cell)], 4);
    expect(new ProductTable(4, alone).parts.map(({ width }) => width)).toEqual([10]);
  });
});

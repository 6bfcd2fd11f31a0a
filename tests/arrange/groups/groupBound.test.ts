import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cellSymmetries } from '../../../src/arrange/branch/cellSymmetries';
import { pairCosts } from '../../../src/arrange/branch/convexAssignment';
import { GroupBound } from '../../../src/arrange/groups/groupBound';
import { linksOf, subsetsOf } from '../../../src/arrange/groups/subsets';
import { runs } from '../../runs';
import { leastOf } from '../branch/problems';
import { spreadWall } from './spreadWall';

describe('the bound by groups', () => {
  it('is never above the best of all arrangements, gone through one by one, and comes near it', () => {
    const shares: number[] = [];
    fc.assert(
      fc.property(fc.nat(), fc.constantFrom([2, 3], [1, 6], [3, 2], [2, 2]), (seed, shape) => {
        const [rows, columns] = shape as [number, number];
        const { problem, grid, groups } = spreadWall(rows, columns, seed, seed % 3 === 0 ? 1 : -1);
        const least = leastOf(problem);
        const bounding = GroupBound.of(problem, groups, grid, least)!;
        for (let step = 0; step < 150; step++) {
          bounding.step();
          expect(bounding.bound).toBeLessThanOrEqual(least + 1e-9);
        }
        shares.push((bounding.bound - problem.constant) / (least - problem.constant));
      }),
      { numRuns: runs(14, 40) },
    );
    expect(shares.filter((one) => one > 0.5).length).toBeGreaterThan(runs(10, 30));
  });

  it('is none for a form that is not of these groups', () => {
    const { problem, grid, groups } = spreadWall(2, 3, 1);
    const other = {
      ...problem,
      forms: [{ ...problem.forms[0]!, cells: problem.forms[0]!.cells.map((one) => 2 * one) }],
    };
    expect(GroupBound.of(other, groups, grid, 1)).toBeNull();
    expect(GroupBound.of({ ...problem, forms: [] }, groups, grid, 1)).toBeNull();
  });

  it('holds with and without symmetries of the wall', () => {
    const { problem } = spreadWall(2, 3, 2);
    expect(cellSymmetries(problem, pairCosts(problem))).toHaveLength(4);
    expect(cellSymmetries(spreadWall(2, 3, 1).problem, pairCosts(spreadWall(2, 3, 1).problem))).toHaveLength(
      1,
    );
  });
});

describe('sets of items', () => {
  it('are all there, with the squared sum of their figures, and linked where they share none', () => {
    const { problem } = spreadWall(2, 3, 5);
    const gram = problem.forms[0]!.items;
    const square = (set: readonly number[]) =>
      set.reduce((sum, one) => sum + set.reduce((all, other) => all + gram[one * 6 + other]!, 0), 0);
    const pairs = subsetsOf(gram, 6, 2);
    const setOf = (at: number) => Array.from(pairs.items.subarray(2 * at, 2 * at + 2));
    expect(new Set(Array.from({ length: 15 }, (_, at) => setOf(at).join()))).toHaveProperty('size', 15);
    for (let at = 0; at < 15; at++) expect(pairs.squares[at]).toBeCloseTo(square(setOf(at)), 12);
    const links = linksOf(gram, 6, pairs, pairs);
    expect(links.from).toHaveLength(15 * 6);
    links.from.forEach((from, at) => {
      const both = [...setOf(from), ...setOf(links.to[at]!)];
      expect(new Set(both).size).toBe(4);
      expect(links.squares[at]).toBeCloseTo(square(both), 12);
    });
  });
});

describe('the groups of a wall', () => {
  it('add up to the kernel of its cells', () => {
    for (const [rows, columns] of [
      [1, 1],
      [2, 3],
      [4, 5],
      [1, 7],
    ] as const) {
      // biome-ignore format: a row
      const { problem, groups } = spreadWall(rows, columns, 1);
      const { size, forms } = problem;
      const sum = new Float64Array(size * size);
      for (const { cells, weight } of groups)
        for (const one of cells) for (const other of cells) sum[one * size + other]! += weight;
      expect(
        Array.from(sum, (one, at) => Math.abs(one - forms[0]!.cells[at]!)).every((one) => one < 1e-12),
      ).toBe(true);
    }
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solveLinear } from '../../../src/arrange/assignment/linear';
import { BranchAndBound } from '../../../src/arrange/branch/branchAndBound';
import { cellSymmetries } from '../../../src/arrange/branch/cellSymmetries';
import { pairCosts } from '../../../src/arrange/branch/convexAssignment';
import { eigenpairsOf } from '../../../src/arrange/branch/eigenvalues';
import { Levels } from '../../../src/arrange/branch/levels';
import { NodeBound } from '../../../src/arrange/branch/nodeBound';
import { SmallLinear } from '../../../src/arrange/branch/smallLinear';
import { Spectra } from '../../../src/arrange/branch/spectra';
import { dice } from '../../balance/tops';
import { runs } from '../../runs';
import { anyProblem, costOf, everyArrangement, leastOf, randomProblem } from './problems';

describe('branch and bound', () => {
  it('finds what going through all arrangements finds, and never bounds above it on the way', () => {
    fc.assert(
      fc.property(anyProblem(6), fc.double({ min: 0, max: 3, noNaN: true }), (problem, over) => {
        const least = leastOf(problem);
        const search = new BranchAndBound(problem, least + over, (cellOf) => costOf(problem, cellOf));
        while (!search.ended) {
          search.advance(1);
          expect(search.bound).toBeLessThanOrEqual(least + 1e-8);
        }
        expect(search.best).toBeLessThanOrEqual(least + 2e-9);
        expect(search.bound).toBe(search.best);
        expect(search.done).toBe(1);
      }),
      { numRuns: runs(100, 300) },
    );
  });

  it('finds the same when it is stopped anywhere and what is left is taken up again', () => {
    fc.assert(
      fc.property(
        anyProblem(6),
        fc.array(fc.integer({ min: 1, max: 40 }), { maxLength: 6 }),
        (problem, stops) => {
          const judge = (cellOf: Int32Array) => costOf(problem, cellOf);
          const least = leastOf(problem);
          let search = new BranchAndBound(problem, least + 1, judge);
          let bound = Number.NEGATIVE_INFINITY;
          for (const nodes of stops) {
            search.advance(nodes);
            expect(search.bound).toBeGreaterThanOrEqual(bound - 1e-9);
            bound = search.bound;
            const shares = search.left.reduce((sum, part) => sum + part.share, 0);
            expect(shares).toBeLessThanOrEqual(1 + 1e-9);
            search = new BranchAndBound(problem, search.best, judge, structuredClone(search.left));
            expect(search.bound).toBeCloseTo(bound, 9);
          }
          while (!search.ended) search.advance(100);
          expect(search.best).toBeCloseTo(least, 8);
        },
      ),
      { numRuns: runs(67, 200) },
    );
  });

  it('hears every image of an arrangement that the cells allow, because what it is told may differ', () => {
    const problem = randomProblem(6, 3, true);
    const { pairs } = new Levels(problem);
    const symmetries = cellSymmetries(problem, pairs);
    expect(symmetries).toHaveLength(4);
    const heard = new Set<string>();
    const least = leastOf(problem);
    // Only one arrangement of all is let pass at its cost; all others are told to be dear.
    const wanted = everyArrangement(6).filter((one) => Math.abs(costOf(problem, one) - least) < 1e-9);
    const search = new BranchAndBound(problem, least + 0.5, (cellOf) => {
      heard.add(cellOf.join());
      return least + 0.4;
    });
    while (!search.ended) search.advance(100);
    expect(wanted.length).toBeGreaterThanOrEqual(4);
    for (const one of wanted) expect(heard).toContain(one.join());
  });

  it('refuses more items than bits', () => {
    expect(() => new BranchAndBound(randomProblem(31, 1, true), 0, () => 0)).toThrow('1 to 30 items, not 31');
  });
});

describe('the bound of a node', () => {
  it('and what it says each item costs more in each cell, is never above any arrangement', () => {
    fc.assert(
      fc.property(anyProblem(6), fc.integer({ min: 0, max: 4 }), (problem, many) => {
        const { size } = problem;
        const levels = new Levels(problem);
        const settled = Math.min(many, size - 2);
        for (let at = 0; at < settled; at++) levels.settle(at, size - 1 - at, at);
        const bounds = new NodeBound(
          problem,
          problem.forms.map(({ cells, items }) => ({
            cells: new Spectra(cells, size),
            items: new Spectra(items, size),
          })),
        );
        const open = levels.all[settled]!;
        const bound = bounds.of(open, Number.POSITIVE_INFINITY);
        for (const rest of everyArrangement(open.count)) {
          const cellOf = levels.cellOf.slice();
          rest.forEach((cell, row) => {
            cellOf[open.items[row]!] = open.cells[cell]!;
          });
          const cost = costOf(problem, cellOf);
          rest.forEach((cell, row) => {
            expect(bound + bounds.dearer[row * open.count + cell]!).toBeLessThanOrEqual(cost + 1e-8);
          });
        }
      }),
      { numRuns: runs(50, 150) },
    );
  });

  it('rests on pairs that add up to the cost, whatever is settled first', () => {
    fc.assert(
      fc.property(anyProblem(6), (problem) => {
        const { size } = problem;
        const levels = new Levels(problem);
        for (let at = 0; at < size; at++) levels.settle(at, at, size - 1 - at);
        const cellOf = Array.from({ length: size }, (_, item) => size - 1 - item);
        expect(levels.all[size]!.cost).toBeCloseTo(costOf(problem, cellOf), 9);
        expect(pairCosts(problem)).toEqual(levels.pairs);
      }),
    );
  });
});

describe('small parts', () => {
  it('solves linear assignments as the large solver does', () => {
    const solver = new SmallLinear(9);
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9 }), fc.integer(), (size, seed) => {
        const { below } = dice(seed);
        const table = Float64Array.from({ length: size * size }, () => below(20) - 8);
        solver.table.set(table);
        expect(solver.solve(size)).toBeCloseTo(solveLinear(table, size).cost, 9);
        const columns = solver.columnOf.subarray(0, size);
        expect(new Set(columns).size).toBe(size);
        for (let at = 0; at < size * size; at++) {
          const price = solver.rowPrice[Math.floor(at / size)]! + solver.columnPrice[at % size]!;
          expect(price).toBeLessThanOrEqual(table[at]! + 1e-9);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('finds eigenvectors at right angles that the matrix only stretches', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9 }), fc.integer(), (size, seed) => {
        const matrix = randomProblem(size, seed, true).forms[0]!.items;
        const { values, vectors } = eigenpairsOf(matrix, size);
        for (let k = 0; k < size; k++) {
          if (k > 0) expect(values[k]!).toBeGreaterThanOrEqual(values[k - 1]!);
          for (let l = 0; l < size; l++) {
            let dot = 0;
            let stretched = 0;
            for (let at = 0; at < size; at++) {
              dot += vectors[k * size + at]! * vectors[l * size + at]!;
              stretched += matrix[l * size + at]! * vectors[k * size + at]!;
            }
            expect(dot).toBeCloseTo(k === l ? 1 : 0, 9);
            expect(stretched).toBeCloseTo(values[k]! * vectors[k * size + l]!, 9);
          }
        }
      }),
      { numRuns: 100 },
    );
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solveLinear } from '../../../src/arrange/assignment/linear';
import { BranchAndBound } from '../../../src/arrange/branch/branchAndBound';
import { cellSymmetries } from '../../../src/arrange/branch/cellSymmetries';
import { type ConvexAssignment, pairCosts } from '../../../src/arrange/branch/convexAssignment';
import { eigenpairsOf } from '../../../src/arrange/branch/eigenpairs';
import { Levels } from '../../../src/arrange/branch/levels';
import { NodeBound } from '../../../src/arrange/branch/nodeBound';
import { SmallLinear } from '../../../src/arrange/branch/smallLinear';
import { Spectra } from '../../../src/arrange/branch/spectra';
import { dice } from '../../balance/tops';
import { runs } from '../../runs';

/** A random problem. Forms need not be positive: nothing in the bound asks for it. */
function randomProblem(size: number, seed: number, grid = false): ConvexAssignment {
  const { part, below } = dice(seed);
  const any = () => 2 * part() - 1;
  const symmetric = () => {
    const table = Float64Array.from({ length: size * size }, any);
    return table.map((one, at) => (one + table[(at % size) * size + Math.floor(at / size)]!) / 2);
  };
  const list = (count: number) => Float64Array.from({ length: count }, any);
  // On a grid of two rows, near cells count more: the wall's own kind, with its symmetries.
  const near = Float64Array.from({ length: size * size }, (_, at) => {
    const one = Math.floor(at / size);
    const other = at % size;
    const columns = Math.ceil(size / 2);
    const away =
      Math.abs((one % columns) - (other % columns)) + (one >= columns === other >= columns ? 0 : 1);
    return [2, 1, 0.25][away] ?? 0;
  });
  const places = size * size;
  const beside = new Float64Array(places * places);
  for (let one = 0; one < places && !grid; one++) {
    for (let two = 0; two < one; two++) {
      const apart = Math.floor(one / size) !== Math.floor(two / size) && one % size !== two % size;
      if (apart && below(5) === 0) beside[one * places + two] = beside[two * places + one] = part();
    }
  }
  return {
    size,
    constant: any(),
    linear: grid ? new Float64Array(places) : list(places),
    forms: grid
      ? [{ cells: near, items: symmetric() }]
      : Array.from({ length: below(3) }, () => ({ cells: symmetric(), items: symmetric() })),
    moments: grid ? [] : Array.from({ length: below(3) }, () => ({ cells: list(size), items: list(size) })),
    beside,
  };
}

/** The cost as the words of the type have it, term by term. */
function costOf(
  { size, constant, linear, forms, moments, beside }: ConvexAssignment,
  cellOf: ArrayLike<number>,
): number {
  let cost = constant;
  for (let item = 0; item < size; item++) {
    cost += linear[item * size + cellOf[item]!]!;
    for (let other = 0; other < size; other++) {
      for (const form of forms)
        cost += form.cells[cellOf[item]! * size + cellOf[other]!]! * form.items[item * size + other]!;
      if (other < item)
        cost += beside[(item * size + cellOf[item]!) * size * size + other * size + cellOf[other]!]!;
    }
  }
  for (const { cells, items } of moments) {
    let sum = 0;
    for (let item = 0; item < size; item++) sum += cells[cellOf[item]!]! * items[item]!;
    cost += sum * sum;
  }
  return cost;
}

function everyArrangement(size: number): number[][] {
  if (size === 0) return [[]];
  return everyArrangement(size - 1).flatMap((before) =>
    Array.from({ length: size }, (_, at) => [...before.slice(0, at), size - 1, ...before.slice(at)]),
  );
}

const leastOf = (problem: ConvexAssignment) =>
  Math.min(...everyArrangement(problem.size).map((one) => costOf(problem, one)));

const anyProblem = (most: number) =>
  fc
    .record({
      size: fc.integer({ min: 2, max: most }),
      seed: fc.integer({ min: 0, max: 1e6 }),
      grid: fc.boolean(),
    })
    .map(({ size, seed, grid }) => randomProblem(size, seed, grid));

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
              dot += vectors[at * size + k]! * vectors[at * size + l]!;
              stretched += matrix[l * size + at]! * vectors[at * size + k]!;
            }
            expect(dot).toBeCloseTo(k === l ? 1 : 0, 9);
            expect(stretched).toBeCloseTo(values[k]! * vectors[l * size + k]!, 9);
          }
        }
      }),
      { numRuns: 100 },
    );
  });
});

import fc from 'fast-check';
import highsLoader from 'highs';
import { describe, expect, it } from 'vitest';
import { reducedBound } from '../../../src/arrange/assignment/bound';
import { solveLinear } from '../../../src/arrange/assignment/linear';
import { type AssignmentProblem, reduceAssignment } from '../../../src/arrange/assignment/problem';
import { anyKind, draws, leastByTrying, madeProblem } from './assignmentCases';
import { qaplib } from './qaplib';

const highs = await highsLoader();

const gilmoreLawler = (problem: AssignmentProblem) => reducedBound(reduceAssignment(problem));

describe('the linear assignment', () => {
  it('costs what an exact solver finds (HiGHS)', () => {
    for (let seed = 1; seed <= 8; seed++) {
      const draw = draws(seed);
      const size = 2 + seed;
      const table = Float64Array.from({ length: size * size }, () => draw(seed % 2 ? 20 : 100_000) - 9);
      const solved = highs.solve(asProgram(table, size), { output_flag: false });
      expect(solved.Status).toBe('Optimal');
      expect(solveLinear(table, size).cost).toBeCloseTo(solved.ObjectiveValue, 6);
    }
  });

  it('gives each row a column of its own and prices that prove it cheapest', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 40 }), fc.nat(), (size, seed) => {
        const draw = draws(seed);
        const table = Float64Array.from({ length: size * size }, () => draw(1000) / 8 - 30);
        const { columnOf, cost, rowPrice, columnPrice } = solveLinear(table, size);
        expect([...columnOf].sort((one, other) => one - other)).toEqual([...columnOf.keys()]);
        const total = [...rowPrice, ...columnPrice].reduce((sum, price) => sum + price, 0);
        expect(cost).toBeCloseTo(total, 7);
        const slack = table.map(
          (entry, at) => entry - rowPrice[Math.floor(at / size)]! - columnPrice[at % size]!,
        );
        expect(Math.min(0, ...slack)).toBeCloseTo(0, 9);
      }),
      { numRuns: 60, seed: 8 },
    );
  });

  it('refuses a table that is not square', () => {
    expect(() => solveLinear(new Float64Array(5), 2)).toThrow('5 entries, not 4');
  });
});

describe('the Gilmore–Lawler bound', () => {
  // Values as usually tabulated for these instances; from memory, the printed table was not at hand.
  it.each([
    ['nug12', 493],
    ['nug15', 963],
    ['nug20', 2057],
    ['nug30', 4539],
  ])('of %s is the tabulated %i', (name, bound) => {
    expect(gilmoreLawler(qaplib(name).problem)).toBe(bound);
  });

  it('is never above the best of all arrangements, and meets it where nothing is left to trade', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 6 }), anyKind, fc.nat(), (size, kind, seed) => {
        const problem = madeProblem(size, size < 5 ? { ...kind, fixed: 0 } : kind, seed);
        expect(gilmoreLawler(problem)).toBeLessThanOrEqual(leastByTrying(problem) + 1e-9);
        const linearOnly = { ...problem, flow: new Float64Array(size * size) };
        expect(gilmoreLawler(linearOnly)).toBeCloseTo(leastByTrying(linearOnly), 7);
      }),
      { numRuns: 80, seed: 9 },
    );
  });
});

function asProgram(table: Float64Array, size: number): string {
  const all = Array.from({ length: size }, (_, at) => at);
  const cells = all.flatMap((row) => all.map((column) => `${table[row * size + column]} x_${row}_${column}`));
  const once = all.flatMap((at) => [
    `${all.map((column) => `x_${at}_${column}`).join(' + ')} = 1`,
    `${all.map((row) => `x_${row}_${at}`).join(' + ')} = 1`,
  ]);
  const goal = cells.join(' + ').replaceAll('+ -', '- ');
  return `Minimize\n ${goal}\nSubject To\n ${once.join('\n ')}\nBinary\n ${all
    .flatMap((row) => all.map((column) => `x_${row}_${column}`))
    .join(' ')}\nEnd`;
}

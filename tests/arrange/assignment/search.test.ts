import fc from 'fast-check';
import highsLoader from 'highs';
import { describe, expect, it } from 'vitest';
import { bestOfAll } from '../../../src/arrange/assignment/enumerate';
import { assignmentCost, reduceAssignment } from '../../../src/arrange/assignment/problem';
import { AssignmentSearch } from '../../../src/arrange/assignment/search';
import { anyKind, costByDefinition, leastByTrying, madeProblem } from './assignmentCases';
import { qaplib } from './qaplib';
import { solveAssignment } from './solveAssignment';

const highs = await highsLoader();
const PLAIN = {
  symmetricFlow: true,
  symmetricDistance: true,
  diagonals: false,
  linear: false,
  fractions: false,
  fixed: 0,
};

describe('an assignment on a published grid (QAPLIB)', () => {
  it.each(['nug12', 'nug14', 'nug15', 'nug20', 'nug25', 'nug30', 'sko42', 'sko100a'])(
    '%s: the published arrangement costs what is published',
    (name) => {
      const { problem, solution, best } = qaplib(name);
      const places = new Int32Array(problem.size);
      solution.forEach((item, place) => {
        places[item] = place;
      });
      expect(assignmentCost(problem, places)).toBe(best);
    },
  );

  it.each(['nug12', 'nug14', 'nug15', 'nug20', 'nug25', 'nug30'])(
    '%s: ten seeds of ten come to the published optimum and not below it',
    (name) => {
      const { problem, best } = qaplib(name);
      for (let seed = 1; seed <= 10; seed++) {
        const { cost, places } = solveAssignment({
          ...problem,
          seed,
          budget: { iterations: 200_000 },
          target: best,
        });
        expect([seed, cost, costByDefinition(problem, places)]).toEqual([seed, best, best]);
        expect([...places].sort((one, other) => one - other)).toEqual([...places.keys()]);
      }
    },
  );
});

describe('a small assignment', () => {
  it('of any kind is solved as trying every arrangement does, and said to be proved', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 6 }), anyKind, fc.nat(), (size, kind, seed) => {
        const problem = madeProblem(size, size < 5 ? { ...kind, fixed: 0 } : kind, seed);
        const answer = solveAssignment({ ...problem, seed, budget: { iterations: 1 } });
        expect(answer.proof).toBe('allLookedAt');
        expect(answer.cost).toBeCloseTo(leastByTrying(problem), 8);
        expect(costByDefinition(problem, answer.places)).toBeCloseTo(answer.cost, 8);
        problem.fixed?.forEach((place, item) => {
          if (place >= 0) expect(answer.places[item]).toBe(place);
        });
      }),
      { numRuns: 60, seed: 12 },
    );
  });

  it('of nine or ten items is solved by the search as by going through all of them', () => {
    fc.assert(
      fc.property(fc.constantFrom(9, 10, 11), anyKind, fc.nat(), (size, kind, seed) => {
        const problem = madeProblem(size, { ...kind, fixed: size - 9 }, seed);
        const { cost, constant } = { ...bestOfAll(reduceAssignment(problem)), ...reduceAssignment(problem) };
        const answer = solveAssignment({ ...problem, seed, budget: { iterations: 20_000 } });
        expect(answer.cost).toBeCloseTo(cost + constant, 7);
        expect(answer.lowerBound).toBeLessThanOrEqual(answer.cost + 1e-7);
      }),
      { numRuns: 4, seed: 5 },
    );
  });

  it('is what an exact solver of mixed-integer programs makes of its linear form (HiGHS)', () => {
    const cases = [[4, 1], [5, 2], [5, 3]] as const; // biome-ignore format: a row
    for (const [size, seed] of cases) {
      const kind = { ...PLAIN, symmetricFlow: false, symmetricDistance: seed < 3, linear: seed > 1 };
      const problem = madeProblem(size, kind, seed);
      const solved = highs.solve(asProgram(problem), { output_flag: false });
      expect(solved.Status).toBe('Optimal');
      const { cost } = solveAssignment({ ...problem, seed: 1, budget: { iterations: 1 } });
      expect(cost).toBeCloseTo(solved.ObjectiveValue, 5);
    }
  });
});

describe('the search for an assignment', () => {
  it('repeats itself from a seed, however it is cut into pieces, and differs from another seed', () => {
    const { problem } = qaplib('sko42');
    const whole = new AssignmentSearch(problem, 7);
    whole.advance(6000);
    const pieces = new AssignmentSearch(problem, 7);
    for (let made = 0; made < 6000; made += 250) pieces.advance(250);
    const other = new AssignmentSearch(problem, 8);
    other.advance(6000);
    expect(pieces.iterations).toBe(whole.iterations);
    expect([...pieces.places]).toEqual([...whole.places]);
    expect([...other.places]).not.toEqual([...whole.places]);
  });

  it('tells of every better arrangement, the last being the answer', () => {
    const { problem } = qaplib('nug30');
    const costs: number[] = [];
    const answer = solveAssignment({
      ...problem,
      seed: 3,
      budget: { iterations: 3000 },
      onBest: ({ cost, places }) => {
        expect(costByDefinition(problem, places)).toBe(cost);
        costs.push(cost);
      },
    });
    expect(costs.length).toBeGreaterThan(2);
    expect([...costs].sort((one, other) => other - one)).toEqual(costs);
    expect(costs.at(-1)).toBe(answer.cost);
    expect(answer.iterations).toBe(3000);
  });

  it('stops when it is told to and when the time given is up by the clock given', () => {
    const { problem } = qaplib('nug30');
    let looks = 0;
    const stopped = solveAssignment({ ...problem, seed: 1, budget: {}, shouldStop: () => ++looks === 5 });
    expect(looks).toBe(5);
    let time = 0;
    const timed = solveAssignment({
      ...problem,
      seed: 1,
      budget: { milliseconds: 40 },
      now: () => time++ * 10,
    });
    expect(time).toBe(5);
    expect(timed.iterations).toBeLessThan(stopped.iterations);
    expect(timed.proof).toBe('none');
  });

  it('stops by itself when the cost is down to the bound', () => {
    const size = 20;
    const distance = qaplib('nug20').problem.distance;
    const flow = new Float64Array(size * size);
    flow[1] = 3;
    flow[size] = 3;
    const answer = solveAssignment({ size, distance, flow, seed: 1, budget: { iterations: 100_000 } });
    expect(answer).toMatchObject({ cost: 6, lowerBound: 6, proof: 'boundReached' });
    expect(answer.iterations).toBeLessThan(1000);
  });

  it('leaves fixed items where they are', () => {
    const { problem, best } = qaplib('nug15');
    const fixed = new Int32Array(15).fill(-1);
    fixed[0] = 14;
    fixed[7] = 3;
    const answer = solveAssignment({ ...problem, fixed, seed: 1, budget: { iterations: 20_000 } });
    expect([answer.places[0], answer.places[7]]).toEqual([14, 3]);
    expect(answer.cost).toBe(costByDefinition(problem, answer.places));
    expect(answer.cost).toBeGreaterThanOrEqual(best);
    expect(answer.lowerBound).toBeLessThanOrEqual(answer.cost);
  });

  it('refuses tables that do not fit, numbers that are none, places given twice, and a budget without end', () => {
    const { problem } = qaplib('nug12');
    const solve = (change: object) =>
      solveAssignment({ ...problem, seed: 1, budget: { iterations: 1 }, ...change });
    expect(() => solve({ flow: new Float64Array(9) })).toThrow('flow has 9 entries, not 144');
    expect(() => solve({ linear: new Float64Array(144).fill(Number.NaN) })).toThrow('linear[0] is NaN');
    expect(() => solve({ fixed: new Int32Array(12) })).toThrow('two items fixed at place 0');
    expect(() => solve({ fixed: new Int32Array(12).fill(12) })).toThrow('item 0 fixed at 12');
    expect(() => solve({ size: 2.5 })).toThrow('size 2.5 is no count');
    expect(() => solve({ budget: {} })).toThrow('neither a budget nor a way to stop');
    expect(() => solve({ budget: { milliseconds: 5 } })).toThrow('needs a clock');
  });
});

/**
 * W. P. Adams and T. A. Johnson, DIMACS Series 16 (1994) 43–75: y stands for 'i at q and j at p' (i < j) and sums over p to
 * 'i at q', over q to 'j at p'. Exact for any signs; diagonals must be 0.
 */
function asProgram({ size, flow, distance, linear }: Parameters<typeof costByDefinition>[0]): string {
  const all = Array.from({ length: size }, (_, at) => at);
  const x = (i: number, q: number) => `x_${i}_${q}`;
  const y = (i: number, q: number, j: number, p: number) =>
    i < j ? `y_${i}_${q}_${j}_${p}` : `y_${j}_${p}_${i}_${q}`;
  const sum = (terms: readonly string[]) => terms.join(' + ').replaceAll('+ -', '- ');
  const cells = all.flatMap((i) => all.map((q) => [i, q] as const));
  const pairs = cells.flatMap(([i, q]) =>
    cells.filter(([j, p]) => i < j && q !== p).map(([j, p]) => [i, q, j, p] as const),
  );
  const goal = [
    ...cells.map(([i, q]) => `${linear?.[i * size + q] ?? 0} ${x(i, q)}`),
    ...pairs.map(([i, q, j, p]) => {
      const there = flow[i * size + j]! * distance[q * size + p]!;
      return `${there + flow[j * size + i]! * distance[p * size + q]!} ${y(i, q, j, p)}`;
    }),
  ];
  const once = all.flatMap((at) => [
    `${sum(all.map((q) => x(at, q)))} = 1`,
    `${sum(all.map((i) => x(i, at)))} = 1`,
  ]);
  const linked = cells.flatMap(([i, q]) =>
    all
      .filter((j) => j !== i)
      .map((j) => `${sum(all.filter((p) => p !== q).map((p) => y(i, q, j, p)))} - ${x(i, q)} = 0`),
  );
  const binaries = cells.map(([i, q]) => x(i, q)).join(' ');
  return `Minimize\n ${sum(goal)}\nSubject To\n ${[...once, ...linked].join('\n ')}\nBinary\n ${binaries}\nEnd`;
}

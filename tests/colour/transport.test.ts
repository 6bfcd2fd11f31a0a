import fc from 'fast-check';
import loadHighs from 'highs';
import { beforeAll, describe, expect, it } from 'vitest';
import { leastTransport } from '../../src/colour/transport';
import { runs } from '../runs';
import { SEED } from './arbitraryColours';

type Solver = Awaited<ReturnType<typeof loadHighs>>;
interface Plan {
  readonly supplies: readonly number[];
  readonly demands: readonly number[];
  readonly costs: readonly (readonly number[])[];
}

const shares = (weights: readonly number[]): number[] => {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / total);
};

/** One to eight places on each side; costs whole so often that ties are common. */
const anyPlan: fc.Arbitrary<Plan> = fc
  .tuple(fc.integer({ min: 1, max: 8 }), fc.integer({ min: 1, max: 8 }), fc.boolean())
  .chain(([from, to, whole]) =>
    fc.record({
      supplies: fc.array(fc.integer({ min: 1, max: 50 }), { minLength: from, maxLength: from }).map(shares),
      demands: fc.array(fc.integer({ min: 1, max: 50 }), { minLength: to, maxLength: to }).map(shares),
      costs: fc.array(
        fc.array(whole ? fc.integer({ min: 0, max: 4 }) : fc.double({ min: 0, max: 100, noNaN: true }), {
          minLength: to,
          maxLength: to,
        }),
        { minLength: from, maxLength: from },
      ),
    }),
  );

/** The same problem as a linear programme, for the HiGHS solver. */
function programme({ supplies, demands, costs }: Plan): string {
  const cell = (from: number, to: number) => `x${from}_${to}`;
  // Fixed decimals: the text format does not take exponents everywhere.
  const objective = costs.flatMap((row, from) =>
    row.map((cost, to) => `${cost.toFixed(9)} ${cell(from, to)}`),
  );
  const out = supplies.map(
    (supply, from) =>
      `s${from}: ${demands.map((_, to) => cell(from, to)).join(' + ')} = ${supply.toFixed(12)}`,
  );
  // One demand is implied by the others; stating it too could contradict them in the last decimal.
  const into = demands
    .slice(1)
    .map(
      (demand, index) =>
        `d${index + 1}: ${supplies.map((_, from) => cell(from, index + 1)).join(' + ')} = ${demand.toFixed(12)}`,
    );
  return `Minimize\n obj: ${objective.join(' + ')}\nSubject To\n ${[...out, ...into].join('\n ')}\nEnd`;
}

describe('Carrying shares at the least cost', () => {
  let highs: Solver;
  beforeAll(async () => {
    highs = await loadHighs();
  });

  it('finds the optimum that a linear programming solver finds', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const reference = highs.solve(programme(plan), { output_flag: false });
        expect(reference.Status).toBe('Optimal');
        expect(leastTransport(plan.supplies, plan.demands, plan.costs)).toBeCloseTo(
          reference.ObjectiveValue,
          5,
        );
      }),
      { seed: SEED, numRuns: runs(100, 300) },
    );
  });

  it('agrees with the closed form along a line: the area between the two running totals', () => {
    // Vallender, 'Calculation of the Wasserstein distance between probability distributions on the line', 1974.
    const side = fc.array(fc.tuple(fc.integer({ min: 0, max: 100 }), fc.integer({ min: 1, max: 50 })), {
      minLength: 1,
      maxLength: 8,
    });
    fc.assert(
      fc.property(side, side, (from, to) => {
        const supplies = shares(from.map(([, weight]) => weight));
        const demands = shares(to.map(([, weight]) => weight));
        const costs = from.map(([place]) => to.map(([other]) => Math.abs(place - other)));
        let area = 0;
        for (let place = 0; place < 100; place += 1) {
          const below = (points: readonly (readonly [number, number])[], parts: readonly number[]) =>
            parts.reduce((sum, part, index) => sum + (points[index]![0] <= place ? part : 0), 0);
          area += Math.abs(below(from, supplies) - below(to, demands));
        }
        expect(leastTransport(supplies, demands, costs)).toBeCloseTo(area, 8);
      }),
      { seed: SEED },
    );
  });

  it('takes an earlier parcel back where that is cheaper, which a greedy plan would not', () => {
    // The greedy plan pays 0 for the first half and 10 for the second; crossing over pays 1 and 1.
    expect(
      leastTransport(
        [0.5, 0.5],
        [0.5, 0.5],
        [
          [0, 1],
          [1, 10],
        ],
      ),
    ).toBeCloseTo(1, 12);
  });

  it('leaves a share of nothing alone', () => {
    expect(
      leastTransport(
        [0, 1, 0],
        [1, 0],
        [
          [5, 5],
          [2, 9],
          [7, 7],
        ],
      ),
    ).toBeCloseTo(2, 12);
  });
});

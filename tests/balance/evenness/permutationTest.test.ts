// Chance by seeded permutations against closed forms, against full enumeration, and false discoveries against a worked example.
import { describe, expect, it } from 'vitest';
import { moran } from '../../../src/balance/evenness/autocorrelation';
import { measureLayer, upperNormal } from '../../../src/balance/evenness/clustering';
import {
  discoveries,
  drawPermutations,
  permutedSums,
  permutedTotals,
  pseudoP,
} from '../../../src/balance/evenness/permutationTest';
import { dice } from '../tops';
import { lattice } from './lattice';
import { LATTICE_CASES } from './latticeFigures';
import { localMoments } from './localMoments';

const CLUSTERED = LATTICE_CASES.find((one) => one.id === '5x6_clustered' && one.contiguity === 'rook')!;

describe('permutations', () => {
  it('give the neighbour sums the mean and variance of the closed form (spdep, conditional)', () => {
    const { values } = CLUSTERED;
    const graph = lattice(5, 6, 'rook');
    const permutations = { ...drawPermutations(30, 4, 5) };
    const moments = localMoments(graph, values);
    const mean = values.reduce((sum, one) => sum + one, 0) / 30;
    const m2 = values.reduce((sum, one) => sum + (one - mean) ** 2, 0) / 30;
    // Node 7 is inside: four neighbours. Permutations that hold it are left out, as pseudoP does.
    const node = 7;
    const dealt = permutedSums(
      permutations,
      values.map((one) => one - mean),
      [1, 1, 1, 1],
    );
    const kept = Array.from(dealt.sums).filter(
      (_, tuple) => !permutations.tuples.subarray(tuple * 4, tuple * 4 + 4).includes(node),
    );
    const factor = (values[node]! - mean) / m2;
    const local = kept.map((sum) => sum * factor);
    const average = local.reduce((sum, one) => sum + one, 0) / local.length;
    const spread = local.reduce((sum, one) => sum + (one - average) ** 2, 0) / local.length;
    const error = Math.sqrt(moments.variance[node]! / local.length);
    expect(Math.abs(average - moments.expected[node]!)).toBeLessThan(4 * error);
    expect(spread / moments.variance[node]!).toBeGreaterThan(0.85);
    expect(spread / moments.variance[node]!).toBeLessThan(1.15);
  });

  it('give the p of full enumeration', () => {
    const random = dice(11);
    const values = Array.from({ length: 12 }, () => random.below(100));
    const permutations = drawPermutations(12, 2, 3);
    const dealt = permutedSums(permutations, values, [1, 2]);
    for (const node of [0, 4, 9]) {
      const others = values.map((_, at) => at).filter((at) => at !== node);
      const sums = others.flatMap((one) =>
        others.filter((other) => other !== one).map((other) => values[one]! + 2 * values[other]!),
      );
      for (const observed of [80, 150, 220]) {
        const exact = sums.filter((sum) => sum >= observed).length / sums.length;
        const found = pseudoP(permutations, dealt, node, observed, true);
        expect(Math.abs(found - exact)).toBeLessThan(4 * Math.sqrt((exact * (1 - exact)) / 1500) + 2e-3);
        const low = sums.filter((sum) => sum <= observed).length / sums.length;
        expect(Math.abs(pseudoP(permutations, dealt, node, observed, false) - low)).toBeLessThan(0.055);
      }
    }
  });

  it('of all values give Moran the mean and variance of Cliff and Ord', () => {
    const graph = lattice(5, 6, 'rook');
    const exact = moran(graph, CLUSTERED.values);
    const [products] = permutedTotals(graph, [CLUSTERED.values], 4000, 9);
    const mean = CLUSTERED.values.reduce((sum, one) => sum + one, 0) / 30;
    const power = CLUSTERED.values.reduce((sum, one) => sum + (one - mean) ** 2, 0);
    const dealtI = Array.from(products!, (product) => (30 * product) / (98 * power));
    const average = dealtI.reduce((sum, one) => sum + one, 0) / 4000;
    const variance = dealtI.reduce((sum, one) => sum + (one - average) ** 2, 0) / 4000;
    expect(Math.abs(average - exact.expected)).toBeLessThan(4 * Math.sqrt(exact.variance / 4000));
    expect(variance / exact.variance).toBeGreaterThan(0.9);
    expect(variance / exact.variance).toBeLessThan(1.1);
  });

  it('repeat for a seed', () => {
    expect(drawPermutations(20, 3, 4).tuples).toEqual(drawPermutations(20, 3, 4).tuples);
    expect(drawPermutations(20, 3, 4).tuples).not.toEqual(drawPermutations(20, 3, 5).tuples);
  });
});

describe('pools of a lattice', () => {
  it('find the two ends of a clustered lattice and nothing in a mixed one', () => {
    const graph = lattice(5, 6, 'rook');
    const clustered = measureLayer(
      { graph, fixedGraph: graph, values: [Float64Array.from(CLUSTERED.values)], seed: 1 },
      null,
    ).figures[0]!;
    expect(clustered.whole.p).toBe(1 / 500);
    expect(clustered.pool[0]).toBe(1);
    expect(clustered.pool[29]).toBe(-1);
    expect(Array.from(clustered.local)).toEqual(CLUSTERED.local.map((value) => expect.closeTo(value, 7)));
    const random = dice(3);
    const mixed = Float64Array.from({ length: 30 }, () => random.part());
    const layer = measureLayer({ graph, fixedGraph: graph, values: [mixed], seed: 1 }, null);
    expect(Array.from(layer.figures[0]!.pool).some((one) => one !== 0)).toBe(false);
  });

  it('are rarely found in tops dealt by chance: at most one in ten has any', () => {
    const graph = lattice(8, 10, 'rook');
    const random = dice(17);
    let withPool = 0;
    for (let top = 0; top < 100; top++) {
      const values = Float64Array.from({ length: 80 }, () => random.part() + random.part() + random.part());
      if (
        measureLayer({ graph, fixedGraph: null, values: [values], seed: 1 }, null).figures[0]!.pool.some(
          (one) => one !== 0,
        )
      )
        withPool += 1;
    }
    // 10 expected at most; 19 leaves three standard deviations.
    expect(withPool).toBeLessThanOrEqual(19);
  });
});

describe('false discoveries', () => {
  it('are held as in the worked example of Benjamini and Hochberg (1995), 15 p-values at 0.05', () => {
    // J. R. Statist. Soc. B 57, section 3.2; the four smallest are rejected (cited from memory).
    const p = [
      0.0001, 0.0004, 0.0019, 0.0095, 0.0201, 0.0278, 0.0298, 0.0344, 0.0459, 0.324, 0.4262, 0.5719, 0.6528,
      0.759, 1,
    ];
    expect(Array.from(discoveries(p, 0.05))).toEqual(p.map((_, at) => (at < 4 ? 1 : 0)));
  });
  it('leave out what is no test', () => {
    expect(Array.from(discoveries([Number.NaN, 0.04, Number.NaN], 0.05))).toEqual([0, 1, 0]);
    expect(Array.from(discoveries([], 0.05))).toEqual([]);
  });
  it('normal tails agree with published table values', () => {
    // Standard normal table: 1.6449 → 0.05, 1.9600 → 0.025, 2.3263 → 0.01, 0 → 0.5.
    expect(upperNormal(1.644854)).toBeCloseTo(0.05, 6);
    expect(upperNormal(1.959964)).toBeCloseTo(0.025, 6);
    expect(upperNormal(-2.326348)).toBeCloseTo(0.99, 6);
    expect(upperNormal(0)).toBeCloseTo(0.5, 7);
  });
});

// Moran and join counts against R spdep (see latticeFigures) and closed forms of Cliff and Ord (1981).
import { describe, expect, it } from 'vitest';
import { centred, joinsOfLabels, moran, weightSums } from '../../../src/balance/evenness/autocorrelation';
import { measureLayer } from '../../../src/balance/evenness/clustering';
import type { ContactGraph } from '../../../src/balance/wall/contactGraph';
import { lattice } from './lattice';
import { JOIN_CASES, LATTICE_CASES, THREE_COLOURS } from './latticeFigures';
import { localMoments } from './localMoments';

/** Local Moran as pools are measured by it. */
function localMoran(graph: ContactGraph, values: readonly number[]): Float64Array {
  const layer = measureLayer({ graph, fixedGraph: null, values: [Float64Array.from(values)], seed: 1 }, null);
  return layer.figures[0]!.local;
}

describe('likeness of neighbours on a lattice', () => {
  for (const one of LATTICE_CASES) {
    const graph = lattice(one.rows, one.columns, one.contiguity);
    it(`agrees with spdep on Moran's I and its variance: ${one.id}, ${one.contiguity}`, () => {
      const found = moran(graph, one.values);
      expect(found.statistic).toBeCloseTo(one.moran, 10);
      expect(found.expected).toBeCloseTo(-1 / (one.values.length - 1), 12);
      expect(found.variance).toBeCloseTo(one.moranVariance, 10);
    });
    it(`agrees with spdep on local Moran and its conditional moments: ${one.id}, ${one.contiguity}`, () => {
      const local = localMoran(graph, one.values);
      const moments = localMoments(graph, one.values);
      one.local.forEach((value, node) => {
        expect(local[node]).toBeCloseTo(value, 7);
        expect(moments.expected[node]).toBeCloseTo(one.localExpected[node]!, 7);
        expect(moments.variance[node]).toBeCloseTo(one.localVariance[node]!, 6);
      });
    });
    it(`sums local Moran to S0 times the whole: ${one.id}, ${one.contiguity}`, () => {
      const sum = localMoran(graph, one.values).reduce((total, value) => total + value, 0);
      expect(sum).toBeCloseTo(weightSums(graph).s0 * one.moran, 9);
    });
  }
  it('does not change when all contacts are twice as long', () => {
    const one = LATTICE_CASES[1]!;
    const plain = moran(lattice(4, 4, 'rook'), one.values);
    const doubled = moran(lattice(4, 4, 'rook', 2), one.values);
    expect(doubled.statistic).toBeCloseTo(plain.statistic, 12);
    expect(doubled.variance).toBeCloseTo(plain.variance, 12);
  });
  it('says nothing where nothing varies', () => {
    const flat = Array.from({ length: 16 }, () => 41.7);
    expect(moran(lattice(4, 4, 'rook'), flat).z).toBe(0);
    expect(centred(flat).m2).toBe(0);
  });
});

describe('join counts', () => {
  for (const one of JOIN_CASES) {
    it(`agree with spdep and full enumeration: ${one.id}, ${one.contiguity}`, () => {
      const found = joinsOfLabels(lattice(4, 4, one.contiguity), one.marked, 2)[1]!;
      expect(found.both.statistic).toBe(one.both);
      expect(found.mixed.statistic).toBe(one.mixed);
      expect(found.neither).toBeCloseTo(one.neither, 10);
      expect(found.both.expected).toBeCloseTo(one.expectBoth, 10);
      expect(found.both.variance).toBeCloseTo(one.varBoth, 9);
      expect(found.mixed.expected).toBeCloseTo(one.expectMixed, 10);
      expect(found.mixed.variance).toBeCloseTo(one.varMixed, 9);
    });
  }
  it('of each of three colours agree with spdep', () => {
    for (const colour of ['a', 'b', 'c'] as const) {
      const marked = THREE_COLOURS.colours.map((one) => (one === colour ? 1 : 0));
      const { both } = joinsOfLabels(lattice(4, 4, 'rook'), marked, 2)[1]!;
      const [joins, expected, variance] = THREE_COLOURS.joins[colour];
      expect(both.statistic).toBe(joins);
      expect(both.expected).toBeCloseTo(expected, 10);
      expect(both.variance).toBeCloseTo(variance, 9);
    }
  });
});

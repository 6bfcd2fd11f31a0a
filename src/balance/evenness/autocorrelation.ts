// Likeness of neighbours on a weighted graph: Moran's I and join counts with their moments under random labelling. Local Moran
// is left to clustering.ts. Formulas: Cliff and Ord, Spatial Processes (1981).
import type { ContactGraph } from '../wall/contactGraph';

/** A global statistic with its mean and variance when the values are dealt to the nodes at random. */
export interface Autocorrelation {
  readonly statistic: number;
  readonly expected: number;
  readonly variance: number;
  /** (statistic − expected) / √variance; 0 where it cannot vary. */
  readonly z: number;
}

/** Sums over the weights: S0 = Σw, S1 = ½Σ(w_ij + w_ji)², S2 = Σ(row + column sum)². For weights the same both ways. */
export interface WeightSums {
  readonly s0: number;
  readonly s1: number;
  readonly s2: number;
}

export function weightSums(graph: ContactGraph): WeightSums {
  let s0 = 0;
  let s1 = 0;
  let s2 = 0;
  for (let node = 0; node < graph.size; node++) {
    let row = 0;
    for (let at = graph.start[node]!; at < graph.start[node + 1]!; at++) {
      const weight = graph.weight[at]!;
      row += weight;
      s1 += 2 * weight * weight;
    }
    s0 += row;
    s2 += 4 * row * row;
  }
  return { s0, s1, s2 };
}

/** Values minus their mean, with m2 = Σz²/n and the kurtosis b2 = m4/m2² (0 where nothing varies). */
export function centred(values: ArrayLike<number>): { z: Float64Array; m2: number; b2: number } {
  const n = values.length;
  let mean = 0;
  for (let i = 0; i < n; i++) mean += values[i]! / n;
  const z = new Float64Array(n);
  let m2 = 0;
  let m4 = 0;
  for (let i = 0; i < n; i++) {
    const square = (values[i]! - mean) ** 2;
    z[i] = values[i]! - mean;
    m2 += square / n;
    m4 += (square * square) / n;
  }
  // Rounding alone must not pass for variation.
  if (m2 < 1e-18 * (1 + mean * mean)) return { z: new Float64Array(n), m2: 0, b2: 0 };
  return { z, m2, b2: m4 / m2 ** 2 };
}

function asAutocorrelation(statistic: number, expected: number, variance: number): Autocorrelation {
  const z = variance > 1e-15 ? (statistic - expected) / Math.sqrt(variance) : 0;
  return { statistic, expected, variance, z };
}

/** Σ w_ij x_j over the neighbours of each node. */
export function lags(graph: ContactGraph, values: ArrayLike<number>): Float64Array {
  const sums = new Float64Array(graph.size);
  for (let node = 0; node < graph.size; node++) {
    let sum = 0;
    for (let at = graph.start[node]!; at < graph.start[node + 1]!; at++) {
      sum += graph.weight[at]! * values[graph.to[at]!]!;
    }
    sums[node] = sum;
  }
  return sums;
}

/**
 * Moran's I = n/S0 · Σ w_ij z_i z_j / Σ z_i², with its moments under randomisation. Values that do not vary, no contacts or
 * fewer than four nodes give I and z of 0. Weights must be the same both ways.
 */
export function moran(graph: ContactGraph, values: ArrayLike<number>): Autocorrelation {
  const n = graph.size;
  const { s0, s1, s2 } = weightSums(graph);
  const { z, m2, b2 } = centred(values);
  if (n < 4 || s0 === 0 || m2 === 0) return { statistic: 0, expected: 0, variance: 0, z: 0 };
  const lag = lags(graph, z);
  let cross = 0;
  for (let i = 0; i < n; i++) cross += z[i]! * lag[i]!;
  const expected = -1 / (n - 1);
  const second =
    (n * ((n * n - 3 * n + 3) * s1 - n * s2 + 3 * s0 * s0) -
      b2 * ((n * n - n) * s1 - 2 * n * s2 + 6 * s0 * s0)) /
    ((n - 1) * (n - 2) * (n - 3) * s0 * s0);
  return asAutocorrelation(cross / (s0 * m2), expected, second - expected ** 2);
}

/** Joins of a two-way labelling: both marked, one marked, neither; with moments when the marks are dealt at random. */
export interface JoinCounts {
  readonly both: Autocorrelation;
  readonly mixed: Autocorrelation;
  readonly neither: number;
}

/**
 * Join counts of each label in turn against all others, sampling without replacement (the number of nodes of a label is given).
 * With weights in inches the counts are inches of join. Labels are 0 to count − 1. Fewer than four nodes have variance 0.
 */
export function joinsOfLabels(graph: ContactGraph, labels: ArrayLike<number>, count: number): JoinCounts[] {
  const nodes = new Float64Array(count);
  const both = new Float64Array(count);
  const mixed = new Float64Array(count);
  for (let i = 0; i < graph.size; i++) {
    const own = labels[i]!;
    nodes[own]! += 1;
    for (let at = graph.start[i]!; at < graph.start[i + 1]!; at++) {
      if (labels[graph.to[at]!] === own) both[own]! += graph.weight[at]! / 2;
      else mixed[own]! += graph.weight[at]!;
    }
  }
  const sums = weightSums(graph);
  return Array.from(nodes, (marked, label) => {
    const by = joinMoments(graph.size, marked, sums);
    return {
      both: asAutocorrelation(both[label]!, by.both, by.varBoth),
      mixed: asAutocorrelation(mixed[label]!, by.mixed, by.varMixed),
      neither: sums.s0 / 2 - both[label]! - mixed[label]!,
    };
  });
}

/** Means and variances of the joins of `count` marks dealt to n nodes. */
function joinMoments(n: number, count: number, { s0, s1, s2 }: WeightSums) {
  const falling = (x: number, k: number) =>
    Array.from({ length: k }, (_, j) => x - j).reduce((p, f) => p * f, 1);
  const rest = n - count;
  const both = n < 2 ? 0 : (s0 * falling(count, 2)) / (2 * falling(n, 2));
  const mixed = n < 2 ? 0 : (s0 * count * rest) / falling(n, 2);
  if (n < 4) return { both, mixed, varBoth: 0, varMixed: 0 };
  const apart = s0 * s0 + s1 - s2;
  const varBoth =
    ((s1 * falling(count, 2)) / falling(n, 2) +
      ((s2 - 2 * s1) * falling(count, 3)) / falling(n, 3) +
      (apart * falling(count, 4)) / falling(n, 4)) /
      4 -
    both ** 2;
  const varMixed =
    ((2 * s1 * count * rest) / falling(n, 2) +
      ((s2 - 2 * s1) * count * rest * (n - 2)) / falling(n, 3) +
      (4 * apart * falling(count, 2) * falling(rest, 2)) / falling(n, 4)) /
      4 -
    mixed ** 2;
  return { both, mixed, varBoth, varMixed };
}

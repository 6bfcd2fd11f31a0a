// Measures how alike neighbours are in one figure (value, OKLab a or b) at one scale: the whole (Moran's I) and every node (local
// Moran), with p by seeded permutations and false discoveries kept in check. It takes over what an earlier measurement answers.

import type { ContactGraph } from '../wall/contactGraph';
import { type Autocorrelation, centred, lags, moran } from './autocorrelation';
import {
  crossProduct,
  discoveries,
  drawPermutations,
  type Permutations,
  type PermutedSums,
  permutedSums,
  permutedTotals,
  pseudoP,
  wholeP,
} from './permutationTest';

/** Of the pools drawn at a scale at most this share is expected to be chance. */
const FALSE_DISCOVERIES = 0.1;
const WHOLE_DEALS = 499;

export interface Clustering {
  readonly values: Float64Array;
  /** Standardised values, and the weighted mean of the neighbours' (0 without neighbours). */
  readonly z: Float64Array;
  readonly lag: Float64Array;
  /** Local Moran I_i, weights as they are. */
  readonly local: Float64Array;
  /** Chance that neighbours dealt at random lie as far out on the node's own side; NaN without neighbours. */
  readonly p: Float64Array;
  /** 1: high among high, −1: low among low, beyond chance; else 0. */
  readonly pool: Int8Array;
  /** The whole, with the p (high side) by permutations where `wholes` is given, else by the normal approximation. */
  readonly whole: Autocorrelation & { readonly p: number };
  /** For taking over into the next measurement. */
  readonly dealt: ReadonlyMap<string, PermutedSums>;
  readonly byNode: readonly PermutedSums[];
  readonly sums: Float64Array;
  readonly wholes: Float64Array | null;
}

/** Figures measured together on one graph. */
export interface Layer {
  readonly graph: ContactGraph;
  readonly fixedGraph: ContactGraph | null;
  readonly permutations: Permutations;
  readonly figures: readonly Clustering[];
}

export interface LayerInput {
  readonly graph: ContactGraph;
  /** The same contacts numbered so that they do not depend on the arrangement; null: no permutations for the whole. */
  readonly fixedGraph: ContactGraph | null;
  readonly values: readonly Float64Array[];
  readonly seed: number;
}

/** Measures all figures; takes over from `previous` whatever is certain to be the same, so that the result does not depend on it. */
export function measureLayer(input: LayerInput, previous: Layer | null): Layer {
  const { graph, values, seed } = input;
  const reach = Math.min(
    Math.max(1, graph.size - 1),
    graph.profiles.reduce((most, profile) => Math.max(most, profile.length), 1),
  );
  const known = previous?.permutations;
  const kept = known && known.size === graph.size && known.reach === reach && known.seed === seed;
  const permutations = kept ? known : drawPermutations(graph.size, reach, seed);
  const earlier = values.map((list, at) => {
    const figure = kept ? previous.figures[at] : undefined;
    return figure && (figure.values === list || sameNumbers(figure.values, list)) ? figure : null;
  });
  const wholes = wholeDeals(input, earlier, previous);
  const figures = values.map((list, at) =>
    measureFigure(graph, permutations, list, wholes === null ? null : wholes[at]!, earlier[at]!),
  );
  return { graph, fixedGraph: input.fixedGraph, permutations, figures };
}

function wholeDeals(
  input: LayerInput,
  earlier: readonly (Clustering | null)[],
  previous: Layer | null,
): readonly Float64Array[] | null {
  if (!input.fixedGraph) return null;
  const old = earlier.map((figure) => figure?.wholes ?? null);
  if (old.every((one) => one !== null) && sameGraph(previous?.fixedGraph ?? null, input.fixedGraph))
    return old;
  return permutedTotals(input.fixedGraph, input.values, WHOLE_DEALS, input.seed + 1);
}

function sameGraph(one: ContactGraph | null, other: ContactGraph): boolean {
  return (
    one !== null &&
    sameNumbers(one.start, other.start) &&
    sameNumbers(one.to, other.to) &&
    sameNumbers(one.weight, other.weight)
  );
}

function sameNumbers(one: ArrayLike<number>, other: ArrayLike<number>): boolean {
  if (one.length !== other.length) return false;
  for (let at = 0; at < one.length; at++) if (one[at] !== other[at]) return false;
  return true;
}

function measureFigure(
  graph: ContactGraph,
  permutations: Permutations,
  values: Float64Array,
  wholes: Float64Array | null,
  earlier: Clustering | null,
): Clustering {
  const { z: raw, m2 } = centred(values);
  const deviation = Math.sqrt(m2);
  const mean = values.length > 0 ? values[0]! - raw[0]! : 0;
  const z = deviation === 0 ? raw : raw.map((value) => value / deviation);
  const sums = lags(graph, values);
  const dealt = new Map(earlier?.dealt);
  const byProfile = graph.profiles.map((weights) => {
    const key = weights.join();
    let found = dealt.get(key);
    if (!found) {
      found = permutedSums(permutations, values, weights.slice(0, permutations.reach));
      dealt.set(key, found);
    }
    return found;
  });
  const totals = graph.profiles.map((weights) => weights.reduce((sum, weight) => sum + weight, 0));
  const { size } = graph;
  const byNode: PermutedSums[] = [];
  const p = new Float64Array(size);
  for (let node = 0; node < size; node++) {
    const own = byProfile[graph.profile[node]!]!;
    byNode.push(own);
    if (own.neighbours === 0) p[node] = Number.NaN;
    else if (earlier && earlier.byNode[node] === own && earlier.sums[node] === sums[node]) {
      p[node] = earlier.p[node]!;
    } else p[node] = deviation === 0 ? 1 : pseudoP(permutations, own, node, sums[node]!, z[node]! > 0);
  }
  const believe = discoveries(p, FALSE_DISCOVERIES);
  const lag = new Float64Array(size);
  const local = new Float64Array(size);
  const pool = new Int8Array(size);
  for (let node = 0; node < size; node++) {
    const total = totals[graph.profile[node]!]!;
    const zSum = deviation === 0 ? 0 : (sums[node]! - mean * total) / deviation;
    lag[node] = zSum / (total || 1);
    local[node] = z[node]! * zSum;
    if (believe[node] && local[node]! > 0) pool[node] = Math.sign(z[node]!);
  }
  const whole = moran(graph, values);
  return {
    values,
    z,
    lag,
    local,
    p,
    pool,
    whole: {
      ...whole,
      p: m2 === 0 ? 1 : wholes ? wholeP(wholes, crossProduct(graph, raw)) : upperNormal(whole.z),
    },
    dealt,
    byNode,
    sums,
    wholes,
  };
}

/** Chance of a standard normal figure above z (Abramowitz and Stegun 26.2.17, error below 8e-8). */
export function upperNormal(z: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const series =
    t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  const tail = (Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)) * series;
  return z >= 0 ? tail : 1 - tail;
}

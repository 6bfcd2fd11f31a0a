// Tests against chance by seeded permutations: of values to the neighbours of a node (conditional permutation, Anselin 1995),
// shared by all nodes with the same weights, and of all values to all nodes. It keeps false discoveries in check.
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { ContactGraph } from '../wall/contactGraph';
import { centred } from './autocorrelation';

/** Random tuples of different nodes, and for each node the tuples it is in. */
export interface Permutations {
  readonly size: number;
  /** Nodes in a tuple: the most neighbours any node has. */
  readonly reach: number;
  readonly seed: number;
  readonly count: number;
  /** tuple × reach. */
  readonly tuples: Int32Array;
  /** Where each node occurs: indices into `tuples`, from occursStart[n] to occursStart[n + 1]. */
  readonly occursStart: Int32Array;
  readonly occurs: Int32Array;
}

/**
 * Permutations for nodes with up to `reach` neighbours: six a node, at least 1999. With a step-up at q = 0.1 two nodes at the least
 * possible p are discoveries then, and up to 330 nodes even one.
 */
export function drawPermutations(size: number, reach: number, seed: number): Permutations {
  const count = Math.max(1999, 6 * size);
  const random = xoroshiro128plus(seed);
  const tuples = new Int32Array(count * reach);
  for (let tuple = 0; tuple < count; tuple++) {
    const from = tuple * reach;
    for (let at = from; at < from + reach; ) {
      const pick = uniformInt(random, 0, size - 1);
      let fresh = true;
      for (let before = from; before < at; before++) if (tuples[before] === pick) fresh = false;
      if (fresh) tuples[at++] = pick;
    }
  }
  const occursStart = new Int32Array(size + 1);
  for (let at = 0; at < tuples.length; at++) occursStart[tuples[at]! + 1]! += 1;
  for (let node = 0; node < size; node++) occursStart[node + 1]! += occursStart[node]!;
  const next = occursStart.slice(0, size);
  const occurs = new Int32Array(tuples.length);
  for (let at = 0; at < tuples.length; at++) {
    const node = tuples[at]!;
    occurs[next[node]!] = at;
    next[node]! += 1;
  }
  return { size, reach, seed, count, tuples, occursStart, occurs };
}

/** Weighted sums of the dealt values for one class of weights: by tuple, and sorted. */
export interface PermutedSums {
  readonly neighbours: number;
  readonly sums: Float64Array;
  readonly sorted: Float64Array;
  /** Sums closer than this count as equal. */
  readonly slack: number;
}

export function permutedSums(
  permutations: Permutations,
  values: ArrayLike<number>,
  weights: readonly number[],
): PermutedSums {
  const { count, reach, tuples } = permutations;
  const sums = new Float64Array(count);
  const neighbours = weights.length;
  let largest = 0;
  for (let tuple = 0; tuple < count; tuple++) {
    let sum = 0;
    for (let at = 0; at < neighbours; at++) sum += weights[at]! * values[tuples[tuple * reach + at]!]!;
    sums[tuple] = sum;
    largest = Math.max(largest, Math.abs(sum));
  }
  return { neighbours, sums, sorted: sums.slice().sort(), slack: 1e-9 * largest };
}

/**
 * Pseudo p of a node's weighted neighbour sum, (1 + permutations at least as far out)/(1 + permutations): far out is high when `upper`,
 * else low. Permutations that hold the node itself are left out, which makes the rest fair permutations of all others: the conditional
 * permutation test, without dealing anew for every node.
 */
export function pseudoP(
  permutations: Permutations,
  dealt: PermutedSums,
  node: number,
  observed: number,
  upper: boolean,
): number {
  const bound = upper ? observed - dealt.slack : observed + dealt.slack;
  const below = countBelow(dealt.sorted, bound, !upper);
  let out = upper ? permutations.count - below : below;
  let all = permutations.count;
  for (let at = permutations.occursStart[node]!; at < permutations.occursStart[node + 1]!; at++) {
    const place = permutations.occurs[at]!;
    const tuple = Math.floor(place / permutations.reach);
    if (place - tuple * permutations.reach >= dealt.neighbours) continue;
    all -= 1;
    const sum = dealt.sums[tuple]!;
    if (upper ? sum >= bound : sum <= bound) out -= 1;
  }
  return (1 + out) / (1 + all);
}

/** How many sorted values are below the bound (or at it, when `including`). */
function countBelow(sorted: Float64Array, bound: number, including: boolean): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    const value = sorted[middle]!;
    if (value < bound || (including && value === bound)) low = middle + 1;
    else high = middle;
  }
  return low;
}

/**
 * Permutations of all nodes' values to all nodes, the same permutations for each list of values: for each list the sorted cross products
 * Σ w_ij z_i z_j of `count` random labellings, z the values less their mean.
 */
export function permutedTotals(
  graph: ContactGraph,
  lists: readonly ArrayLike<number>[],
  count: number,
  seed: number,
): Float64Array[] {
  const random = xoroshiro128plus(seed);
  const contacts = oneWay(graph);
  const all = lists.map((values) => centred(values).z);
  const dealt = new Float64Array(graph.size);
  const order = Int32Array.from({ length: graph.size }, (_, node) => node);
  const products = lists.map(() => new Float64Array(count));
  for (let deal = 0; deal < count; deal++) {
    for (let left = order.length - 1; left > 0; left--) {
      const pick = uniformInt(random, 0, left);
      const swapped = order[left]!;
      order[left] = order[pick]!;
      order[pick] = swapped;
    }
    for (let list = 0; list < all.length; list++) {
      const z = all[list]!;
      for (let node = 0; node < order.length; node++) dealt[node] = z[order[node]!]!;
      let product = 0;
      for (let at = 0; at < contacts.weight.length; at++) {
        product += contacts.weight[at]! * dealt[contacts.from[at]!]! * dealt[contacts.to[at]!]!;
      }
      products[list]![deal] = 2 * product;
    }
  }
  return products.map((list) => list.sort());
}

/** Every contact once. */
function oneWay(graph: ContactGraph): { from: Int32Array; to: Int32Array; weight: Float64Array } {
  const half = graph.to.length / 2;
  const from = new Int32Array(half);
  const to = new Int32Array(half);
  const weight = new Float64Array(half);
  let next = 0;
  for (let node = 0; node < graph.size; node++) {
    for (let at = graph.start[node]!; at < graph.start[node + 1]!; at++) {
      if (graph.to[at]! < node) continue;
      from[next] = node;
      to[next] = graph.to[at]!;
      weight[next] = graph.weight[at]!;
      next += 1;
    }
  }
  return { from, to, weight };
}

/** Σ w_ij z_i z_j over both directions of every contact. */
export function crossProduct(graph: ContactGraph, z: ArrayLike<number>): number {
  const { start, to, weight } = graph;
  let product = 0;
  for (let node = 0; node < graph.size; node++) {
    let lag = 0;
    for (let at = start[node]!; at < start[node + 1]!; at++) lag += weight[at]! * z[to[at]!]!;
    product += z[node]! * lag;
  }
  return product;
}

/** Pseudo p that chance gives a product at least as high as `observed`. 1 without permutations. */
export function wholeP(products: Float64Array, observed: number): number {
  const slack = 1e-9 * Math.max(Math.abs(products[0] ?? 0), Math.abs(products.at(-1) ?? 0));
  return (1 + products.length - countBelow(products, observed - slack, false)) / (1 + products.length);
}

/**
 * Which tests to believe so that at most the share q of those discoveries is expected to be chance (Benjamini and Hochberg,
 * 1995, step-up). p-values of NaN are no tests and are never discoveries.
 */
export function discoveries(p: ArrayLike<number>, q: number): Uint8Array {
  const found = new Uint8Array(p.length);
  let tests = 0;
  const small: number[] = [];
  for (let at = 0; at < p.length; at++) {
    if (Number.isNaN(p[at]!)) continue;
    tests += 1;
    if (p[at]! <= q) small.push(at);
  }
  small.sort((one, other) => p[one]! - p[other]!);
  let last = small.length - 1;
  while (last >= 0 && p[small[last]!]! > ((last + 1) * q) / tests) last -= 1;
  for (let at = 0; at <= last; at++) found[small[at]!] = 1;
  return found;
}

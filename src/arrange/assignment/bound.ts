// Owns the Gilmore–Lawler bound: a cost no arrangement can come below, found without looking for one. P. C. Gilmore,
// J. SIAM 10 (1962) 305–313; E. L. Lawler, Management Science 9 (1963) 586–599.
import { solveLinear } from './linear';
import type { ReducedProblem } from './problem';

/**
 * The Gilmore–Lawler bound of a reduced problem; rounded up if every cost is whole. O(n³).
 *
 * An item at a place costs at least its linear cost and its greatest flows times the least distances from there, in that
 * order (a rearrangement); the cheapest assignment at these prices bounds the whole. Fractional bounds give way by the grain.
 */
export function reducedBound(reduced: ReducedProblem): number {
  const { size: n, flow, distance, linear, constant, grain } = reduced;
  const flows = sortedRows(flow, n, -1);
  const distances = sortedRows(distance, n, 1);
  const others = n - 1;
  const least = new Float64Array(n * n);
  for (let item = 0; item < n; item++) {
    for (let place = 0; place < n; place++) {
      let sum = linear[item * n + place]!;
      for (let k = 0; k < others; k++) sum += flows[item * others + k]! * distances[place * others + k]!;
      least[item * n + place] = sum;
    }
  }
  const bound = constant + solveLinear(least, n).cost;
  return grain === 0.5 ? bound : bound - grain;
}

/** Each row without its diagonal entry, sorted up (1) or down (−1). */
function sortedRows(table: Float64Array, size: number, direction: 1 | -1): Float64Array {
  const sorted = new Float64Array(size * Math.max(0, size - 1));
  for (let row = 0; row < size; row++) {
    const others = table.slice(row * size, (row + 1) * size).filter((_, column) => column !== row);
    others.sort((one, other) => direction * (one - other));
    sorted.set(others, row * (size - 1));
  }
  return sorted;
}

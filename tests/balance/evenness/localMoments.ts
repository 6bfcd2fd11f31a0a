// The closed form that permutations of the neighbours of a node come to, as a check of them.
import { centred } from '../../../src/balance/evenness/autocorrelation';
import type { ContactGraph } from '../../../src/balance/wall/contactGraph';

/**
 * Mean and variance of local Moran I_i when all other values are dealt to the other nodes: −z_i² w_i/((n − 1) m2) and (after
 * Sokal, Oden and Thomson 1998) z_i²/m2² · s²(others) · ((n − 1) Σw² − (Σw)²)/(n − 2).
 */
export function localMoments(
  graph: ContactGraph,
  values: ArrayLike<number>,
): { expected: Float64Array; variance: Float64Array } {
  const n = graph.size;
  const { z, m2 } = centred(values);
  const expected = new Float64Array(n);
  const variance = new Float64Array(n);
  if (m2 === 0 || n < 3) return { expected, variance };
  for (let node = 0; node < n; node++) {
    let sum = 0;
    let squares = 0;
    for (let at = graph.start[node]!; at < graph.start[node + 1]!; at++) {
      sum += graph.weight[at]!;
      squares += graph.weight[at]! ** 2;
    }
    const own = z[node]!;
    const mean = -own / (n - 1);
    const spread = (n * m2 - own * own) / (n - 1) - mean * mean;
    expected[node] = (own * sum * mean) / m2;
    variance[node] = ((own / m2) ** 2 * spread * ((n - 1) * squares - sum * sum)) / (n - 2);
  }
  return { expected, variance };
}

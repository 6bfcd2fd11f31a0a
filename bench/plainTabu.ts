// The yardstick of the assignment engine: a plain robust tabu search (E. Taillard, Parallel Computing 17 (1991) 443–455), written
// from the paper's description alone, on symmetric tables with 0 on the diagonal, with the O(1) update of what swaps would cost.
import type { AssignmentProblem } from '../src/arrange/assignment/problem';
import { assignmentCost } from '../src/arrange/assignment/problem';
import { dice } from '../tests/balance/tops';

interface Limits {
  /** Stops at this cost. */
  readonly target: number;
  /** Whether time is up; asked every hundred swaps. */
  readonly isOver: () => boolean;
}

/** The best cost from a random start. Tenures 0.9 n to 1.1 n; a move long unmade (over 2 n² swaps) is made when it is legal. */
export function plainTabu(
  problem: AssignmentProblem,
  seed: number,
  { target, isOver }: Limits,
): { cost: number; swaps: number } {
  const { size: n, flow, distance } = problem;
  const random = dice(seed);
  const places = Int32Array.from({ length: n }, (_, at) => at);
  for (let at = n - 1; at > 0; at--) exchange(places, at, random.below(at + 1));
  const barred = new Float64Array(n * n).fill(-(n * n * 3));
  const delta = new Float64Array(n * n);
  for (let u = 0; u < n; u++) for (let v = u + 1; v < n; v++) delta[u * n + v] = anew(problem, places, u, v);
  let cost = assignmentCost(problem, places);
  let best = cost;
  let swaps = 0;
  while (best > target && (swaps % 100 > 0 || !isOver())) {
    swaps += 1;
    let [first, second, least, longed] = [-1, -1, Number.POSITIVE_INFINITY, false];
    for (let u = 0; u < n; u++) {
      for (let v = u + 1; v < n; v++) {
        const change = delta[u * n + v]!;
        const one = barred[u * n + places[v]!]!;
        const other = barred[v * n + places[u]!]!;
        const legal = one < swaps || other < swaps;
        const wanted = cost + change < best || (one < swaps - 2 * n * n && other < swaps - 2 * n * n);
        if (!legal && !wanted) continue;
        if ((wanted && !longed) || (wanted === longed && change < least)) {
          [first, second, least, longed] = [u, v, change, wanted];
        }
      }
    }
    if (first < 0) continue;
    barred[first * n + places[first]!] = swaps + Math.floor(n * (0.9 + 0.2 * random.part()));
    barred[second * n + places[second]!] = swaps + Math.floor(n * (0.9 + 0.2 * random.part()));
    exchange(places, first, second);
    cost += least;
    best = Math.min(best, cost);
    update(first, second);
  }
  return { cost: best, swaps };

  function update(r: number, s: number): void {
    const pr = places[r]! * n;
    const ps = places[s]! * n;
    for (let u = 0; u < n; u++) {
      for (let v = u + 1; v < n; v++) {
        if (u === r || u === s || v === r || v === s) {
          delta[u * n + v] = anew(problem, places, u, v);
          continue;
        }
        const flows = flow[r * n + u]! - flow[r * n + v]! + flow[s * n + v]! - flow[s * n + u]!;
        const ways =
          distance[ps + places[u]!]! -
          distance[ps + places[v]!]! +
          distance[pr + places[v]!]! -
          distance[pr + places[u]!]!;
        delta[u * n + v]! += 2 * flows * ways;
      }
    }
  }
}

function exchange(places: Int32Array, one: number, other: number): void {
  [places[one], places[other]] = [places[other]!, places[one]!];
}

function anew(
  { size: n, flow, distance }: AssignmentProblem,
  places: Int32Array,
  u: number,
  v: number,
): number {
  const pu = places[u]! * n;
  const pv = places[v]! * n;
  let sum = 0;
  for (let k = 0; k < n; k++) {
    if (k === u || k === v) continue;
    sum += (flow[u * n + k]! - flow[v * n + k]!) * (distance[pv + places[k]!]! - distance[pu + places[k]!]!);
  }
  return 2 * sum;
}

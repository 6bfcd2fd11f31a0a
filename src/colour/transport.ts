// Solves the transportation problem exactly: the least cost of carrying supplies to demands. cloth/likeness.ts uses it with
// the colour shares of two prints and the differences between their colours.

/** Number of equal parcels the whole is divided into, so that sums are exact and the search ends; one is ≈ 1e-12. */
const PARCELS = 2 ** 40;
/** A route replaces another only if it is cheaper by more than this rounding error. */
const ROUNDING = 1e-12;

function parcelled(shares: readonly number[]): number[] {
  const total = shares.reduce((sum, share) => sum + share, 0);
  let running = 0;
  let given = 0;
  return shares.map((share, index) => {
    running += share;
    const upTo = index === shares.length - 1 ? PARCELS : Math.round((running / total) * PARCELS);
    const parcels = upTo - given;
    given = upTo;
    return parcels;
  });
}

/**
 * The least total of amount × cost over all ways of carrying `supplies` to `demands`, both shares of one whole (non-negative,
 * sum 1), where `costs[i][j]` ≥ 0 is the cost from supply i to demand j. The error is at most 1e-12 of the greatest cost per place.
 *
 * Method: successive shortest paths (Ford and Fulkerson; see Ahuja, Magnanti and Orlin, 'Network Flows', 1993, §9.7): each
 * round sends as much as it can along the cheapest remaining path, which may take earlier parcels back. No round leaves a
 * negative cycle, so the result is optimal; because parcels are whole, the number of rounds is finite.
 */
export function leastTransport(
  supplies: readonly number[],
  demands: readonly number[],
  costs: readonly (readonly number[])[],
): number {
  const left = parcelled(supplies);
  const wanted = parcelled(demands);
  const flow = supplies.map(() => demands.map(() => 0));
  for (let source = 0; source < left.length; source += 1) {
    while (left[source]! > 0) send(source, left, wanted, flow, costs);
  }
  let total = 0;
  for (const [from, row] of flow.entries()) {
    for (const [to, parcels] of row.entries()) total += (parcels / PARCELS) * costs[from]![to]!;
  }
  return total;
}

/** The cheapest routes from one supply: the cost to each demand, and the predecessor of each place on its route. */
interface Routes {
  readonly costToDemand: readonly number[];
  readonly supplyBefore: readonly number[];
  readonly demandBefore: readonly number[];
}

/** The cheapest routes from `source` in the residual network, by Bellman–Ford. */
function cheapestRoutes(
  source: number,
  flow: readonly (readonly number[])[],
  costs: readonly (readonly number[])[],
): Routes {
  const costToSupply = flow.map((_, index) => (index === source ? 0 : Number.POSITIVE_INFINITY));
  const costToDemand = costs[0]!.map(() => Number.POSITIVE_INFINITY);
  const demandBefore = flow.map(() => -1);
  const supplyBefore = costToDemand.map(() => -1);
  let changed = true;
  while (changed) {
    changed = false;
    // Index loops, for speed: every comparison of two prints runs them.
    for (let from = 0; from < flow.length; from += 1) {
      const carried = flow[from]!;
      const rowCosts = costs[from]!;
      for (let to = 0; to < carried.length; to += 1) {
        const cost = rowCosts[to]!;
        if (costToSupply[from]! + cost < costToDemand[to]! - ROUNDING) {
          costToDemand[to] = costToSupply[from]! + cost;
          supplyBefore[to] = from;
          changed = true;
        }
        if (carried[to]! > 0 && costToDemand[to]! - cost < costToSupply[from]! - ROUNDING) {
          costToSupply[from] = costToDemand[to]! - cost;
          demandBefore[from] = to;
          changed = true;
        }
      }
    }
  }
  return { costToDemand, supplyBefore, demandBefore };
}

/** Sends as much as possible along the cheapest path from `source` to an unmet demand. Mutates its arrays. */
function send(
  source: number,
  left: number[],
  wanted: number[],
  flow: number[][],
  costs: readonly (readonly number[])[],
): void {
  const routes = cheapestRoutes(source, flow, costs);
  let goal = -1;
  for (const [to, want] of wanted.entries()) {
    if (want > 0 && (goal < 0 || routes.costToDemand[to]! < routes.costToDemand[goal]!)) goal = to;
  }
  if (goal < 0) throw new Error('leastTransport: more is supplied than wanted');
  const steps: { from: number; to: number; back: number }[] = [];
  let amount = Math.min(left[source]!, wanted[goal]!);
  for (let to = goal; ; ) {
    const from = routes.supplyBefore[to]!;
    const back = from === source ? -1 : routes.demandBefore[from]!;
    steps.push({ from, to, back });
    if (back < 0) break;
    amount = Math.min(amount, flow[from]![back]!);
    to = back;
  }
  for (const { from, to, back } of steps) {
    flow[from]![to]! += amount;
    if (back >= 0) flow[from]![back]! -= amount;
  }
  left[source]! -= amount;
  wanted[goal]! -= amount;
}

// Owns the quadratic assignment problem: its terms, what an arrangement costs, and its reduction to what is free.
// Σ over ordered pairs flow(i,j)·distance(place of i, place of j) + Σ linear(i, place of i), to be made least.

/** Items and places are numbered from 0; square tables lie row by row in one array. */
export interface AssignmentProblem {
  /** How many items, and as many places. Fewer items than places: add items without flow. */
  readonly size: number;
  /** From place to place, size × size. Need not be symmetric, nor 0 on the diagonal. */
  readonly distance: Float64Array;
  /** From item to item, size × size. Need not be symmetric, nor 0 on the diagonal. */
  readonly flow: Float64Array;
  /** Cost of item i at place j, at i × size + j; none unless given. */
  readonly linear?: Float64Array | undefined;
  /** The place an item must have, −1 for any; all free unless given. */
  readonly fixed?: Int32Array | undefined;
}

/** Two tables that are multiplied; either both symmetric or both skew-symmetric, with 0 on the diagonals. */
export interface QuadraticTerm {
  readonly flow: Float64Array;
  readonly distance: Float64Array;
}

/** The free items and places alone; what fixed items and diagonals add is in `linear` and `constant`. */
export interface ReducedProblem {
  readonly size: number;
  /** Free item and free place → their numbers in the whole problem. */
  readonly items: Int32Array;
  readonly freePlaces: Int32Array;
  readonly flow: Float64Array;
  readonly distance: Float64Array;
  /**
   * flow × distance as a sum of products of which each is symmetric or skew: ⟨F, D⟩ = ⟨sym F, sym D⟩ + ⟨skew F, skew D⟩,
   * exact always. The symmetric one is first; the skew one is missing when either table is symmetric.
   */
  readonly terms: readonly [symmetric: QuadraticTerm, skew?: QuadraticTerm];
  readonly linear: Float64Array;
  readonly constant: number;
  /** Costs that differ by less are the same: ½ for whole numbers, else 1e−12 of the greatest sum there can be. */
  readonly grain: number;
}

/** The cost of an arrangement (item → place). O(n²). */
export function assignmentCost(problem: AssignmentProblem, places: Int32Array): number {
  const { size: n, flow, distance, linear } = problem;
  let cost = 0;
  for (let i = 0; i < n; i++) {
    const row = places[i]! * n;
    for (let j = 0; j < n; j++) cost += flow[i * n + j]! * distance[row + places[j]!]!;
    if (linear) cost += linear[i * n + places[i]!]!;
  }
  return cost;
}

/** What the cost would change by if items u and v traded places; any tables. O(n), changes nothing. */
export function swapDelta(problem: AssignmentProblem, places: Int32Array, u: number, v: number): number {
  if (u === v) return 0;
  const { size: n, flow, distance, linear } = problem;
  const pu = places[u]!;
  const pv = places[v]!;
  let change =
    (flow[u * n + u]! - flow[v * n + v]!) * (distance[pv * n + pv]! - distance[pu * n + pu]!) +
    (flow[u * n + v]! - flow[v * n + u]!) * (distance[pv * n + pu]! - distance[pu * n + pv]!);
  for (let k = 0; k < n; k++) {
    if (k === u || k === v) continue;
    const place = places[k]!;
    change +=
      (flow[u * n + k]! - flow[v * n + k]!) * (distance[pv * n + place]! - distance[pu * n + place]!) +
      (flow[k * n + u]! - flow[k * n + v]!) * (distance[place * n + pv]! - distance[place * n + pu]!);
  }
  if (linear) change += linear[u * n + pv]! + linear[v * n + pu]! - linear[u * n + pu]! - linear[v * n + pv]!;
  return change;
}

/** Takes fixed items out and splits the tables. Throws where sizes, numbers or fixed places do not fit together. */
export function reduceAssignment(problem: AssignmentProblem): ReducedProblem {
  checkTables(problem);
  const { items, freePlaces, heldItems } = freeAndHeld(problem);
  const { size, fixed } = problem;
  const free = items.length;
  const flow = new Float64Array(free * free);
  const distance = new Float64Array(free * free);
  const linear = new Float64Array(free * free);
  const at = (table: Float64Array | undefined, row: number, column: number) =>
    table ? table[row * size + column]! : 0;
  let constant = 0;
  for (const i of heldItems) {
    constant += at(problem.linear, i, fixed![i]!);
    for (const j of heldItems)
      constant += at(problem.flow, i, j) * at(problem.distance, fixed![i]!, fixed![j]!);
  }
  for (let row = 0; row < free; row++) {
    for (let column = 0; column < free; column++) {
      const i = items[row]!;
      const q = freePlaces[column]!;
      if (row !== column) {
        flow[row * free + column] = at(problem.flow, i, items[column]!);
        distance[row * free + column] = at(problem.distance, freePlaces[row]!, q);
      }
      let cost = at(problem.linear, i, q) + at(problem.flow, i, i) * at(problem.distance, q, q);
      for (const k of heldItems) {
        cost +=
          at(problem.flow, i, k) * at(problem.distance, q, fixed![k]!) +
          at(problem.flow, k, i) * at(problem.distance, fixed![k]!, q);
      }
      linear[row * free + column] = cost;
    }
  }
  const terms = splitTerms(flow, distance, free);
  const grain = grainOf([flow, distance, linear], constant);
  return { size: free, items, freePlaces, flow, distance, terms, linear, constant, grain };
}

function checkTables({ size, distance, flow, linear }: AssignmentProblem): void {
  if (!Number.isInteger(size) || size < 0) throw new RangeError(`reduceAssignment: size ${size} is no count`);
  for (const [name, table] of Object.entries({ distance, flow, linear })) {
    if (!table) continue;
    if (table.length !== size * size) {
      throw new RangeError(`reduceAssignment: ${name} has ${table.length} entries, not ${size * size}`);
    }
    const odd = table.findIndex((one) => !Number.isFinite(one));
    if (odd >= 0) throw new RangeError(`reduceAssignment: ${name}[${odd}] is ${table[odd]}`);
  }
}

function freeAndHeld({ size, fixed }: AssignmentProblem) {
  if (fixed && fixed.length !== size) {
    throw new RangeError(`reduceAssignment: fixed has ${fixed.length} entries, not ${size}`);
  }
  const taken = new Set<number>();
  const items: number[] = [];
  const heldItems: number[] = [];
  for (let item = 0; item < size; item++) {
    const place = fixed ? fixed[item]! : -1;
    if (place < -1 || place >= size) throw new RangeError(`reduceAssignment: item ${item} fixed at ${place}`);
    if (taken.has(place)) throw new RangeError(`reduceAssignment: two items fixed at place ${place}`);
    if (place >= 0) taken.add(place);
    (place >= 0 ? heldItems : items).push(item);
  }
  const freePlaces = Array.from({ length: size }, (_, place) => place).filter((place) => !taken.has(place));
  return { items: Int32Array.from(items), freePlaces: Int32Array.from(freePlaces), heldItems };
}

function splitTerms(flow: Float64Array, distance: Float64Array, size: number): ReducedProblem['terms'] {
  const part = (table: Float64Array, sign: 1 | -1) =>
    table.map((one, at) => (one + sign * table[(at % size) * size + Math.floor(at / size)]!) / 2);
  const symmetric = { flow: part(flow, 1), distance: part(distance, 1) };
  const skew = { flow: part(flow, -1), distance: part(distance, -1) };
  const none = [skew.flow, skew.distance].some((table) => table.every((one) => one === 0));
  return none ? [symmetric] : [symmetric, skew];
}

function grainOf(tables: readonly [Float64Array, Float64Array, Float64Array], constant: number): number {
  if (tables.every((table) => table.every(Number.isInteger)) && Number.isInteger(constant)) return 0.5;
  const [flow, distance, linear] = tables;
  const total = (table: Float64Array) => table.reduce((sum, one) => sum + Math.abs(one), 0);
  const farthest = distance.reduce((most, one) => Math.max(most, Math.abs(one)), 0);
  return 1e-12 * (total(flow) * farthest + total(linear) + Math.abs(constant));
}

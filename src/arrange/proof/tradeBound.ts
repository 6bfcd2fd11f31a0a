// A score below which nothing comes where wedges may be traded or strips sewn in another order. Each part is bounded by itself
// by what it must come to with everything else at its best; parts that nothing is known of count as 0.
import type { Project } from '../../model/project';
import type { Decisions } from '../decisions';
import { type CostTables, seamCost } from '../live/costTables';
import { findingFloor } from './contactBound';
import { contactsOf } from './contactTables';
import { leastSeams } from './seamTransport';
import { settledSpread } from './settledSpread';
import { spreadOf } from './spreadAssignment';
import { leastOfOrders, type Neighbour } from './stripOrderBound';

/** Seams laid for the orders of all sets together: about a second's worth. */
const MOST_LAID = 200_000;

/**
 * The lower bound, in parts, to be gone through to its end. Why it holds: the score is a sum of costs that are 0 or above, and
 * the parts below share none of them.
 * 1 Wedges that stay: their rims and seams with one another, as without trades (findingFloor), every wedge that may change
 *   counting as one that meets nothing.
 * 2 Seams of blocks whose wedges are traded: each joins a tip-up and a tip-down wedge, each wedge has two, and there are so
 *   many wedges of a kind; any dealing out is one way to lay that many seams, so it costs no less than the cheapest (leastSeams).
 * 3 Other seams of a set whose strips may change: the best of its orders (leastOfOrders).
 * 4 Spread: what blocks that neither move nor change force (settledSpread).
 */
export function* openFloor(
  project: Project,
  tables: CostTables,
  decisions: Decisions,
): Generator<void, number> {
  const { model } = tables;
  const changing = new Set(decisions.tradable.flatMap((places) => Array.from(places)));
  const open = new Set(decisions.sets);
  const kindAt = model.kindAt.map((kind, place) => (changing.has(place) || open.has(kind >> 1) ? -1 : kind));
  const staying: CostTables = { ...tables, model: { ...model, kindAt } };
  const contacts = contactsOf(staying, decisions);
  let floor = contacts.constant + (yield* findingFloor(contacts));
  yield;
  const orders = new Map<number, Orders>();
  for (const set of open) {
    const found = yield* ordersOf(project, tables, decisions, set, changing);
    floor += found.together;
    orders.set(set, found);
    yield;
  }
  floor += yield* tradedSeams(tables, decisions, (kind, next) => pairCost(tables, orders, kind, next));
  const movable = new Set(decisions.cells);
  const stays = (cell: number) => {
    const from = model.blockIn[cell]! * model.perBlock;
    for (let place = from; place < from + model.perBlock; place++) {
      if (model.kindAt[place]! >= 0 && kindAt[place]! < 0) return false;
    }
    return !movable.has(cell);
  };
  return floor + settledSpread(spreadOf(tables), stays);
}

interface Orders {
  /** What its seams outside traded blocks cost at least. */
  readonly together: number;
  /** The least of a seam with a kind that stays: tip × kinds + kind; with its own other tip at the kind of that tip. */
  readonly each: Float64Array | null;
}

/** The least cost of the seams of a set that may change. */
function* ordersOf(
  project: Project,
  tables: CostTables,
  decisions: Decisions,
  set: number,
  changing: ReadonlySet<number>,
): Generator<void, Orders> {
  const { model } = tables;
  const open = new Set(decisions.sets);
  const most = MOST_LAID / (2 * open.size);
  const kinds = model.kindRim.length;
  const counts = new Map<number, number>();
  const count = (kind: number, next: number) => {
    const [own, other] = kind >> 1 === set ? [kind, next] : [next, kind];
    if (own >> 1 !== set || (other >> 1 !== set && open.has(other >> 1))) return;
    // A seam of two wedges of one tip meets itself, whatever the order: that stays for another bound.
    if (other >> 1 === set && other === own) return;
    const key = (own % 2) * kinds + other;
    counts.set(key, (counts.get(key) ?? 0) + 1);
  };
  forSeams(tables, (place, following) => {
    if (!changing.has(place)) count(model.kindAt[place]!, model.kindAt[following]!);
  });
  const alone = Array.from(counts, ([key, seams]): Neighbour => neighbour(key, kinds, set, seams));
  const { together } = yield* leastOfOrders(project, tables, set, alone, most);
  if (changing.size === 0) return { together, each: null };
  const all = Array.from({ length: 2 * kinds }, (_, key) => key).filter((key) => {
    const kind = key % kinds;
    return kind >> 1 === set ? kind % 2 !== Math.floor(key / kinds) : !open.has(kind >> 1);
  });
  const found = yield* leastOfOrders(
    project,
    tables,
    set,
    all.map((key) => neighbour(key, kinds, set, 1)),
    most,
  );
  const each = new Float64Array(2 * kinds);
  all.forEach((key, at) => {
    each[key] = found.each[at]!;
  });
  return { together, each };
}

function neighbour(key: number, kinds: number, set: number, seams: number): Neighbour {
  const kind = key % kinds;
  return { tip: key < kinds ? 0 : 1, kind: kind >> 1 === set ? -1 : kind, seams };
}

/** The least a seam between two kinds costs, whichever way the strips of their sets lie. */
function pairCost(
  tables: CostTables,
  orders: ReadonlyMap<number, Orders>,
  kind: number,
  next: number,
): number {
  const kinds = tables.model.kindRim.length;
  const own = orders.get(kind >> 1);
  const other = orders.get(next >> 1);
  if (!own && !other) return seamCost(tables, kind, next);
  if (own && other && kind >> 1 !== next >> 1) return 0;
  return own ? (own.each?.[(kind % 2) * kinds + next] ?? 0) : (other!.each?.[(next % 2) * kinds + kind] ?? 0);
}

/** The least the seams inside blocks whose wedges may be traded cost. */
function* tradedSeams(
  tables: CostTables,
  { tradable, spare }: Decisions,
  cost: (kind: number, next: number) => number,
): Generator<void, number> {
  const { model } = tables;
  const changing = new Set(tradable.flatMap((places) => Array.from(places)));
  let seams = 0;
  forSeams(tables, (place, following) => {
    const mixed = (model.kindAt[place]! + model.kindAt[following]!) % 2 === 1;
    if (changing.has(place) && mixed) seams += 1;
  });
  if (seams === 0) return 0;
  const stock = Int32Array.from(spare);
  for (const places of tradable) for (const place of places) stock[model.kindAt[place]!]! += 1;
  const kinds = [0, 1].map((tip) =>
    Array.from(stock.keys()).filter((kind) => kind % 2 === tip && stock[kind]! > 0),
  );
  const table = new Float64Array(kinds[0]!.length * kinds[1]!.length);
  for (const [row, kind] of kinds[0]!.entries()) {
    kinds[1]!.forEach((next, column) => {
      table[row * kinds[1]!.length + column] = cost(kind, next);
    });
    if (row % 16 === 15) yield;
  }
  const twice = (tip: number) => Int32Array.from(kinds[tip]!, (kind) => 2 * stock[kind]!);
  return yield* leastSeams({ rows: twice(0), columns: twice(1), cost: table }, seams);
}

/** Every radial seam between two wedges of a block that hangs: its place and the next one clockwise. */
function forSeams({ model }: CostTables, visit: (place: number, following: number) => void): void {
  for (const block of model.blockIn) {
    if (block < 0) continue;
    const from = block * model.perBlock;
    for (let place = 0; place < model.perBlock; place++) {
      const following = from + ((place + 1) % model.perBlock);
      if (model.kindAt[from + place]! >= 0 && model.kindAt[following]! >= 0) visit(from + place, following);
    }
  }
}

// Computes a lower bound of the score where wedges may be traded or strips reordered. It bounds each part by itself, with
// everything else at its best; a part without a known bound counts as 0.

import { squares } from '../../balance/score/termScales';
import type { Project } from '../../model/project';
import { findingEigenvalues } from '../branch/eigenvalues';
import { nearestToMean, type Rest, type Ring, restOf } from '../choices/blockOfTrades';
import { type Lengths, leastOfTwo, leastSquare } from '../choices/leastOfTwo';
import { isFreeRing } from '../choices/leastRing';
import { typesThere, type WedgesOfTip } from '../choices/wedgeSums';
import type { Decisions } from '../decisions';
import { type CostTables, FIRST_FABRIC, MOST_TABLED, seamCost } from '../live/costTables';
import { firstAdditive } from '../live/tradePrices';
import { contactBound } from './contactBound';
import { contactsOf } from './contactTables';
import { leastSeams } from './seamTransport';
import { settledSpread } from './settledSpread';
import { kernelTable, type Spread, spreadOf } from './spreadAssignment';
import { leastOfOrders, type Neighbour } from './stripOrderBound';
import { type Form, inverseOf, weightsUnder } from './weightsUnder';

/** The most seams laid for the orders of all sets together; they take about a second. */
const MOST_LAID = 200_000;

/**
 * Computes the bound in parts; run it to its end. It holds because the score is a sum of costs that are 0 or above, and no two
 * of these parts share a cost.
 * 1 Wedges that stay: their rims and seams with one another, as without trades (contactBound), every wedge that may change
 *   counting as one that meets nothing.
 * 2 Seams of blocks whose wedges are traded: each joins a tip-up and a tip-down wedge, each wedge has two, and there are so
 *   many wedges of a type; any dealing out is one way to lay that many seams, so it costs no less than the cheapest (leastSeams).
 * 3 Other seams of a set whose strips may change: the best of its orders (leastOfOrders).
 * 4 Spread: what blocks that neither move nor change force (settledSpread), or what every block and every two side by side force
 *   (blocksApart), whichever is more. Where part 2 comes to nothing, the seams round each block count here.
 */
export function* tradeBound(
  project: Project,
  tables: CostTables,
  decisions: Decisions,
): Generator<void, number> {
  const { model } = tables;
  const changing = new Set(decisions.tradable.flatMap((places) => Array.from(places)));
  const open = new Set(decisions.sets);
  const typeAt = model.typeAt.map((type, place) => (changing.has(place) || open.has(type >> 1) ? -1 : type));
  const staying: CostTables = { ...tables, model: { ...model, typeAt } };
  const contacts = contactsOf(staying, decisions);
  let bound = contacts.constant + (yield* contactBound(contacts));
  yield;
  const orders = new Map<number, Orders>();
  for (const set of open) {
    const found = yield* ordersOf(project, tables, decisions, set, changing);
    bound += found.together;
    orders.set(set, found);
    yield;
  }
  const seams = yield* tradedSeams(tables, decisions, (type, next) => pairCost(tables, orders, type, next));
  bound += seams;
  const movable = new Set(decisions.cells);
  const stays = (cell: number) => {
    const from = model.blockIn[cell]! * model.perBlock;
    for (let place = from; place < from + model.perBlock; place++) {
      if (model.typeAt[place]! >= 0 && typeAt[place]! < 0) return false;
    }
    return !movable.has(cell);
  };
  const spread = spreadOf(tables);
  const counted = seams > 0 ? null : seamTable(tables);
  const apart = yield* blocksApart(spread, decisions, changing, counted);
  return bound + Math.max(settledSpread(spread, stays), apart);
}

/** The most sorts of blocks, by what in them may change, whose best wedges are looked for; others count as 0. */
const MOST_SORTS = 4;
/** Up to so many cells each has its own weight; beyond it, edges of the wall matter less and all have the least eigenvalue of K. */
const MOST_WEIGHTED = 120;
/** So many choices of wedges nearest the average are looked at two by two. */
const NEAREST = 150_000;
/** So many where only the nearest of each sort of block counts. */
const FEW = 100;
/** How much two blocks by themselves may count beside both together: with less, more choices would have to be looked at. */
const OWN = [0.2, 0.4, 0.8];

/**
 * No block comes nearer to the average than the wedges that there are let it, nor do two, and K is at least a weighted sum over
 * cells and over cells side by side (weightsUnder). Where blocks are of several sorts, cells count alone, and the blocks furthest off
 * as hung where that weighs least. Without means where they do not add up, and as 0 where wedges of a set with strips still to be
 * ordered may reach a block.
 */
function* blocksApart(
  spread: Spread,
  decisions: Decisions,
  changing: ReadonlySet<number>,
  seam: Seam | null,
): Generator<void, number> {
  const { tables, cells } = spread;
  const kernel = kernelTable(tables, cells);
  const size = cells.length;
  const ring = seam && { seam, times: timesCounted(kernel, size) };
  const { each, alike } = yield* apartByBlock(spread, decisions, changing, ring);
  if (each.every((one) => one === 0)) return 0;
  const singles = Array.from(cells.keys(), (cell): Form => ({ cells: [cell], own: 0, least: 1 }));
  if (alike && size <= MOST_WEIGHTED) {
    const [one] = each;
    const pairs = sideBySide(kernel, size);
    const least = yield* leastOfTwo(alike, OWN);
    const forms = OWN.reduce<Form[]>(
      (all, own, at) => all.concat(pairs.map((cells) => ({ cells, own, least: least[at]! / one! }))),
      singles,
    );
    const weights = yield* weightsUnder(kernel, size, forms);
    return weights.reduce((sum, weight, at) => sum + weight * forms[at]!.least * one!, 0);
  }
  const weights =
    size <= MOST_WEIGHTED
      ? yield* weightsUnder(kernel, size, singles)
      : new Float64Array(size).fill(Math.max(0, (yield* findingEigenvalues(kernel, size))[0]!));
  weights.sort();
  return each.sort().reduce((sum, one, at) => sum + one * weights[size - 1 - at]!, 0);
}

/**
 * How many times what the seams of a block cost may count as more of its square in whatever cell: xᵀKx ≥ Σ w x² for every x means
 * w ≤ 1 / K⁻¹(cell, cell), so that it is counted once at most.
 */
export function timesCounted(kernel: Float64Array, size: number): number {
  const inverse = inverseOf(kernel, size);
  return Math.min(...Array.from({ length: size }, (_, cell) => inverse[cell * (size + 1)]!));
}

/** The cells that have most to do with each other, by their index. */
function sideBySide(kernel: Float64Array, size: number): [number, number][] {
  const pairs: [number, number][] = [];
  const most = kernel.reduce((top, one, at) => (at % (size + 1) === 0 ? top : Math.max(top, one)), 0);
  for (let one = 0; one < size; one++) {
    for (let other = 0; other < one; other++)
      if (kernel[one * size + other]! > most - 1e-9) pairs.push([other, one]);
  }
  return pairs;
}

/** The cost of the seam between two wedge types. */
type Seam = (type: number, next: number) => number;

interface Apart {
  /** The least square of what each block is off the average, of all that hang. */
  readonly each: Float64Array;
  /** What a block can be, where all can be the same. */
  readonly alike: Lengths | null;
}

/** Blocks alike in what of them may change and in what stays. */
interface Sort {
  readonly name: string;
  readonly tips: readonly [WedgesOfTip, WedgesOfTip];
  readonly rest: Rest;
  /** Whether all its wedges may be laid anew, tips in turn. */
  readonly isRing: boolean;
}

function* apartByBlock(
  { tables, cells }: Spread,
  decisions: Decisions,
  changing: ReadonlySet<number>,
  ring: Ring | null,
): Generator<void, Apart> {
  const { model } = tables;
  const open = new Set(decisions.sets);
  // In another cell a block may get other corners by the quilt's rule: then fabrics of wedges alone count.
  const first = model.ruledCorner.length > 0 ? FIRST_FABRIC : firstAdditive(tables);
  const sortOf = sortingBlocks(tables, decisions, changing);
  const sorts = new Map<string, Sort>();
  const each = new Float64Array(cells.length);
  const sortAt = Array.from(cells, (cell, at) => {
    const block = model.blockIn[cell]!;
    const places = Array.from({ length: model.perBlock }, (_, place) => block * model.perBlock + place);
    if (places.some((place) => open.has(model.typeAt[place]! >> 1))) return null;
    const rest = restOf(tables, block, changing, first);
    if (!places.some((place) => changing.has(place))) {
      each[at] = squares(rest.figures);
      return null;
    }
    if (open.size > 0) return null;
    const sort = sortOf(places, rest);
    if (!sorts.has(sort.name) && sorts.size < MOST_SORTS) sorts.set(sort.name, sort);
    return sort.name;
  });
  const areAlike = sorts.size === 1 && sortAt.every((name) => name !== null && sorts.has(name));
  const nearest = new Map<string, Lengths | null>();
  for (const { name, tips, rest, isRing } of sorts.values()) {
    const most = areAlike ? NEAREST : FEW;
    nearest.set(name, yield* nearestToMean(tables, tips, rest, most, isRing ? ring : null));
  }
  sortAt.forEach((name, at) => {
    const lengths = name === null ? null : nearest.get(name);
    if (lengths) each[at] = leastSquare(lengths);
  });
  const [only = null] = nearest.values();
  return { each, alike: areAlike ? only : null };
}

/** How many wedges of each type there are to lay, those left over among them; and the types of each tip. */
function wedgesToLay({ model }: CostTables, { tradable, spare }: Decisions) {
  const stock = Int32Array.from(spare);
  for (const places of tradable) for (const place of places) stock[model.typeAt[place]!]! += 1;
  return { stock, types: [0, 1].map((tip) => typesThere(stock, tip)) };
}

function sortingBlocks(
  tables: CostTables,
  decisions: Decisions,
  changing: ReadonlySet<number>,
): (places: readonly number[], rest: Rest) => Sort {
  const { model } = tables;
  const { stock, types } = wedgesToLay(tables, decisions);
  return (places, rest) => {
    const free = places.filter((place) => changing.has(place));
    const ofTip = (tip: number): WedgesOfTip => ({
      types: types[tip]!,
      stock,
      places: free.filter((place) => model.typeAt[place]! % 2 === tip).length,
    });
    const tips = [ofTip(0), ofTip(1)] as const;
    const isRing = isFreeRing(model.typeAt, places, changing);
    const figures = rest.figures.map((one) => Math.fround(one));
    return { name: [...tips.map((one) => one.places), isRing, ...figures].join(), tips, rest, isRing };
  };
}

/** The cost of the seam between two wedge types, each worked out once; null where there are too many types for a table. */
function seamTable(tables: CostTables): Seam | null {
  const types = tables.model.typeRim.length;
  if (types > MOST_TABLED) return null;
  const table = new Float64Array(types * types).fill(Number.NaN);
  return (type, next) => {
    const at = type * types + next;
    if (Number.isNaN(table[at]!)) table[at] = seamCost(tables, type, next);
    return table[at]!;
  };
}

interface Orders {
  /** The least cost of its seams outside traded blocks. */
  readonly together: number;
  /** The least of a seam with a type that stays: tip × types + type; with its own other tip at the type of that tip. */
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
  const types = model.typeRim.length;
  const counts = new Map<number, number>();
  const count = (type: number, next: number) => {
    const [own, other] = type >> 1 === set ? [type, next] : [next, type];
    if (own >> 1 !== set || (other >> 1 !== set && open.has(other >> 1))) return;
    // A seam of two wedges of one tip meets itself, whatever the order: that stays for another bound.
    if (other >> 1 === set && other === own) return;
    const key = (own % 2) * types + other;
    counts.set(key, (counts.get(key) ?? 0) + 1);
  };
  forSeams(tables, (place, following) => {
    if (!changing.has(place)) count(model.typeAt[place]!, model.typeAt[following]!);
  });
  const alone = Array.from(counts, ([key, seams]): Neighbour => neighbour(key, types, set, seams));
  const { together } = yield* leastOfOrders(project, tables, set, alone, most);
  if (changing.size === 0) return { together, each: null };
  const all = Array.from({ length: 2 * types }, (_, key) => key).filter((key) => {
    const type = key % types;
    return type >> 1 === set ? type % 2 !== Math.floor(key / types) : !open.has(type >> 1);
  });
  const found = yield* leastOfOrders(
    project,
    tables,
    set,
    all.map((key) => neighbour(key, types, set, 1)),
    most,
  );
  const each = new Float64Array(2 * types);
  all.forEach((key, at) => {
    each[key] = found.each[at]!;
  });
  return { together, each };
}

function neighbour(key: number, types: number, set: number, seams: number): Neighbour {
  const type = key % types;
  return { tip: key < types ? 0 : 1, type: type >> 1 === set ? -1 : type, seams };
}

/** The least cost of a seam between two wedge types over all strip orders of their sets. */
function pairCost(
  tables: CostTables,
  orders: ReadonlyMap<number, Orders>,
  type: number,
  next: number,
): number {
  const types = tables.model.typeRim.length;
  const own = orders.get(type >> 1);
  const other = orders.get(next >> 1);
  if (!own && !other) return seamCost(tables, type, next);
  if (own && other && type >> 1 !== next >> 1) return 0;
  return own ? (own.each?.[(type % 2) * types + next] ?? 0) : (other!.each?.[(next % 2) * types + type] ?? 0);
}

/** The least cost of the seams inside blocks whose wedges may be traded. */
function* tradedSeams(
  tables: CostTables,
  decisions: Decisions,
  cost: (type: number, next: number) => number,
): Generator<void, number> {
  const { model } = tables;
  const changing = new Set(decisions.tradable.flatMap((places) => Array.from(places)));
  let seams = 0;
  forSeams(tables, (place, following) => {
    const mixed = (model.typeAt[place]! + model.typeAt[following]!) % 2 === 1;
    if (changing.has(place) && mixed) seams += 1;
  });
  if (seams === 0) return 0;
  const { stock, types } = wedgesToLay(tables, decisions);
  const table = new Float64Array(types[0]!.length * types[1]!.length);
  for (const [row, type] of types[0]!.entries()) {
    types[1]!.forEach((next, column) => {
      table[row * types[1]!.length + column] = cost(type, next);
    });
    if (row % 16 === 15) yield;
  }
  const twice = (tip: number) => Int32Array.from(types[tip]!, (type) => 2 * stock[type]!);
  return (yield* leastSeams({ rows: twice(0), columns: twice(1), cost: table }, seams)).cost;
}

/** Every radial seam between two wedges of a block that hangs: its place and the next one clockwise. */
function forSeams({ model }: CostTables, visit: (place: number, following: number) => void): void {
  for (const block of model.blockIn) {
    if (block < 0) continue;
    const from = block * model.perBlock;
    for (let place = 0; place < model.perBlock; place++) {
      const following = from + ((place + 1) % model.perBlock);
      if (model.typeAt[from + place]! >= 0 && model.typeAt[following]! >= 0) visit(from + place, following);
    }
  }
}

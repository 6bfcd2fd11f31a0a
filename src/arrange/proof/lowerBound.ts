// Computes a lower bound of the score for turning and exchanging, without looking at any arrangement. Spread: the projection
// bound of Hadley, Rendl and Wolkowicz (1992) for quadratic assignment. Contact: contactBound.ts.

import { solvingLinear } from '../assignment/linear';
import { eigenvaluesOf, findingEigenvalues } from '../branch/eigenvalues';
import { Orders } from './blockOrders';
import { contactBound } from './contactBound';
import type { Contacts } from './contactTables';
import { kernelTable, residual, rowIn, type Spread } from './spreadAssignment';

/**
 * The lower bound of the whole score within the decisions; wedges stay where they are. O(n³) in blocks. Yields every few
 * milliseconds, so that a search can stop.
 */
export function* boundInParts(contacts: Contacts, spread: Spread): Generator<void, number> {
  const bound = contacts.constant + (yield* contactBound(contacts));
  yield;
  // Where no block may change its cell, the spread is what it is: no turn changes it.
  const moving = contacts.decisions.cells.length > 1;
  return bound + (yield* moving ? spreadBound(spread) : spreadAsHung(contacts, spread));
}

/** The spread of the only order that there is. */
function* spreadAsHung(contacts: Contacts, spread: Spread): Generator<void, number> {
  const orders = new Orders(contacts, spread, Number.POSITIVE_INFINITY);
  yield* orders.weighing();
  return orders.cost(0);
}

/**
 * Figures with the same sign over the cells: Σ K(c, d) ⟨f_c, f_d⟩ = tr K P G Pᵀ. Figures that sum to 0 over the blocks are beside
 * the vector of ones, so K may be projected there, and no orthogonal P comes below Σ λ_i μ_i, eigenvalues of the one
 * ascending, of the other descending. Likeness wanted, and the moments, are bounded by themselves (each a sum of squares).
 * Where something belongs to the cells (an order of value, corners by a rule) see settledBound.
 */
function* spreadBound(spread: Spread): Generator<void, number> {
  const { tables, cells } = spread;
  const { channels, sign, scales } = tables;
  if (cells.length < 2) return 0;
  const kernel = kernelTable(tables, cells);
  const aims = scales.target.some((one) => one !== 0);
  const all = Array.from({ length: channels }, (_, channel) => channel);
  const even = all.filter((channel) => sign[channel] === 1);
  const free = even.filter((channel) => !belongs(channel, aims, spread.sorts > 1));
  let bound = yield* formBound(kernel, spread, free);
  if (free.length < even.length) {
    const settled = even.filter((channel) => !free.includes(channel));
    bound += yield* leastBound(kernel, spread, settled);
    bound = Math.max(bound, (yield* settledBound(kernel, spread, even)) ?? 0);
  }
  const wanted = all.filter((channel) => sign[channel] === -1);
  if (wanted.length === 0 || spread.sorts > 1) return bound;
  return bound + (yield* formBound(laplacian(kernel, cells.length), spread, wanted));
}

/** Whether a figure has a part that belongs to the cell: value with an order wanted; value and colour with ruled corners. */
function belongs(channel: number, aims: boolean, ruled: boolean): boolean {
  return (channel === 0 && aims) || (channel < 3 && ruled);
}

/** K is at least its least eigenvalue, and Σ r² is at least that of the assignment of blocks to cells that has least of it. */
function* leastBound(
  kernel: Float64Array,
  spread: Spread,
  channels: readonly number[],
): Generator<void, number> {
  const { cells } = spread;
  const size = cells.length;
  const least = Math.max(0, (yield* findingEigenvalues(kernel, size))[0]!);
  const squares = byBlockAndCell(spread, (block, cell) =>
    channels.reduce((sum, channel) => sum + residual(spread, block, cell, channel) ** 2, 0),
  );
  yield;
  return least * (yield* solvingLinear(squares, size)).cost;
}

/**
 * Where every block brings its own figure f_b (of sum 0) and finds the same part e_c in a cell, Σ K r r is
 * Σ K f f + 2 Σ f (K e) + Σ K e e: the first has the bound of scattered figures, the second is an assignment, the third is known.
 * Null where the part depends on the block too (blocks of different area under ruled corners, or with corners of their own).
 */
function* settledBound(
  kernel: Float64Array,
  spread: Spread,
  channels: readonly number[],
): Generator<void, number | null> {
  const { cells } = spread;
  const size = cells.length;
  const blocks = Array.from(cells, (cell) => spread.tables.model.blockIn[cell]!);
  const linear = new Float64Array(size * size);
  const own = new Map<number, Float64Array>();
  let settled = 0;
  for (const channel of channels) {
    yield;
    const parts = partsOf(spread, blocks, channel);
    if (!parts) return null;
    own.set(channel, parts.own);
    const lag = parts.there.map((_, row) => {
      let sum = 0;
      for (let at = 0; at < size; at++) sum += kernel[row * size + at]! * parts.there[at]!;
      return sum;
    });
    parts.there.forEach((one, at) => {
      settled += one * lag[at]!;
    });
    parts.own.forEach((one, row) => {
      for (let at = 0; at < size; at++) linear[row * size + at]! += 2 * one * lag[at]!;
    });
  }
  const first = yield* gramBound(kernel, size, (row, channel) => own.get(channel)![row]!, channels);
  return first + (yield* solvingLinear(linear, size)).cost + settled;
}

/** A figure of every block and the part of every cell, by place in `cells`; null where they cannot be told apart. */
function partsOf(
  spread: Spread,
  blocks: readonly number[],
  channel: number,
): { own: Float64Array; there: Float64Array } | null {
  const { cells } = spread;
  const first = cells[0]!;
  const own = Float64Array.from(blocks, (block) => residual(spread, block, first, channel));
  const there = Float64Array.from(cells, (cell) => residual(spread, blocks[0]!, cell, channel) - own[0]!);
  for (let row = 0; row < blocks.length; row++) {
    for (let at = 0; at < cells.length; at++) {
      const whole = residual(spread, blocks[row]!, cells[at]!, channel);
      if (Math.abs(whole - own[row]! - there[at]!) > 1e-9) return null;
    }
  }
  const mean = own.reduce((sum, one) => sum + one, 0) / own.length;
  return { own: own.map((one) => one - mean), there: there.map((one) => one + mean) };
}

function byBlockAndCell(spread: Spread, cost: (block: number, cell: number) => number): Float64Array {
  const { cells } = spread;
  const { blockIn } = spread.tables.model;
  const size = cells.length;
  return Float64Array.from({ length: size * size }, (_, at) =>
    cost(blockIn[cells[Math.floor(at / size)]!]!, cells[at % size]!),
  );
}

/** The bound of scattered figures, as the blocks hang. */
function formBound(
  table: Float64Array,
  spread: Spread,
  channels: readonly number[],
): Generator<void, number> {
  const { cells, tables, figures } = spread;
  const rows = Array.from(cells, (cell) => rowIn(spread, tables.model.blockIn[cell]!, cell));
  const figure = (row: number, channel: number) => figures[rows[row]! * tables.channels + channel]!;
  return gramBound(table, cells.length, figure, channels);
}

type FigureOf = (row: number, channel: number) => number;

/** Σ λ_i(K beside 1) μ_i(G), least first with greatest first. */
function* gramBound(
  table: Float64Array,
  size: number,
  figure: FigureOf,
  channels: readonly number[],
): Generator<void, number> {
  const beside = besideOnes(table, size);
  yield;
  const ascending = yield* findingEigenvalues(beside, size);
  // The vector of ones has become an eigenvector of 0; all others are above it, as both tables are.
  const kernelValues = ascending.subarray(1);
  const figureValues = gramValues(size, figure, channels);
  let sum = 0;
  for (let at = 0; at < Math.min(kernelValues.length, figureValues.length); at++) {
    sum += Math.max(0, kernelValues[at]!) * Math.max(0, figureValues[at]!);
  }
  return sum;
}

/** (I − J/n) table (I − J/n). */
function besideOnes(table: Float64Array, size: number): Float64Array {
  const rows = new Float64Array(size);
  let all = 0;
  for (let row = 0; row < size; row++) {
    for (let column = 0; column < size; column++) rows[row]! += table[row * size + column]! / size;
    all += rows[row]! / size;
  }
  return table.map((one, at) => one - rows[Math.floor(at / size)]! - rows[at % size]! + all);
}

/** Eigenvalues of G, descending, by way of the smaller of the two products of the figures. */
function gramValues(count: number, figure: FigureOf, channels: readonly number[]): Float64Array {
  const rows = Array.from({ length: count }, (_, row) => row);
  const byChannel = channels.length <= count;
  const size = byChannel ? channels.length : count;
  const product = new Float64Array(size * size);
  for (let row = 0; row < size; row++) {
    for (let column = 0; column < size; column++) {
      product[row * size + column] = byChannel
        ? rows.reduce((sum, one) => sum + figure(one, channels[row]!) * figure(one, channels[column]!), 0)
        : channels.reduce((sum, one) => sum + figure(row, one) * figure(column, one), 0);
    }
  }
  return eigenvaluesOf(product, size).toReversed();
}

/** 2 · (row sums on the diagonal − K): Σ K(c, d) (v_c − v_d)², c ≠ d, is this form. Figures carry the factor 2 already. */
function laplacian(kernel: Float64Array, size: number): Float64Array {
  const table = kernel.map((one) => -one);
  for (let row = 0; row < size; row++) {
    let sum = 0;
    for (let column = 0; column < size; column++) if (column !== row) sum += kernel[row * size + column]!;
    table[row * size + row] = sum;
  }
  return table;
}

// A score below which no turning and exchanging can come, worked out without looking at any arrangement. Spread: the
// projection bound of Hadley, Rendl and Wolkowicz (1992) for quadratic assignment. Contact: what each block costs at least.

import { findingFloor } from './contactFloor';
import type { Contacts } from './contacts';
import { eigenvaluesOf, findingEigenvalues } from './eigenvalues';
import { atOnce } from './parts';
import { kernelTable, type Spread } from './spread';

/** The lower bound of the whole score within the decisions; wedges stay where they are. O(n³) in blocks. */
export function lowerBound(contacts: Contacts, spread: Spread): number {
  return atOnce(boundInParts(contacts, spread));
}

/** The same, for a search that must stay ready to stop: yields every few milliseconds. */
export function* boundInParts(contacts: Contacts, spread: Spread): Generator<void, number> {
  const floor = contacts.constant + (yield* findingFloor(contacts));
  yield;
  return floor + (yield* spreadBound(spread));
}

/**
 * Figures with the same sign over the cells: Σ K(c, d) ⟨f_c, f_d⟩ = tr K P G Pᵀ. Figures sum to 0 over the blocks, so K may be
 * projected beside the vector of ones, and no orthogonal P comes below Σ λ_i μ_i, eigenvalues of the one ascending, of the other
 * descending. Value with a target, likeness wanted, and the moments are bounded by themselves (each a sum of squares).
 */
function* spreadBound(spread: Spread): Generator<void, number> {
  const { tables, cells } = spread;
  const { channels, sign, basis } = tables;
  if (cells.length < 2) return 0;
  const kernel = kernelTable(tables, cells);
  const aims = basis.target.some((one) => one !== 0);
  const all = Array.from({ length: channels }, (_, channel) => channel);
  const scattered = all.filter((channel) => sign[channel] === 1 && !(aims && channel === 0));
  let bound = yield* formBound(kernel, spread, scattered);
  const wanted = all.filter((channel) => sign[channel] === -1);
  if (wanted.length > 0) bound += yield* formBound(laplacian(kernel, cells.length), spread, wanted);
  if (aims) bound += yield* aimBound(kernel, spread);
  return bound;
}

/** Σ λ_i(K beside 1) μ_i(G), least first with greatest first. */
function* formBound(
  table: Float64Array,
  spread: Spread,
  channels: readonly number[],
): Generator<void, number> {
  const size = spread.cells.length;
  const beside = besideOnes(table, size);
  yield;
  const ascending = yield* findingEigenvalues(beside, size);
  // The vector of ones has become an eigenvector of 0; all others are above it, as both tables are.
  const kernelValues = ascending.subarray(1);
  const figureValues = gramValues(spread, channels);
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
function gramValues(spread: Spread, channels: readonly number[]): Float64Array {
  const { model } = spread.tables;
  const blocks = Array.from(spread.cells, (cell) => model.blockIn[cell]!);
  const figure = (block: number, channel: number) =>
    spread.figures[block * spread.tables.channels + channel]!;
  const byChannel = channels.length <= blocks.length;
  const size = byChannel ? channels.length : blocks.length;
  const product = new Float64Array(size * size);
  for (let row = 0; row < size; row++) {
    for (let column = 0; column < size; column++) {
      product[row * size + column] = byChannel
        ? blocks.reduce((sum, one) => sum + figure(one, channels[row]!) * figure(one, channels[column]!), 0)
        : channels.reduce((sum, one) => sum + figure(blocks[row]!, one) * figure(blocks[column]!, one), 0);
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

/** Value against its target: K is at least its least eigenvalue, and Σ (z − t)² is least when both are in the same order. */
function* aimBound(kernel: Float64Array, spread: Spread): Generator<void, number> {
  const { tables, cells, figures } = spread;
  const size = cells.length;
  const least = (yield* findingEigenvalues(kernel, size))[0]!;
  const scale = tables.scale[0]!;
  const targets = Float64Array.from(cells, (cell) => tables.basis.target[cell]! * scale).sort();
  const values = Float64Array.from(
    cells,
    (cell) => figures[tables.model.blockIn[cell]! * tables.channels]!,
  ).sort();
  return Math.max(0, least) * values.reduce((sum, value, at) => sum + (value - targets[at]!) ** 2, 0);
}

// States the spread part of the score as a quadratic assignment for proofs: figures of blocks, kernel of cells, the linear cost
// of a block in a cell, and the moments. The living wall keeps the same sums step by step.
import { cornerIn, filled, type WallModel } from '../../balance/wall/wallModel';
import { cornerSorts } from '../live/cornerSorts';
import { type CostTables, writeFigures } from '../live/costTables';

export interface Spread {
  readonly tables: CostTables;
  /** Filled cells. */
  readonly cells: Int32Array;
  /** Sort of corner of each cell by the quilt's rule, and how many there are: a block has figures for each sort (rowIn). */
  readonly sortOf: Uint8Array;
  readonly sorts: number;
  /** Scaled figures, row × channel. */
  readonly figures: Float64Array;
  /** Deviation of value (L*) and of warmth from the mean, by row. */
  readonly value: Float64Array;
  readonly warmth: Float64Array;
}

export function spreadOf(tables: CostTables): Spread {
  const { model, scales, channels } = tables;
  const { sortOf, sorts } = cornerSorts(model);
  const blocks = model.blocks.length;
  const figures = new Float64Array(sorts.length * blocks * channels);
  const value = new Float64Array(sorts.length * blocks);
  const warmth = new Float64Array(sorts.length * blocks);
  sorts.forEach((cell, sort) => {
    for (let block = 0; block < blocks; block++) {
      if (model.area[block] === 0) continue;
      const row = sort * blocks + block;
      const mean = (means: Float64Array, cloth: Float64Array) =>
        means[block]! + cornerPart(model, block, cell, cloth);
      const lightness = mean(model.lightness, model.cloths.lightness);
      value[row] = lightness - scales.meanLightness;
      warmth[row] = mean(model.warmth, model.cloths.warmth) - scales.meanWarmth;
      writeFigures(
        tables,
        lightness,
        mean(model.a, model.cloths.a),
        mean(model.b, model.cloths.b),
        (fabric) => model.fabricArea[block * model.fabricCount + fabric]!,
        figures,
        row * channels,
      );
    }
  });
  const cells = Int32Array.from(model.blockIn.keys()).filter((cell) => filled(model, cell));
  return { tables, cells, sortOf, sorts: sorts.length, figures, value, warmth };
}

/** The change of a block's mean when it gets the corners of a cell. */
function cornerPart(model: WallModel, block: number, cell: number, cloth: Float64Array): number {
  const apart = cloth[cornerIn(model, block, cell)]! - cloth[model.corner[block]!]!;
  return (model.cornerArea * apart) / model.area[block]!;
}

/** Row of the figures of a block as it is in a cell. */
export function rowIn(spread: Spread, block: number, cell: number): number {
  return spread.sortOf[cell]! * spread.tables.model.blocks.length + block;
}

/** Σ_channel sign · f_one f_other, of two rows. */
export function likenessOf(spread: Spread, one: number, other: number): number {
  const { channels, sign } = spread.tables;
  let sum = 0;
  for (let channel = 0; channel < channels; channel++) {
    sum +=
      sign[channel]! *
      spread.figures[one * channels + channel]! *
      spread.figures[other * channels + channel]!;
  }
  return sum;
}

/** The cost of a block in a cell that does not depend on other blocks, without the moments. */
export function aloneSpread(spread: Spread, block: number, cell: number): number {
  const { tables, figures } = spread;
  const { channels, own, scale } = tables;
  const row = rowIn(spread, block, cell);
  const from = row * channels;
  let cost = spread.value[row]! * tables.valueLinear[cell]!;
  for (let channel = 0; channel < channels; channel++) cost += own[channel]! * figures[from + channel]! ** 2;
  if (tables.likenessRow && scale[1]! > 0) {
    cost +=
      (tables.likenessRow[cell]! * (figures[from + 1]! ** 2 + figures[from + 2]! ** 2)) / scale[1]! ** 2;
  }
  return cost;
}

/** The figure of a block in a cell less the target of that cell. */
export function residual(spread: Spread, block: number, cell: number, channel: number): number {
  const { tables, figures } = spread;
  const figure = figures[rowIn(spread, block, cell) * tables.channels + channel]!;
  return channel === 0 ? figure - tables.scales.target[cell]! * tables.scale[0]! : figure;
}

/** K as a square table over the cells given, row by row. */
export function kernelTable(tables: CostTables, cells: Int32Array): Float64Array {
  const { near, own } = tables.scales.kernel;
  const size = cells.length;
  const index = new Map(Array.from(cells, (cell, at) => [cell, at]));
  const table = new Float64Array(size * size);
  cells.forEach((cell, row) => {
    table[row * size + row] = own;
    for (let at = near.start[cell]!; at < near.start[cell + 1]!; at++) {
      const column = index.get(near.to[at]!);
      if (column !== undefined) table[row * size + column] = near.weight[at]!;
    }
  });
  return table;
}

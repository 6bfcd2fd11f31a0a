// The spread part of the score as a quadratic assignment: figures of blocks, kernel of cells, what a block costs in a cell by
// itself, and the moments. For proofs; the living wall keeps the same sums step by step.
import { type CostTables, filled, writeFigures } from './costTables';

export interface Spread {
  readonly tables: CostTables;
  /** Filled cells. */
  readonly cells: Int32Array;
  /** Scaled figures, block × channel. */
  readonly figures: Float64Array;
  /** Deviation of value (L*) and of warmth from the mean, by block. */
  readonly value: Float64Array;
  readonly warmth: Float64Array;
}

export function spreadOf(tables: CostTables): Spread {
  const { model, basis, channels } = tables;
  const figures = new Float64Array(model.blocks.length * channels);
  for (let block = 0; block < model.blocks.length; block++) {
    if (model.area[block] === 0) continue;
    writeFigures(
      tables,
      model.lightness[block]!,
      model.a[block]!,
      model.b[block]!,
      (fabric) => model.fabricArea[block * model.fabricCount + fabric]!,
      figures,
      block * channels,
    );
  }
  return {
    tables,
    cells: Int32Array.from(model.blockIn.keys()).filter((cell) => filled(model, cell)),
    figures,
    value: model.lightness.map((one) => one - basis.meanLightness),
    warmth: model.warmth.map((one) => one - basis.meanWarmth),
  };
}

/** Σ_channel sign · f_one f_other. */
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

/** What a block costs in a cell whatever hangs elsewhere, moments aside. */
export function aloneSpread(spread: Spread, block: number, cell: number): number {
  const { tables, figures } = spread;
  const { channels, own, scale } = tables;
  const from = block * channels;
  let cost = spread.value[block]! * tables.valueLinear[cell]!;
  for (let channel = 0; channel < channels; channel++) cost += own[channel]! * figures[from + channel]! ** 2;
  if (tables.likenessRow && scale[1]! > 0) {
    cost +=
      (tables.likenessRow[cell]! * (figures[from + 1]! ** 2 + figures[from + 2]! ** 2)) / scale[1]! ** 2;
  }
  return cost;
}

/** K as a square table over the cells given, row by row. */
export function kernelTable(tables: CostTables, cells: Int32Array): Float64Array {
  const { near, own } = tables.basis.kernel;
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

// Keeps the figures of each block whose evenness counts up to date while wedges are exchanged: value, colour and fabrics as
// costTables.ts scales them, and the sums behind them. liveSpread.ts computes their cost over the wall.
import { cornerIn } from '../../balance/wall/wallModel';
import type { Choices } from '../choices/choices';
import { type CostTables, FIRST_FABRIC, writeFigures } from './costTables';

export class LiveFigures {
  /** Scaled figures: block × channel. */
  readonly figures: Float64Array;
  /** Deviation of value (L*) and of warmth of each block from the mean. */
  readonly value: Float64Array;
  readonly warmth: Float64Array;
  private readonly tables: CostTables;
  private readonly channels: number;
  /** Corner fabric of each block as it hangs. */
  private readonly corner: Int32Array;
  /** Area and area × (L*, a, b, warmth) of each block with its corners. */
  private readonly sums: Float64Array;
  /** L*, a, b and warmth by wedge type. */
  private readonly means: readonly Float64Array[];

  constructor(tables: CostTables) {
    const { model } = tables;
    const blocks = model.blocks.length;
    this.tables = tables;
    this.channels = tables.channels;
    this.figures = new Float64Array(blocks * tables.channels);
    this.value = new Float64Array(blocks);
    this.warmth = new Float64Array(blocks);
    this.corner = model.corner.slice();
    this.sums = new Float64Array(blocks * 5);
    this.means = [model.typeLightness, model.typeA, model.typeB, model.typeWarmth];
    for (let block = 0; block < blocks; block++) this.read(block);
  }

  /** The figures of a block as the project has it; what comes after is kept by changes. */
  private read(block: number): void {
    const { model, scales } = this.tables;
    const area = model.area[block]!;
    if (area === 0) return;
    const means = [1, model.lightness[block]!, model.a[block]!, model.b[block]!, model.warmth[block]!];
    this.sums.set(
      means.map((mean) => mean * area),
      block * 5,
    );
    const from = block * model.fabricCount;
    writeFigures(
      this.tables,
      model.lightness[block]!,
      model.a[block]!,
      model.b[block]!,
      (fabric) => model.fabricArea[from + fabric]!,
      this.figures,
      block * this.channels,
    );
    this.value[block] = model.lightness[block]! - scales.meanLightness;
    this.warmth[block] = model.warmth[block]! - scales.meanWarmth;
  }

  /**
   * Writes into `into` what a block's means (L*, a, b, warmth) change by when the wedge of type `oldType` gives way to one of `type`, and
   * into `scaled` the same of the channels before those of fabrics.
   */
  readMeans(block: number, oldType: number, type: number, into: Float64Array, scaled: Float64Array): void {
    const { means, sums, tables } = this;
    const { typeArea } = tables.model;
    const from = block * 5;
    const more = typeArea[type]!;
    const less = typeArea[oldType]!;
    const was = 1 / sums[from]!;
    const is = 1 / (sums[from]! + more - less);
    for (let mean = 0; mean < means.length; mean++) {
      const sum = sums[from + 1 + mean]!;
      const of = means[mean]!;
      into[mean] = (sum + more * of[type]! - less * of[oldType]!) * is - sum * was;
    }
    for (let mean = 0; mean < FIRST_FABRIC; mean++) scaled[mean] = into[mean]! * tables.scale[mean]!;
  }

  /** Writes into `into` what the areas of fabrics of a block change by, each in its channel. */
  readFabrics(oldType: number, type: number, into: Float64Array): void {
    const { model, scale, fabrics } = this.tables;
    const from = oldType * model.fabricCount;
    const to = type * model.fabricCount;
    for (let at = 0; at < fabrics.length; at++) {
      const fabric = fabrics[at]!;
      into[FIRST_FABRIC + at] =
        (model.typeFabricArea[to + fabric]! - model.typeFabricArea[from + fabric]!) *
        scale[FIRST_FABRIC + at]!;
    }
  }

  /** Exchanges a wedge of a block for good, with what readMeans and readFabrics gave for it. */
  keep(block: number, oldType: number, type: number, means: Float64Array, change: Float64Array): void {
    const { typeArea } = this.tables.model;
    this.value[block]! += means[0]!;
    this.warmth[block]! += means[3]!;
    const from = block * 5;
    const more = typeArea[type]!;
    const less = typeArea[oldType]!;
    this.sums[from]! += more - less;
    this.means.forEach((of, at) => {
      this.sums[from + 1 + at]! += more * of[type]! - less * of[oldType]!;
    });
    for (let channel = 0; channel < this.channels; channel++) {
      this.figures[block * this.channels + channel]! += change[channel]!;
    }
  }

  /**
   * Gives a block the figures of a choice of wedges. Its sums stay: where there are choices all wedges of a tip are of one area, and
   * only the area is asked for again.
   */
  give(block: number, choices: Choices, choice: number): void {
    const from = choice * this.channels;
    this.figures.set(choices.figures.subarray(from, from + this.channels), block * this.channels);
    this.value[block] = choices.value[choice]!;
    this.warmth[block] = choices.warmth[choice]!;
  }

  /** How much a block's figure `sum` (0 area, 1 L*, 2 a, 3 b, 4 warmth) changes when it gets the corners of a cell. */
  cornerChange(block: number, cell: number, sum: number): number {
    const { model } = this.tables;
    const { lightness, a, b, warmth } = model.cloths;
    const axis = [null, lightness, a, b, warmth][sum]!;
    const apart = axis[cornerIn(model, block, cell)]! - axis[this.corner[block]!]!;
    return (model.cornerArea * apart) / this.sums[block * 5]!;
  }

  /** Writes the figures a block has in a cell, less those of another block as it hangs, into `into`. */
  readInstead(block: number, cell: number, other: number, into: Float64Array): void {
    const from = block * this.channels;
    const less = other * this.channels;
    for (let at = 0; at < this.channels; at++) into[at] = this.figures[from + at]! - this.figures[less + at]!;
    for (let mean = 0; mean < 3; mean++) {
      into[mean]! += this.cornerChange(block, cell, mean + 1) * this.tables.scale[mean]!;
    }
  }

  /** Gives a block the corners of a cell for good. */
  rehang(block: number, cell: number): void {
    const { model, scale } = this.tables;
    const area = this.sums[block * 5]!;
    const changes = [1, 2, 3, 4].map((sum) => this.cornerChange(block, cell, sum));
    changes.forEach((change, at) => {
      this.sums[block * 5 + 1 + at]! += change * area;
      if (at < 3) this.figures[block * this.channels + at]! += change * scale[at]!;
    });
    this.value[block]! += changes[0]!;
    this.warmth[block]! += changes[3]!;
    this.corner[block] = cornerIn(model, block, cell);
  }

  /** a² + b² of a block; its figures carry the root of twice the colour factor. */
  colourSquare(block: number): number {
    const scale = this.tables.scale[1]!;
    if (scale === 0) return 0;
    const from = block * this.channels;
    return (this.figures[from + 1]! ** 2 + this.figures[from + 2]! ** 2) / scale ** 2;
  }
}

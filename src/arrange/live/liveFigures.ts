// Keeps the figures of each block whose evenness counts up to date while wedges are exchanged: value, colour and fabrics as
// costTables.ts scales them, and the sums behind them. liveSpread.ts computes their cost over the wall.
import { cornerIn } from '../../balance/wall/wallModel';
import { type CostTables, writeFigures } from './costTables';

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

  /** New mean of a block's figure `sum` (0 area, 1 L*, 2 a, 3 b, 4 warmth) when a wedge is exchanged, less the old one. */
  meanChange(block: number, oldType: number, type: number, sum: number): number {
    const { model } = this.tables;
    const means = [null, model.typeLightness, model.typeA, model.typeB, model.typeWarmth][sum]!;
    const from = block * 5;
    const area = this.sums[from]! + model.typeArea[type]! - model.typeArea[oldType]!;
    const total =
      this.sums[from + sum]! +
      model.typeArea[type]! * means[type]! -
      model.typeArea[oldType]! * means[oldType]!;
    return total / area - this.sums[from + sum]! / this.sums[from]!;
  }

  /** Writes into `into` what a block's figures change by when the wedge of type `oldType` gives way to one of `type`. */
  readChange(block: number, oldType: number, type: number, into: Float64Array): void {
    const { model, scale, fabrics } = this.tables;
    for (let mean = 0; mean < 3; mean++) {
      into[mean] = this.meanChange(block, oldType, type, mean + 1) * scale[mean]!;
    }
    const from = oldType * model.fabricCount;
    const to = type * model.fabricCount;
    for (let at = 0; at < fabrics.length; at++) {
      const fabric = fabrics[at]!;
      into[3 + at] =
        (model.typeFabricArea[to + fabric]! - model.typeFabricArea[from + fabric]!) * scale[3 + at]!;
    }
  }

  /** Exchanges a wedge of a block for good; `change` is what readChange gave, `value` and `warmth` what meanChange did. */
  keep(
    block: number,
    oldType: number,
    type: number,
    change: Float64Array,
    value: number,
    warmth: number,
  ): void {
    const { model } = this.tables;
    this.value[block]! += value;
    this.warmth[block]! += warmth;
    const from = block * 5;
    const sizes = [model.typeArea[oldType]!, model.typeArea[type]!] as const;
    this.sums[from]! += sizes[1] - sizes[0];
    [model.typeLightness, model.typeA, model.typeB, model.typeWarmth].forEach((means, at) => {
      this.sums[from + 1 + at]! += sizes[1] * means[type]! - sizes[0] * means[oldType]!;
    });
    for (let channel = 0; channel < this.channels; channel++) {
      this.figures[block * this.channels + channel]! += change[channel]!;
    }
  }

  /** How much a block's figure `sum` (as in meanChange) changes when it gets the corners of a cell. */
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

// Keeps the spread part of the weighted score up to date while a wall is arranged: how evenly value, colour and fabrics lie over
// it when blocks or wedges are exchanged. liveFigures.ts has the figures of the blocks.
import { REACH, tents } from '../../balance/wall/kernel';
import { filled } from '../../balance/wall/wallModel';
import type { Choices } from '../choices/choices';
import type { CostTables } from './costTables';
import type { Hanging } from './hanging';
import { LiveFigures } from './liveFigures';
import { TradePrices } from './tradePrices';

/** K of two cells by the rows and columns between them. */
const WEIGHTS = Float64Array.from({ length: (REACH + 1) ** 2 }, (_, at) =>
  tents(Math.floor(at / (REACH + 1)), at % (REACH + 1)),
);

export class LiveSpread {
  private readonly tables: CostTables;
  readonly blockIn: Int32Array;
  private readonly cellOf: Int32Array;
  private readonly blocks: LiveFigures;
  private readonly channels: number;
  readonly figures: Float64Array;
  private readonly value: Float64Array;
  private readonly warmth: Float64Array;
  /** Σ over the neighbouring cells n ≠ c of K(c, n) · sign · figures(n): cell × channel. */
  readonly lag: Float64Array;
  private readonly moment = new Float64Array(4);
  private readonly changeOne: Float64Array;
  private readonly changeOther: Float64Array;
  /** Changes of L*, a, b and warmth of two blocks. */
  private readonly meansOne = new Float64Array(4);
  private readonly meansOther = new Float64Array(4);
  /** Made for the first trade. */
  private prices: TradePrices | null = null;

  constructor(tables: CostTables, hanging: Hanging) {
    this.tables = tables;
    this.blockIn = hanging.blockIn;
    this.cellOf = hanging.cellOf;
    this.blocks = new LiveFigures(tables);
    this.channels = tables.channels;
    this.figures = this.blocks.figures;
    this.value = this.blocks.value;
    this.warmth = this.blocks.warmth;
    this.lag = new Float64Array(hanging.blockIn.length * tables.channels);
    this.changeOne = new Float64Array(tables.channels);
    this.changeOther = new Float64Array(tables.channels);
    this.startSums();
  }

  /** The spread part of the score, in full. */
  cost(): number {
    const { tables, channels, figures } = this;
    let cost = tables.valueConstant;
    for (let cell = 0; cell < this.blockIn.length; cell++) {
      if (!filled(tables.model, cell)) continue;
      const block = this.blockIn[cell]!;
      for (let channel = 0; channel < channels; channel++) {
        const figure = figures[block * channels + channel]!;
        cost += figure * (this.lag[cell * channels + channel]! + tables.own[channel]! * figure);
      }
      cost += this.linearCost(block, cell);
    }
    return cost + this.momentCost(0, 0, 0, 0);
  }

  /** What exchanging the blocks of two filled cells would add. */
  swapCost(cell: number, other: number): number {
    if (this.cornersChange(cell, other)) return this.ruledSwapCost(cell, other);
    const { channels, figures, lag, tables } = this;
    const block = this.blockIn[cell]!;
    const second = this.blockIn[other]!;
    const from = block * channels;
    const to = second * channels;
    const here = cell * channels;
    const there = other * channels;
    let sum = 0;
    const weight = this.kernelAt(cell, other);
    if (weight === 0) {
      for (let channel = 0; channel < channels; channel++) {
        sum +=
          (figures[to + channel]! - figures[from + channel]!) *
          (lag[here + channel]! - lag[there + channel]!);
      }
    } else {
      for (let channel = 0; channel < channels; channel++) {
        const apart = figures[to + channel]! - figures[from + channel]!;
        sum +=
          apart * (lag[here + channel]! - lag[there + channel]! - weight * tables.sign[channel]! * apart);
      }
    }
    const { scales } = tables;
    const across = scales.fromMiddleX[cell]! - scales.fromMiddleX[other]!;
    const down = scales.fromMiddleY[cell]! - scales.fromMiddleY[other]!;
    const value = this.value[second]! - this.value[block]!;
    const warmth = this.warmth[second]! - this.warmth[block]!;
    let cost =
      2 * sum +
      value * (tables.valueLinear[cell]! - tables.valueLinear[other]!) +
      this.momentCost(value * across, value * down, warmth * across, warmth * down) -
      this.momentCost(0, 0, 0, 0);
    if (tables.likenessRow) {
      cost +=
        (this.blocks.colourSquare(second) - this.blocks.colourSquare(block)) *
        (tables.likenessRow[cell]! - tables.likenessRow[other]!);
    }
    return cost;
  }

  /** Brings the sums up to date; the blocks must still hang as before. */
  swap(cell: number, other: number): void {
    this.prices?.forgetNear(cell);
    this.prices?.forgetNear(other);
    if (this.cornersChange(cell, other)) {
      this.ruledSwap(cell, other);
      return;
    }
    const { scales } = this.tables;
    const block = this.blockIn[cell]!;
    const second = this.blockIn[other]!;
    for (let channel = 0; channel < this.channels; channel++) {
      this.changeOne[channel] =
        this.figures[second * this.channels + channel]! - this.figures[block * this.channels + channel]!;
    }
    this.addLag(cell, this.changeOne, 0, 1);
    this.addLag(other, this.changeOne, 0, -1);
    const across = scales.fromMiddleX[cell]! - scales.fromMiddleX[other]!;
    const down = scales.fromMiddleY[cell]! - scales.fromMiddleY[other]!;
    const value = this.value[second]! - this.value[block]!;
    const warmth = this.warmth[second]! - this.warmth[block]!;
    this.moment[0]! += value * across;
    this.moment[1]! += value * down;
    this.moment[2]! += warmth * across;
    this.moment[3]! += warmth * down;
  }

  /** Whether blocks exchanged between the cells may get other corners, by the quilt's rule. */
  private cornersChange(cell: number, other: number): boolean {
    const { ruledCorner } = this.tables.model;
    return ruledCorner.length > 0 && ruledCorner[cell] !== ruledCorner[other];
  }

  /** As swapCost, where both blocks get other figures on the way. Leaves the changes of both cells behind. */
  private ruledSwapCost(cell: number, other: number): number {
    const block = this.blockIn[cell]!;
    const second = this.blockIn[other]!;
    this.blocks.readInstead(second, cell, block, this.changeOne);
    this.blocks.readInstead(block, other, second, this.changeOther);
    const [here, there] = this.momentsOfSwap(cell, other);
    const cost =
      this.ownSpread(block, cell, this.changeOne, this.channels, here.value) +
      this.ownSpread(second, other, this.changeOther, this.channels, there.value) +
      2 * this.kernelAt(cell, other) * this.product(this.changeOne, this.changeOther, this.channels);
    const { fromMiddleX: x, fromMiddleY: y } = this.tables.scales;
    return (
      cost +
      this.momentCost(
        here.value * x[cell]! + there.value * x[other]!,
        here.value * y[cell]! + there.value * y[other]!,
        here.warmth * x[cell]! + there.warmth * x[other]!,
        here.warmth * y[cell]! + there.warmth * y[other]!,
      ) -
      this.momentCost(0, 0, 0, 0)
    );
  }

  /** How value and warmth change in both cells. */
  private momentsOfSwap(cell: number, other: number) {
    const block = this.blockIn[cell]!;
    const second = this.blockIn[other]!;
    const change = (into: number, at: number, gone: number) => ({
      value: this.value[into]! + this.blocks.cornerChange(into, at, 1) - this.value[gone]!,
      warmth: this.warmth[into]! + this.blocks.cornerChange(into, at, 4) - this.warmth[gone]!,
    });
    return [change(second, cell, block), change(block, other, second)] as const;
  }

  private ruledSwap(cell: number, other: number): void {
    const block = this.blockIn[cell]!;
    const second = this.blockIn[other]!;
    const { fromMiddleX: x, fromMiddleY: y } = this.tables.scales;
    this.blocks.readInstead(second, cell, block, this.changeOne);
    this.blocks.readInstead(block, other, second, this.changeOther);
    this.momentsOfSwap(cell, other).forEach(({ value, warmth }, at) => {
      const where = at === 0 ? cell : other;
      this.moment[0]! += value * x[where]!;
      this.moment[1]! += value * y[where]!;
      this.moment[2]! += warmth * x[where]!;
      this.moment[3]! += warmth * y[where]!;
    });
    this.blocks.rehang(second, cell);
    this.blocks.rehang(block, other);
    this.addLag(cell, this.changeOne, 0, 1);
    this.addLag(other, this.changeOther, 0, 1);
  }

  /**
   * What an exchange of wedges would add: the block gives one of type `oldType` for one of `newType`, and the other block the other way
   * round. Nothing changes. Where that is sure to be above `most`, so is the answer, which then may be less.
   */
  tradeCost(block: number, oldType: number, newType: number, otherBlock: number, most: number): number {
    const { blocks, changeOne, changeOther, meansOne, meansOther, tables } = this;
    this.prices ??= new TradePrices(tables, this);
    const { first } = this.prices;
    const cell = this.cellOf[block]!;
    const other = this.cellOf[otherBlock]!;
    const between = this.kernelAt(cell, other);
    const cost = this.prices.exchangeCost(cell, oldType, newType, other, between);
    const moments = this.momentCost(0, 0, 0, 0);
    // No trade takes more off the moments than there is.
    if (first === 0 && cost - moments > most) return cost - moments;
    const { fromMiddleX: x, fromMiddleY: y } = tables.scales;
    blocks.readMeans(block, oldType, newType, meansOne, changeOne);
    blocks.readMeans(otherBlock, newType, oldType, meansOther, changeOther);
    return (
      cost +
      this.ownSpread(block, cell, changeOne, first, meansOne[0]!) +
      this.ownSpread(otherBlock, other, changeOther, first, meansOther[0]!) +
      2 * between * this.product(changeOne, changeOther, first) +
      this.momentCost(
        meansOne[0]! * x[cell]! + meansOther[0]! * x[other]!,
        meansOne[0]! * y[cell]! + meansOther[0]! * y[other]!,
        meansOne[3]! * x[cell]! + meansOther[3]! * x[other]!,
        meansOne[3]! * y[cell]! + meansOther[3]! * y[other]!,
      ) -
      moments
    );
  }

  /** What a wedge of type `newType` in the block for one of `oldType` would add. Nothing changes, and no price is asked. */
  replaceCost(block: number, oldType: number, newType: number): number {
    const { blocks, changeOne: change, meansOne: means } = this;
    const { fromMiddleX: x, fromMiddleY: y } = this.tables.scales;
    const cell = this.cellOf[block]!;
    blocks.readMeans(block, oldType, newType, means, change);
    blocks.readFabrics(oldType, newType, change);
    return (
      this.ownSpread(block, cell, change, this.channels, means[0]!) +
      this.momentCost(
        means[0]! * x[cell]!,
        means[0]! * y[cell]!,
        means[3]! * x[cell]!,
        means[3]! * y[cell]!,
      ) -
      this.momentCost(0, 0, 0, 0)
    );
  }

  /** What each choice of wedges for a whole block would add, into a list. Nothing changes. Only where all figures add up (firstAdditive is 0). */
  choiceCosts(block: number, { figures: next, squares, value, warmth }: Choices, into: Float64Array): void {
    const { channels, figures, lag, tables } = this;
    const cell = this.cellOf[block]!;
    const x = tables.scales.fromMiddleX[cell]!;
    const y = tables.scales.fromMiddleY[cell]!;
    const { own } = tables.scales.kernel;
    const twice = Float64Array.from(
      { length: channels },
      (_, channel) => 2 * lag[cell * channels + channel]!,
    );
    let now = 0;
    for (let channel = 0; channel < channels; channel++) {
      const was = figures[block * channels + channel]!;
      now += was * (twice[channel]! + own * was);
    }
    // The moments of momentCost, multiplied out.
    const { moment } = this;
    const off = x * x + y * y;
    const byValue = 2 * tables.valueMoment * (moment[0]! * x + moment[1]! * y);
    const byWarmth = 2 * tables.warmthMoment * (moment[2]! * x + moment[3]! * y);
    const ownValue = this.value[block]!;
    const ownWarmth = this.warmth[block]!;
    for (let choice = 0, at = 0; choice < into.length; choice++) {
      let sum = own * squares[choice]! - now;
      for (let channel = 0; channel < channels; channel++) sum += next[at++]! * twice[channel]!;
      const lighter = value[choice]! - ownValue;
      const warmer = warmth[choice]! - ownWarmth;
      sum += lighter * (byValue + tables.valueMoment * off * lighter);
      into[choice] = sum + warmer * (byWarmth + tables.warmthMoment * off * warmer);
    }
  }

  /** Gives a block the wedges of a choice for good. */
  give(block: number, choices: Choices, choice: number): void {
    const { blocks, changeOne: change, channels, figures, moment } = this;
    const { fromMiddleX: x, fromMiddleY: y } = this.tables.scales;
    const cell = this.cellOf[block]!;
    for (let channel = 0; channel < channels; channel++)
      change[channel] = choices.figures[choice * channels + channel]! - figures[block * channels + channel]!;
    const value = choices.value[choice]! - this.value[block]!;
    const warmth = choices.warmth[choice]! - this.warmth[block]!;
    moment[0]! += value * x[cell]!;
    moment[1]! += value * y[cell]!;
    moment[2]! += warmth * x[cell]!;
    moment[3]! += warmth * y[cell]!;
    blocks.give(block, choices, choice);
    this.addLag(cell, change, 0, 1);
    this.forgetNear(block);
  }

  trade(block: number, oldType: number, newType: number, otherBlock: number): void {
    this.replace(block, oldType, newType);
    this.replace(otherBlock, newType, oldType);
    this.prices?.exchanged(this.cellOf[block]!, oldType, newType);
    this.prices?.exchanged(this.cellOf[otherBlock]!, newType, oldType);
  }

  /** Forgets the prices near a block whose wedges were replaced. */
  forgetNear(block: number): void {
    this.prices?.forgetNear(this.cellOf[block]!);
  }

  /** Forgets what is known of a wedge type, after its figures have changed. */
  forgetType(type: number): void {
    this.prices?.forgetType(type);
  }

  /** Replaces a wedge of a block; the prices near it stay as they are until forgetNear, which is for a replacement that is not taken back. */
  replace(block: number, oldType: number, newType: number): void {
    const { fromMiddleX: x, fromMiddleY: y } = this.tables.scales;
    const { blocks, changeOne: change, meansOne: means } = this;
    const cell = this.cellOf[block]!;
    blocks.readMeans(block, oldType, newType, means, change);
    blocks.readFabrics(oldType, newType, change);
    this.moment[0]! += means[0]! * x[cell]!;
    this.moment[1]! += means[0]! * y[cell]!;
    this.moment[2]! += means[3]! * x[cell]!;
    this.moment[3]! += means[3]! * y[cell]!;
    blocks.keep(block, oldType, newType, means, change);
    this.addLag(cell, change, 0, 1);
  }

  /** Change of the first `most` channels of a block against all others as they are, its own square included. `value` is in L*. */
  private ownSpread(block: number, cell: number, change: Float64Array, most: number, value: number): number {
    const { channels, figures, lag, tables } = this;
    const from = block * channels;
    const here = cell * channels;
    let sum = 0;
    for (let channel = 0; channel < most; channel++) {
      const by = change[channel]!;
      sum += by * (2 * lag[here + channel]! + tables.own[channel]! * (2 * figures[from + channel]! + by));
    }
    sum += value * tables.valueLinear[cell]!;
    if (tables.likenessRow && tables.scale[1]! > 0) {
      const square =
        change[1]! * (2 * figures[from + 1]! + change[1]!) +
        change[2]! * (2 * figures[from + 2]! + change[2]!);
      sum += (tables.likenessRow[cell]! * square) / tables.scale[1]! ** 2;
    }
    return sum;
  }

  private product(one: Float64Array, other: Float64Array, most: number): number {
    const { sign } = this.tables;
    let sum = 0;
    for (let channel = 0; channel < most; channel++) sum += sign[channel]! * one[channel]! * other[channel]!;
    return sum;
  }

  private linearCost(block: number, cell: number): number {
    const { tables } = this;
    const cost = this.value[block]! * tables.valueLinear[cell]!;
    return tables.likenessRow ? cost + tables.likenessRow[cell]! * this.blocks.colourSquare(block) : cost;
  }

  private momentCost(dx: number, dy: number, warmX: number, warmY: number): number {
    const { moment, tables } = this;
    return (
      tables.valueMoment * ((moment[0]! + dx) ** 2 + (moment[1]! + dy) ** 2) +
      tables.warmthMoment * ((moment[2]! + warmX) ** 2 + (moment[3]! + warmY) ** 2)
    );
  }

  private kernelAt(cell: number, other: number): number {
    const { rowOf, columnOf } = this.tables.model;
    const down = Math.abs(rowOf[cell]! - rowOf[other]!);
    const across = Math.abs(columnOf[cell]! - columnOf[other]!);
    return down > REACH || across > REACH ? 0 : WEIGHTS[down * (REACH + 1) + across]!;
  }

  private startSums(): void {
    const { model, scales } = this.tables;
    for (let cell = 0; cell < this.blockIn.length; cell++) {
      if (!filled(model, cell)) continue;
      const block = this.blockIn[cell]!;
      this.addLag(cell, this.figures, block * this.channels, 1);
      this.moment[0]! += (this.value[block]! - scales.target[cell]!) * scales.fromMiddleX[cell]!;
      this.moment[1]! += (this.value[block]! - scales.target[cell]!) * scales.fromMiddleY[cell]!;
      this.moment[2]! += this.warmth[block]! * scales.fromMiddleX[cell]!;
      this.moment[3]! += this.warmth[block]! * scales.fromMiddleY[cell]!;
    }
  }

  private addLag(cell: number, change: Float64Array, from: number, factor: number): void {
    const { near } = this.tables.scales.kernel;
    const { sign } = this.tables;
    const { channels, lag } = this;
    for (let at = near.start[cell]!; at < near.start[cell + 1]!; at++) {
      const weight = factor * near.weight[at]!;
      const to = near.to[at]! * channels;
      for (let channel = 0; channel < channels; channel++) {
        lag[to + channel]! += weight * sign[channel]! * change[from + channel]!;
      }
    }
  }
}

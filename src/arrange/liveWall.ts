// The wall while it is being arranged: where each block hangs and stands, which wedges it has, and the weighted score, kept up
// to date move by move on typed arrays. A move is tried (its cost known), then kept or taken back. Which to try is the search's.
import { placeOnSide, SIDES } from '../geometry/contact';
import { type CostTables, clashCost, filled, seamCost, writeFigures } from './costTables';
import type { Standings } from './movesBetween';

/** A place without a block, or a wedge kind beyond those of the blocks: nothing. */
const NONE = -1;

export class LiveWall implements Standings {
  readonly tables: CostTables;
  readonly kindAt: Int32Array;
  readonly standingOf: Int32Array;
  readonly blockIn: Int32Array;
  readonly cellOf: Int32Array;
  /** Wedges left over, by kind. */
  readonly spare: Int32Array;
  /** The weighted score of what hangs, as balance/terms has it. */
  cost = 0;

  private readonly perBlock: number;
  private readonly channels: number;
  /** Rim on each side: (block × N + standing) × 4 + side → fabric. */
  private readonly rims: Int32Array;
  /** Cost of a block's rims against its own corners: block × N + standing. */
  private readonly cornerRims: Float64Array;
  /** Side of each place: standing × N + place → side, −1 for none. */
  private readonly sideOf: Int8Array;
  private readonly hasCornerPairs: boolean;
  private readonly figures: Float64Array;
  /** Σ over the neighbouring cells n ≠ c of K(c, n) · sign · figures(n): cell × channel. */
  private readonly lag: Float64Array;
  /** Area and area × (L*, a, b, warmth) of each block with its corners. */
  private readonly sums: Float64Array;
  /** Deviation of value and of warmth of each block from the mean. */
  private readonly value: Float64Array;
  private readonly warmth: Float64Array;
  private readonly moment = new Float64Array(4);
  private readonly seams: Float64Array;
  private readonly changeOne: Float64Array;
  private readonly changeOther: Float64Array;

  constructor(tables: CostTables, spare: Int32Array) {
    const { model } = tables;
    this.tables = tables;
    this.perBlock = model.perBlock;
    this.channels = tables.channels;
    this.kindAt = model.kindAt.slice();
    this.standingOf = model.standingOf.slice();
    this.blockIn = model.blockIn.slice();
    this.cellOf = model.cellOf.slice();
    this.spare = spare.slice();
    const blocks = model.blocks.length;
    this.rims = new Int32Array(blocks * model.perBlock * 4);
    this.cornerRims = new Float64Array(blocks * model.perBlock);
    this.sideOf = sidesOf(model.perBlock);
    this.hasCornerPairs = model.cornerByDesign.some((byDesign) => byDesign === 0);
    this.figures = new Float64Array(blocks * tables.channels);
    this.lag = new Float64Array(model.blockIn.length * tables.channels);
    this.sums = new Float64Array(blocks * 5);
    this.value = new Float64Array(blocks);
    this.warmth = new Float64Array(blocks);
    this.seams = new Float64Array(model.kindRim.length ** 2).fill(Number.NaN);
    this.changeOne = new Float64Array(tables.channels);
    this.changeOther = new Float64Array(tables.channels);
    for (let block = 0; block < blocks; block++) {
      this.sums.set(
        [1, model.lightness[block]!, model.a[block]!, model.b[block]!, model.warmth[block]!].map(
          (mean) => mean * model.area[block]!,
        ),
        block * 5,
      );
      this.readRims(block);
      this.readFigures(block, this.figures, block * this.channels);
    }
    this.startSums();
    this.cost = clashCost(tables) + this.spreadCost();
  }

  // ---- What is tried ------------------------------------------------------------------------------------------------

  /** Stands the block otherwise and returns what that adds to the score. Taken back by standing it as before. */
  turn(block: number, stands: number): number {
    const cell = this.cellOf[block]!;
    const before = this.contactCost(block, cell);
    this.standingOf[block] = stands;
    const added = this.contactCost(block, cell) - before;
    this.cost += added;
    return added;
  }

  /** What exchanging the blocks of two filled cells would add to the score, with the standings given. Nothing changes. */
  swapCost(cell: number, other: number, stands: number, otherStands: number): number {
    const block = this.blockIn[cell]!;
    const second = this.blockIn[other]!;
    const wasStanding = this.standingOf[block]!;
    const secondWas = this.standingOf[second]!;
    const before = this.contactOfTwo(cell, other);
    this.hang(second, cell, otherStands);
    this.hang(block, other, stands);
    const after = this.contactOfTwo(cell, other);
    this.hang(block, cell, wasStanding);
    this.hang(second, other, secondWas);
    return after - before + this.swapSpread(cell, other);
  }

  /** Exchanges the blocks of two filled cells; `added` is what swapCost gave for it. */
  swap(cell: number, other: number, stands: number, otherStands: number, added: number): void {
    const block = this.blockIn[cell]!;
    const second = this.blockIn[other]!;
    this.spreadAfterSwap(cell, other);
    this.hang(second, cell, otherStands);
    this.hang(block, other, stands);
    this.cost += added;
  }

  /**
   * What exchanging the wedges of two places (block × N + place) would add to the score. Both blocks must hang. Leaves the
   * changes of figures for `trade`, which must follow at once if it is to be done.
   */
  tradeCost(place: number, other: number): number {
    const kind = this.kindAt[place]!;
    const second = this.kindAt[other]!;
    const block = (place / this.perBlock) | 0;
    const otherBlock = (other / this.perBlock) | 0;
    const before = this.wedgeContactOfTwo(place, other);
    this.kindAt[place] = second;
    this.kindAt[other] = kind;
    const after = this.wedgeContactOfTwo(place, other);
    this.kindAt[place] = kind;
    this.kindAt[other] = second;
    if (block === otherBlock) return after - before;
    this.readChange(block, kind, second, this.changeOne);
    this.readChange(otherBlock, second, kind, this.changeOther);
    return after - before + this.tradeSpread(block, kind, second, otherBlock);
  }

  trade(place: number, other: number, added: number): void {
    const kind = this.kindAt[place]!;
    const second = this.kindAt[other]!;
    const block = (place / this.perBlock) | 0;
    const otherBlock = (other / this.perBlock) | 0;
    this.kindAt[place] = second;
    this.kindAt[other] = kind;
    this.cost += added;
    if (block !== otherBlock) {
      this.keepChange(block, kind, second, this.changeOne);
      this.keepChange(otherBlock, second, kind, this.changeOther);
    } else this.readRims(block);
  }

  /** What putting a left-over wedge in a place would add; as tradeCost, to be followed by replace if it is to be done. */
  replaceCost(place: number, kind: number): number {
    const held = this.kindAt[place]!;
    const block = (place / this.perBlock) | 0;
    const before = this.wedgeContact(place);
    this.kindAt[place] = kind;
    const after = this.wedgeContact(place);
    this.kindAt[place] = held;
    this.readChange(block, held, kind, this.changeOne);
    return after - before + this.tradeSpread(block, held, kind, NONE);
  }

  replace(place: number, kind: number, added: number): void {
    const held = this.kindAt[place]!;
    this.kindAt[place] = kind;
    this.spare[held]! += 1;
    this.spare[kind]! -= 1;
    this.cost += added;
    this.keepChange((place / this.perBlock) | 0, held, kind, this.changeOne);
  }

  /** The standing among those given in which the block of a cell meets its neighbours best; the first of equals. */
  bestStanding(block: number, cell: number, standings: Int32Array, skip: number): number {
    let best = standings[0]!;
    let least = Number.POSITIVE_INFINITY;
    for (const stands of standings) {
      const cost = this.sideCosts(block, stands, cell, skip);
      if (cost < least - 1e-12) {
        least = cost;
        best = stands;
      }
    }
    return best;
  }

  // ---- Contact: rims, corners, sashing, seams -------------------------------------------------------------------------

  private hang(block: number, cell: number, stands: number): void {
    this.blockIn[cell] = block;
    this.cellOf[block] = cell;
    this.standingOf[block] = stands;
  }

  private contactCost(block: number, cell: number): number {
    return this.sideCosts(block, this.standingOf[block]!, cell, NONE);
  }

  private contactOfTwo(cell: number, other: number): number {
    return (
      this.sideCosts(this.blockIn[cell]!, this.standingOf[this.blockIn[cell]!]!, cell, NONE) +
      this.sideCosts(this.blockIn[other]!, this.standingOf[this.blockIn[other]!]!, other, cell)
    );
  }

  /** Everything a block's sides and corners cost in a cell, as the neighbours hang; without the side towards `skip`. */
  private sideCosts(block: number, stands: number, cell: number, skip: number): number {
    const { tables, rims, blockIn } = this;
    const { beyond, beside, acrossAt } = tables.model;
    const { stride, none, touching } = tables;
    const own = (block * this.perBlock + stands) * 4;
    let cost = this.cornerRims[block * this.perBlock + stands]!;
    for (let side = 0; side < 4; side++) {
      const rim = rims[own + side]!;
      const cloth = beside[cell * 4 + side]!;
      if (cloth >= 0 && rim !== none) cost += touching[rim * stride + cloth]!;
      const next = beyond[cell * 4 + side]!;
      if (next < 0 || next === skip) continue;
      const other = blockIn[next]!;
      if (other < 0) continue;
      const facingRim = rims[(other * this.perBlock + this.standingOf[other]!) * 4 + ((side + 2) & 3)]!;
      const across = acrossAt[cell * 4 + side]!;
      cost += touching[rim * stride + facingRim]! * across;
      if (this.hasCornerPairs) cost += this.cornerPair(block, other, side) * across;
    }
    return cost;
  }

  private cornerPair(block: number, other: number, side: number): number {
    const { model, stride, touching } = this.tables;
    if (model.cornerByDesign[block] || model.cornerByDesign[other]) return 0;
    const stretch = side % 2 === 1 ? model.cornerStretch.upright : model.cornerStretch.level;
    return (touching[model.corner[block]! * stride + model.corner[other]!]! * stretch) / model.rim;
  }

  /** Cost of a wedge's two seams, and of its rim where that lies. */
  private wedgeContact(place: number): number {
    const { perBlock } = this;
    const block = (place / perBlock) | 0;
    const first = block * perBlock;
    const at = place - first;
    const before = first + ((at + perBlock - 1) % perBlock);
    const after = first + ((at + 1) % perBlock);
    return this.seam(before, place) + this.seam(place, after) + this.rimCost(block, at);
  }

  private seam(place: number, next: number): number {
    const kind = this.kindAt[place]!;
    const following = this.kindAt[next]!;
    if (kind < 0 || following < 0) return 0;
    const key = kind * this.tables.model.kindRim.length + following;
    let cost = this.seams[key]!;
    if (Number.isNaN(cost)) {
      cost = seamCost(this.tables, kind, following);
      this.seams[key] = cost;
    }
    return cost;
  }

  /** Cost of the rim in a place, read from the wedge that is there now, not from the table of rims. */
  private rimCost(block: number, place: number): number {
    const { tables, perBlock } = this;
    const { model, stride } = tables;
    const kind = this.kindAt[block * perBlock + place]!;
    const rim = kind < 0 ? NONE : model.kindRim[kind]!;
    const cell = this.cellOf[block]!;
    if (rim < 0 || cell < 0) return 0;
    const side = this.sideOf[this.standingOf[block]! * perBlock + place]!;
    if (side < 0) {
      const corner = model.corner[block]!;
      return model.cloths.background[corner] ? 0 : tables.touching[rim * stride + corner]!;
    }
    const cloth = model.beside[cell * 4 + side]!;
    const cost = cloth < 0 ? 0 : tables.touching[rim * stride + cloth]!;
    const next = model.beyond[cell * 4 + side]!;
    const other = next < 0 ? NONE : this.blockIn[next]!;
    if (other < 0) return cost;
    const facing = tables.touching[rim * stride + this.rimNow(other, (side + 2) & 3)]!;
    return cost + facing * model.acrossAt[cell * 4 + side]!;
  }

  /** The fabric on a side of a block as its wedges are now. */
  private rimNow(block: number, side: number): number {
    const place = this.placeOn(block, side);
    const kind = place < 0 ? NONE : this.kindAt[place]!;
    const rim = kind < 0 ? NONE : this.tables.model.kindRim[kind]!;
    return rim < 0 ? this.tables.none : rim;
  }

  private placeOn(block: number, side: number): number {
    const place = placeOnSide(SIDES[side]!, this.standingOf[block]!, this.perBlock);
    return place === null ? NONE : block * this.perBlock + place;
  }

  /** Contact of two wedges, what they cost each other counted once. */
  private wedgeContactOfTwo(place: number, other: number): number {
    const both = this.wedgeContact(place) + this.wedgeContact(other);
    const { perBlock } = this;
    const block = (place / perBlock) | 0;
    const otherBlock = (other / perBlock) | 0;
    if (block === otherBlock) {
      const apart = (other - place + perBlock) % perBlock;
      if (apart === 1) return both - this.seam(place, other);
      if (apart === perBlock - 1) return both - this.seam(other, place);
      return both;
    }
    const side = this.sideOf[this.standingOf[block]! * perBlock + (place - block * perBlock)]!;
    if (side < 0 || this.tables.model.beyond[this.cellOf[block]! * 4 + side] !== this.cellOf[otherBlock])
      return both;
    if (this.placeOn(otherBlock, (side + 2) & 3) !== other) return both;
    const { stride, touching, model } = this.tables;
    const facing = touching[this.rimNow(block, side) * stride + this.rimNow(otherBlock, (side + 2) & 3)]!;
    return both - facing * model.acrossAt[this.cellOf[block]! * 4 + side]!;
  }

  private readRims(block: number): void {
    const { perBlock, kindAt, tables } = this;
    const { model, none, stride } = tables;
    const corner = model.corner[block]!;
    for (let stands = 0; stands < perBlock; stands++) {
      let cost = 0;
      for (let side = 0; side < 4; side++) this.rims[(block * perBlock + stands) * 4 + side] = none;
      for (let place = 0; place < perBlock; place++) {
        const kind = kindAt[block * perBlock + place]!;
        const rim = kind < 0 ? NONE : model.kindRim[kind]!;
        if (rim < 0) continue;
        const side = this.sideOf[stands * perBlock + place]!;
        if (side >= 0) this.rims[(block * perBlock + stands) * 4 + side] = rim;
        else if (!model.cloths.background[corner]) cost += tables.touching[rim * stride + corner]!;
      }
      this.cornerRims[block * perBlock + stands] = cost;
    }
  }

  // ---- Spread: figures of blocks over the cells ------------------------------------------------------------------------

  /** Reads the figures of a block from its sums and its wedges. */
  private readFigures(block: number, into: Float64Array, from: number): void {
    const { model, basis } = this.tables;
    if (model.area[block] === 0) return;
    const [area, lightness, a, b, warmth] = this.sums.subarray(block * 5, block * 5 + 5);
    writeFigures(
      this.tables,
      lightness! / area!,
      a! / area!,
      b! / area!,
      (fabric) => this.fabricArea(block, fabric),
      into,
      from,
    );
    this.value[block] = lightness! / area! - basis.meanLightness;
    this.warmth[block] = warmth! / area! - basis.meanWarmth;
  }

  private fabricArea(block: number, fabric: number): number {
    const { kindFabricArea, fabricCount } = this.tables.model;
    let area = 0;
    for (let place = block * this.perBlock; place < (block + 1) * this.perBlock; place++) {
      const kind = this.kindAt[place]!;
      if (kind >= 0) area += kindFabricArea[kind * fabricCount + fabric]!;
    }
    return area;
  }

  private startSums(): void {
    const { model, basis } = this.tables;
    for (let cell = 0; cell < this.blockIn.length; cell++) {
      if (!filled(model, cell)) continue;
      const block = this.blockIn[cell]!;
      this.addLag(cell, this.figures, block * this.channels, 1);
      this.moment[0]! += (this.value[block]! - basis.target[cell]!) * basis.fromMiddleX[cell]!;
      this.moment[1]! += (this.value[block]! - basis.target[cell]!) * basis.fromMiddleY[cell]!;
      this.moment[2]! += this.warmth[block]! * basis.fromMiddleX[cell]!;
      this.moment[3]! += this.warmth[block]! * basis.fromMiddleY[cell]!;
    }
  }

  private addLag(cell: number, change: Float64Array, from: number, factor: number): void {
    const { near } = this.tables.basis.kernel;
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

  /** The spread part of the score, in full: for the start, and for checking. */
  private spreadCost(): number {
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

  private linearCost(block: number, cell: number): number {
    const { tables } = this;
    const cost = this.value[block]! * tables.valueLinear[cell]!;
    return tables.likenessRow ? cost + tables.likenessRow[cell]! * this.colourSquare(block) : cost;
  }

  /** a² + b² of a block; its figures carry the root of twice the colour factor. */
  private colourSquare(block: number): number {
    const scale = this.tables.scale[1]!;
    if (scale === 0) return 0;
    const from = block * this.channels;
    return (this.figures[from + 1]! ** 2 + this.figures[from + 2]! ** 2) / scale ** 2;
  }

  private momentCost(dx: number, dy: number, warmX: number, warmY: number): number {
    const { moment, tables } = this;
    return (
      tables.valueMoment * ((moment[0]! + dx) ** 2 + (moment[1]! + dy) ** 2) +
      tables.warmthMoment * ((moment[2]! + warmX) ** 2 + (moment[3]! + warmY) ** 2)
    );
  }

  private kernelAt(cell: number, other: number): number {
    const { near } = this.tables.basis.kernel;
    for (let at = near.start[cell]!; at < near.start[cell + 1]!; at++) {
      if (near.to[at] === other) return near.weight[at]!;
    }
    return 0;
  }

  private isNear(cell: number, other: number): boolean {
    const { rowOf, columnOf } = this.tables.model;
    const down = rowOf[cell]! - rowOf[other]!;
    const across = columnOf[cell]! - columnOf[other]!;
    return down <= 2 && down >= -2 && across <= 2 && across >= -2;
  }

  private swapSpread(cell: number, other: number): number {
    const { channels, figures, lag, tables } = this;
    const block = this.blockIn[cell]!;
    const second = this.blockIn[other]!;
    const from = block * channels;
    const to = second * channels;
    const here = cell * channels;
    const there = other * channels;
    let sum = 0;
    const weight = this.isNear(cell, other) ? this.kernelAt(cell, other) : 0;
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
    const { basis } = tables;
    const across = basis.fromMiddleX[cell]! - basis.fromMiddleX[other]!;
    const down = basis.fromMiddleY[cell]! - basis.fromMiddleY[other]!;
    const value = this.value[second]! - this.value[block]!;
    const warmth = this.warmth[second]! - this.warmth[block]!;
    let cost =
      2 * sum +
      value * (tables.valueLinear[cell]! - tables.valueLinear[other]!) +
      this.momentCost(value * across, value * down, warmth * across, warmth * down) -
      this.momentCost(0, 0, 0, 0);
    if (tables.likenessRow) {
      cost +=
        (this.colourSquare(second) - this.colourSquare(block)) *
        (tables.likenessRow[cell]! - tables.likenessRow[other]!);
    }
    return cost;
  }

  private spreadAfterSwap(cell: number, other: number): void {
    const { basis } = this.tables;
    const block = this.blockIn[cell]!;
    const second = this.blockIn[other]!;
    for (let channel = 0; channel < this.channels; channel++) {
      this.changeOne[channel] =
        this.figures[second * this.channels + channel]! - this.figures[block * this.channels + channel]!;
    }
    this.addLag(cell, this.changeOne, 0, 1);
    this.addLag(other, this.changeOne, 0, -1);
    const across = basis.fromMiddleX[cell]! - basis.fromMiddleX[other]!;
    const down = basis.fromMiddleY[cell]! - basis.fromMiddleY[other]!;
    const value = this.value[second]! - this.value[block]!;
    const warmth = this.warmth[second]! - this.warmth[block]!;
    this.moment[0]! += value * across;
    this.moment[1]! += value * down;
    this.moment[2]! += warmth * across;
    this.moment[3]! += warmth * down;
  }

  /** New mean of a block's figure `sum` (0 area, 1 L*, 2 a, 3 b, 4 warmth) when a wedge is exchanged, less the old one. */
  private meanChange(block: number, held: number, kind: number, sum: number): number {
    const { model } = this.tables;
    const means = [null, model.kindLightness, model.kindA, model.kindB, model.kindWarmth][sum]!;
    const from = block * 5;
    const area = this.sums[from]! + model.kindArea[kind]! - model.kindArea[held]!;
    const total =
      this.sums[from + sum]! + model.kindArea[kind]! * means[kind]! - model.kindArea[held]! * means[held]!;
    return total / area - this.sums[from + sum]! / this.sums[from]!;
  }

  private readChange(block: number, held: number, kind: number, into: Float64Array): void {
    const { model, scale, fabrics } = this.tables;
    for (let mean = 0; mean < 3; mean++) {
      into[mean] = this.meanChange(block, held, kind, mean + 1) * scale[mean]!;
    }
    const from = held * model.fabricCount;
    const to = kind * model.fabricCount;
    for (let at = 0; at < fabrics.length; at++) {
      const fabric = fabrics[at]!;
      into[3 + at] =
        (model.kindFabricArea[to + fabric]! - model.kindFabricArea[from + fabric]!) * scale[3 + at]!;
    }
  }

  /** Spread part of an exchange of wedges whose changes of figures stand in changeOne and changeOther. */
  private tradeSpread(block: number, held: number, kind: number, otherBlock: number): number {
    const cell = this.cellOf[block]!;
    const { basis, valueMoment, warmthMoment } = this.tables;
    const value = this.meanChange(block, held, kind, 1);
    let cost = this.ownSpread(block, cell, this.changeOne, value);
    let dx = value * basis.fromMiddleX[cell]!;
    let dy = value * basis.fromMiddleY[cell]!;
    const warms = warmthMoment > 0;
    const warmth = warms ? this.meanChange(block, held, kind, 4) : 0;
    let warmX = warmth * basis.fromMiddleX[cell]!;
    let warmY = warmth * basis.fromMiddleY[cell]!;
    if (otherBlock >= 0) {
      const other = this.cellOf[otherBlock]!;
      const otherValue = this.meanChange(otherBlock, kind, held, 1);
      cost += this.ownSpread(otherBlock, other, this.changeOther, otherValue);
      if (this.isNear(cell, other))
        cost += 2 * this.kernelAt(cell, other) * this.product(this.changeOne, this.changeOther);
      dx += otherValue * basis.fromMiddleX[other]!;
      dy += otherValue * basis.fromMiddleY[other]!;
      const otherWarmth = warms ? this.meanChange(otherBlock, kind, held, 4) : 0;
      warmX += otherWarmth * basis.fromMiddleX[other]!;
      warmY += otherWarmth * basis.fromMiddleY[other]!;
    }
    if (valueMoment === 0 && !warms) return cost;
    return cost + this.momentCost(dx, dy, warmX, warmY) - this.momentCost(0, 0, 0, 0);
  }

  private product(one: Float64Array, other: Float64Array): number {
    const { sign } = this.tables;
    let sum = 0;
    for (let channel = 0; channel < this.channels; channel++)
      sum += sign[channel]! * one[channel]! * other[channel]!;
    return sum;
  }

  /** Change of a block's spread against all others as they are, its own square included. `value` is in L*. */
  private ownSpread(block: number, cell: number, change: Float64Array, value: number): number {
    const { channels, figures, lag, tables } = this;
    const from = block * channels;
    const here = cell * channels;
    let sum = 0;
    for (let channel = 0; channel < channels; channel++) {
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

  private keepChange(block: number, held: number, kind: number, change: Float64Array): void {
    const { model, basis } = this.tables;
    const cell = this.cellOf[block]!;
    const value = this.meanChange(block, held, kind, 1);
    const warmth = this.meanChange(block, held, kind, 4);
    this.moment[0]! += value * basis.fromMiddleX[cell]!;
    this.moment[1]! += value * basis.fromMiddleY[cell]!;
    this.moment[2]! += warmth * basis.fromMiddleX[cell]!;
    this.moment[3]! += warmth * basis.fromMiddleY[cell]!;
    this.value[block]! += value;
    this.warmth[block]! += warmth;
    const from = block * 5;
    const sizes = [model.kindArea[held]!, model.kindArea[kind]!] as const;
    this.sums[from]! += sizes[1] - sizes[0];
    [model.kindLightness, model.kindA, model.kindB, model.kindWarmth].forEach((means, at) => {
      this.sums[from + 1 + at]! += sizes[1] * means[kind]! - sizes[0] * means[held]!;
    });
    for (let channel = 0; channel < this.channels; channel++) {
      this.figures[block * this.channels + channel]! += change[channel]!;
    }
    this.addLag(cell, change, 0, 1);
    this.readRims(block);
  }
}

/** Side each place lies on for each standing, −1 for none: standing × N + place. */
function sidesOf(perBlock: number): Int8Array {
  const table = new Int8Array(perBlock * perBlock).fill(NONE);
  for (let stands = 0; stands < perBlock; stands++) {
    SIDES.forEach((side, at) => {
      const place = placeOnSide(side, stands, perBlock);
      if (place !== null) table[stands * perBlock + place] = at;
    });
  }
  return table;
}

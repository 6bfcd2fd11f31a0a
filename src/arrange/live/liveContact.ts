// Keeps the clash part of the weighted score while a wall is arranged: the contacts of balance/clashes, kept step by step for
// speed and held to them by a law test. It reads where everything hangs and changes nothing of it.
import { cornersInches } from '../../balance/clashes/contacts';
import { cornerIn } from '../../balance/wall/wallModel';
import { placeOnSide, SIDES, sideOfPlace } from '../../geometry/contact';
import { cornerSorts } from './cornerSorts';
import { type CostTables, MOST_TABLED, seamCost } from './costTables';
import { type Hanging, NONE } from './hanging';

export class LiveContact {
  private readonly tables: CostTables;
  private readonly typeAt: Int32Array;
  private readonly orientationOf: Int32Array;
  private readonly blockIn: Int32Array;
  private readonly cellOf: Int32Array;
  private readonly perBlock: number;
  /** Rim on each side: (block × N + orientation) × 4 + side → fabric. */
  private readonly rims: Int32Array;
  /** Sort of corner by cell, and a cell of each sort. */
  private readonly sortOf: Uint8Array;
  private readonly sorts: readonly number[];
  /** Cost of a block's rims against its own corners: (sort × blocks + block) × N + orientation. */
  private readonly cornerRims: Float64Array;
  /** Side of each place: orientation × N + place → side, −1 for none. */
  private readonly sideOf: Int8Array;
  private readonly hasCornerPairs: boolean;
  /** Cost of the seam between two of the first so many types. */
  private readonly seams: Float64Array;
  private readonly tabled: number;

  constructor(tables: CostTables, hanging: Hanging) {
    const { model } = tables;
    this.tables = tables;
    this.typeAt = hanging.typeAt;
    this.orientationOf = hanging.orientationOf;
    this.blockIn = hanging.blockIn;
    this.cellOf = hanging.cellOf;
    this.perBlock = model.perBlock;
    const blocks = model.blocks.length;
    this.rims = new Int32Array(blocks * model.perBlock * 4);
    ({ sortOf: this.sortOf, sorts: this.sorts } = cornerSorts(model));
    this.cornerRims = new Float64Array(this.sorts.length * blocks * model.perBlock);
    this.sideOf = sidesOf(model.perBlock);
    this.hasCornerPairs = model.cornerByDesign.some((byDesign) => byDesign === 0);
    this.tabled = Math.min(model.typeRim.length, MOST_TABLED);
    this.seams = new Float64Array(this.tabled ** 2).fill(Number.NaN);
    for (let block = 0; block < blocks; block++) this.readRims(block);
  }

  /** Everything a block's sides and corners cost in a cell as it stands. */
  ofBlock(block: number, cell: number): number {
    return this.ofSides(block, this.orientationOf[block]!, cell, NONE);
  }

  /** The same of the blocks in two cells, what they cost each other counted once. */
  ofTwoCells(cell: number, other: number): number {
    return (
      this.ofSides(this.blockIn[cell]!, this.orientationOf[this.blockIn[cell]!]!, cell, NONE) +
      this.ofSides(this.blockIn[other]!, this.orientationOf[this.blockIn[other]!]!, other, cell)
    );
  }

  /** Everything a block's sides and corners cost in a cell, as the neighbours hang; without the side towards `skip`. */
  ofSides(block: number, stands: number, cell: number, skip: number): number {
    const { tables, rims, blockIn } = this;
    const { neighbourCell, settingFabric, sashingFactorAt } = tables.model;
    const { stride, none, touching } = tables;
    const own = (block * this.perBlock + stands) * 4;
    let cost = this.cornerRims[this.cornerRow(block, this.sortOf[cell]!) + stands]!;
    for (let side = 0; side < 4; side++) {
      const rim = rims[own + side]!;
      const cloth = settingFabric[cell * 4 + side]!;
      if (cloth >= 0 && rim !== none) cost += touching[rim * stride + cloth]!;
      const next = neighbourCell[cell * 4 + side]!;
      if (next < 0 || next === skip) continue;
      const other = blockIn[next]!;
      if (other < 0) continue;
      const facingRim = rims[(other * this.perBlock + this.orientationOf[other]!) * 4 + ((side + 2) & 3)]!;
      const across = sashingFactorAt[cell * 4 + side]!;
      cost += touching[rim * stride + facingRim]! * across;
      if (this.hasCornerPairs) cost += this.cornerPair(block, other, side) * across;
    }
    return cost;
  }

  private cornerRow(block: number, sort: number): number {
    return (sort * this.tables.model.blocks.length + block) * this.perBlock;
  }

  private cornerPair(block: number, other: number, side: number): number {
    const { model, stride, touching } = this.tables;
    const inches = cornersInches(model, block, other, side);
    return (touching[model.corner[block]! * stride + model.corner[other]!]! * inches) / model.rim;
  }

  /** Cost of a wedge's two seams, and of its rim where that lies. */
  ofWedge(place: number): number {
    const { perBlock } = this;
    const block = (place / perBlock) | 0;
    const first = block * perBlock;
    const at = place - first;
    const before = first + ((at + perBlock - 1) % perBlock);
    const after = first + ((at + 1) % perBlock);
    const { typeAt } = this;
    return (
      this.seam(typeAt[before]!, typeAt[place]!) +
      this.seam(typeAt[place]!, typeAt[after]!) +
      this.rimCost(block, at)
    );
  }

  /** Cost of the seam between two wedge types; nothing beside NONE. */
  seam(type: number, following: number): number {
    if (type < 0 || following < 0) return 0;
    if (type >= this.tabled || following >= this.tabled) return seamCost(this.tables, type, following);
    const key = type * this.tabled + following;
    let cost = this.seams[key]!;
    if (Number.isNaN(cost)) {
      cost = seamCost(this.tables, type, following);
      this.seams[key] = cost;
    }
    return cost;
  }

  /** Forgets what the seams of a type cost, after its wedges have changed. */
  forgetSeams(type: number): void {
    const { model } = this.tables;
    const types = model.typeRim.length;
    const forget = (one: number, next: number) => {
      if (one < this.tabled && next < this.tabled) {
        const key = one * this.tabled + next;
        if (Number.isNaN(this.seams[key]!)) return;
        this.seams[key] = Number.NaN;
      }
      model.radialMemo.delete(one * types + next);
    };
    for (let other = 0; other < types; other++) {
      forget(type, other);
      forget(other, type);
    }
  }

  /** Cost of the rim in a place, read from the wedge that is there now, not from the table of rims. */
  rimCost(block: number, place: number): number {
    const { tables, perBlock } = this;
    const { model, stride } = tables;
    const type = this.typeAt[block * perBlock + place]!;
    const rim = type < 0 ? NONE : model.typeRim[type]!;
    const cell = this.cellOf[block]!;
    if (rim < 0 || cell < 0) return 0;
    const side = this.sideOf[this.orientationOf[block]! * perBlock + place]!;
    if (side < 0) {
      const corner = cornerIn(model, block, cell);
      return model.cloths.background[corner] ? 0 : tables.touching[rim * stride + corner]!;
    }
    const cloth = model.settingFabric[cell * 4 + side]!;
    const cost = cloth < 0 ? 0 : tables.touching[rim * stride + cloth]!;
    const next = model.neighbourCell[cell * 4 + side]!;
    const other = next < 0 ? NONE : this.blockIn[next]!;
    if (other < 0) return cost;
    const facing = tables.touching[rim * stride + this.rimNow(other, (side + 2) & 3)]!;
    return cost + facing * model.sashingFactorAt[cell * 4 + side]!;
  }

  /** The fabric on a side of a block as its wedges are now. */
  private rimNow(block: number, side: number): number {
    const place = this.placeOn(block, side);
    const type = place < 0 ? NONE : this.typeAt[place]!;
    const rim = type < 0 ? NONE : this.tables.model.typeRim[type]!;
    return rim < 0 ? this.tables.none : rim;
  }

  private placeOn(block: number, side: number): number {
    const place = placeOnSide(SIDES[side]!, this.orientationOf[block]!, this.perBlock);
    return place === null ? NONE : block * this.perBlock + place;
  }

  /** Contact of two wedges, what they cost each other counted once. */
  ofTwoWedges(place: number, other: number): number {
    const both = this.ofWedge(place) + this.ofWedge(other);
    const { perBlock } = this;
    const block = (place / perBlock) | 0;
    const otherBlock = (other / perBlock) | 0;
    if (block === otherBlock) {
      const apart = (other - place + perBlock) % perBlock;
      if (apart === 1) return both - this.seam(this.typeAt[place]!, this.typeAt[other]!);
      if (apart === perBlock - 1) return both - this.seam(this.typeAt[other]!, this.typeAt[place]!);
      return both;
    }
    const side = this.sideOf[this.orientationOf[block]! * perBlock + (place - block * perBlock)]!;
    if (
      side < 0 ||
      this.tables.model.neighbourCell[this.cellOf[block]! * 4 + side] !== this.cellOf[otherBlock]
    )
      return both;
    if (this.placeOn(otherBlock, (side + 2) & 3) !== other) return both;
    const { stride, touching, model } = this.tables;
    const facing = touching[this.rimNow(block, side) * stride + this.rimNow(otherBlock, (side + 2) & 3)]!;
    return both - facing * model.sashingFactorAt[this.cellOf[block]! * 4 + side]!;
  }

  /** Reads the rims of a block anew, after its wedges have changed. */
  readRims(block: number): void {
    const { perBlock, typeAt, tables } = this;
    const { model, none, stride } = tables;
    for (let stands = 0; stands < perBlock; stands++) {
      const onCorners: number[] = [];
      for (let side = 0; side < 4; side++) this.rims[(block * perBlock + stands) * 4 + side] = none;
      for (let place = 0; place < perBlock; place++) {
        const type = typeAt[block * perBlock + place]!;
        const rim = type < 0 ? NONE : model.typeRim[type]!;
        if (rim < 0) continue;
        const side = this.sideOf[stands * perBlock + place]!;
        if (side >= 0) this.rims[(block * perBlock + stands) * 4 + side] = rim;
        else onCorners.push(rim);
      }
      this.sorts.forEach((cell, sort) => {
        const corner = cornerIn(model, block, cell);
        const cost = (sum: number, rim: number) => sum + tables.touching[rim * stride + corner]!;
        this.cornerRims[this.cornerRow(block, sort) + stands] = model.cloths.background[corner]
          ? 0
          : onCorners.reduce(cost, 0);
      });
    }
  }
}

/** Side each place lies on for each orientation, −1 for none: orientation × N + place. */
function sidesOf(perBlock: number): Int8Array {
  return Int8Array.from({ length: perBlock * perBlock }, (_, at) =>
    sideOfPlace(at % perBlock, Math.floor(at / perBlock), perBlock),
  );
}

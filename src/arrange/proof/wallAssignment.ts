// States a whole wall as an assignment of blocks to cells whose cost is a sum of squares (branch/convexAssignment.ts): the
// spread as forms, the lean as moments, and of the rims what they cost at least, whatever the turns.
import type { ConvexAssignment, Form, Moment } from '../branch/convexAssignment';
import type { Contacts } from './contactTables';
import { rimTables } from './rimTables';
import { aloneSpread, kernelTable, likenessOf, rowIn, type Spread } from './spreadAssignment';

export interface WallAssignment {
  readonly problem: ConvexAssignment;
  /** Cell i of the problem is cells[i]; item i is blocks[i]. */
  readonly cells: Int32Array;
  readonly blocks: Int32Array;
}

/**
 * Null where corners follow the cells by a rule and blocks are of different area or have corners of their own: such a block is
 * another one in another cell, and no form tells of it.
 */
export function wallAssignment(contacts: Contacts, spread: Spread): WallAssignment | null {
  const { cells } = contacts.decisions;
  const blocks = Int32Array.from(cells, (cell) => contacts.tables.model.blockIn[cell]!);
  const wall: Wall = { contacts, spread, cells, blocks, open: new Set(cells) };
  const parts = partsOf(wall);
  if (!parts) return null;
  const size = cells.length;
  const rims = rimTables(contacts);
  const { linear, forms, constant } = formsOf(wall, parts);
  rims.alone.forEach((one, at) => {
    linear[at]! += one;
  });
  const moments = momentsOf(wall, linear);
  const there = moments.reduce((sum, one) => sum + one.there, 0);
  return {
    problem: {
      size,
      constant: contacts.constant + rims.fixed + constant + there,
      linear,
      forms,
      moments,
      beside: rims.beside,
    },
    cells,
    blocks,
  };
}

/** What an assignment costs by its forms, and by every block itself in every cell. */
export type SpreadForms = Pick<ConvexAssignment, 'size' | 'constant' | 'linear' | 'forms'>;

/**
 * Value, colour and fabrics over all filled cells, as if every block might hang in each of them; rims and lean cost something on
 * top. Item and cell i are those of spread.cells. Null as in wallAssignment.
 */
export function wholeSpread(contacts: Contacts, spread: Spread): SpreadForms | null {
  const { cells } = spread;
  const blocks = Int32Array.from(cells, (cell) => contacts.tables.model.blockIn[cell]!);
  const wall: Wall = { contacts, spread, cells, blocks, open: new Set(cells) };
  const parts = partsOf(wall);
  return parts && formsOf(wall, parts);
}

function formsOf(wall: Wall, parts: Parts): SpreadForms {
  const { cells, blocks } = wall;
  const size = cells.length;
  const linear = Float64Array.from({ length: size * size }, (_, at) =>
    settledCost(wall, blocks[Math.floor(at / size)]!, cells[at % size]!),
  );
  const forms = [1, -1].flatMap((sign) => formOf(wall, parts, sign, linear));
  const constant = fixedCost(wall) + forms.reduce((sum, one) => sum + one.there, 0);
  return { size, constant, linear, forms };
}

/** Value, colour, fabric spread and lean of the blocks in their cells: their weighted part of the score. */
export function spreadCost(spread: Spread, blockIn: ArrayLike<number>): number {
  const { tables, cells } = spread;
  const kernel = kernelTable(tables, cells);
  let cost = tables.valueConstant;
  cells.forEach((cell, at) => {
    const block = blockIn[cell]!;
    cost += aloneSpread(spread, block, cell);
    for (let to = 0; to < at; to++) {
      const other = cells[to]!;
      cost +=
        2 *
        kernel[at * cells.length + to]! *
        likenessOf(spread, rowIn(spread, block, cell), rowIn(spread, blockIn[other]!, other));
    }
  });
  for (const lean of leansOf(spread)) {
    let sum = lean.start;
    for (const cell of cells) sum += lean.from[cell]! * lean.figures[rowIn(spread, blockIn[cell]!, cell)]!;
    cost += lean.weight * sum * sum;
  }
  return cost;
}

interface Wall {
  readonly contacts: Contacts;
  readonly spread: Spread;
  readonly cells: Int32Array;
  readonly blocks: Int32Array;
  /** The cells that may change. */
  readonly open: ReadonlySet<number>;
}

/** A moment of the whole top: weight · (start + Σ from · figure)². */
interface Lean {
  readonly weight: number;
  readonly from: Float64Array;
  readonly figures: Float64Array;
  readonly start: number;
}

function leansOf({ tables, value, warmth }: Spread): Lean[] {
  const { fromMiddleX, fromMiddleY, target } = tables.scales;
  return [fromMiddleX, fromMiddleY].flatMap((from) => [
    {
      weight: tables.valueMoment,
      from,
      figures: value,
      start: -target.reduce((sum, one, cell) => sum + one * from[cell]!, 0),
    },
    { weight: tables.warmthMoment, from, figures: warmth, start: 0 },
  ]);
}

/** Figures of every block of its own (as in the first cell) and the part that a cell adds to them: row × channel. */
interface Parts {
  readonly own: Float64Array;
  readonly there: Float64Array;
}

function partsOf({ spread, cells, blocks }: Wall): Parts | null {
  const { figures, tables } = spread;
  const { channels } = tables;
  const figure = (block: number, cell: number, channel: number) =>
    figures[rowIn(spread, block, cell) * channels + channel]!;
  const table = (write: (at: number, channel: number) => number) =>
    Float64Array.from({ length: cells.length * channels }, (_, at) =>
      write(Math.floor(at / channels), at % channels),
    );
  const own = table((item, channel) => figure(blocks[item]!, cells[0]!, channel));
  const there = table((at, channel) => figure(blocks[0]!, cells[at]!, channel) - own[channel]!);
  for (let item = 0; item < blocks.length; item++) {
    for (let at = 0; at < cells.length; at++) {
      for (let channel = 0; channel < channels; channel++) {
        const apart =
          figure(blocks[item]!, cells[at]!, channel) -
          own[item * channels + channel]! -
          there[at * channels + channel]!;
        if (Math.abs(apart) > 1e-9) return null;
      }
    }
  }
  return { own, there };
}

/** The spread of a block in an open cell by itself and towards what is fixed, without the squares that a form counts. */
function settledCost(wall: Wall, block: number, cell: number): number {
  const { contacts, spread, open } = wall;
  const { tables } = spread;
  const row = rowIn(spread, block, cell);
  let cost = aloneSpread(spread, block, cell) - squaresOf(spread, row, cell);
  const { near } = tables.scales.kernel;
  for (let at = near.start[cell]!; at < near.start[cell + 1]!; at++) {
    const other = near.to[at]!;
    if (open.has(other) || !spread.cells.includes(other)) continue;
    cost +=
      2 *
      near.weight[at]! *
      likenessOf(spread, row, rowIn(spread, contacts.tables.model.blockIn[other]!, other));
  }
  return cost;
}

/** A block's own squares as the forms have them. */
function squaresOf({ tables, figures }: Spread, row: number, cell: number): number {
  let sum = 0;
  for (let channel = 0; channel < tables.channels; channel++)
    sum += diagonal(tables, cell, tables.sign[channel]!) * figures[row * tables.channels + channel]! ** 2;
  return sum;
}

/** K(c, c) for figures to be scattered; for likeness wanted the sum of its row, Σ K (v_c − v_d)² being a form. */
function diagonal({ scales, scale, likenessRow }: Spread['tables'], cell: number, sign: number): number {
  if (sign > 0) return scales.kernel.own;
  return scale[1]! > 0 && likenessRow ? likenessRow[cell]! / scale[1]! ** 2 : 0;
}

/** The form of the channels of a sign, with what the cells add to it written into `linear` and `there`. */
function formOf(
  wall: Wall,
  parts: Parts,
  sign: number,
  linear: Float64Array,
): (Form & { readonly there: number })[] {
  const { tables } = wall.spread;
  const { channels } = tables;
  const chosen = Array.from({ length: channels }, (_, channel) => channel).filter(
    (channel) => tables.sign[channel] === sign,
  );
  if (chosen.length === 0) return [];
  const size = wall.cells.length;
  const cells = kernelTable(tables, wall.cells).map((one, at) => {
    const row = Math.floor(at / size);
    return row === at % size ? diagonal(tables, wall.cells[row]!, sign) : sign * one;
  });
  const product = (one: Float64Array, at: number, other: Float64Array, to: number) =>
    chosen.reduce((sum, channel) => sum + one[at * channels + channel]! * other[to * channels + channel]!, 0);
  const { own, there } = parts;
  const items = Float64Array.from({ length: size * size }, (_, at) =>
    product(own, Math.floor(at / size), own, at % size),
  );
  let constant = 0;
  for (let cell = 0; cell < size; cell++) {
    for (let other = 0; other < size; other++) {
      const near = cells[cell * size + other]!;
      constant += near * product(there, cell, there, other);
      for (let item = 0; item < size; item++)
        linear[item * size + cell]! += 2 * near * product(own, item, there, other);
    }
  }
  return [{ cells, items, there: constant }];
}

/** The leans, with what is known of them in `linear` and `there`. */
function momentsOf(wall: Wall, linear: Float64Array): (Moment & { readonly there: number })[] {
  const { spread, cells, blocks, open, contacts } = wall;
  const size = cells.length;
  return leansOf(spread).map(({ weight, from, figures, start }) => {
    const root = Math.sqrt(weight);
    const own = Float64Array.from(blocks, (block) => root * figures[rowIn(spread, block, cells[0]!)]!);
    const away = Float64Array.from(cells, (cell) => from[cell]!);
    let known = root * start;
    for (const cell of spread.cells) {
      if (!open.has(cell))
        known += root * from[cell]! * figures[rowIn(spread, contacts.tables.model.blockIn[cell]!, cell)]!;
    }
    cells.forEach((cell) => {
      known += from[cell]! * (root * figures[rowIn(spread, blocks[0]!, cell)]! - own[0]!);
    });
    for (let at = 0; at < size * size; at++)
      linear[at]! += 2 * known * own[Math.floor(at / size)]! * away[at % size]!;
    return { cells: away, items: own, there: known * known };
  });
}

/** The spread that no arrangement changes: of the fixed blocks by themselves and among each other. */
function fixedCost(wall: Wall): number {
  const { contacts, spread, open } = wall;
  const { model } = contacts.tables;
  let cost = spread.tables.valueConstant;
  const fixed = spread.cells.filter((cell) => !open.has(cell));
  const kernel = kernelTable(spread.tables, fixed);
  fixed.forEach((cell, at) => {
    const row = rowIn(spread, model.blockIn[cell]!, cell);
    cost += aloneSpread(spread, model.blockIn[cell]!, cell);
    for (let to = 0; to < at; to++) {
      const other = rowIn(spread, model.blockIn[fixed[to]!]!, fixed[to]!);
      cost += 2 * kernel[at * fixed.length + to]! * likenessOf(spread, row, other);
    }
  });
  return cost;
}

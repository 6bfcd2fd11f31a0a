// What the rims of a wall cost at least, whatever the turns, in tables for its assignment: every block by itself in every cell,
// and every two blocks in cells side by side.
import { atOnce } from '../../model/work/parts';
import { aloneCost, type Contacts, touchingCost } from './contactTables';
import { type FacePrices, facePrices } from './facePrices';

export interface RimTables {
  /** Item × size + cell; items and cells in the order of the movable cells, where the blocks hang first. */
  readonly alone: Float64Array;
  /** (Item × size + cell) × size² + other item × size + other cell; 0 or above. */
  readonly beside: Float64Array;
  /** What the blocks that keep their cells cost by themselves and among each other. */
  readonly fixed: number;
}

/**
 * In any order the entries of `alone` and of `beside` (each pair once) and `fixed` add up to the cost of all rims, with the
 * best turns, or less. Prices of faces (facePrices.ts) move cost from `beside` to `alone`.
 */
export function rimTables(contacts: Contacts): RimTables {
  const { cells } = contacts.decisions;
  const { blockIn } = contacts.tables.model;
  const open = new Set(cells);
  const rims: Rims = { contacts, open, prices: atOnce(facePrices(contacts)) };
  const blocks = Int32Array.from(cells, (cell) => blockIn[cell]!);
  const size = cells.length;
  let fixed = 0;
  blockIn.forEach((block, cell) => {
    if (block >= 0 && !open.has(cell)) fixed += leastAlone(rims, block, cell);
  });
  return {
    alone: Float64Array.from({ length: size * size }, (_, at) =>
      leastAlone(rims, blocks[Math.floor(at / size)]!, cells[at % size]!),
    ),
    beside: besideTable(rims, cells, blocks),
    fixed,
  };
}

interface Rims {
  readonly contacts: Contacts;
  /** The cells that may change. */
  readonly open: ReadonlySet<number>;
  readonly prices: FacePrices;
}

/** Its corners, the setting and the fixed blocks beside it, and the prices of its faces where movable blocks meet. */
function leastAlone({ contacts, open, prices }: Rims, block: number, cell: number): number {
  const { model } = contacts.tables;
  const { orientations } = contacts.decisions;
  let least = Number.POSITIVE_INFINITY;
  for (let at = 0; at < orientations[block]!.length; at++) {
    let cost = aloneCost(contacts, block, at, cell);
    for (let side = 0; side < 4; side++) {
      if (prices.inner[cell * 4 + side]) cost += prices.of[contacts.rims[block]![at * 4 + side]!]!;
      const next = model.neighbourCell[cell * 4 + side]!;
      const other = next < 0 || open.has(next) ? -1 : model.blockIn[next]!;
      if (other < 0) continue;
      let touching = Number.POSITIVE_INFINITY;
      for (let its = 0; its < orientations[other]!.length; its++)
        touching = Math.min(touching, touchingCost(contacts, block, at, other, its, side));
      // Two fixed blocks meet once, though both are looked at.
      cost += (open.has(cell) ? 1 : 0.5) * model.sashingFactorAt[cell * 4 + side]! * touching;
    }
    least = Math.min(least, cost);
  }
  return least;
}

/** The least cost of every two blocks in cells side by side, above the prices of the faces that meet. */
function besideTable(rims: Rims, cells: Int32Array, blocks: Int32Array): Float64Array {
  const { contacts } = rims;
  const { model } = contacts.tables;
  const size = cells.length;
  const table = new Float64Array(size ** 4);
  const at = new Map(Array.from(cells, (cell, index) => [cell, index]));
  cells.forEach((cell, column) => {
    for (let side = 0; side < 4; side++) {
      const there = at.get(model.neighbourCell[cell * 4 + side]!);
      if (there === undefined) continue;
      const across = model.sashingFactorAt[cell * 4 + side]!;
      for (let item = 0; item < size; item++) {
        for (let other = 0; other < size; other++) {
          if (other === item) continue;
          table[(item * size + column) * size * size + other * size + there]! += leastBeside(
            rims,
            blocks[item]!,
            blocks[other]!,
            side,
            across,
          );
        }
      }
    }
  });
  return table;
}

function leastBeside({ contacts, prices }: Rims, block: number, other: number, side: number, across: number) {
  const { decisions } = contacts;
  let least = Number.POSITIVE_INFINITY;
  for (let at = 0; at < decisions.orientations[block]!.length; at++) {
    const own = prices.of[contacts.rims[block]![at * 4 + side]!]!;
    for (let its = 0; its < decisions.orientations[other]!.length; its++) {
      const price = own + prices.of[contacts.rims[other]![its * 4 + ((side + 2) & 3)]!]!;
      least = Math.min(least, across * touchingCost(contacts, block, at, other, its, side) - price);
      if (least <= 0) return 0;
    }
  }
  return least;
}

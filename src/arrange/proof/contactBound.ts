// Bounds the cost of the rims of a wall from below, whatever hangs where, for turning and exchanging: the cheapest assignment of
// blocks to cells if every block had the best neighbours there are (after Gilmore 1962 and Lawler 1963).
import { solvingLinear } from '../assignment/linear';
import { aloneCost, type Contacts } from './contactTables';

/** Rows of the cost table filled between two pauses. */
const ROWS = 64;

/** Returns the bound, 0 or above. Radial seams do not change and are left out. Yields every few milliseconds. */
export function* contactBound(contacts: Contacts): Generator<void, number> {
  const { model } = contacts.tables;
  const { cells } = contacts.decisions;
  const movable = new Set(cells);
  const nearest = nearestRims(contacts);
  const size = cells.length;
  const costs = new Float64Array(size * size);
  // Most cells have the same surroundings: one cell of each sort is enough to look at.
  const like = firstAlike(contacts, cells);
  for (let row = 0; row < size; row++) {
    const block = model.blockIn[cells[row]!]!;
    if (row % ROWS === 0) yield;
    for (let column = 0; column < size; column++) {
      const known = like[column]!;
      costs[row * size + column] =
        known < column ? costs[row * size + known]! : leastIn(contacts, nearest, block, cells[column]!);
    }
  }
  let bound = size > 0 ? (yield* solvingLinear(costs, size)).cost : 0;
  model.blockIn.forEach((block, cell) => {
    if (block >= 0 && !movable.has(cell)) bound += leastIn(contacts, nearest, block, cell);
  });
  return Math.max(0, bound);
}

/** Maps each cell to the first cell with the same setting on all four sides and the same corners, which is all that leastIn reads. */
function firstAlike({ tables, sortOf }: Contacts, cells: Int32Array): number[] {
  const { settingFabric, neighbourCell, sashingFactorAt, blockIn } = tables.model;
  const first = new Map<string, number>();
  return Array.from(cells, (cell, at) => {
    const sides = [0, 1, 2, 3].map((side) => {
      const next = neighbourCell[cell * 4 + side]!;
      return [
        settingFabric[cell * 4 + side]!,
        next < 0 || blockIn[next]! < 0 ? -1 : sashingFactorAt[cell * 4 + side]!,
      ];
    });
    const key = [sortOf[cell], ...sides].join();
    const alike = first.get(key) ?? at;
    first.set(key, alike);
    return alike;
  });
}

/** The least cost of a rim against any rim that some block can have on a side: side × stride + rim. */
function nearestRims({ tables, decisions, rims }: Contacts): Float64Array {
  const { stride, touching, model } = tables;
  const nearest = new Float64Array(4 * stride).fill(Number.POSITIVE_INFINITY);
  for (let side = 0; side < 4; side++) {
    const there = new Set<number>();
    for (const block of model.blockIn) {
      if (block < 0) continue;
      decisions.orientations[block]!.forEach((_, at) => {
        there.add(rims[block]![at * 4 + side]!);
      });
    }
    for (let rim = 0; rim < stride; rim++) {
      for (const other of there) {
        const at = side * stride + rim;
        nearest[at] = Math.min(nearest[at]!, touching[rim * stride + other]!);
      }
    }
  }
  return nearest;
}

/** The least cost of a block in a cell: its corners, its sides, and half of the cost with the best neighbours. */
function leastIn(contacts: Contacts, nearest: Float64Array, block: number, cell: number): number {
  const { tables, decisions, rims } = contacts;
  const { model, stride } = tables;
  let least = Number.POSITIVE_INFINITY;
  for (let at = 0; at < decisions.orientations[block]!.length; at++) {
    let cost = aloneCost(contacts, block, at, cell);
    for (let side = 0; side < 4; side++) {
      const next = model.neighbourCell[cell * 4 + side]!;
      if (next < 0 || model.blockIn[next]! < 0) continue;
      const rim = rims[block]![at * 4 + side]!;
      cost += 0.5 * model.sashingFactorAt[cell * 4 + side]! * nearest[((side + 2) & 3) * stride + rim]!;
    }
    least = Math.min(least, cost);
  }
  return least;
}

// What the rims of a wall cost at least, whatever hangs where: a lower bound for turning and exchanging, by the assignment of
// blocks to cells that would be cheapest if each block met the best of neighbours (after Gilmore 1962 and Lawler 1963).
import { solvingLinear } from '../assignment/linear';
import { aloneCost, type Contacts } from './contactTables';

/** Rows of the table of costs filled between two pauses. */
const ROWS = 64;

/** Radial seams are not in it; they do not change. 0 or above. Yields every few milliseconds. */
export function* contactBound(contacts: Contacts): Generator<void, number> {
  const { model } = contacts.tables;
  const { cells } = contacts.decisions;
  const movable = new Set(cells);
  const nearest = nearestRims(contacts);
  const size = cells.length;
  const costs = new Float64Array(size * size);
  // Most cells are alike in what lies beside them: one of each sort is enough to look at.
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

/** For each of the cells the first of them, by index, that has the same on all four sides whatever hangs, and the same corners: leastIn reads no more. */
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

/** The least a rim costs against any rim that some block can have on a side: (side × stride + rim). */
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

/** The least a block costs in a cell: its corners, what lies beside it, and half of what its neighbours cost it at best. */
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

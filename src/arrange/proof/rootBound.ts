// Bounds a wall as a whole: of 16 to 30 blocks before anything is branched on, of more after a search. By products of blocks in cells
// (products/) where a wall is small and even enough for that, else by offsets (offsets/) where its cells fill a grid, else, up to 30
// blocks, by its groups (groups/).
import { groupsOn } from '../../balance/wall/kernel';
import { GroupBound } from '../groups/groupBound';
import { OffsetBound, workOnGrid } from '../offsets/offsetBound';
import { ProductBound } from '../products/productBound';
import { contactBound } from './contactBound';
import type { Contacts } from './contactTables';
import type { Spread } from './spreadAssignment';
import { type WallAssignment, wholeSpread } from './wallAssignment';

export interface RootBound {
  /** No arrangement scores less. */
  readonly bound: number;
  /** False once as much has been done as is worth it. */
  readonly goesOn: boolean;
  /** Goes on for some milliseconds. */
  readonly advance: () => void;
}

interface Ascending {
  readonly bound: number;
  readonly ascending: (steps: number) => Generator<void, void>;
}

/** Work on products: at the end of a shuffle, a second or two; and in a step, some tenths of a second, for a person who waits. */
const WORK_AT_ONCE = 300_000_000;
const WORK_OF_STEP = 60_000_000;
/** Steps on products: with fewer more comes of groups; what a shuffle waits for; and when nearly all has come that will. */
const LEAST_STEPS = 20;
const STEPS_AT_ONCE = 50;
const MOST_STEPS = 150;
/** Sums of groups: between two pauses, and at the end of a shuffle, a second or two. */
const SUMS_PAUSE = 2_000_000;
const SUMS_AT_ONCE = 400_000_000;
const GROUP_STEPS = 400;
/** Steps by offsets: fewer say little, and when nearly all has come that will. */
const LEAST_BY_OFFSETS = 15;
const MOST_BY_OFFSETS = 50;
/** Work by offsets after a search, for each of its steps: about as long as the search took. */
const WORK_FOR_STEP = 500;

/** `long`: a person lets it go on for minutes. `known` is the score of a known arrangement. Null where neither way is open. */
export function rootBoundOf(
  contacts: Contacts,
  wall: WallAssignment,
  known: number,
  long: boolean,
): RootBound | null {
  const products = new ProductBound(wall.problem);
  const steps = long ? MOST_STEPS : Math.min(STEPS_AT_ONCE, Math.floor(WORK_AT_ONCE / products.work));
  if (products.work <= WORK_OF_STEP && steps >= LEAST_STEPS) return ascendingBy(products, steps);
  // What an earlier search has left is bounded by the others already.
  if (long) return null;
  const grid = gridOf(contacts, wall.cells);
  const offsets = grid && OffsetBound.of({ ...wall.problem, ...grid });
  return offsets ? ascendingBy(offsets, MOST_BY_OFFSETS) : byGroups(contacts, wall, known);
}

/**
 * A bound of a wall of any size after a search of so many steps, with pinned blocks counted as free. Null where it would take too
 * long, or is not open.
 */
export function boundAfter(contacts: Contacts, spread: Spread, searched: number): RootBound | null {
  const grid = gridOf(contacts, spread.cells);
  if (!grid || contacts.decisions.cells.length < 2) return null;
  const allowed = Math.floor((WORK_FOR_STEP * searched) / workOnGrid(grid.rows, grid.columns));
  if (allowed < LEAST_BY_OFFSETS) return null;
  const whole = wholeSpread(contacts, spread);
  const offsets = whole && OffsetBound.of({ ...whole, ...grid });
  return offsets && ascendingBy(withRims(offsets, contacts), Math.min(MOST_BY_OFFSETS, allowed));
}

/** The bound of the spread and, first of all, that of the rims. */
function withRims(spread: Ascending, contacts: Contacts): Ascending {
  let rims = Number.NEGATIVE_INFINITY;
  return {
    get bound() {
      return rims + spread.bound;
    },
    *ascending(steps) {
      rims = contacts.constant + (yield* contactBound(contacts));
      yield* spread.ascending(steps);
    },
  };
}

/** Rows and columns of the grid that the cells fill, row by row; null where they fill none. */
function gridOf({ tables }: Contacts, cells: Int32Array): { rows: number; columns: number } | null {
  const { rowOf, columnOf } = tables.model;
  const first = cells[0];
  const last = cells.at(-1);
  if (first === undefined || last === undefined) return null;
  const rows = rowOf[last]! - rowOf[first]! + 1;
  const columns = columnOf[last]! - columnOf[first]! + 1;
  const fills = cells.every(
    (cell, at) =>
      rowOf[cell] === rowOf[first]! + Math.floor(at / columns) &&
      columnOf[cell] === columnOf[first]! + (at % columns),
  );
  return fills && rows * columns === cells.length ? { rows, columns } : null;
}

function ascendingBy(way: Ascending, steps: number): RootBound {
  const going = way.ascending(steps);
  let goesOn = true;
  return {
    get bound() {
      return way.bound;
    },
    get goesOn() {
      return goesOn;
    },
    advance: () => {
      goesOn = !going.next().done;
    },
  };
}

function byGroups({ tables }: Contacts, { problem, cells }: WallAssignment, known: number): RootBound | null {
  const { rowOf, columnOf } = tables.model;
  const grid = {
    rowOf: Array.from(cells, (cell) => rowOf[cell]!),
    columnOf: Array.from(cells, (cell) => columnOf[cell]!),
  };
  const groups = GroupBound.of(problem, groupsOn(grid.rowOf, grid.columnOf), grid, known);
  if (!groups) return null;
  const most = Math.min(GROUP_STEPS, SUMS_AT_ONCE / groups.work);
  let steps = 0;
  return {
    get bound() {
      return groups.bound;
    },
    get goesOn() {
      return steps < most;
    },
    advance: () => {
      for (let sums = 0; sums < SUMS_PAUSE; sums += groups.work) {
        groups.step();
        steps += 1;
      }
    },
  };
}

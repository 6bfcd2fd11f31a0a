// Bounds a wall of 16 blocks and more before anything is branched on: by products of blocks in cells (products/), where a wall is
// small and even enough for it, else by its groups (groups/).
import { groupsOn } from '../../balance/wall/kernel';
import { GroupBound } from '../groups/groupBound';
import { ProductBound } from '../products/productBound';
import type { Contacts } from './contactTables';
import type { WallAssignment } from './wallAssignment';

export interface RootBound {
  /** No arrangement scores less. */
  readonly bound: number;
  /** False once as much has been done as is worth it. */
  readonly goesOn: boolean;
  /** Goes on for some milliseconds. */
  readonly advance: () => void;
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

/** `long`: a person lets it go on for minutes. `known` is the score of a known arrangement. Null where neither way is open. */
export function rootBoundOf(
  contacts: Contacts,
  wall: WallAssignment,
  known: number,
  long: boolean,
): RootBound | null {
  const products = new ProductBound(wall.problem);
  const steps = long ? MOST_STEPS : Math.min(STEPS_AT_ONCE, Math.floor(WORK_AT_ONCE / products.work));
  if (products.work <= WORK_OF_STEP && steps >= LEAST_STEPS) return byProducts(products, steps);
  // What an earlier search has left is bounded by groups already.
  return long ? null : byGroups(contacts, wall, known);
}

function byProducts(products: ProductBound, steps: number): RootBound {
  const going = products.ascending(steps);
  let goesOn = true;
  return {
    get bound() {
      return products.bound;
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

// Proves the best arrangement of a wall of some ten to twenty blocks by branch and bound, in parts that can be stopped and taken
// up again. Turns are found exactly for every order that may be better.

import { groupsOn } from '../../balance/wall/kernel';
import { BranchAndBound, type Part } from '../branch/branchAndBound';
import { MOST_ITEMS } from '../branch/convexAssignment';
import { GroupBound } from '../groups/groupBound';
import { bestTurns, turnStates } from './bestTurns';
import type { Contacts } from './contactTables';
import type { Exact } from './exactOptimum';
import type { Spread } from './spreadAssignment';
import { spreadCost, type WallAssignment, wallAssignment } from './wallAssignment';

/** Blocks cubed times nodes: between two pauses, some milliseconds' worth; and at the end of a shuffle, a second or two. */
const PAUSE = 40_000;
const AT_ONCE = 40_000_000;
/** From so many blocks the groups of the wall are bounded first; with more than that a second of branching brings nothing. */
const GROUPED = 16;
/** Sums of that bound: between two pauses, and at the end of a shuffle, a second or two. */
const SUMS_PAUSE = 2_000_000;
const SUMS_AT_ONCE = 400_000_000;
const STEPS_AT_ONCE = 400;
/** The most combinations of orientations kept while turns are found: eight in a row of five blocks. */
const MOST_STATES = 32_768;

export class SearchToTheEnd {
  /** The best arrangement that has been found here; null while none is better than the one known before. */
  found: Exact | null = null;

  private steps = 0;

  private constructor(
    private readonly branches: BranchAndBound,
    private readonly size: number,
    private readonly groups: GroupBound | null,
  ) {}

  /** A search for what scores below `known`; `parts` are what an earlier one left. Null where the wall is not for it. */
  static of(
    contacts: Contacts,
    spread: Spread,
    known: number,
    parts?: readonly Part[],
  ): SearchToTheEnd | null {
    const { cells } = contacts.decisions;
    if (cells.length < 2 || cells.length > MOST_ITEMS || turnStates(contacts) > MOST_STATES) return null;
    const wall = wallAssignment(contacts, spread);
    if (!wall) return null;
    const { model } = contacts.tables;
    const judge = (cellOf: Int32Array) => {
      const blockIn = model.blockIn.slice();
      cellOf.forEach((cell, item) => {
        blockIn[wall.cells[cell]!] = wall.blocks[item]!;
      });
      const turned = bestTurns(contacts, blockIn);
      const cost = contacts.constant + spreadCost(spread, blockIn) + turned.cost;
      if (cost < search.branches.best)
        search.found = { cost, blockIn, orientationOf: turned.orientationOf, typeAt: model.typeAt };
      return cost;
    };
    const { size } = wall.problem;
    // What an earlier search has left is bounded already.
    const groups = size < GROUPED || parts ? null : groupBoundOf(contacts, wall, known);
    const search = new SearchToTheEnd(new BranchAndBound(wall.problem, known, judge, parts), size, groups);
    return search;
  }

  /** No arrangement scores less. */
  get bound(): number {
    return Math.max(this.branches.bound, this.groups?.bound ?? Number.NEGATIVE_INFINITY);
  }

  /** Share of the work done, 0–1. */
  get share(): number {
    return this.branches.done;
  }

  get ended(): boolean {
    return this.branches.ended;
  }

  /** True once it has taken as long as a shuffle waits for it. Counted in work, so that a shuffle repeats. */
  get isLong(): boolean {
    if (this.groupsGoOn) return false;
    if (this.groups && this.size > GROUPED) return true;
    return this.branches.nodes * this.size ** 3 >= AT_ONCE;
  }

  /** What is left to search. */
  get left(): Part[] {
    return this.branches.left;
  }

  /** Goes on for some milliseconds. */
  advance(): void {
    if (this.groups && this.groupsGoOn) {
      for (let sums = 0; sums < SUMS_PAUSE; sums += this.groups.work) {
        this.groups.step();
        this.steps += 1;
      }
    } else this.branches.advance(Math.max(1, Math.ceil(PAUSE / this.size ** 3)));
  }

  private get groupsGoOn(): boolean {
    const { steps, groups } = this;
    return groups !== null && steps < STEPS_AT_ONCE && steps * groups.work < SUMS_AT_ONCE;
  }
}

function groupBoundOf(
  { tables }: Contacts,
  { problem, cells }: WallAssignment,
  known: number,
): GroupBound | null {
  const { rowOf, columnOf } = tables.model;
  const grid = {
    rowOf: Array.from(cells, (cell) => rowOf[cell]!),
    columnOf: Array.from(cells, (cell) => columnOf[cell]!),
  };
  return GroupBound.of(problem, groupsOn(grid.rowOf, grid.columnOf), grid, known);
}

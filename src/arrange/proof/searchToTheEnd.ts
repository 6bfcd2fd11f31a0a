// Proves the best arrangement of a wall of some ten to twenty blocks by branch and bound, in parts that can be stopped and taken
// up again. Turns are found exactly for every order that may be better.

import { BranchAndBound, type Part } from '../branch/branchAndBound';
import { MOST_ITEMS } from '../branch/convexAssignment';
import { bestTurns, turnStates } from './bestTurns';
import type { Contacts } from './contactTables';
import type { Exact } from './exactOptimum';
import { type RootBound, rootBoundOf } from './rootBound';
import type { Spread } from './spreadAssignment';
import { spreadCost, wallAssignment } from './wallAssignment';

/** Blocks cubed times nodes: between two pauses, some milliseconds' worth; and at the end of a shuffle, a second or two. */
const PAUSE = 40_000;
const AT_ONCE = 40_000_000;
/** From so many blocks the wall is bounded as a whole first; with more than that a second of branching brings nothing. */
const WHOLE_FIRST = 16;
/** The most combinations of orientations kept while turns are found: eight in a row of five blocks. */
const MOST_STATES = 32_768;

export class SearchToTheEnd {
  /** The best arrangement that has been found here; null while none is better than the one known before. */
  found: Exact | null = null;

  private constructor(
    private readonly branches: BranchAndBound,
    private readonly size: number,
    private readonly root: RootBound | null,
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
    const root = size < WHOLE_FIRST ? null : rootBoundOf(contacts, wall, known, parts !== undefined);
    const search = new SearchToTheEnd(new BranchAndBound(wall.problem, known, judge, parts), size, root);
    return search;
  }

  /** No arrangement scores less. */
  get bound(): number {
    return Math.max(this.branches.bound, this.root?.bound ?? Number.NEGATIVE_INFINITY);
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
    if (this.root?.goesOn) return false;
    if (this.root && this.size > WHOLE_FIRST) return true;
    return this.branches.nodes * this.size ** 3 >= AT_ONCE;
  }

  /** What is left to search. */
  get left(): Part[] {
    return this.branches.left;
  }

  /** Goes on for some milliseconds. */
  advance(): void {
    if (this.root?.goesOn) this.root.advance();
    else this.branches.advance(Math.max(1, Math.ceil(PAUSE / this.size ** 3)));
  }
}

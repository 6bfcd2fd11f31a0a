// A list of steps by hand as it is kept at the wall: how the wall hung, how it will hang, and which steps are ticked off. The list is
// about the wall itself, whatever is done to the quilt meanwhile.

import { blocksTouched, type HandStep, handSteps, movesOfStep } from '../arrange/byHand/handSteps';
import type { Move } from '../model/moves';
import type { Project, Wall } from '../model/project';
import { cellCount, hangsAlike } from '../model/wallCells';

export interface HandList {
  readonly from: Wall;
  readonly to: Wall;
  readonly steps: readonly HandStep[];
  /** The steps that are made, by their place in the list from 0. */
  readonly ticked: readonly number[];
}

/**
 * The list that takes the wall from one state of a quilt to another. Null where hands cannot do it, because more than the places and
 * turns of blocks differs, or where nothing is to be done.
 */
export function listBetween(from: Project, to: Project): HandList | null {
  const alike =
    sameAll(from.blocks, to.blocks) &&
    sameAll(from.stripSets, to.stripSets) &&
    from.wedge === to.wedge &&
    from.setting === to.setting &&
    from.wall.cells.length === to.wall.cells.length &&
    from.wall.rows === to.wall.rows;
  if (!alike) return null;
  const steps = handSteps(from, to);
  return steps.length > 0 ? { from: from.wall, to: to.wall, steps, ticked: [] } : null;
}

/** Whether the list can still be read: all its blocks are there, and its cells are those of the setting. */
export function listFits({ blocks, setting }: Project, { from, steps }: HandList): boolean {
  const there = new Set(blocks.map(({ id }) => id));
  return (
    from.cells.length === cellCount(from.rows, from.columns, setting.layout) &&
    steps.every(({ carries }) => carries.every(({ block }) => there.has(block)))
  );
}

/** The list with a step ticked off, or not any more. */
export function tick(list: HandList, step: number, made: boolean): HandList {
  const others = list.ticked.filter((one) => one !== step);
  return { ...list, ticked: made ? [...others, step].sort((one, other) => one - other) : others };
}

/** How the quilt hangs on screen beside the list: as at its beginning, as at its end, or otherwise. */
export function hangsAs({ wall }: Project, { from, to }: HandList): 'before' | 'after' | 'otherwise' {
  if (sameHanging(wall, to)) return 'after';
  return sameHanging(wall, from) ? 'before' : 'otherwise';
}

/** All its steps as moves of the quilt that hangs as at its beginning. */
export function movesOfList({ steps }: HandList): Move[] {
  return steps.flatMap(movesOfStep);
}

/** How many blocks the list touches, each once. */
export function touchedBy({ steps }: HandList): number {
  return blocksTouched(steps);
}

/** Whether two lists hold the same; what moves carry out is done on copies. */
function sameAll(one: readonly unknown[], other: readonly unknown[]): boolean {
  return (
    one.length === other.length &&
    one.every((item, at) => item === other[at] || JSON.stringify(item) === JSON.stringify(other[at]))
  );
}

function sameHanging(one: Wall, other: Wall): boolean {
  return (
    one.rows === other.rows &&
    one.cells.length === other.cells.length &&
    one.cells.every((cell, at) => hangsAlike(cell, other.cells[at]))
  );
}

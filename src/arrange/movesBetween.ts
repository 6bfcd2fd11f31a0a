// Turns the arranger's answer into moves that a person can preview, accept and undo.
import { findBlock, stepsPerTurn } from '../model/find';
import type { Move } from '../model/moves';
import type { Place, Project, Strip } from '../model/project';
import { sameStrip } from '../model/strips';

export type StripOrders = ReadonlyMap<number, readonly Strip[]>;

/** An arrangement as numbers; balance/wall/wallModel.ts states the conventions. */
export interface Arrangement {
  /** Wedge type in each place, block × N + place. */
  readonly typeAt: ArrayLike<number>;
  readonly orientationOf: ArrayLike<number>;
  /** Block in each cell, −1 for none. */
  readonly blockIn: ArrayLike<number>;
  /** New strip orders by index of their set. */
  readonly orders?: StripOrders;
}

/** The wedge of a wedge type (2 × set + 0 up, 1 down); null for −1, an empty place. */
function wedgeOfType(project: Project, type: number): Place | null {
  return type < 0 ? null : { set: project.stripSets[type >> 1]!.id, tip: type % 2 === 0 ? 'up' : 'down' };
}

/**
 * Lists the moves that take the project to the arrangement: strips first, then wedges, then blocks with their orientation.
 * Exchanges are as few as possible (one less than the length of each cycle). What stays has no move.
 */
export function movesBetween(project: Project, to: Arrangement): Move[] {
  return [
    ...stripMoves(project, to),
    ...placeMoves(project, to),
    ...swapMoves(project, to),
    ...orientationMoves(project, to),
  ];
}

function stripMoves(project: Project, { orders }: Arrangement): Move[] {
  return project.stripSets.flatMap(({ id, strips: now }, at): Move[] => {
    const strips = orders?.get(at) ?? now;
    const same = now.every((strip, place) => sameStrip(strip, strips[place]!));
    return same ? [] : [{ kind: 'strips', set: id, strips }];
  });
}

function placeMoves(project: Project, to: Arrangement): Move[] {
  return project.blocks.flatMap((block, at) =>
    block.places.flatMap((now, place): Move[] => {
      const wedge = wedgeOfType(project, to.typeAt[at * project.wedge.perBlock + place]!);
      if (wedge?.set === now?.set && wedge?.tip === now?.tip) return [];
      return [{ kind: 'place', block: block.id, place, wedge }];
    }),
  );
}

function swapMoves(project: Project, to: Arrangement): Move[] {
  const index = new Map(project.blocks.map((block, at) => [block.id, at]));
  const blockAt = project.wall.cells.map((cell) => (cell ? index.get(cell.block)! : -1));
  const moves: Move[] = [];
  blockAt.forEach((_, cell) => {
    const wanted = to.blockIn[cell]!;
    if (blockAt[cell] === wanted) return;
    const other = blockAt.indexOf(wanted, cell + 1);
    if (other < 0) throw new Error(`movesBetween: block ${wanted} does not hang`);
    moves.push({ kind: 'swap', cell, other });
    blockAt[other] = blockAt[cell]!;
    blockAt[cell] = wanted;
  });
  return moves;
}

function orientationMoves(project: Project, to: Arrangement): Move[] {
  const steps = stepsPerTurn(project.wedge.perBlock);
  return project.wall.cells.flatMap((cell): Move[] => {
    const block = cell && findBlock(project, cell.block);
    if (!block) return [];
    const stands = to.orientationOf[project.blocks.indexOf(block)]!;
    const turn = Math.floor(stands / steps);
    const cornerShift = stands % steps;
    if (cornerShift !== block.cornerShift) return [{ kind: 'shift', block: block.id, cornerShift, turn }];
    return turn === cell.turn ? [] : [{ kind: 'turn', block: block.id, turn }];
  });
}

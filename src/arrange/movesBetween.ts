// From where a project stands to where the arranger would have it, as moves a person can preview, accept and undo.
import { findBlock, stepsPerTurn } from '../model/find';
import type { Move } from '../model/moves';
import type { Place, Project, Strip } from '../model/project';
import { sameStrip } from '../model/strips';

export type StripOrders = ReadonlyMap<number, readonly Strip[]>;

/** An arrangement as numbers, on the conventions of balance/wallModel. */
export interface Orientation {
  /** Wedge type in each place, block × N + place. */
  readonly typeAt: ArrayLike<number>;
  readonly orientationOf: ArrayLike<number>;
  /** Block in each cell, −1 for none. */
  readonly blockIn: ArrayLike<number>;
  /** Sets whose strips lie in another order, by index. */
  readonly orders?: StripOrders;
}

/** The wedge of a type: 2 × set + (0 up, 1 down); −1 is an empty place. */
function wedgeOfType(project: Project, type: number): Place | null {
  return type < 0 ? null : { set: project.stripSets[type >> 1]!.id, tip: type % 2 === 0 ? 'up' : 'down' };
}

/**
 * The moves from the project to the arrangement: strips first, then wedges, then blocks to their cells, each as it will stand. As few
 * exchanges as there can be (one less than the length of each cycle); nothing for what stays.
 */
export function movesBetween(project: Project, to: Orientation): Move[] {
  return [
    ...stripMoves(project, to),
    ...placeMoves(project, to),
    ...swapMoves(project, to),
    ...standingMoves(project, to),
  ];
}

function stripMoves(project: Project, { orders }: Orientation): Move[] {
  return project.stripSets.flatMap(({ id, strips: held }, at): Move[] => {
    const strips = orders?.get(at) ?? held;
    const same = held.every((strip, place) => sameStrip(strip, strips[place]!));
    return same ? [] : [{ kind: 'strips', set: id, strips }];
  });
}

function placeMoves(project: Project, to: Orientation): Move[] {
  return project.blocks.flatMap((block, at) =>
    block.places.flatMap((held, place): Move[] => {
      const wedge = wedgeOfType(project, to.typeAt[at * project.wedge.perBlock + place]!);
      if (wedge?.set === held?.set && wedge?.tip === held?.tip) return [];
      return [{ kind: 'place', block: block.id, place, wedge }];
    }),
  );
}

function swapMoves(project: Project, to: Orientation): Move[] {
  const index = new Map(project.blocks.map((block, at) => [block.id, at]));
  const held = project.wall.cells.map((cell) => (cell ? index.get(cell.block)! : -1));
  const moves: Move[] = [];
  held.forEach((_, cell) => {
    const wanted = to.blockIn[cell]!;
    if (held[cell] === wanted) return;
    const other = held.indexOf(wanted, cell + 1);
    if (other < 0) throw new Error(`movesBetween: block ${wanted} does not hang`);
    moves.push({ kind: 'swap', cell, other });
    held[other] = held[cell]!;
    held[cell] = wanted;
  });
  return moves;
}

function standingMoves(project: Project, to: Orientation): Move[] {
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

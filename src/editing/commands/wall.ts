// Commands on the wall: turn, swap, hang, take down and pin blocks, and change the wall's size.
import { cellOf, findBlock, stepsPerTurn, turnsOf } from '../../model/find';
import type { Move } from '../../model/moves';
import { counted, type Phrase, phrase } from '../../model/phrase';
import type { BlockId, Project } from '../../model/project';
import { isPlain } from '../../model/wallCells';
import type { Command, Rearrangement } from '../apply';
import { changeCells } from './layout';

/** Turns a block on the wall by `by` quarter turns clockwise (half turns where it is not square). */
export function turnBlock(project: Project, id: BlockId, by: number): Rearrangement {
  const turns = turnsOf(project.wedge.perBlock);
  const turn = ((((cellOf(project, id)?.turn ?? 0) + by) % turns) + turns) % turns;
  return rearrange(
    [{ kind: 'turn', block: id, turn }],
    phrase('turn block {block}', { block: numberOf(project, id) }),
  );
}

/**
 * Turns an octagon without its corners by one wedge step, so that the corners go on the other places. A step past the last
 * corner shift becomes a turn of the block.
 */
export function turnByOneWedge(project: Project, id: BlockId, by: 1 | -1): Rearrangement {
  const { perBlock } = project.wedge;
  const steps = stepsPerTurn(perBlock);
  const block = findBlock(project, id);
  const now = (block?.cornerShift ?? 0) + (cellOf(project, id)?.turn ?? 0) * steps;
  const next = (now + by + perBlock) % perBlock;
  return rearrange(
    [{ kind: 'shift', block: id, cornerShift: next % steps, turn: Math.floor(next / steps) }],
    phrase('turn block {block} by one wedge', { block: numberOf(project, id) }),
  );
}

/** Exchanges the blocks of two cells. */
export function swapCells(project: Project, cell: number, other: number): Rearrangement {
  const numbers = [cell, other].flatMap((index) => {
    const hung = project.wall.cells[index];
    return hung ? [numberOf(project, hung.block)] : [];
  });
  const label =
    numbers.length === 2
      ? phrase('swap blocks {first} and {second}', { first: numbers[0]!, second: numbers[1]! })
      : phrase('move block {block}', { block: numbers[0] ?? 0 });
  return rearrange([{ kind: 'swap', cell, other }], label);
}

/** Hangs a block from the side table in a cell; a block that hung there goes to the side table. */
export function hangBlock(project: Project, id: BlockId, cell: number): Rearrangement {
  return rearrange(
    [{ kind: 'hang', block: id, cell, turn: 0 }],
    phrase('hang block {block}', { block: numberOf(project, id) }),
  );
}

/** Takes a block down to the side table. */
export function takeDown(project: Project, id: BlockId): Rearrangement {
  return rearrange(
    [{ kind: 'take', block: id }],
    phrase('take down block {block}', { block: numberOf(project, id) }),
  );
}

/** Carries out moves under one label; refused where one of them is locked by a pin or by sewn work. */
export function rearrange(moves: readonly Move[], label: Phrase): Rearrangement {
  return { label, moves };
}

/** Keeps the order that a shuffle has found. */
export function keepShuffle(moves: readonly Move[]): Rearrangement {
  return rearrange(moves, phrase('shuffle for balance'));
}

/** Pins blocks that hang, so that nothing moves or turns them, or takes their pins out. */
export function pinBlocks(project: Project, ids: readonly BlockId[], pinned: boolean): Command {
  const values = { block: numberOf(project, ids[0] ?? '') };
  return {
    label:
      ids.length === 1
        ? phrase(pinned ? 'pin block {block}' : 'unpin block {block}', values)
        : counted(ids.length, 'pin', pinned ? 'pin {count} blocks' : 'unpin {count} blocks'),
    change: (draft) => {
      for (const id of ids) {
        const cell = cellOf(draft, id);
        if (cell) cell.pinned = pinned;
      }
    },
  };
}

/** Changes rows and columns. Blocks keep their row and column; blocks outside the new wall go to the side table. */
export function resizeWall(rows: number, columns: number): Command {
  return {
    label: phrase('make the wall {rows} down, {columns} across', { rows, columns }),
    change: (draft) => {
      changeCells(draft, () => {
        draft.wall.rows = rows;
        draft.wall.columns = columns;
      });
    },
  };
}

/** Hangs blocks from the side table in the first empty cells, in order. */
export function hangAll(project: Project, ids: readonly BlockId[]): Rearrangement {
  const empty = project.wall.cells.flatMap((cell, index) =>
    cell === null && !isPlain(index, project) ? [index] : [],
  );
  const moves = ids
    .slice(0, empty.length)
    .map((block, index): Move => ({ kind: 'hang', block, cell: empty[index]!, turn: 0 }));
  return rearrange(moves, counted(moves.length, 'hang 1 block', 'hang {count} blocks'));
}

function numberOf(project: Project, id: BlockId): number {
  return findBlock(project, id)?.number ?? 0;
}

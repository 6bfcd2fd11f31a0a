// Which of several mends can be taken together.

import { blocksWith, cellIndexOf } from '../../model/find';
import type { Move } from '../../model/moves';
import type { BlockId, Project } from '../../model/project';
import type { Proposal } from './proposals';

/** Whether two proposals touch no block and no cell in common, so that both can be done. */
export function canGoTogether(project: Project, one: Proposal, other: Proposal): boolean {
  const touched = new Set(one.moves.flatMap((move) => touches(project, move)));
  return !other.moves.flatMap((move) => touches(project, move)).some((part) => touched.has(part));
}

function touches(project: Project, move: Move): string[] {
  const cells = (indices: readonly number[]) =>
    indices
      .flatMap((index) => [`cell ${index}`, project.wall.cells[index]?.block ?? ''])
      .filter((part) => part !== '');
  const hung = (block: BlockId) => {
    const at = cellIndexOf(project, block);
    return at < 0 ? [block] : cells([at]);
  };
  switch (move.kind) {
    case 'swap':
      return cells([move.cell, move.other]);
    case 'hang':
      return [move.block, ...cells([move.cell])];
    case 'turn':
    case 'shift':
    case 'take':
    case 'place':
      return hung(move.block);
    case 'strips':
      return blocksWith(project, move.set).flatMap(hung);
    default:
      return move satisfies never;
  }
}

// Ties a photographed block to the block of the quilt that it is, instead of adding it once more.
import { findBlock, turnsOf } from '../../model/find';
import { phrase } from '../../model/phrase';
import type { BlockId, Project } from '../../model/project';
import type { Command } from '../apply';
import { ownCopy, type ReadBlock } from './addPictured';

/**
 * A pieced block is marked as sewn and squared, as far as it is not; a pictured one gets this picture. `quarters`: quarter turns
 * clockwise from the block as it is to the block as photographed; on the wall it goes on looking as it did.
 */
export function tieToBlock(project: Project, id: BlockId, read: ReadBlock, quarters: number): Command {
  const number = findBlock(project, id)?.number ?? 0;
  return {
    label: phrase('tie a photograph to block {block}', { block: number }),
    change: (draft) => {
      const block = findBlock(draft, id);
      if (!block) throw new Error(`tieToBlock: no block ${id}`);
      if (block.kind === 'pieced') {
        if (block.progress === 'planned' || block.progress === 'octagon') block.progress = 'squared';
        return;
      }
      Object.assign(block, ownCopy(read), { cornerFabric: block.cornerFabric });
      const cell = draft.wall.cells.find((one) => one?.block === id);
      const turns = turnsOf(draft.wedge.perBlock);
      const by = Math.round((quarters * turns) / 4);
      if (cell) cell.turn = (cell.turn - by + 2 * turns) % turns;
    },
  };
}

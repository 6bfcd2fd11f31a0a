// Ties a photographed block to the block of the quilt that it is, instead of adding it once more.
import { cellOf, findBlock, turnsOf } from '../../model/find';
import { cornersOn } from '../../model/freedom';
import { phrase } from '../../model/phrase';
import type { BlockId, Project } from '../../model/project';
import type { Command } from '../apply';
import { setBlockProgress } from '../commands/blocks';
import { ownCopy, type ReadBlock } from './addPictured';

/**
 * A pieced block is marked as squared by the rules of setBlockProgress, as far as it is not, and the photograph goes with it; a pictured one
 * gets this picture.
 * `quarters`: quarter turns clockwise from the block as it is to the block as photographed; on the wall it goes on looking as it did.
 */
export function tieToBlock(project: Project, id: BlockId, read: ReadBlock, quarters: number): Command {
  const number = findBlock(project, id)?.number ?? 0;
  return {
    label: phrase('tie a photograph to block {block}', { block: number }),
    change: (draft) => {
      const block = findBlock(draft, id);
      if (!block) throw new Error(`tieToBlock: no block ${id}`);
      if (block.kind === 'pieced') {
        if (!cornersOn(block)) setBlockProgress([id], 'squared').change?.(draft);
        block.photo = { picture: read.picture, turn: ((quarters % 4) + 4) % 4 };
        return;
      }
      Object.assign(block, ownCopy(read), { cornerFabric: block.cornerFabric });
      const cell = cellOf(draft, id);
      const turns = turnsOf(draft.wedge.perBlock);
      const by = Math.round((quarters * turns) / 4);
      if (cell) cell.turn = (cell.turn - by + 2 * turns) % turns;
    },
  };
}

/** Takes the photograph from a pieced block; nothing else of the block changes. */
export function untiePhoto(project: Project, id: BlockId): Command {
  return {
    label: phrase('remove the photograph of block {block}', { block: findBlock(project, id)?.number ?? 0 }),
    change: (draft) => {
      const block = findBlock(draft, id);
      if (block?.kind === 'pieced') delete block.photo;
    },
  };
}

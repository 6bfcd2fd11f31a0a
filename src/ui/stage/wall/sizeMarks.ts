// What a size on offer changes on the wall: the cells that are new, and the blocks that come down to the side table.
import { counted, type Phrase, phrase } from '../../../model/phrase';
import type { BlockId, Project } from '../../../model/project';
import { cellAtHalfPlace, halfPlace, isPlain } from '../../../model/wallCells';

export interface SizeMarks {
  /** Cells for blocks in the top of the offered size whose place is not on the wall now. */
  readonly newCells: ReadonlySet<number>;
  /** Blocks that hang now and would not. */
  readonly down: ReadonlySet<BlockId>;
  readonly words: readonly Phrase[];
}

/** What differs between the top now and the top of an offered size (`shown`). */
export function sizeMarks(now: Project, shown: Project): SizeMarks {
  const isNew = (_: unknown, index: number) => {
    const { down, across } = halfPlace(index, shown.wall);
    return !isPlain(index, shown) && cellAtHalfPlace(down, across, now) < 0 ? [index] : [];
  };
  const newCells = new Set(shown.wall.cells.flatMap(isNew));
  const stays = new Set(shown.wall.cells.map((cell) => cell?.block));
  const down = new Set(
    now.wall.cells.flatMap((cell) => (cell && !stays.has(cell.block) ? [cell.block] : [])),
  );
  return { newCells, down, words: wordsOf(newCells.size, down.size) };
}

function wordsOf(cells: number, blocks: number): Phrase[] {
  if (cells + blocks === 0) return [phrase('No block comes down, and no cell is new.')];
  const added = counted(cells, 'Ringed: the new cell.', 'Ringed: the {count} new cells.');
  const taken = counted(
    blocks,
    'Ringed in the top as it is now: the block that comes down to the side table.',
    'Ringed in the top as it is now: the {count} blocks that come down to the side table.',
  );
  return [...(cells > 0 ? [added] : []), ...(blocks > 0 ? [taken] : [])];
}

// What is still open on the wall that a pattern is made of, in sentences: a pattern of empty blocks is never made without a word.
// The cover says it, and so does the page before the pattern is made and after.
import { isWhole } from '../../cutting/plan/lacks';
import { counted, type Phrase, phrase } from '../../model/phrase';
import type { Project } from '../../model/project';
import { isEmpty } from './pages/cellPlace';

/** Blocks that hang and are not whole, and places without a block; nothing where the pattern is of a whole top. */
export function stillOpen(project: Project): Phrase[] {
  const hung = new Set(project.wall.cells.flatMap((cell) => (cell ? [cell.block] : [])));
  if (hung.size === 0) return [phrase('No block hangs on the wall: this is the pattern of an empty quilt.')];
  const bare = project.blocks.filter((block) => hung.has(block.id) && !isWhole(block)).length;
  const empty = project.wall.cells.filter((_, cell) => isEmpty(cell, project)).length;
  return [
    ...(bare > 0
      ? [
          counted(
            bare,
            '1 block on the wall has empty places: choose its wedges before you sew from this pattern.',
            '{count} blocks on the wall have empty places: choose their wedges before you sew from this pattern.',
          ),
        ]
      : []),
    ...(empty > 0
      ? [
          counted(
            empty,
            '1 place on the wall is empty: hang a block there before you sew from this pattern.',
            '{count} places on the wall are empty: hang blocks there before you sew from this pattern.',
          ),
        ]
      : []),
  ];
}

// When a change of the wall is too large to be drawn at once.
import type { Project } from '../model/project';

/** As many cells may change before the change counts as a whole new wall. */
const FEW = 40;

/** Whether so much of the wall differs that drawing it takes noticeably long. */
export function isWholeNewWall(drawn: Project, now: Project): boolean {
  if (drawn === now) return false;
  if (drawn.id !== now.id) return true;
  if (drawn.wall === now.wall) return false;
  const { cells } = drawn.wall;
  let changed = 0;
  now.wall.cells.forEach((cell, at) => {
    const before = cells[at];
    if (cell?.block !== before?.block || cell?.turn !== before?.turn) changed += 1;
  });
  return changed > FEW;
}

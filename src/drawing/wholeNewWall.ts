// When a change of the wall is too large to be drawn at once.
import type { Project } from '../model/project';
import { hangsAlike } from '../model/wallCells';

/** As many cells may change before the change counts as a whole new wall. */
export const FEW = 40;

/** Whether so much of the wall differs that drawing it takes noticeably long. */
export function isWholeNewWall(drawn: Project, now: Project): boolean {
  if (drawn === now) return false;
  if (drawn.id !== now.id) return true;
  if (drawn.wall === now.wall) return false;
  const { cells } = drawn.wall;
  return now.wall.cells.filter((cell, at) => !hangsAlike(cell, cells[at])).length > FEW;
}

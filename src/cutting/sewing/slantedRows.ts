// The rows of the setting on point as they are sewn: aslant, from the upper left to the lower right, the first in the upper
// right corner of the top.
import type { Project } from '../../model/project';
import { cellAtHalfPlace } from '../../model/wallCells';

/** A square of the row by its cell, or what stands at its ends. */
export type RowEntry = { readonly cell: number } | 'side' | 'corner';

/** Every slanted row with its ends; setting corners are where they lie, though they are sewn on last. Straight: none. */
export function slantedRows(project: Pick<Project, 'wall' | 'setting'>): RowEntry[][] {
  const { rows, columns } = project.wall;
  if (project.setting.layout.kind !== 'onPoint') return [];
  const found: RowEntry[][] = [];
  // Along a row, down less across stays the same (half places, model/wallCells).
  for (let apart = 2 - 2 * columns; apart <= 2 * rows - 2; apart += 2) {
    const row: RowEntry[] = [];
    for (let across = -1; across <= 2 * columns - 1; across += 1) {
      const down = across + apart;
      if (down < -1 || down > 2 * rows - 1) continue;
      const cell = cellAtHalfPlace(down, across, project);
      const level = down < 0 || down > 2 * rows - 2;
      const upright = across < 0 || across > 2 * columns - 2;
      row.push(cell >= 0 ? { cell } : level && upright ? 'corner' : 'side');
    }
    found.push(row);
  }
  return found;
}

/** Slanted row and place in it (squares only) of a cell, both from 1; null in the straight setting. */
export function slantedPlace(
  cell: number,
  project: Pick<Project, 'wall' | 'setting'>,
): { row: number; place: number } | null {
  for (const [index, row] of slantedRows(project).entries()) {
    const squares = row.filter((entry) => typeof entry === 'object');
    const place = squares.findIndex((entry) => entry.cell === cell);
    if (place >= 0) return { row: index + 1, place: place + 1 };
  }
  return null;
}

// Where a cell of the wall is, in words: by row and column, on point by slanted row. Cards and steps say it alike.
import { slantedPlace } from '../../../cutting/sewing/slantedRows';
import { type Phrase, phrase } from '../../../model/phrase';
import type { Project } from '../../../model/project';
import { isPlain, rowAndColumn } from '../../../model/wallCells';

/** The row of a cell and its place in the row, both from 1. */
export function cellPlace(cell: number, project: Pick<Project, 'wall' | 'setting'>): Phrase {
  const slanted = slantedPlace(cell, project);
  return slanted
    ? phrase('diagonal row {row}, square {place}', { ...slanted })
    : phrase('row {row}, column {column}', { ...rowAndColumn(cell, project) });
}

/** Whether a block is wanted in the cell and none hangs there. */
export function isEmpty(cell: number, project: Pick<Project, 'wall' | 'setting'>): boolean {
  return project.wall.cells[cell] === null && !isPlain(cell, project);
}

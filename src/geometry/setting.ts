// The straight setting as boxes in inches: where each cell, sashing piece and border lies, and the size of the top.
// The origin is the top left corner of the finished top, borders included.
import type { Project } from '../model/project';
import type { Inches } from '../model/units';
import type { Box, Point } from './point';
import { finishedBlock } from './wedge';

export interface SettingLayout {
  /** Finished size of the top, inches. */
  readonly width: Inches;
  readonly height: Inches;
  /** Middle of each cell, in the order of wall.cells. */
  readonly centres: readonly Point[];
  /** Finished block, inches. */
  readonly block: { readonly width: Inches; readonly height: Inches };
  /** Sashing: short pieces between the blocks of a row, then whole strips between the rows. */
  readonly sashing: readonly Box[];
  /** For each border, from the inside out: left, right, then top and bottom across the new width. */
  readonly borders: readonly (readonly Box[])[];
}

/** Lays out the wall with its sashing and borders. */
export function layOut(project: Project): SettingLayout {
  const { wall, setting } = project;
  const block = finishedBlock(project.wedge);
  const gap = setting.sashing.where === 'none' ? 0 : setting.sashing.width;
  const edge = setting.sashing.where === 'around' ? gap : 0;
  const bordered = setting.borders.reduce((sum, border) => sum + border.width, 0);
  const start = bordered + edge;
  const across = wall.columns * block.width + (wall.columns - 1) * gap;
  const down = wall.rows * block.height + (wall.rows - 1) * gap;
  const left = (column: number) => start + column * (block.width + gap);
  const top = (row: number) => start + row * (block.height + gap);
  const centres = wall.cells.map((_, index) => ({
    x: left(index % wall.columns) + block.width / 2,
    y: top(Math.floor(index / wall.columns)) + block.height / 2,
  }));
  const sashing: Box[] = [];
  if (gap > 0) {
    for (let row = 0; row < wall.rows; row += 1) {
      const first = edge > 0 ? 0 : 1;
      const last = edge > 0 ? wall.columns : wall.columns - 1;
      for (let column = first; column <= last; column += 1) {
        sashing.push({ x: left(column) - gap, y: top(row), width: gap, height: block.height });
      }
    }
    const firstRow = edge > 0 ? 0 : 1;
    const lastRow = edge > 0 ? wall.rows : wall.rows - 1;
    for (let row = firstRow; row <= lastRow; row += 1) {
      sashing.push({ x: bordered, y: top(row) - gap, width: across + 2 * edge, height: gap });
    }
  }
  return {
    width: across + 2 * start,
    height: down + 2 * start,
    centres,
    block,
    sashing,
    borders: borderBoxes(project, bordered, across + 2 * edge, down + 2 * edge),
  };
}

function borderBoxes(project: Project, bordered: Inches, innerWidth: Inches, innerHeight: Inches): Box[][] {
  let width = innerWidth;
  let height = innerHeight;
  let at = bordered;
  return project.setting.borders.map((border) => {
    const wide = border.width;
    const boxes: Box[] = [
      { x: at - wide, y: at, width: wide, height },
      { x: at + width, y: at, width: wide, height },
      { x: at - wide, y: at - wide, width: width + 2 * wide, height: wide },
      { x: at - wide, y: at + height, width: width + 2 * wide, height: wide },
    ];
    width += 2 * wide;
    height += 2 * wide;
    at -= wide;
    return boxes;
  });
}

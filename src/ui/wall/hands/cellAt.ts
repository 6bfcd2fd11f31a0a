// Finds the cell of the wall at a point of the quilt, or the one nearest to it.
import type { Drawing } from '../../../drawing/drawing';
import type { Point } from '../../../geometry/point';

/** The cell, with or without a block, that covers a point in quilt inches; null between and outside the cells. */
export function cellAt(drawing: Drawing, point: Point): number | null {
  return cellNear(drawing, point, 0);
}

/** The cell nearest to a point, both in quilt inches, that comes within `reach` inches of it; null where none does. */
export function cellNear(drawing: Drawing, point: Point, reach: number): number | null {
  const { width, height } = drawing.block;
  /** How far the point is outside a cell with this middle. */
  const away = (middle: Point) => {
    // Turned back by the tilt, because on point a block is a square that stands on its corner.
    const own = turnedBack({ x: point.x - middle.x, y: point.y - middle.y }, drawing.tilt);
    return Math.hypot(Math.max(0, Math.abs(own.x) - width / 2), Math.max(0, Math.abs(own.y) - height / 2));
  };
  let nearest: number | null = null;
  let least = reach;
  const look = (cell: number, middle: Point) => {
    const far = away(middle);
    if (far > least || (far === least && nearest !== null)) return;
    [nearest, least] = [cell, far];
  };
  for (const { cell, centre } of drawing.blocks) look(cell, centre);
  for (const { cell, box } of drawing.emptyCells)
    look(cell, { x: box.x + box.width / 2, y: box.y + box.height / 2 });
  return nearest;
}

function turnedBack({ x, y }: Point, tilt: number): Point {
  return tilt === 0 ? { x, y } : { x: (x + y) * Math.SQRT1_2, y: (y - x) * Math.SQRT1_2 };
}

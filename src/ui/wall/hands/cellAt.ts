// Finds the cell of the wall at a point of the quilt.
import type { Drawing } from '../../../drawing/drawing';
import type { Point } from '../../../geometry/point';

/** The cell, with or without a block, that covers a point in quilt inches; null between and outside the cells. */
export function cellAt(drawing: Drawing, point: Point): number | null {
  const { width, height } = drawing.block;
  const covers = (x: number, y: number) => {
    // Turned back by the tilt, because on point a block is a square that stands on its corner.
    const across = point.x - x;
    const down = point.y - y;
    const own =
      drawing.tilt === 0
        ? { x: across, y: down }
        : { x: (across + down) * Math.SQRT1_2, y: (down - across) * Math.SQRT1_2 };
    return Math.abs(own.x) <= width / 2 && Math.abs(own.y) <= height / 2;
  };
  const hung = drawing.blocks.find((one) => covers(one.centre.x, one.centre.y));
  if (hung) return hung.cell;
  return (
    drawing.emptyCells.find(({ box }) => covers(box.x + box.width / 2, box.y + box.height / 2))?.cell ?? null
  );
}

// The largest turned rectangle that lies inside a region and holds a point of it.
import type { Frame } from '../pixels/frame';

/** For each pixel whether it is inside (1) or not (0). */
export interface Mask {
  readonly width: number;
  readonly height: number;
  readonly inside: Uint8Array;
}

/** Turns that are tried, degrees: fabrics lie level on a shelf and every way in a fan. */
const ANGLES = [7, -7, 14, -14, 21, -21, 28, -28, 36, -36, 45] as const;
/** A turned frame has to be so much larger than a level one to be chosen. */
const WORTH = 1.12;
/** A level frame that fills so much of the region is not bettered by turning. */
const FILLS = 0.6;
/** Frames keep off the edge of the region by this many pixels: there colours mix with the neighbour's. */
const KEPT_OFF = 2;

/** The frame in pixels of the mask; null where the point is not inside. */
export function largestFrame(mask: Mask, column: number, row: number): Frame | null {
  const level = frameTurned(mask, column, row, 0);
  const region = mask.inside.reduce((sum, one) => sum + one, 0);
  if (!level || areaOf(level) >= FILLS * region) return level;
  return ANGLES.reduce((best, angle) => {
    const frame = frameTurned(mask, column, row, angle);
    return frame && areaOf(frame) > WORTH * areaOf(best) ? frame : best;
  }, level);
}

function areaOf({ width, height }: Frame): number {
  return Math.max(0, width) * Math.max(0, height);
}

function frameTurned(mask: Mask, column: number, row: number, angle: number): Frame | null {
  const turned = turnedAbout(mask, column, row, angle);
  const box = largestAt(turned);
  return box && frameFrom(box, turned, column, row, angle);
}

interface TurnedMask extends Mask {
  /** The place of the tapped pixel. */
  readonly column: number;
  readonly row: number;
}

/** The mask turned so that frames of this angle lie level, the tapped pixel in the middle. */
function turnedAbout(mask: Mask, column: number, row: number, angle: number): TurnedMask {
  const reach = farthest(mask, column, row);
  const side = 2 * reach + 1;
  const [cos, sin] = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)];
  const inside = new Uint8Array(side * side);
  for (let y = -reach; y <= reach; y += 1)
    for (let x = -reach; x <= reach; x += 1) {
      const fromX = Math.round(column + x * cos - y * sin);
      const fromY = Math.round(row + x * sin + y * cos);
      if (fromX < 0 || fromY < 0 || fromX >= mask.width || fromY >= mask.height) continue;
      inside[(y + reach) * side + x + reach] = mask.inside[fromY * mask.width + fromX]!;
    }
  return { width: side, height: side, inside, column: reach, row: reach };
}

/** How far the region reaches from a pixel, in whole pixels. */
function farthest({ width, inside }: Mask, column: number, row: number): number {
  let square = 0;
  for (let at = 0; at < inside.length; at += 1)
    if (inside[at])
      square = Math.max(square, ((at % width) - column) ** 2 + (Math.floor(at / width) - row) ** 2);
  return Math.ceil(Math.sqrt(square));
}

interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/**
 * The largest upright rectangle through the tapped pixel: for each row above and below, how far one may go left and right
 * without leaving the region in any row between; then the best pair of rows.
 */
function largestAt(mask: TurnedMask): Box | null {
  if (!mask.inside[mask.row * mask.width + mask.column]) return null;
  const up = reaches(mask, -1);
  const down = reaches(mask, 1);
  let [best, area] = [null as Box | null, 0];
  up.forEach((above, top) => {
    down.forEach((below, bottom) => {
      const [left, right] = [Math.max(above.left, below.left), Math.min(above.right, below.right)];
      const size = (right - left + 1) * (top + bottom + 1);
      if (size <= area) return;
      area = size;
      best = { left, right, top: mask.row - top, bottom: mask.row + bottom };
    });
  });
  return best;
}

/** Going up or down from the tapped row: the first and last column that are inside in every row so far. */
function reaches(
  { width, height, inside, column, row }: TurnedMask,
  step: number,
): { left: number; right: number }[] {
  const found: { left: number; right: number }[] = [];
  let [left, right] = [0, width - 1];
  for (let at = row; at >= 0 && at < height && inside[at * width + column]; at += step) {
    let [from, to] = [column, column];
    while (from > left && inside[at * width + from - 1]) from -= 1;
    while (to < right && inside[at * width + to + 1]) to += 1;
    [left, right] = [from, to];
    found.push({ left, right });
  }
  return found;
}

/** A box of the turned mask, whose middle is the tapped pixel, as a frame in pixels of the mask as it was. */
function frameFrom(box: Box, mask: TurnedMask, column: number, row: number, angle: number): Frame {
  const x = (box.left + box.right) / 2 - mask.column;
  const y = (box.top + box.bottom) / 2 - mask.row;
  const [cos, sin] = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)];
  return {
    x: column + 0.5 + x * cos - y * sin,
    y: row + 0.5 + x * sin + y * cos,
    width: box.right - box.left + 1 - 2 * KEPT_OFF,
    height: box.bottom - box.top + 1 - 2 * KEPT_OFF,
    angle,
  };
}

// A seamless tile from a patch of cloth. A print that repeats is cut at its repeat; any other is closed where its edges meet best.
// The patch is never turned or mirrored, so a print with a way up keeps it.
import type { Repeat, Step } from '../fabric/repeat';
import { oklabPlane } from '../pixels/linear';
import { blankPlane, type Plane } from '../pixels/pixels';
import { resizedPlane } from '../pixels/resize';
import { sampleInto } from '../pixels/sample';
import { closedAcross, closedDown, cutsOf, type Guided } from './wrapped';

/** The most pixels on a side of a tile: enough for cloth on a wall on screen, and little to keep (about 60 KB as a JPEG). */
export const LONGEST_TILE = 512;

export interface Tile {
  readonly plane: Plane;
  /** True size in pixels of the patch, which need not be whole. */
  readonly width: number;
  readonly height: number;
  /** Mean square difference in OKLab along its cuts. */
  readonly error: number;
  /** For each pixel whether a cut runs along its left (1) or its top (2). */
  readonly cuts: Uint8Array;
}

/** Shares of a tile's side that may go into the overlap: all are tried, for each direction alone. */
const OVERLAPS = [0.14, 0.19, 0.25, 0.32, 0.4] as const;
/** A print so alike to itself is cut at its repeat without looking for more. */
const EXACT = 0.85;
/** Repeats of a print are closed within a band of this share of the tile, where there is room. */
const REPEAT_OVERLAP = 0.12;
/** A tile that repeats is skewed by no more than this (sine of the angle). */
const SKEW = 0.06;

/** The seamless tile of a patch in linear light. `repeat` in pixels of the patch, or null. */
export function tileOf(patch: Plane, repeat: Repeat | null): Tile {
  const whole = repeat && atRepeat(patch, repeat);
  if (whole && repeat.likeness >= EXACT) return whole;
  const any = closedAnywhere(patch);
  return whole && whole.error <= any.error ? whole : any;
}

/** Cut at the repeat: as many whole repeats as fit. Null where none fits across and down with an overlap. */
function atRepeat(patch: Plane, repeat: Repeat): Tile | null {
  const room = { x: patch.width / (1 + REPEAT_OVERLAP / 2), y: patch.height / (1 + REPEAT_OVERLAP / 2) };
  const steps = wholeSteps(repeat);
  const across = longest(
    steps.filter(({ x, y }) => x > 4 && x <= room.x && Math.abs(y) <= SKEW * x),
    ({ x }) => x,
  );
  const down = longest(
    steps.filter(({ x, y }) => y > 4 && y <= room.y && Math.abs(x) <= SKEW * y),
    ({ y }) => y,
  );
  if (repeat.second) return across && down ? alongSteps(patch, across, down) : null;
  // Stripes come again after any step along themselves.
  const along = alongStripes(repeat.first, patch);
  if (across && !down) return alongSteps(patch, across, along);
  return down && !across ? alongSteps(patch, along, down) : null;
}

/** The step along the stripes as far as there is room for, nearly upright or nearly level. */
function alongStripes({ x, y }: Step, patch: Plane): Step {
  const across = Math.abs(x) > Math.abs(y);
  if (across) return { x: ((-y / x) * patch.height) / 1.1, y: patch.height / 1.1 };
  return { x: patch.width / 1.1, y: ((-x / y) * patch.width) / 1.1 };
}

/** Sums of both steps, in every sense, up to a dozen of each. */
function wholeSteps({ first, second }: Repeat): Step[] {
  const steps: Step[] = [];
  const most = second ? 12 : 0;
  for (let one = -12; one <= 12; one += 1)
    for (let two = -most; two <= most; two += 1)
      steps.push({
        x: one * first.x + two * (second?.x ?? 0),
        y: one * first.y + two * (second?.y ?? 0),
      });
  return steps;
}

/** The longest by `size`; of those nearly as long (within a tenth) the straightest. */
function longest(steps: readonly Step[], size: (step: Step) => number): Step | null {
  const most = Math.max(0, ...steps.map(size));
  const skew = (step: Step) => Math.min(Math.abs(step.x), Math.abs(step.y)) / size(step);
  return steps
    .filter((step) => size(step) >= 0.9 * most)
    .reduce<Step | null>((best, step) => (!best || skew(step) < skew(best) ? step : best), null);
}

/** A tile whose sides are two steps: read along them, so that they lie level and upright in the tile. */
function alongSteps(patch: Plane, across: Step, down: Step): Tile {
  const scale = Math.min(1, LONGEST_TILE / Math.max(across.x, down.y));
  const width = Math.max(4, Math.round(across.x * scale));
  const height = Math.max(4, Math.round(down.y * scale));
  const spare = (room: number, used: number, side: number) =>
    Math.max(1, Math.min(Math.round(REPEAT_OVERLAP * side), Math.floor(((room - used) / used) * side)));
  const overX = spare(patch.width - Math.abs(down.x), across.x, width);
  const overY = spare(patch.height - Math.abs(across.y), down.y, height);
  const source = shrunkBy(patch, scale);
  const read = skewed(source.plane, width + overX, height + overY, {
    start: { x: Math.max(0, -down.x) * source.x, y: Math.max(0, -across.y) * source.y },
    across: { x: (across.x * source.x) / width, y: (across.y * source.y) / width },
    down: { x: (down.x * source.x) / height, y: (down.y * source.y) / height },
  });
  return { ...closed(read, [width], [height]), width: across.x, height: down.y };
}

/** A plane made smaller by area, with how many of its pixels go to one of before, across and down. */
function shrunkBy(plane: Plane, scale: number): { plane: Plane; x: number; y: number } {
  if (scale === 1) return { plane, x: 1, y: 1 };
  const small = resizedPlane(plane, Math.round(plane.width * scale), Math.round(plane.height * scale));
  return { plane: small, x: small.width / plane.width, y: small.height / plane.height };
}

interface Skew {
  readonly start: Step;
  readonly across: Step;
  readonly down: Step;
}

function skewed(plane: Plane, width: number, height: number, { start, across, down }: Skew): Plane {
  const into = blankPlane(width, height, 3);
  for (let row = 0; row < height; row += 1)
    for (let column = 0; column < width; column += 1) {
      const x = start.x + (column + 0.5) * across.x + (row + 0.5) * down.x;
      const y = start.y + (column + 0.5) * across.y + (row + 0.5) * down.y;
      sampleInto(plane, x, y, into.data, (row * width + column) * 3);
    }
  return into;
}

/** A tile as large as closes well, of whatever size. */
function closedAnywhere(patch: Plane): Tile {
  const most = Math.floor(LONGEST_TILE * (1 + OVERLAPS[0]));
  const scale = Math.min(1, most / Math.max(patch.width, patch.height));
  const { plane, x, y } = shrunkBy(patch, scale);
  const sides = (length: number) => OVERLAPS.map((overlap) => sideWithin(length, overlap));
  const tile = closed(plane, sides(plane.width), sides(plane.height));
  return { ...tile, width: tile.plane.width / x, height: tile.plane.height / y };
}

/** The side of a tile that leaves this share of itself to overlap, one pixel at least. */
function sideWithin(length: number, overlap: number): number {
  return Math.min(LONGEST_TILE, length - Math.max(1, Math.round((length * overlap) / (1 + overlap))));
}

/** Closed across at the width of least error, then down at the height of least error. */
function closed(
  plane: Plane,
  widths: readonly number[],
  heights: readonly number[],
): Omit<Tile, 'width' | 'height'> {
  const open: Guided = { plane, guide: oklabPlane(plane) };
  const least = <One extends { readonly error: number }>(all: readonly One[]) =>
    all.reduce((best, one) => (one.error < best.error ? one : best));
  const across = least(widths.map((width) => closedAcross(open, width)));
  const down = least(heights.map((height) => closedDown(across, height)));
  const { width, height } = down.plane;
  return {
    plane: down.plane,
    error: (across.error + down.error) / 2,
    cuts: cutsOf(width, height, across.cut, down.cut),
  };
}

// Looks for white in a picture: flat areas that are bright in all three channels at once, of a colour that lamps and daylight have.
// A person may tap another.
import { type LinearRgb, xyzOf } from '../../colour/spaces';
import type { Frame } from '../pixels/frame';
import { linearAt } from '../pixels/linear';
import type { Pixels, Plane } from '../pixels/pixels';
import { shrunkTo } from '../pixels/resize';
import { nearestLamp } from './adaptation';
import { type Spot, spotIn } from './patch';

export interface WhiteProposal {
  /** Where the white lies, in pixels of the picture. */
  readonly frame: Frame;
  readonly spot: Spot;
  /** 0 to 1: 1 for a large, even, bright area of which no channel is outshone and whose colour a lamp has. */
  readonly sure: number;
}

/** The picture is looked at with its longer side this long, and in cells of so many pixels. */
const LONGEST = 384;
const CELL = 8;
/** A cell is flat where its light varies by no more than this, standard deviation over mean. */
const FLAT = 0.09;
/** Neighbouring cells are one area where no channel differs by more than this share. */
const ALIKE = 0.07;
/** From here on a channel has run out. */
const RUN_OUT = 0.97;

interface Cells {
  readonly across: number;
  readonly down: number;
  /** For each cell its mean light; null where it is not flat, runs out or is almost black. */
  readonly light: readonly (LinearRgb | null)[];
}

/** The likeliest white, or null where no flat area of the picture could be one. */
export function proposeWhite(pixels: Pixels): WhiteProposal | null {
  const small = shrunkTo(pixels, LONGEST);
  if (small.width < 2 * CELL || small.height < 2 * CELL) return null;
  const cells = flatCells(small);
  const most = brightest(cells);
  if (!most) return null;
  const areas = grown(cells).map((area) => ({ area, sure: likelyWhite(area, cells, most) }));
  const best = areas.reduce<{ area: number[]; sure: number } | null>(
    (found, one) => (one.sure > (found?.sure ?? 0.05) ? one : found),
    null,
  );
  if (!best) return null;
  const frame = frameIn(best.area, cells, pixels.width / small.width);
  return { frame, spot: spotIn(pixels, frame), sure: best.sure };
}

function flatCells(plane: Plane): Cells {
  const across = Math.floor(plane.width / CELL);
  const down = Math.floor(plane.height / CELL);
  const light = Array.from({ length: across * down }, (_, cell) =>
    flatLight(plane, (cell % across) * CELL, Math.floor(cell / across) * CELL),
  );
  return { across, down, light };
}

function flatLight(plane: Plane, left: number, top: number): LinearRgb | null {
  const sums = [0, 0, 0];
  let [whole, square] = [0, 0];
  for (let at = 0; at < CELL * CELL; at += 1) {
    const pixel = (top + Math.floor(at / CELL)) * plane.width + left + (at % CELL);
    const light = linearAt(plane, pixel);
    const sum = light[0] + light[1] + light[2];
    for (const channel of [0, 1, 2] as const) sums[channel]! += light[channel];
    whole += sum;
    square += sum * sum;
  }
  const count = CELL * CELL;
  const mean = whole / count;
  const deviation = Math.sqrt(Math.max(0, square / count - mean * mean));
  const [red, green, blue] = sums.map((sum) => sum / count) as [number, number, number];
  const readable = Math.min(red, green, blue) > 0.01 && Math.max(red, green, blue) < RUN_OUT;
  return readable && deviation <= FLAT * mean ? [red, green, blue] : null;
}

/** The light that only a fiftieth of the flat cells outshine, for each channel alone. */
function brightest({ light }: Cells): LinearRgb | null {
  const flat = light.filter((one) => one !== null);
  if (flat.length === 0) return null;
  const high = (channel: 0 | 1 | 2) => {
    const sorted = flat.map((one) => one[channel]).sort((one, other) => one - other);
    return sorted[Math.ceil(0.98 * sorted.length) - 1]!;
  };
  return [high(0), high(1), high(2)];
}

/** Flat cells grown together where neighbours are alike. */
function grown({ across, down, light }: Cells): number[][] {
  const seen = new Uint8Array(light.length);
  const areas: number[][] = [];
  for (let start = 0; start < light.length; start += 1) {
    if (seen[start] || !light[start]) continue;
    const area = [start];
    seen[start] = 1;
    for (const cell of area) {
      for (const next of neighbours(cell, across, down)) {
        if (seen[next] || !light[next] || !alike(light[cell]!, light[next])) continue;
        seen[next] = 1;
        area.push(next);
      }
    }
    areas.push(area);
  }
  return areas;
}

function neighbours(cell: number, across: number, down: number): number[] {
  const column = cell % across;
  const around = [];
  if (column > 0) around.push(cell - 1);
  if (column < across - 1) around.push(cell + 1);
  if (cell >= across) around.push(cell - across);
  if (cell < across * (down - 1)) around.push(cell + across);
  return around;
}

function alike(one: LinearRgb, other: LinearRgb): boolean {
  return ([0, 1, 2] as const).every((channel) => Math.abs(one[channel] / other[channel] - 1) <= ALIKE);
}

function meanLight(area: readonly number[], { light }: Cells): LinearRgb {
  const channel = (at: 0 | 1 | 2) => area.reduce((sum, cell) => sum + light[cell]![at], 0) / area.length;
  return [channel(0), channel(1), channel(2)];
}

/**
 * No surface outshines white in any channel; so the least share of the brightest says how likely an area is white, times how
 * near its colour is to a lamp's (0.02 in u, v is much) and whether it is large enough to be measured.
 */
function likelyWhite(area: readonly number[], cells: Cells, most: LinearRgb): number {
  const light = meanLight(area, cells);
  const shares = ([0, 1, 2] as const).map((channel) => Math.min(1, light[channel] / most[channel]));
  const { off } = nearestLamp(xyzOf(light));
  const large = Math.min(1, area.length / 6);
  return Math.min(...shares) ** 2 * Math.exp(-((off / 0.02) ** 2)) * large;
}

/** A square frame round the cell that lies deepest inside the area, as far as the area reaches, three cells at most. */
function frameIn(area: readonly number[], cells: Cells, scale: number): Frame {
  const inside = new Set(area);
  const reachOf = (cell: number) => {
    let reach = 0;
    while (reach < 3 && ringInside(cell, reach + 1, cells, inside)) reach += 1;
    return reach;
  };
  const deepest = area.reduce(
    (best, cell) => {
      const reach = reachOf(cell);
      return reach > best.reach ? { cell, reach } : best;
    },
    { cell: area[0]!, reach: reachOf(area[0]!) },
  );
  const side = (2 * deepest.reach + 1) * CELL * scale;
  return {
    x: ((deepest.cell % cells.across) + 0.5) * CELL * scale,
    y: (Math.floor(deepest.cell / cells.across) + 0.5) * CELL * scale,
    width: side,
    height: side,
    angle: 0,
  };
}

function ringInside(
  cell: number,
  reach: number,
  { across, down }: Cells,
  inside: ReadonlySet<number>,
): boolean {
  const [column, row] = [cell % across, Math.floor(cell / across)];
  if (column < reach || row < reach || column + reach >= across || row + reach >= down) return false;
  for (let off = -reach; off <= reach; off += 1) {
    const ring = [cell - reach * across + off, cell + reach * across + off, cell + off * across - reach, cell + off * across + reach]; // biome-ignore format: four sides
    if (!ring.every((one) => inside.has(one))) return false;
  }
  return true;
}

// Lays the four sides of a quadrilateral on the edges in the picture near by. Sides may be bent by the lens, which is found with them.
import type { Point } from '../../geometry/point';
import type { Plane } from '../pixels/pixels';
import { sampleInto } from '../pixels/sample';
import { bent, crossing, type Lens, lensFromEdges, lineThrough, straightened } from './lens';

export interface Sides {
  /** As photographed: top left, top right, bottom right, bottom left. */
  readonly corners: readonly Point[];
  readonly lens: Lens;
  /** Mean clearness of the edge along each side, 0 to 1, clockwise from the top. */
  readonly clear: readonly number[];
}

const PLACES = 64;
/** By how much of its length a lens bends a side in the middle, at most. */
const MOST_SAG = 0.02;
/** The ends of a side are left out: other sides begin there. */
const ENDS = 0.03;
/** Differences of colour that count half, in OKLab. */
const SEEN = 0.05;

/** One side: for each place along it and each offset how clear a step is there. */
interface Response {
  readonly from: Point;
  readonly to: Point;
  /** Unit normal, out of the quadrilateral. */
  readonly nx: number;
  readonly ny: number;
  /** Pixels between two offsets, and the number of offsets; the middle one is 0. */
  readonly pitch: number;
  readonly offsets: number;
  readonly clear: Float32Array;
  /** The differences of colour themselves. */
  readonly step: Float32Array;
}

/** `reach`: how far sides may move, as a share of the longest side. `plane` is OKLab. */
export function laidOnEdges(plane: Plane, corners: readonly Point[], reach: number): Sides {
  const long = Math.max(...corners.map((corner, at) => distance(corner, corners[(at + 1) % 4]!)));
  const points = corners.map((from, at) => {
    const to = corners[(at + 1) % 4]!;
    const wide = response(plane, from, to, reach * long, Math.max(3, 0.014 * long));
    return pointsOf(
      response(plane, from, to, reach * long, Math.max(1.5, 0.003 * long)),
      wide,
      bestCurve(wide),
    );
  });
  const rows = points.map((row) => row.map(({ point }) => point));
  const weights = points.map((row) => row.map(({ weight }) => weight));
  const lens = lensFromEdges(plane, rows, weights);
  const lines = rows.map((row, at) =>
    lineThrough(
      row.map((point) => straightened(lens, point)),
      weights[at],
    ),
  );
  const crossings = lines.map((line, at) => crossing(lines[(at + 3) % 4]!, line));
  return {
    corners: crossings.map((point, at) => (point ? bent(lens, point) : corners[at]!)),
    lens,
    clear: weights.map((row) => row.reduce((sum, one) => sum + one, 0) / row.length),
  };
}

function distance(one: Point, other: Point): number {
  return Math.hypot(one.x - other.x, one.y - other.y);
}

function alongSide({ from, to }: { readonly from: Point; readonly to: Point }, place: number): Point {
  const share = ENDS + ((1 - 2 * ENDS) * (place + 0.5)) / PLACES;
  return { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) };
}

function response(plane: Plane, from: Point, to: Point, reach: number, window: number): Response {
  const side = distance(from, to);
  const [nx, ny] = [(to.y - from.y) / side, -(to.x - from.x) / side];
  const pitch = Math.max(0.5, reach / 40);
  const half = Math.ceil(reach / pitch);
  const wide = Math.max(2, Math.round(window / pitch));
  const count = 2 * (half + wide) + 1;
  const clear = new Float32Array(PLACES * (2 * half + 1));
  const step = new Float32Array(clear.length);
  const sums = new Float64Array((count + 1) * 3);
  const colour = new Float32Array(3);
  for (let place = 0; place < PLACES; place += 1) {
    const middle = alongSide({ from, to }, place);
    for (let at = 0; at < count; at += 1) {
      const off = (at - half - wide) * pitch;
      sampleInto(plane, middle.x + nx * off, middle.y + ny * off, colour, 0);
      for (let channel = 0; channel < 3; channel += 1)
        sums[(at + 1) * 3 + channel] = sums[at * 3 + channel]! + colour[channel]!;
    }
    for (let at = 0; at <= 2 * half; at += 1) {
      const middleAt = at + wide;
      let square = 0;
      for (let channel = 0; channel < 3; channel += 1) {
        const inner = sums[middleAt * 3 + channel]! - sums[(middleAt - wide) * 3 + channel]!;
        const outer = sums[(middleAt + 1 + wide) * 3 + channel]! - sums[(middleAt + 1) * 3 + channel]!;
        square += ((outer - inner) / wide) ** 2;
      }
      clear[place * (2 * half + 1) + at] = square / (square + SEEN * SEEN);
      step[place * (2 * half + 1) + at] = Math.sqrt(square);
    }
  }
  return { from, to, nx, ny, pitch, offsets: 2 * half + 1, clear, step };
}

/** Offsets of a curve at the two ends and its sag in the middle, in steps of the response. */
interface Curve {
  readonly start: number;
  readonly end: number;
  readonly sag: number;
}

function offsetAt({ start, end, sag }: Curve, place: number): number {
  const share = (place + 0.5) / PLACES;
  return start + share * (end - start) + 4 * share * (1 - share) * sag;
}

function worth(side: Response, curve: Curve): number {
  let sum = 0;
  for (let place = 0; place < PLACES; place += 1) {
    const at = Math.round(offsetAt(curve, place));
    if (at >= 0 && at < side.offsets) sum += side.clear[place * side.offsets + at]!;
  }
  const middle = (side.offsets - 1) / 2;
  const away = (Math.abs(curve.start - middle) + Math.abs(curve.end - middle)) / side.offsets;
  return (
    sum / PLACES -
    0.06 * away -
    (0.004 * Math.abs(curve.sag) * side.pitch) / (MOST_SAG * distance(side.from, side.to))
  );
}

/** The slightly bent line that gathers the clearest steps. */
function bestCurve(side: Response): Curve {
  const middle = (side.offsets - 1) / 2;
  const most = (MOST_SAG * distance(side.from, side.to)) / side.pitch;
  let best: Curve = { start: middle, end: middle, sag: 0 };
  let worthiest = worth(side, best);
  const attempt = (curve: Curve) => {
    const now = worth(side, curve);
    if (now > worthiest) [best, worthiest] = [curve, now];
  };
  for (let start = 0; start < side.offsets; start += 2)
    for (let end = 0; end < side.offsets; end += 2)
      for (let sag = -most; sag <= most; sag += most / 4) attempt({ start, end, sag });
  for (let step = 1; step >= 0.25; step /= 2) {
    const { start, end, sag } = best;
    for (const a of [-2, -1, 0, 1, 2])
      for (const b of [-2, -1, 0, 1, 2])
        for (const c of [-2, -1, 0, 1, 2])
          attempt({ start: start + a * step, end: end + b * step, sag: sag + c * step });
  }
  return best;
}

/**
 * Where the step is sharpest near the curve at each place, to a part of a pixel: first for the side as a whole, so that shadows
 * beside the cloth are not taken for its edge.
 */
function pointsOf(side: Response, wide: Response, curve: Curve): { point: Point; weight: number }[] {
  const middle = (side.offsets - 1) / 2;
  const shift = sharpestShift(side, curve, Math.ceil(0.45 * middle));
  return Array.from({ length: PLACES }, (_, place) => {
    const near = offsetAt(curve, place) + shift;
    let [sum, mass] = [0, 0];
    for (let step = -3; step <= 3; step += 1) {
      const at = Math.round(near) + step;
      if (at < 0 || at >= side.offsets) continue;
      const weight = side.step[place * side.offsets + at]! ** 4;
      sum += weight * at;
      mass += weight;
    }
    // Where there is no step the curve itself is the best guess, with little weight.
    const at = mass > 1e-12 ? (sum + 1e-9 * near) / (mass + 1e-9) : near;
    const off = (at - middle) * side.pitch;
    const on = alongSide(side, place);
    const clear =
      wide.clear[place * wide.offsets + Math.max(0, Math.min(wide.offsets - 1, Math.round(near)))]!;
    return { point: { x: on.x + side.nx * off, y: on.y + side.ny * off }, weight: clear ** 2 + 0.01 };
  });
}

/** By how much the whole curve moves to where steps are sharpest in the middle of its places. */
function sharpestShift(side: Response, curve: Curve, most: number): number {
  let [best, sharpest] = [0, -1];
  for (let shift = -most; shift <= most; shift += 1) {
    let sum = 0;
    for (let place = 0; place < PLACES; place += 1) {
      const at = Math.round(offsetAt(curve, place)) + shift;
      // The root keeps a few strong prints from deciding.
      if (at >= 0 && at < side.offsets) sum += Math.sqrt(side.step[place * side.offsets + at]!);
    }
    if (sum > sharpest) [best, sharpest] = [shift, sum];
  }
  return best;
}

// How a print repeats, from the autocorrelation of its colours: the shortest step after which it comes again, and the shortest in
// another direction. Scatterings without a repeat, gradations and plain cloth have none.
import type { Plane } from '../pixels/pixels';
import { fitted, resizedPlane } from '../pixels/resize';
import { autocorrelate, complexSquare } from './fourier';

/** A step in pixels of the plane, x to the right, y down. */
export interface Step {
  readonly x: number;
  readonly y: number;
}

export interface Repeat {
  /** The shortest step; across the stripes of a stripe. */
  readonly first: Step;
  /** The shortest in another direction; null where the print is the same all along (stripes) or only the first is seen. */
  readonly second: Step | null;
  /** How alike the print is to itself one step on, 0 to 1. */
  readonly likeness: number;
}

/** Planes are looked at this large at most (padded for the lags to 256); lags are looked through to this share of a side. */
const LONGEST = 158;
const FARTHEST = 0.62;
/**
 * A repeat is at least so alike where the print and its copy overlap whole, and more the less they overlap, since few figures are
 * alike by chance; it is nearly as alike as the best, and the print differs by so much in between.
 */
const ALIKE = 0.42;
const MORE_ALIKE = 0.45;
const NEAR_BEST = 0.88;
const VALLEY = 0.12;
/** Below this standard deviation in OKLab a cloth has no figures to repeat. */
const PLAIN = 0.008;

/** Correlation of the print with itself, moved by whole pixels: `at(x, y)` from −1 to 1; `overlap`: the share compared. */
interface Correlation {
  readonly reachX: number;
  readonly reachY: number;
  readonly at: (x: number, y: number) => number;
  readonly overlap: (x: number, y: number) => number;
}

/** The repeat of a plane in OKLab; null where it has none that shows at least one and a half times. */
export function repeatOf(oklab: Plane): Repeat | null {
  const { width, height } = fitted(oklab.width, oklab.height, LONGEST);
  const small = resizedPlane(oklab, width, height);
  const correlation = correlationOf(small);
  if (!correlation) return null;
  const peaks = peaksOf(correlation);
  const best = Math.max(0, ...peaks.map(({ likeness }) => likeness));
  const strong = peaks
    .filter(({ likeness }) => likeness >= NEAR_BEST * best)
    .sort((one, other) => Math.hypot(one.x, one.y) - Math.hypot(other.x, other.y));
  const first = strong[0];
  if (!first) return null;
  const second = strong.find((peak) => turned(first, peak) > 0.4) ?? null;
  const scaleX = oklab.width / width;
  const scaleY = oklab.height / height;
  const grown = (peak: Step) => ({ x: peak.x * scaleX, y: peak.y * scaleY });
  return {
    first: grown(finest(first, correlation)),
    second: second && grown(finest(second, correlation)),
    likeness: first.likeness,
  };
}

/** The sine of the angle between two steps, without sign. */
function turned(one: Step, other: Step): number {
  return (
    Math.abs(one.x * other.y - one.y * other.x) / (Math.hypot(one.x, one.y) * Math.hypot(other.x, other.y))
  );
}

function correlationOf(plane: Plane): Correlation | null {
  const { width, height } = plane;
  // A lag further round than a side of the plane reaches would meet its other end.
  const longer = Math.max(width, height);
  const side = 2 ** Math.ceil(Math.log2(longer + Math.floor(longer * FARTHEST) + 1));
  // Two channels go in as one complex number: their autocorrelations add up, and what they share is imaginary.
  const [one, two] = [complexSquare(side), complexSquare(side)];
  const channels = [one.real, one.imaginary, two.real] as const;
  let variance = 0;
  channels.forEach((into, channel) => {
    variance += withoutMean(plane, channel, into, side);
  });
  if (variance < PLAIN ** 2) return null;
  autocorrelate(one);
  autocorrelate(two);
  const whole = one.real[0]! + two.real[0]!;
  const overlap = (x: number, y: number) =>
    ((width - Math.abs(x)) * (height - Math.abs(y))) / (width * height);
  return {
    reachX: Math.floor(width * FARTHEST),
    reachY: Math.floor(height * FARTHEST),
    at: (x, y) => {
      const at = ((y + side) % side) * side + ((x + side) % side);
      return (one.real[at]! + two.real[at]!) / (whole * overlap(x, y));
    },
    overlap,
  };
}

/** Copies one channel, less its mean, into a square; returns its variance. */
function withoutMean(
  { width, height, data }: Plane,
  channel: number,
  into: Float64Array,
  side: number,
): number {
  let sum = 0;
  for (let at = channel; at < data.length; at += 3) sum += data[at]!;
  const mean = sum / (width * height);
  let squares = 0;
  for (let pixel = 0; pixel < width * height; pixel += 1) {
    const off = data[pixel * 3 + channel]! - mean;
    into[Math.floor(pixel / width) * side + (pixel % width)] = off;
    squares += off * off;
  }
  return squares / (width * height);
}

interface Peak extends Step {
  readonly likeness: number;
}

/** Tops of the correlation in the half plane (the other half mirrors it) with a valley before them. */
function peaksOf(correlation: Correlation): Peak[] {
  const { reachX, reachY, at, overlap } = correlation;
  const peaks: Peak[] = [];
  for (let y = 0; y <= reachY; y += 1) {
    for (let x = y === 0 ? 2 : -reachX; x <= reachX; x += 1) {
      const likeness = at(x, y);
      if (likeness < ALIKE + MORE_ALIKE * (1 - overlap(x, y)) || !isTop(x, y, likeness, at)) continue;
      if (likeness - lowestTo(x, y, at) >= VALLEY) peaks.push({ x, y, likeness });
    }
  }
  return peaks;
}

function isTop(x: number, y: number, likeness: number, at: Correlation['at']): boolean {
  for (let row = -1; row <= 1; row += 1)
    for (let column = -1; column <= 1; column += 1)
      if ((row !== 0 || column !== 0) && at(x + column, y + row) > likeness + 1e-9) return false;
  return true;
}

/** The least correlation on the way from no step to a whole one. */
function lowestTo(x: number, y: number, at: Correlation['at']): number {
  const steps = Math.ceil(Math.hypot(x, y));
  let least = 1;
  for (let step = 1; step < steps; step += 1)
    least = Math.min(least, at(Math.round((x * step) / steps), Math.round((y * step) / steps)));
  return least;
}

/** The top between pixels: of the parabola through it and its neighbours, along either axis. */
function finest({ x, y }: Step, { at }: Correlation): Step {
  const shift = (before: number, top: number, after: number) => {
    const bend = before - 2 * top + after;
    return bend < -1e-12 ? Math.max(-0.5, Math.min(0.5, (before - after) / (2 * bend))) : 0;
  };
  const top = at(x, y);
  return { x: x + shift(at(x - 1, y), top, at(x + 1, y)), y: y + shift(at(x, y - 1), top, at(x, y + 1)) };
}

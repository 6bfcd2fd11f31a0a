// Radial lens distortion of one coefficient: between pixels as photographed and pixels as a lens without distortion would give them.
import type { Point } from '../../geometry/point';

/** A lens: `bend` 0 is none. A point at radius r of the half diagonal is straightened to r (1 + bend r²): the division-free form of Brown (1966) read the way back. */
export interface Lens {
  readonly middle: Point;
  /** Half the diagonal of the picture, pixels. */
  readonly half: number;
  readonly bend: number;
}

/** A lens without distortion for a picture of this size, or with this much. */
export function lensOf(
  { width, height }: { readonly width: number; readonly height: number },
  bend = 0,
): Lens {
  return { middle: { x: width / 2, y: height / 2 }, half: Math.hypot(width, height) / 2, bend };
}

/** From the picture to where a perfect lens would show the point. */
export function straightened({ middle, half, bend }: Lens, { x, y }: Point): Point {
  const [dx, dy] = [(x - middle.x) / half, (y - middle.y) / half];
  const by = 1 + bend * (dx * dx + dy * dy);
  return { x: middle.x + half * dx * by, y: middle.y + half * dy * by };
}

/** The way back, by Newton's method; a radius beyond what the lens can show stays at the last that it can. */
export function bent(lens: Lens, { x, y }: Point): Point {
  const { middle, half, bend } = lens;
  const [dx, dy] = [(x - middle.x) / half, (y - middle.y) / half];
  const far = Math.hypot(dx, dy);
  if (bend === 0 || far === 0) return { x, y };
  const most = bend < 0 ? Math.sqrt(1 / (-3 * bend)) : Number.POSITIVE_INFINITY;
  let radius = Math.min(far, most);
  for (let step = 0; step < 10; step += 1) {
    const slope = 1 + 3 * bend * radius * radius;
    if (!(slope > 1e-6)) break;
    radius = Math.min(most, radius - (radius * (1 + bend * radius * radius) - far) / slope);
  }
  const by = radius / far;
  return { x: middle.x + half * dx * by, y: middle.y + half * dy * by };
}

/** A straight line: all points with x·nx + y·ny = off, the normal of length 1. */
export interface Line {
  readonly nx: number;
  readonly ny: number;
  readonly off: number;
}

/** The line of least squared distances through points, with the mean squared distance. Weights are 1 unless given. */
export function lineThrough(
  points: readonly Point[],
  weights?: readonly number[],
): Line & { readonly spread: number } {
  let [sum, mx, my] = [0, 0, 0];
  points.forEach(({ x, y }, at) => {
    const weight = weights?.[at] ?? 1;
    sum += weight;
    mx += weight * x;
    my += weight * y;
  });
  mx /= sum;
  my /= sum;
  let [xx, xy, yy] = [0, 0, 0];
  points.forEach(({ x, y }, at) => {
    const weight = weights?.[at] ?? 1;
    xx += weight * (x - mx) ** 2;
    xy += weight * (x - mx) * (y - my);
    yy += weight * (y - my) ** 2;
  });
  const turn = 0.5 * Math.atan2(2 * xy, xx - yy) + Math.PI / 2;
  const [nx, ny] = [Math.cos(turn), Math.sin(turn)];
  const least = xx * nx * nx + 2 * xy * nx * ny + yy * ny * ny;
  return { nx, ny, off: mx * nx + my * ny, spread: Math.max(0, least) / sum };
}

/** Where two lines cross; null for parallel ones. */
export function crossing(one: Line, other: Line): Point | null {
  const across = one.nx * other.ny - one.ny * other.nx;
  if (Math.abs(across) < 1e-9) return null;
  return {
    x: (one.off * other.ny - other.off * one.ny) / across,
    y: (one.nx * other.off - other.nx * one.off) / across,
  };
}

const MOST_BEND = 0.35;

/**
 * The lens that makes each row of points, which lie on an edge that is straight in truth, as straight as it can be (the plumb-line
 * method of Brown, 1971). Without a clear gain over no distortion the bend is 0. Weights by row and point.
 */
export function lensFromEdges(
  size: { readonly width: number; readonly height: number },
  edges: readonly (readonly Point[])[],
  weights?: readonly (readonly number[])[],
): Lens {
  const crooked = (bend: number) => {
    const lens = lensOf(size, bend);
    return edges.reduce((sum, edge, at) => {
      const straight = edge.map((point) => straightened(lens, point));
      return sum + lineThrough(straight, weights?.[at]).spread;
    }, 0);
  };
  let [low, high] = [-MOST_BEND, MOST_BEND];
  for (let step = 0; step < 40; step += 1) {
    const [one, other] = [low + (high - low) * 0.382, low + (high - low) * 0.618];
    if (crooked(one) < crooked(other)) high = other;
    else low = one;
  }
  const bend = (low + high) / 2;
  return lensOf(size, crooked(bend) < 0.85 * crooked(0) ? bend : 0);
}

// Quadrilaterals that straight edges of a picture make: the places where the edge of a block or of a wall may lie.
import type { Point } from '../../geometry/point';
import type { InParts } from '../../model/work/parts';
import type { EdgeLine, Edges } from './edges';
import { crossing } from './lens';

/** Four corners, clockwise on screen from the one that is top left, and the share of their sides that has an edge. */
export interface Quad {
  readonly corners: readonly Point[];
  readonly support: number;
}

const STRETCH = 4;
/** How far an edge point may lie from its line, pixels; lens distortion bends long sides. */
const NEAR = 3;

/** A line with how much edge lies on it up to each stretch. */
interface Measured extends EdgeLine {
  readonly from: number;
  readonly sums: Float32Array;
}

function measured(line: EdgeLine, edges: Edges): Measured {
  const reach = Math.hypot(edges.width, edges.height);
  const bins = new Float32Array(Math.ceil((2 * reach) / STRETCH) + 1);
  for (let point = 0; point < edges.count; point += 1) {
    const away = edges.x[point]! * line.nx + edges.y[point]! * line.ny - line.off;
    if (Math.abs(away) > NEAR) continue;
    const same = Math.abs(edges.nx[point]! * line.nx + edges.ny[point]! * line.ny);
    if (same < 0.9) continue;
    const along = edges.y[point]! * line.nx - edges.x[point]! * line.ny;
    const bin = Math.floor((along + reach) / STRETCH);
    bins[bin] = Math.min(1, bins[bin]! + 0.5 * Math.min(1, edges.strength[point]! / 0.06));
  }
  const sums = new Float32Array(bins.length + 1);
  for (let at = 0; at < bins.length; at += 1) sums[at + 1] = sums[at]! + bins[at]!;
  return { ...line, from: -reach, sums };
}

/** Share of the line between two of its points that has an edge. */
function covered(line: Measured, one: Point, other: Point): number {
  const at = ({ x, y }: Point) => (y * line.nx - x * line.ny - line.from) / STRETCH;
  const [low, high] = [Math.min(at(one), at(other)), Math.max(at(one), at(other))];
  const [first, last] = [Math.max(0, Math.round(low)), Math.min(line.sums.length - 1, Math.round(high))];
  return last > first ? (line.sums[last]! - line.sums[first]!) / (last - first) : 0;
}

/** Limits of the quadrilaterals to be found. */
export interface QuadLimits {
  /** The least side, as a share of the shorter side of the picture. */
  readonly least: number;
  /** The most that opposite sides differ in direction, radians. */
  readonly skew: number;
  /** The longest ratio of neighbouring sides. */
  readonly ratio: number;
}

/** The `most` best supported quadrilaterals made of these lines. In parts: one for each line, and for each two that may be opposite. */
export function* quadsOf(
  lines: readonly EdgeLine[],
  edges: Edges,
  limits: QuadLimits,
  most: number,
): InParts<Quad[]> {
  const all: Measured[] = [];
  for (const line of lines) {
    yield null;
    all.push(measured(line, edges));
  }
  const side = Math.min(edges.width, edges.height);
  const pairs = opposite(all, limits, limits.least * side);
  const found: Quad[] = [];
  let bar = 0;
  for (const [at, [a, b]] of pairs.entries()) {
    yield null;
    for (const [c, d] of pairs.slice(at + 1)) {
      if (Math.abs(a.nx * c.nx + a.ny * c.ny) > 0.65) continue;
      const quad = quadOf(a, b, c, d, edges, limits, side);
      if (!quad || quad.support <= bar) continue;
      found.push(quad);
      if (found.length > 4 * most) {
        found.sort((one, other) => other.support - one.support).splice(most);
        bar = found.at(-1)!.support;
      }
    }
  }
  return found.sort((one, other) => other.support - one.support).slice(0, most);
}

function opposite(lines: readonly Measured[], { skew }: QuadLimits, apart: number): [Measured, Measured][] {
  const pairs: [Measured, Measured][] = [];
  for (const [at, one] of lines.entries()) {
    for (const other of lines.slice(at + 1)) {
      const same = one.nx * other.nx + one.ny * other.ny;
      if (Math.abs(same) < Math.cos(skew)) continue;
      // How far they lie apart in the middle of the picture is near enough.
      if (Math.abs(one.off - Math.sign(same) * other.off) < apart * 0.5) continue;
      pairs.push([one, other]);
    }
  }
  return pairs;
}

function quadOf(
  a: Measured,
  b: Measured,
  c: Measured,
  d: Measured,
  edges: Edges,
  limits: QuadLimits,
  side: number,
): Quad | null {
  const [ac, bc, bd, ad] = [crossing(a, c), crossing(b, c), crossing(b, d), crossing(a, d)];
  if (!ac || !bc || !bd || !ad) return null;
  const margin = 0.02 * side;
  for (const { x, y } of [ac, bc, bd, ad])
    if (x < -margin || y < -margin || x > edges.width + margin || y > edges.height + margin) return null;
  const sides = [long(ac, bc), long(bc, bd), long(bd, ad), long(ad, ac)];
  const least = Math.min(...sides);
  if (least < limits.least * side || Math.max(...sides) > limits.ratio * least) return null;
  const corners = ordered([ac, bc, bd, ad]);
  if (!isConvex(corners)) return null;
  const shares = [covered(c, ac, bc), covered(b, bc, bd), covered(d, bd, ad), covered(a, ad, ac)];
  const support = shares.reduce((sum, one) => sum + one, 0) / 4 + 0.5 * Math.min(...shares);
  return { corners, support };
}

function long(one: Point, other: Point): number {
  return Math.hypot(one.x - other.x, one.y - other.y);
}

/** Four corners clockwise on screen, from the one whose next side runs most to the right. */
export function ordered(corners: readonly Point[]): Point[] {
  const twice = corners.reduce((sum, { x, y }, at) => {
    const next = corners[(at + 1) % 4]!;
    return sum + x * next.y - next.x * y;
  }, 0);
  const round = twice > 0 ? [...corners] : corners.toReversed();
  const ways = round.map((point, at) => {
    const next = round[(at + 1) % 4]!;
    const [across, back] = [round[(at + 2) % 4]!, round[(at + 3) % 4]!];
    return next.x - point.x + across.x - back.x;
  });
  const first = ways.indexOf(Math.max(...ways));
  return [...round.slice(first), ...round.slice(0, first)];
}

/** Whether corners clockwise on screen turn the same way at each of them, clearly. */
export function isConvex(corners: readonly Point[]): boolean {
  return corners.every((point, at) => {
    const before = corners[(at + 3) % 4]!;
    const after = corners[(at + 1) % 4]!;
    const [ax, ay, bx, by] = [point.x - before.x, point.y - before.y, after.x - point.x, after.y - point.y];
    return ax * by - ay * bx > 0.25 * Math.hypot(ax, ay) * Math.hypot(bx, by);
  });
}

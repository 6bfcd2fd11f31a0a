// The independent route for areas: polygon-clipping, and plain shoelace sums over what it returns.
import polygonClipping, { type MultiPolygon, type Polygon } from 'polygon-clipping';
import { area, type Outline, type Point } from '../../src/geometry/point';

export type Clipped = MultiPolygon;

/**
 * Points go on a grid of 2^-26 in (15 billionths): edges that should coincide but differ in the last bit break the library
 * off with "unable to complete output ring". Areas below are trusted to 1e-6.
 */
const GRID = 2 ** 26;
const snapped = (value: number) => Math.round(value * GRID) / GRID + 0;
/** Everything is turned by the same odd angle first, so that no edges meet in the exact symmetry the library stumbles on. */
const ODD_ANGLE = 0.3217;

function ring(outline: Outline): Polygon {
  const turned = outline.map((point) => turnedBy(point, ODD_ANGLE));
  return [turned.map((point): [number, number] => [snapped(point.x), snapped(point.y)])];
}

export function overlap(one: Outline, other: Outline): Clipped {
  return polygonClipping.intersection(ring(one), ring(other));
}

/**
 * How far outlines are from tiling a whole, square inches: the worst of what lies outside it, what two of them share, and
 * the area missing. Pair by pair, because unions of many touching float polygons break the library off.
 */
export function tilingError(outlines: readonly Outline[], whole: Outline): number {
  const outside = Math.max(...outlines.map((one) => area(one) - clippedArea(overlap(one, whole))));
  const missing = Math.abs(area(whole) - outlines.reduce((sum, one) => sum + area(one), 0));
  return Math.max(outside, missing, worstOverlap(outlines));
}

/** Largest area that two of the outlines share. Only outlines whose boxes meet are clipped. */
function worstOverlap(outlines: readonly Outline[]): number {
  const boxes = outlines.map((outline) => ({
    left: Math.min(...outline.map((point) => point.x)),
    right: Math.max(...outline.map((point) => point.x)),
    top: Math.min(...outline.map((point) => point.y)),
    bottom: Math.max(...outline.map((point) => point.y)),
  }));
  let worst = 0;
  outlines.forEach((one, at) => {
    for (let other = at + 1; other < outlines.length; other += 1) {
      const a = boxes[at]!;
      const b = boxes[other]!;
      if (a.left >= b.right || b.left >= a.right || a.top >= b.bottom || b.top >= a.bottom) continue;
      worst = Math.max(worst, clippedArea(overlap(one, outlines[other]!)));
    }
  });
  return worst;
}

export function xor(one: Outline | Clipped, other: Outline | Clipped): Clipped {
  return polygonClipping.xor(asPolygons(one), asPolygons(other));
}

function asPolygons(shape: Outline | Clipped): Clipped {
  if (shape.length === 0) return [];
  return Array.isArray(shape[0]) ? (shape as Clipped) : [ring(shape as Outline)];
}

/** Area of a clipping result: outer rings less their holes. */
export function clippedArea(shape: Clipped): number {
  return shape.reduce(
    (sum, polygon) =>
      sum + polygon.reduce((inside, edge, index) => inside + (index === 0 ? 1 : -1) * shoelace(edge), 0),
    0,
  );
}

function shoelace(edge: readonly (readonly [number, number])[]): number {
  let twice = 0;
  for (let at = 0; at < edge.length; at += 1) {
    const [x, y] = edge[at]!;
    const [nextX, nextY] = edge[(at + 1) % edge.length]!;
    twice += x * nextY - nextX * y;
  }
  return Math.abs(twice) / 2;
}

/** Signed area in screen coordinates (y down): positive when the outline runs clockwise on screen. */
export function signedArea(outline: Outline): number {
  let twice = 0;
  outline.forEach((point, at) => {
    const next = outline[(at + 1) % outline.length]!;
    twice += point.x * next.y - next.x * point.y;
  });
  return twice / 2;
}

export function turnedBy(point: Point, radians: number): Point {
  const cos = Math.cos(radians);
  const sin = Math.sin(radians);
  return { x: point.x * cos - point.y * sin, y: point.x * sin + point.y * cos };
}

/**
 * How much outline two shapes share along a line, by clipping alone: one is pushed into the other by a little, and the
 * overlap over the push tends to the length. Two pushes, d and d/2, take out what the slanting ends add (a term in d
 * squared, exactly, while no shape is thinner than d). `unit` points from the other shape into the one. Inches.
 */
export function sharedByClipping(one: Outline, other: Outline, unit: Point): number {
  const push = 0.01;
  const by = (depth: number) => {
    const pushed = other.map((point) => ({ x: point.x + depth * unit.x, y: point.y + depth * unit.y }));
    return clippedArea(overlap(one, pushed)) / depth;
  };
  return 2 * by(push / 2) - by(push);
}

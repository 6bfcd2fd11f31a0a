// Reads a shape's points as a curve, for drawing and for measuring alike.
import type { Point } from '../../geometry/point';

/** Straight to `to`, or bent towards `control` (a quadratic curve) where there is one. */
export interface CurveStep {
  readonly control: Point | null;
  readonly to: Point;
}

export interface Curve {
  readonly start: Point;
  readonly steps: readonly CurveStep[];
}

/** Reads at least two points; a soft curve runs through the middles of the sides, an open one from end to end. */
export function curveThrough(points: readonly Point[], closed: boolean, soft: boolean): Curve {
  if (!soft || points.length < 3) {
    const rest = points.slice(1).map((to) => ({ control: null, to }));
    return { start: points[0]!, steps: rest };
  }
  if (closed) {
    const steps = points.map((control, index) => ({
      control,
      to: middle(control, points[(index + 1) % points.length]!),
    }));
    return { start: steps[steps.length - 1]!.to, steps };
  }
  const bends = points.slice(1, -1);
  const steps = bends.map((control, index) => ({
    control,
    to: index === bends.length - 1 ? points[points.length - 1]! : middle(control, bends[index + 1]!),
  }));
  return { start: points[0]!, steps };
}

/** The curve as a polyline with `pieces` straight pieces for each bend. */
export function flattened(curve: Curve, pieces = 8): Point[] {
  const points = [curve.start];
  let from = curve.start;
  for (const { control, to } of curve.steps) {
    if (control) {
      for (let piece = 1; piece < pieces; piece += 1) points.push(bendAt(from, control, to, piece / pieces));
    }
    points.push(to);
    from = to;
  }
  return points;
}

function bendAt(from: Point, control: Point, to: Point, along: number): Point {
  const back = 1 - along;
  const blend = (one: number, two: number, three: number) =>
    back * back * one + 2 * back * along * two + along * along * three;
  return { x: blend(from.x, control.x, to.x), y: blend(from.y, control.y, to.y) };
}

function middle(one: Point, other: Point): Point {
  return { x: (one.x + other.x) / 2, y: (one.y + other.y) / 2 };
}

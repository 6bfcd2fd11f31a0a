// Angles of turning by hand, in degrees clockwise.
import type { Point } from '../../../geometry/point';

/** Direction of a point seen from another, degrees clockwise from up, over -180 to 180. Any unit, x to the right and y down. */
export function bearing(from: Point, to: Point): number {
  return (Math.atan2(to.x - from.x, from.y - to.y) * 180) / Math.PI;
}

/** The shorter way round from one direction to another: at least -180, below 180. */
export function turnFrom(start: number, end: number): number {
  return ((((end - start) % 360) + 540) % 360) - 180;
}

/** Whole turns nearest to an angle: quarters, or halves for blocks that are not square. */
export function turnsIn(degrees: number, turns: 2 | 4): number {
  return Math.round(degrees / (360 / turns));
}

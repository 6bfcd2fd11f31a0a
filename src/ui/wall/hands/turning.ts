// Angles of turning by hand, in degrees clockwise.
import type { Point } from '../../../geometry/point';

/** Direction from one point to another, degrees clockwise from up, above −180 to 180. Any unit; x to the right, y down. */
export function bearing(from: Point, to: Point): number {
  return (Math.atan2(to.x - from.x, from.y - to.y) * 180) / Math.PI;
}

/** The shorter turn from one direction to another, degrees clockwise: at least −180, below 180. */
export function turnFrom(start: number, end: number): number {
  return ((((end - start) % 360) + 540) % 360) - 180;
}

/** The number of whole turns nearest to an angle: quarter turns (`turns` 4) or half turns (2). */
export function turnsIn(degrees: number, turns: 2 | 4): number {
  return Math.round(degrees / (360 / turns));
}

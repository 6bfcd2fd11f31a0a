// The four corners of what lies on a photograph, and their outline as text.
import type { Point } from '../../../geometry/point';

export const CORNER_NAMES = [
  'Top left corner',
  'Top right corner',
  'Bottom right corner',
  'Bottom left corner',
] as const;

/** Corners as the points of a polygon. */
export function pointsOf(corners: readonly Point[]): string {
  return corners.map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`).join(' ');
}

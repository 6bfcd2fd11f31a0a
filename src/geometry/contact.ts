// What lies side by side: the stretches two wedges share along their radial seam, and the place that lies on each side of a
// hanging block. Which cloth that is and what counts is left to balance.
import { HAIR } from '../model/lengths';
import type { Inches } from '../model/units';
import type { Band } from './bands';

/** A stretch of the radial seam between two neighbouring wedges, with one band on each side. */
export interface SeamStretch {
  /** Index of the band in each wedge, from the rim. */
  readonly band: number;
  readonly nextBand: number;
  /** Its ends, as radii along the middle line of a wedge. */
  readonly outer: Inches;
  readonly inner: Inches;
  /** Its length along the seam: (outer − inner) / cos a. */
  readonly length: Inches;
}

/** Both wedges' bands walked together from the rim inwards: every pair that shares some seam. Bands lie edge to edge. */
export function seamStretches(
  bands: readonly Band[],
  nextBands: readonly Band[],
  perBlock: number,
): SeamStretch[] {
  const stretches: SeamStretch[] = [];
  let band = 0;
  let nextBand = 0;
  while (band < bands.length && nextBand < nextBands.length) {
    const one = bands[band]!;
    const other = nextBands[nextBand]!;
    const outer = Math.min(one.outer, other.outer);
    const inner = Math.max(one.inner, other.inner);
    if (outer - inner > HAIR) {
      stretches.push({
        band,
        nextBand,
        outer,
        inner,
        length: (outer - inner) / Math.cos(Math.PI / perBlock),
      });
    }
    if (one.inner >= other.inner) band += 1;
    else nextBand += 1;
  }
  return stretches;
}

export const SIDES = ['top', 'right', 'bottom', 'left'] as const;
export type Side = (typeof SIDES)[number];

/** The place whose rim lies on a side of a hanging block, or null where only a point touches. */
export function placeOnSide(side: Side, orientation: number, perBlock: number): number | null {
  const toward = (SIDES.indexOf(side) * perBlock) / 4;
  return Number.isInteger(toward) ? (((toward - orientation) % perBlock) + perBlock) % perBlock : null;
}

/** The side (index into SIDES) on which the rim of a place (from 0) of a hanging block lies; −1 at a corner triangle. */
export function sideOfPlace(place: number, orientation: number, perBlock: number): number {
  const side = (4 * ((place + orientation) % perBlock)) / perBlock;
  return Number.isInteger(side) ? side : -1;
}

/**
 * The places (from 0) whose rims each corner piece lies on, from the top right clockwise, of a block whose place 1 stands
 * `orientation` steps clockwise of the top: those between one side of the block and the next, one or two.
 */
export function cornerPlaces(orientation: number, perBlock: number): number[][] {
  const quarter = perBlock / 4;
  return SIDES.map((_, corner) => {
    const toward = Array.from({ length: perBlock }, (__, steps) => steps);
    const between = toward.filter((steps) => steps > corner * quarter && steps < (corner + 1) * quarter);
    return between.map((steps) => (((steps - orientation) % perBlock) + perBlock) % perBlock);
  });
}

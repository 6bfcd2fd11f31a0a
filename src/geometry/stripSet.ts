// A strip set lying on the table: where each strip shows, and where a wedge lies on it. The first strip is at the bottom,
// so that a wedge cut tip up points up. x runs from the left end, y down from the top edge, inches.
import type { Strip, Tip, WedgePlan } from '../model/project';
import type { Inches } from '../model/units';
import { setHeight } from './bands';
import type { Outline } from './point';
import { cutWedge } from './wedge';

/** What shows of one strip once the set is sewn: from `top` down to `bottom`, inches from the set's top edge. */
export interface StripPlace {
  /** Index of the strip in its set. */
  readonly strip: number;
  readonly top: Inches;
  readonly bottom: Inches;
}

/**
 * Where the strips of a set show, first strip (at the bottom) first; empty without strips. Inside strips lose a seam on both
 * sides, the two outside ones on one, a single strip none: they fill the set's height without a gap.
 */
export function stripPlaces(strips: readonly Pick<Strip, 'width'>[], seam: Inches): StripPlace[] {
  let bottom = setHeight(strips, seam);
  return strips.map(({ width }, strip) => {
    const seams = Number(strip > 0) + Number(strip < strips.length - 1);
    const place = { strip, top: bottom - (width - seams * seam), bottom };
    bottom = place.top;
    return place;
  });
}

/** The outline of a wedge cut with its base from `start` on a set `height` high: left base corner, right one, then the tip. */
export function wedgeOnSet(start: Inches, tip: Tip, height: Inches, wedge: WedgePlan): Outline {
  const { base, tip: tipWidth } = cutWedge(wedge);
  const middle = start + base / 2;
  const baseAt = tip === 'up' ? height : 0;
  const tipAt = tip === 'up' ? height - wedge.cutHeight : wedge.cutHeight;
  return [
    { x: start, y: baseAt },
    { x: start + base, y: baseAt },
    { x: middle + tipWidth / 2, y: tipAt },
    { x: middle - tipWidth / 2, y: tipAt },
  ];
}

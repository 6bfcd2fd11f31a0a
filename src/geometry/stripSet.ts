// A strip set: how strips add up once they are sewn, where each shows, and where a wedge lies on it. On the table the first
// strip is at the bottom, so that a wedge cut tip up points up. All formulas are plane geometry: a seam s takes s off the
// edge of each piece it joins.
import { HAIR } from '../model/lengths';
import type { Strip, Tip, WedgePlan } from '../model/project';
import type { Inches } from '../model/units';
import type { Outline } from './point';
import { cutWedge } from './wedge';

/**
 * Finished width of a piece cut so wide, with a seam on both sides: w − 2s, inches; 0 or less where it vanishes
 * (model/lengths.ts). It is also what a strip adds to the height of its set, and what all strips of a set must add to make
 * one so high.
 */
export function finishedWidth(cut: Inches, seam: Inches): Inches {
  return cut - 2 * seam;
}

/** The cut width that finishes so wide with a seam on both sides: w + 2s, inches. */
export function cutWidth(finished: Inches, seam: Inches): Inches {
  return finished + 2 * seam;
}

/** Height of a set of strips: Σw − 2s(n − 1), inches; 0 without strips. */
export function setHeight(strips: readonly Pick<Strip, 'width'>[], seam: Inches): Inches {
  if (strips.length === 0) return 0;
  return strips.reduce((sum, strip) => sum + strip.width, 0) - 2 * seam * (strips.length - 1);
}

/** What a set so high lacks for the wedge, inches; 0 when it is high enough. */
export function heightShort(height: Inches, wedge: Pick<WedgePlan, 'cutHeight'>): Inches {
  const short = wedge.cutHeight - height;
  return short > HAIR ? short : 0;
}

/** What shows of one strip once the set is sewn, inches from the raw edge of the first strip. */
interface StripSpan {
  readonly from: Inches;
  readonly to: Inches;
}

/**
 * What shows of each strip, from 0 up to the set's height without a gap; empty without strips. Inside strips lose a seam on
 * both sides (w − 2s), the two outside ones on one (w − s), a single strip none.
 */
export function stripSpans(strips: readonly Pick<Strip, 'width'>[], seam: Inches): StripSpan[] {
  let to = 0;
  return strips.map(({ width }, strip) => {
    const from = to;
    const seams = Number(strip > 0) + Number(strip < strips.length - 1);
    to = from + width - seams * seam;
    return { from, to };
  });
}

/** What shows of one strip on the table: from `top` down to `bottom`, inches from the set's top edge. */
export interface StripPlace {
  /** Index of the strip in its set. */
  readonly strip: number;
  readonly top: Inches;
  readonly bottom: Inches;
}

/** Where the strips of a set show on the table, first strip (at the bottom) first; empty without strips. */
export function stripPlaces(strips: readonly Pick<Strip, 'width'>[], seam: Inches): StripPlace[] {
  const height = setHeight(strips, seam);
  return stripSpans(strips, seam).map(({ from, to }, strip) => ({
    strip,
    top: height - to,
    bottom: height - from,
  }));
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

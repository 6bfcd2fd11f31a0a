// A sewn strip set: its height, what shows of each strip, and where a wedge lies on it. On the table the first strip is at
// the bottom, so that a wedge cut tip up points up. All formulas are plane geometry: a seam s takes s off the edge of each
// of the two pieces it joins.
import { HAIR } from '../model/lengths';
import type { Strip, Tip, WedgePlan } from '../model/project';
import type { Inches } from '../model/units';
import type { Outline } from './point';
import { cutWedge } from './wedge';

/**
 * Finished width of a piece of this cut width with a seam on both sides: w − 2s, inches; 0 or less where it vanishes
 * (model/lengths.ts). A strip adds as much to the height of its set; and the strips of a set of height H add H − 2s together.
 */
export function finishedWidth(cut: Inches, seam: Inches): Inches {
  return cut - 2 * seam;
}

/** The cut width of a piece of this finished width with a seam on both sides: w + 2s, inches. */
export function cutWidth(finished: Inches, seam: Inches): Inches {
  return finished + 2 * seam;
}

/** Height of a set of strips: Σw − 2s(n − 1), inches; 0 without strips. */
export function setHeight(strips: readonly Pick<Strip, 'width'>[], seam: Inches): Inches {
  if (strips.length === 0) return 0;
  return strips.reduce((sum, strip) => sum + strip.width, 0) - 2 * seam * (strips.length - 1);
}

/** By how much a set of this height is too low for the wedge, inches; 0 when it is high enough. */
export function heightShort(height: Inches, wedge: Pick<WedgePlan, 'cutHeight'>): Inches {
  const short = wedge.cutHeight - height;
  return short > HAIR ? short : 0;
}

/** The part of one strip that shows once the set is sewn, inches from the raw edge of the first strip. */
interface StripSpan {
  readonly from: Inches;
  readonly to: Inches;
}

/**
 * The part of each strip that shows; together they cover 0 to the set's height without a gap. Empty without strips. Inner
 * strips lose a seam on both sides (w − 2s), the two outer ones on one side (w − s), a single strip none.
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

/** The part of one strip that shows on the table: from `top` down to `bottom`, inches from the set's top edge. */
export interface StripPlace {
  /** Index of the strip in its set. */
  readonly strip: number;
  readonly top: Inches;
  readonly bottom: Inches;
}

/** The places of a set's strips on the table, first strip (at the bottom) first; empty without strips. */
export function stripPlaces(strips: readonly Pick<Strip, 'width'>[], seam: Inches): StripPlace[] {
  const height = setHeight(strips, seam);
  return stripSpans(strips, seam).map(({ from, to }, strip) => ({
    strip,
    top: height - to,
    bottom: height - from,
  }));
}

/** The outline of a wedge whose base begins at `start` on a set of this height: left base corner, right base corner, tip. */
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

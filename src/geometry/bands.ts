// The bands of a finished wedge cut from a strip set, as radii from the block's middle. stripSet.ts computes what shows of a
// strip once it is sewn.
import { HAIR } from '../model/lengths';
import type { Strip, Tip, WedgePlan } from '../model/project';
import type { Inches } from '../model/units';
import { stripSpans } from './stripSet';
import { apothem } from './wedge';

/** The part of one strip that shows in a finished wedge. */
export interface Band {
  /** Index of the strip in its set. */
  readonly strip: number;
  readonly fabric: string;
  /** Radii along the wedge's middle line, inches; outer > inner ≥ 0. */
  readonly outer: Inches;
  readonly inner: Inches;
}

/**
 * The bands of a wedge cut from a set, from the rim inwards. With h the cut height and H the height of the set, a tip-up wedge
 * is cut from [0, h] of the set, a tip-down wedge from [H − h, H]. Bands that vanish in the rim's seam are left out. A set
 * shorter than the wedge leaves the middle bare.
 */
export function wedgeBands(strips: readonly Strip[], tip: Tip, wedge: WedgePlan): Band[] {
  const rim = apothem(wedge);
  const reach = rim + wedge.outerSeam;
  const ordered = tip === 'up' ? strips : strips.toReversed();
  return stripSpans(ordered, wedge.seam).flatMap(({ from, to }, index) => {
    const outer = Math.min(rim, reach - from);
    const inner = Math.max(0, reach - Math.min(to, wedge.cutHeight));
    if (outer - inner <= HAIR) return [];
    const strip = tip === 'up' ? index : strips.length - 1 - index;
    return [{ strip, fabric: ordered[index]!.fabric, outer, inner }];
  });
}

// Strip set → the bands of one wedge, as radii from the block's middle. A band runs from `outer` in to `inner`.
import type { Strip, Tip, WedgePlan } from '../model/project';
import type { Inches } from '../model/units';
import { apothem } from './wedge';

/** One strip as it shows in a finished wedge. */
export interface Band {
  /** Index of the strip in its set. */
  readonly strip: number;
  readonly fabric: string;
  /** Radii along the wedge's middle line, inches; outer > inner ≥ 0. */
  readonly outer: Inches;
  readonly inner: Inches;
}

/** Height of a set of strips sewn with seam s: Σw − 2s(n − 1), inches; 0 without strips. */
export function setHeight(strips: readonly Pick<Strip, 'width'>[], seam: Inches): Inches {
  if (strips.length === 0) return 0;
  return strips.reduce((sum, strip) => sum + strip.width, 0) - 2 * seam * (strips.length - 1);
}

/**
 * The bands of a wedge cut from a set, from the rim inwards. Tip-up wedges take the window [0, h] of the set, tip-down
 * wedges [H − h, H]; bands that vanish in the rim's seam are left out. A set shorter than the wedge leaves the middle bare.
 */
export function wedgeBands(strips: readonly Strip[], tip: Tip, wedge: WedgePlan): Band[] {
  const rim = apothem(wedge);
  const reach = rim + wedge.outerSeam;
  const ordered = tip === 'up' ? strips : strips.toReversed();
  const bands: Band[] = [];
  let outerEdge = 0;
  ordered.forEach((strip, index) => {
    const outside = ordered.length === 1 ? 0 : index === 0 || index === ordered.length - 1 ? 1 : 2;
    const innerEdge = outerEdge + strip.width - outside * wedge.seam;
    const outer = Math.min(rim, reach - outerEdge);
    const inner = Math.max(0, reach - Math.min(innerEdge, wedge.cutHeight));
    if (outer - inner > 1e-9) {
      const at = tip === 'up' ? index : strips.length - 1 - index;
      bands.push({ strip: at, fabric: strip.fabric, outer, inner });
    }
    outerEdge = innerEdge;
  });
  return bands;
}

// What a strip set lacks for one wedge more: a little more length, or a little more height. Leaves the counting to yield.ts.
import { heightShort, setHeight } from '../../geometry/stripSet';
import { upToStep } from '../../model/lengths';
import type { StripSet, WedgePlan } from '../../model/project';
import type { Inches } from '../../model/units';
import { heightFor, lengthFor, wedgeCuts } from './yield';

export interface OneMore {
  /** So much longer the set would have to be, rounded up to the next sixteenth of an inch. */
  readonly longer: Inches;
  /** So much higher at the same length, rounded up alike; null where no height would do. */
  readonly taller: Inches | null;
}

const SIXTEENTH = 1 / 16;

/** Clean length the first wedge needs (its base, however high the set is), rounded up to the next sixteenth; null when the set is as long as that. */
export function lengthForFirst(set: StripSet, wedge: WedgePlan): Inches | null {
  const needed = upToStep(lengthFor(1, wedge.cutHeight, wedge), SIXTEENTH);
  return set.length < lengthFor(1, wedge.cutHeight, wedge) - 1e-9 ? needed : null;
}

/** What would give one wedge more, or null for a set that is not as high as the wedge (see mendHeight.ts). */
export function oneMoreWedge(set: StripSet, wedge: WedgePlan): OneMore | null {
  const height = setHeight(set.strips, wedge.seam);
  if (heightShort(height, wedge) > 0) return null;
  const wanted = wedgeCuts(set, wedge).length + 1;
  const enough = heightFor(wanted, set.length, wedge);
  return {
    longer: upToStep(lengthFor(wanted, height, wedge) - set.length, SIXTEENTH),
    taller: Number.isFinite(enough) ? upToStep(enough - height, SIXTEENTH) : null,
  };
}

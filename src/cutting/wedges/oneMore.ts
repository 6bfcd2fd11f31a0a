// What a strip set lacks for one wedge more: a little more length, or a little more height. Leaves the counting to yield.ts.
import { heightShort, setHeight } from '../../geometry/stripSet';
import { HAIR } from '../../model/lengths';
import { type Phrase, phrase } from '../../model/phrase';
import type { StripSet, WedgePlan } from '../../model/project';
import type { Inches } from '../../model/units';
import { heightFor, lengthFor, wedgeCuts } from './yield';

export interface OneMore {
  /** So much longer the set would have to be. */
  readonly longer: Inches;
  /** So much higher at the same length; null where no height would do. */
  readonly taller: Inches | null;
}

/** Clean length the first wedge needs (its base, however high the set is); null when the set is as long as that. */
export function lengthForFirst(set: StripSet, wedge: WedgePlan): Inches | null {
  const needed = lengthFor(1, wedge.cutHeight, wedge);
  return set.length < needed - HAIR ? needed : null;
}

/** What would give one wedge more, or null for a set that is not as high as the wedge (see mendHeight.ts). */
export function oneMoreWedge(set: StripSet, wedge: WedgePlan): OneMore | null {
  const height = setHeight(set.strips, wedge.seam);
  if (heightShort(height, wedge) > 0) return null;
  const wanted = wedgeCuts(set, wedge).length + 1;
  const enough = heightFor(wanted, set.length, wedge);
  return {
    longer: lengthFor(wanted, height, wedge) - set.length,
    taller: Number.isFinite(enough) ? enough - height : null,
  };
}

/** The most inches, about one strip, by which a set is made higher for the sake of one wedge. */
const WORTH_SEWING: Inches = 2;

/** The same in words, rounded up on the person's ruler; null for a set that is not as high as the wedge. */
export function oneMoreWords(set: StripSet, wedge: WedgePlan): Phrase | null {
  const more = oneMoreWedge(set, wedge);
  if (!more) return null;
  const longer = { longer: { atLeast: more.longer } };
  if (more.taller === null || more.taller > WORTH_SEWING) {
    return phrase('One wedge more if the set were {longer} longer.', longer);
  }
  return phrase('One wedge more if the set were {longer} longer, or {taller} higher.', {
    ...longer,
    taller: { atLeast: more.taller },
  });
}

// How the seams of a strip set are sewn and pressed: from the left and from the right in turn, so that the set stays straight,
// and all pressed one way, so that wedges cut tip up and tip down nest (common practice, no source).
import { stripPlaces } from '../../geometry/stripSet';
import type { StripSet } from '../../model/project';
import type { Inches } from '../../model/units';

export interface SeamOrder {
  /** The seam's height on the set, from the top of its last strip. */
  readonly at: Inches;
  /** The end it is sewn from. */
  readonly from: 'left' | 'right';
  /** Where its allowance is pressed: up to the last strip or down to the first. */
  readonly pressed: 'up' | 'down';
}

/** The seams in the order they are sewn, from the first strip on; none for a set of fewer than two strips. */
export function seamOrder(set: Pick<StripSet, 'strips' | 'pressing'>, seam: Inches): SeamOrder[] {
  return stripPlaces(set.strips, seam)
    .slice(1)
    .map(({ bottom }, index) => ({
      at: bottom,
      from: index % 2 === 0 ? 'left' : 'right',
      pressed: set.pressing === 'last' ? 'up' : 'down',
    }));
}

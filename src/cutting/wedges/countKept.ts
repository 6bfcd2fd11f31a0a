// When a count of wedges by hand still holds. It was counted of wedges cut as the set was: a set of another length or height, or a
// wedge of another size, is counted by plane geometry again.
import type { StripSet, WedgePlan } from '../../model/project';
import { plannedWedges } from './yield';

/** The `cut` entry of a set that was another, or was to be cut into another wedge: kept where as many wedges fit on it as did. */
export function countKept(
  set: StripSet,
  wedge: WedgePlan,
  was: { readonly set: StripSet; readonly wedge: WedgePlan },
): StripSet['cut'] {
  const given = (one: StripSet, plan: WedgePlan) => {
    const { up, down } = plannedWedges(one, plan);
    return up + down;
  };
  return set.cut && given(set, wedge) === given(was.set, was.wedge) ? set.cut : null;
}

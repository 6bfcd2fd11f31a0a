// Counting wedges on the cutting table: one more or fewer of a set than was thought.
import { availableWedges, plannedWedges } from '../../cutting/wedges/yield';
import { findSet } from '../../model/find';
import { phrase } from '../../model/phrase';
import type { Project, StripSet, StripSetId, Tip, WedgePlan } from '../../model/project';
import { type Command, Refusal } from '../apply';

/**
 * One wedge of a set more or fewer. The blocks stay as they are, so that taking away one they use is refused: see
 * store/wedgeLoss.ts for the change that mends them.
 */
export function countWedge(project: Project, id: StripSetId, tip: Tip, by: 1 | -1): Command {
  const set = findSet(project, id)?.label ?? '';
  return {
    label:
      by > 0
        ? phrase('one wedge of set {set} more', { set })
        : phrase('one wedge of set {set} fewer', { set }),
    change: (draft) => {
      const found = findSet(draft, id);
      if (!found) throw new Error(`countWedge: no set ${id}`);
      const cut = countAfter(found, tip, by, draft.wedge);
      if (cut && cut[tip] < 0) {
        throw new Refusal('no-wedge', 'stripSets', phrase('Set {set} has no such wedge left.', { set }));
      }
      found.cut = cut;
    },
  };
}

/** What is written down for a set after one wedge more or fewer; null where that is what the geometry gives. */
export function countAfter(set: StripSet, tip: Tip, by: 1 | -1, wedge: WedgePlan): StripSet['cut'] {
  const there = availableWedges(set, wedge);
  const after = { ...there, [tip]: there[tip] + by };
  const planned = plannedWedges(set, wedge);
  return planned.up === after.up && planned.down === after.down ? null : after;
}

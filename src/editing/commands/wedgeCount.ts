// Corrects the wedge count of a set by one (a wedge is miscut, torn or found), in a command that also repairs the blocks with
// the fewest changes. arrange/choose finds the repair.
import { repair } from '../../arrange/choose/composeRepair';
import { wedgeLedger } from '../../cutting/wedges/ledger';
import { availableWedges, plannedWedges } from '../../cutting/wedges/yield';
import { findSet } from '../../model/find';
import { type Phrase, phrase } from '../../model/phrase';
import type { Project, StripSet, StripSetId, Tip, WedgePlan } from '../../model/project';
import { type Command, type Rearrangement, Refusal } from '../apply';

/** A wedge count corrected by one, and words on what that does to the blocks. It has no moves where no block changes. */
export interface Recount {
  readonly command: Rearrangement;
  readonly words: readonly Phrase[];
}

/** The correction for one lost wedge of a set, or why there is none to lose. */
export function losing(
  project: Project,
  id: StripSetId,
  tip: Tip,
): { readonly loss: Recount; readonly none: null } | { readonly loss: null; readonly none: Phrase } {
  const set = findSet(project, id);
  const row = wedgeLedger(project).find((one) => one.set.id === id);
  if (!set || !row) throw new Error(`losing: no set ${id}`);
  const fewer = countWedge(project, id, tip, -1);
  if (row.available[tip] <= 0) {
    return { loss: null, none: phrase('Set {set} has no such wedge to lose.', { set: set.label }) };
  }
  if (row.left[tip] > 0) {
    const spare = phrase('It is one that no block uses; the blocks stay as they are.');
    return { loss: { command: { ...fewer, moves: [] }, words: [spare] }, none: null };
  }
  const mended = repair(withCut(project, id, countAfter(set, tip, -1, project.wedge)), false);
  if (mended.stuck > 0) {
    const say = 'All such wedges of set {set} lie in sewn blocks; there is none to lose.';
    return { loss: null, none: phrase(say, { set: set.label }) };
  }
  return { loss: { command: { ...fewer, moves: mended.moves }, words: mended.words }, none: null };
}

/**
 * The correction for one more wedge of a set. It fills an empty place of its tip, unless wedges of this tip are left over
 * already: then empty places are meant to be empty.
 */
export function gaining(project: Project, id: StripSetId, tip: Tip): Recount {
  const set = findSet(project, id);
  if (!set) throw new Error(`gaining: no set ${id}`);
  const more = countWedge(project, id, tip, 1);
  const spare = wedgeLedger(project).some((row) => row.left[tip] > 0);
  const mended = spare ? null : repair(withCut(project, id, countAfter(set, tip, 1, project.wedge)));
  const moves = (mended?.moves ?? []).filter((move) => move.kind === 'place' && move.wedge?.tip === tip);
  const words = mended && moves.length > 0 ? mended.words : [phrase('No block needs it; it is left over.')];
  return { command: { ...more, moves }, words };
}

function withCut(project: Project, id: StripSetId, cut: StripSet['cut']): Project {
  return {
    ...project,
    stripSets: project.stripSets.map((one) => (one.id === id ? { ...one, cut } : one)),
  };
}

/**
 * Corrects the count by one wedge and leaves the blocks as they are, so that taking away a wedge they use is refused. `losing`
 * repairs the blocks in the same command.
 */
export function countWedge(project: Project, id: StripSetId, tip: Tip, by: 1 | -1): Command {
  const set = findSet(project, id)?.label ?? '';
  return {
    label:
      by > 0
        ? phrase('count one wedge more of set {set}', { set })
        : phrase('count one wedge fewer of set {set}', { set }),
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

/** The `cut` entry of a set after a correction. */
function countAfter(set: StripSet, tip: Tip, by: 1 | -1, wedge: WedgePlan): StripSet['cut'] {
  return countedAs(set, tip, availableWedges(set, wedge)[tip] + by, wedge);
}

/** The `cut` entry of a set with so many wedges of a tip; null where that is what the geometry gives. */
export function countedAs(set: StripSet, tip: Tip, count: number, wedge: WedgePlan): StripSet['cut'] {
  const after = { ...availableWedges(set, wedge), [tip]: count };
  const planned = plannedWedges(set, wedge);
  return planned.up === after.up && planned.down === after.down ? null : after;
}

// Counting wedges on the cutting table: one more or fewer of a set than was thought (miscut, torn, found), each as one command
// that also mends the blocks with the fewest changes. The mending itself is arrange's.
import { repair } from '../../arrange/choose/composeRepair';
import { wedgeLedger } from '../../cutting/wedges/ledger';
import { availableWedges, plannedWedges } from '../../cutting/wedges/yield';
import { findSet } from '../../model/find';
import { type Phrase, phrase } from '../../model/phrase';
import type { Project, StripSet, StripSetId, Tip, WedgePlan } from '../../model/project';
import { type Command, type Rearrangement, Refusal } from '../apply';

/** One wedge of a set more or fewer, with what it does to the blocks; no moves when no block gains or loses by it. */
export interface Recount {
  readonly command: Rearrangement;
  readonly words: readonly Phrase[];
}

/** What losing one wedge of a set would do, or why there is none to lose. */
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
 * One wedge of a set more. Where a place stood empty for want of a wedge of its tip, it goes there; while others of its tip are
 * left over, empty places are meant to be empty.
 */
export function gaining(project: Project, id: StripSetId, tip: Tip): Recount {
  const set = findSet(project, id);
  if (!set) throw new Error(`gaining: no set ${id}`);
  const more = countWedge(project, id, tip, 1);
  const spare = wedgeLedger(project).some((row) => row.left[tip] > 0);
  const mended = spare ? null : repair(withCut(project, id, countAfter(set, tip, 1, project.wedge)));
  const moves = (mended?.moves ?? []).filter((move) => move.kind === 'place' && move.wedge?.tip === tip);
  const words =
    mended && moves.length > 0
      ? mended.words
      : [phrase('No block has a place empty for want of it; it is left over.')];
  return { command: { ...more, moves }, words };
}

function withCut(project: Project, id: StripSetId, cut: StripSet['cut']): Project {
  return {
    ...project,
    stripSets: project.stripSets.map((one) => (one.id === id ? { ...one, cut } : one)),
  };
}

/**
 * One wedge of a set more or fewer. The blocks stay as they are, so that taking away one they use is refused: `losing` mends
 * them in the same change.
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
function countAfter(set: StripSet, tip: Tip, by: 1 | -1, wedge: WedgePlan): StripSet['cut'] {
  const there = availableWedges(set, wedge);
  const after = { ...there, [tip]: there[tip] + by };
  const planned = plannedWedges(set, wedge);
  return planned.up === after.up && planned.down === after.down ? null : after;
}

// Losing a wedge (miscut, torn) or cutting one more, each as one command that also mends the blocks with the fewest changes.
// The mending itself is arrange's.
import { repair } from '../../arrange/choose/composeRepair';
import { wedgeLedger } from '../../cutting/wedges/ledger';
import { findSet } from '../../model/find';
import type { Move } from '../../model/moves';
import { type Phrase, phrase } from '../../model/phrase';
import type { Project, StripSet, StripSetId, Tip } from '../../model/project';
import type { Command } from '../apply';
import { rearrange } from './wall';
import { countAfter, countWedge } from './wedgeCount';

export interface Loss {
  readonly command: Command;
  /** What it does to the blocks; empty when the wedge is one that no block uses. */
  readonly moves: readonly Move[];
  readonly words: readonly Phrase[];
}

/** What losing one wedge of a set would do, or why there is none to lose. */
export function losing(
  project: Project,
  id: StripSetId,
  tip: Tip,
): { readonly loss: Loss; readonly none: null } | { readonly loss: null; readonly none: Phrase } {
  const set = findSet(project, id);
  const row = wedgeLedger(project).find((one) => one.set.id === id);
  if (!set || !row) throw new Error(`losing: no set ${id}`);
  const fewer = countWedge(project, id, tip, -1);
  if (row.available[tip] <= 0) {
    return { loss: null, none: phrase('Set {set} has no such wedge to lose.', { set: set.label }) };
  }
  if (row.left[tip] > 0) {
    const spare = phrase('It is one that no block uses; the blocks stay as they are.');
    return { loss: { command: fewer, moves: [], words: [spare] }, none: null };
  }
  const mended = repair(withCut(project, id, countAfter(set, tip, -1, project.wedge)), false);
  if (mended.stuck > 0) {
    const say = 'All such wedges of set {set} lie in sewn blocks; there is none to lose.';
    return { loss: null, none: phrase(say, { set: set.label }) };
  }
  return { loss: { ...mended, command: bothAtOnce(fewer, mended.moves) }, none: null };
}

/**
 * One wedge of a set more. Where a place stood empty for want of a wedge of its tip, it goes there; while others of its tip are
 * left over, empty places are meant to be empty.
 */
export function gaining(project: Project, id: StripSetId, tip: Tip): Loss {
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
  return { command: bothAtOnce(more, moves), moves, words };
}

function withCut(project: Project, id: StripSetId, cut: StripSet['cut']): Project {
  return {
    ...project,
    stripSets: project.stripSets.map((one) => (one.id === id ? { ...one, cut } : one)),
  };
}

function bothAtOnce(count: Command, moves: readonly Move[]): Command {
  const mending = rearrange(moves, count.label);
  return {
    label: count.label,
    change: (draft) => {
      count.change(draft);
      mending.change(draft);
    },
  };
}

// Losing a wedge (miscut, torn) as one command that also mends the blocks that had it, with the fewest changes. The mending
// itself is arrange's.
import { repair } from '../arrange/composeRepair';
import { wedgeLedger } from '../cutting/ledger';
import type { Command } from '../editing/apply';
import { rearrange } from '../editing/wall';
import { countAfter, countWedge } from '../editing/wedgeCount';
import { findSet } from '../model/find';
import type { Move } from '../model/moves';
import { type Phrase, phrase } from '../model/phrase';
import type { Project, StripSetId, Tip } from '../model/project';

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
  const cut = countAfter(set, tip, -1, project.wedge);
  const after = {
    ...project,
    stripSets: project.stripSets.map((one) => (one.id === id ? { ...one, cut } : one)),
  };
  const mended = repair(after);
  if (mended.stuck > 0) {
    const say = 'All such wedges of set {set} lie in sewn blocks; there is none to lose.';
    return { loss: null, none: phrase(say, { set: set.label }) };
  }
  const moves = rearrange(mended.moves, fewer.label);
  const command = {
    label: fewer.label,
    change: (draft: Project) => {
      fewer.change(draft);
      moves.change(draft);
    },
  };
  return { loss: { command, moves: mended.moves, words: mended.words }, none: null };
}

// What putting a carried strip down would give: the quilt after it, and words on the sets it changes; or why it would be refused.
import { wedgeLedger } from '../../../cutting/wedges/ledger';
import { apply } from '../../../editing/apply';
import {
  carryStrip,
  type StripGoal,
  type StripSource,
  staysPut,
} from '../../../editing/commands/sets/carryStrip';
import { type Phrase, phrase } from '../../../model/phrase';
import type { Project, StripSetId } from '../../../model/project';
import type { Problem } from '../../../model/result';
import { heightWords } from '../../steps/sets/heightWords';

export interface Ghost {
  /** The quilt as it would be; as it is where the strip stays or the drop would be refused. */
  readonly project: Project;
  readonly words: readonly Phrase[];
  readonly refused: Problem | null;
}

/** The ghost of a carried strip; null over nothing. */
export function ghostOf(project: Project, from: StripSource, to: StripGoal | null): Ghost | null {
  if (to === null) return null;
  const outcome = apply(project, carryStrip(project, from, to));
  if (!outcome.ok) {
    const [problem] = outcome.problems;
    return { project, words: [problem!.message], refused: problem! };
  }
  const after = outcome.project;
  const begun = to.kind === 'new' ? after.stripSets.at(-1)!.id : null;
  const sets = [to.kind === 'set' ? to.set : begun, from.kind === 'set' ? from.set : null];
  const words = [...new Set(sets.filter((set) => set !== null))].map((set) => wordsOn(after, set));
  if (staysPut(from, to)) return { project: after, words: [phrase('Back where it was')], refused: null };
  return { project: after, words, refused: null };
}

function wordsOn(project: Project, id: StripSetId): Phrase {
  const row = wedgeLedger(project).find(({ set }) => set.id === id)!;
  const { up, down } = row.available;
  const values = { set: row.set.label, height: heightWords(row.height, project.wedge), up, down };
  if (row.set.strips.length === 0) return phrase('Set {set}: no strips', values);
  return up + down > 0
    ? phrase('Set {set}: {height} · {up} up, {down} down', values)
    : phrase('Set {set}: {height}', values);
}

// The undo history of a quilt as it is kept beside its document: bounded, and read back with care, because what is kept may be
// damaged. A history that does not fit its project is dropped; the project stays.
import * as v from 'valibot';
import type { Phrase } from '../model/phrase';
import type { Project } from '../model/project';
import type { Change } from './apply';
import { EMPTY_HISTORY, type History } from './history';
import { openDocument } from './openDocument';

/** The most changes kept, and the most letters they take as JSON. */
const MOST_CHANGES = 200;
const MOST_LETTERS = 1_000_000;

const patchSchema = v.object({
  op: v.picklist(['replace', 'remove', 'add']),
  path: v.pipe(v.array(v.union([v.string(), v.number()])), v.maxLength(20)),
  value: v.optional(v.unknown()),
});
const changeSchema = v.pipe(
  v.object({
    label: v.custom<Phrase>((label) => typeof (label as Phrase | null)?.say === 'string'),
    slide: v.exactOptional(v.string()),
    patches: v.array(patchSchema),
    inverse: v.array(patchSchema),
  }),
  v.transform((change) => ({ ...change, kept: true as const })),
);
const changes = v.pipe(v.array(v.unknown()), v.maxLength(MOST_CHANGES), v.array(changeSchema));
const historySchema = v.object({ done: changes, undone: changes });

const sizes = new WeakMap<Change, number>();

function sizeOf(change: Change): number {
  const known = sizes.get(change);
  if (known !== undefined) return known;
  const size = JSON.stringify(change).length;
  sizes.set(change, size);
  return size;
}

/** The part of a history that is kept: the changes next to be undone and redone, within bounds. */
export function keptPart({ done, undone }: History): History {
  let letters = 0;
  let count = 0;
  const nearest = (list: readonly Change[]) => {
    let from = list.length;
    while (from > 0 && count < MOST_CHANGES && letters + sizeOf(list[from - 1]!) <= MOST_LETTERS) {
      from -= 1;
      count += 1;
      letters += sizeOf(list[from]!);
    }
    return list.slice(from);
  };
  return { done: nearest(done), undone: nearest(undone) };
}

/** Reads a kept history; an empty one for anything that is none. */
export function readHistory(kept: unknown): History {
  const read = v.safeParse(historySchema, kept);
  return read.success ? (read.output as History) : EMPTY_HISTORY;
}

/** The outcome of undoing or redoing a change; null where the change was kept and does not give a sound project. */
export function soundStep<Step extends { readonly project: Project }>(
  change: Change,
  step: () => Step | null,
): Step | null {
  if (!change.kept) return step();
  try {
    const taken = step();
    return taken && openDocument(taken.project).ok ? taken : null;
  } catch {
    return null;
  }
}

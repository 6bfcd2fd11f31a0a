// The summary of a kept project: what a list shows of it, and the revision that a saving must be based on, so that nothing from another
// window is overwritten.
import * as v from 'valibot';
import { phrase } from '../../model/phrase';
import type { Project } from '../../model/project';
import { StorageRefusal } from './storageProblem';

export const summarySchema = v.object({
  id: v.string(),
  name: v.string(),
  /** Milliseconds since 1970. */
  changedAt: v.number(),
  /** Number of blocks. */
  blocks: v.number(),
  /** How often this project was saved; a saving must name the revision it is based on. */
  revision: v.number(),
  /** Which saving of which window it was. Absent: not known. */
  saving: v.exactOptional(v.string()),
  /** The pictures that the project and its kept history name. Absent: none, as before there were pictures. */
  pictures: v.exactOptional(v.array(v.string())),
});

/** The entries of a list of projects, readable without opening any project. */
export type ProjectSummary = Readonly<v.InferOutput<typeof summarySchema>>;

/** Whether a kept summary can be read. */
export function isSound(summary: unknown): boolean {
  return v.is(summarySchema, summary);
}

/** Reads a kept summary; for one that is damaged a substitute, so that its project is listed and can be opened or saved to a file. */
export function readSummary(id: string, summary: unknown): ProjectSummary {
  const read = v.safeParse(summarySchema, summary);
  return read.success ? { ...read.output, id } : { id, name: id, changedAt: 0, blocks: 0, revision: 0 };
}

/** A saving: the revision last read or saved, its own mark, and the marks of those that this window waits for no longer. */
interface Saving {
  readonly revision: number;
  readonly saving: string;
  readonly unanswered: ReadonlySet<string>;
}

/**
 * The summary that replaces the kept one; throws a StorageRefusal if the saving is based on another revision. One of the unanswered
 * savings that succeeded after all is no other.
 */
export function nextSummary(
  project: Project,
  { revision, saving, unanswered }: Saving,
  kept: unknown,
  changedAt: number,
): ProjectSummary {
  const before = kept === undefined ? undefined : readSummary(project.id, kept);
  if (before === undefined && revision > 0) {
    const say = '"{name}" was removed in another window. It is still open here.';
    throw new StorageRefusal('removed-elsewhere', phrase(say, { name: project.name }));
  }
  const own = before?.saving !== undefined && unanswered.has(before.saving);
  if (before !== undefined && before.revision !== revision && !own) {
    const say = '"{name}" was changed in another window. Nothing was overwritten.';
    throw new StorageRefusal('changed-elsewhere', phrase(say, { name: project.name }));
  }
  return {
    id: project.id,
    name: project.name,
    changedAt,
    blocks: project.blocks.length,
    revision: (before?.revision ?? 0) + 1,
    saving,
  };
}

// Keeps projects in the browser: lists, loads, saves and removes them, and knows which was last open. A saving never overwrites a
// newer state from another tab. indexedDb.ts and memory.ts hold the records; autosave.ts decides when to save.
import * as v from 'valibot';
import { openDocument } from '../../editing/openProject';
import { phrase } from '../../model/phrase';
import type { Project } from '../../model/project';
import { writeDocument } from '../../model/reading/read';
import { failed, ok, type Problem, type Result } from '../../model/result';
import type { LeavingNotes } from './leaving';
import type { ProjectChange, ProjectNews } from './news';
import { StorageRefusal, storageProblem } from './storageProblem';

const summarySchema = v.object({
  id: v.string(),
  name: v.string(),
  /** Milliseconds since 1970. */
  changedAt: v.number(),
  /** Number of blocks. */
  blocks: v.number(),
  /** Counts the savings of this project; a saving must name the one it is based on. */
  revision: v.number(),
});

/** What a list of projects shows without opening any of them. */
export type ProjectSummary = Readonly<v.InferOutput<typeof summarySchema>>;

export interface StoredProject {
  readonly project: Project;
  readonly revision: number;
}

/** A kept quilt that cannot be opened: the name it was kept under, and what is kept, unchecked, as the text of a file. */
export interface DamagedProject {
  readonly id: string;
  readonly name: string;
  readonly text: string;
}

/** A kept project, or why it does not open; with `damaged` where it is there but unsound. */
export type Loaded =
  | { readonly ok: true; readonly value: StoredProject }
  | { readonly ok: false; readonly problems: readonly Problem[]; readonly damaged?: DamagedProject };

/** Kept projects. No function here ever rejects: what goes wrong comes back as problems with words for the person. */
export interface ProjectStorage {
  /** False where the work is gone when the page closes (no IndexedDB); say so on screen. */
  readonly keeps: boolean;
  /** All kept projects, last changed first. */
  list(): Promise<Result<readonly ProjectSummary[]>>;
  /** Opens a project to the end. A damaged one gives its problems and its text, to be saved to a file, and stays kept as it is. */
  load(id: string): Promise<Loaded>;
  /**
   * Keeps the project and gives its new revision. `revision` is the one last loaded or saved, 0 for a new project. Refused
   * with 'changed-elsewhere' or 'removed-elsewhere' when the kept state is another; nothing is overwritten then.
   */
  save(project: Project, revision: number): Promise<Result<number>>;
  /**
   * The page goes away with this project unsaved: notes it at once, without waiting, to be kept at the next visit. A saving
   * that still succeeds takes the note back. False when it could not be noted.
   */
  leave(project: Project, revision: number): boolean;
  /** Removes a project; one that is not there is no failure. */
  remove(id: string): Promise<Result<null>>;
  /** The id set last, or null. The project may be gone since. */
  lastOpen(): Promise<Result<string | null>>;
  setLastOpen(id: string | null): Promise<Result<null>>;
  /** Calls back when another tab saves or removes a project. Returns what ends it. */
  watch(listener: (change: ProjectChange) => void): () => void;
  /** Lets go of the database and the other tabs. */
  close(): void;
}

export interface ShelfRecord {
  readonly summary: ProjectSummary;
  readonly document: unknown;
}

/** Where records lie. Its functions may reject; createStorage turns that into problems. */
export interface Shelf {
  readonly keeps: boolean;
  /** Ids with whatever summary lies beside them. */
  summaries(): Promise<readonly (readonly [id: string, summary: unknown])[]>;
  record(id: string): Promise<{ readonly summary: unknown; readonly document: unknown } | undefined>;
  /** In one transaction: reads the summary, and puts or removes (null) what `decide` answers. If it throws, nothing changes. */
  change(id: string, decide: (summary: unknown) => ShelfRecord | null): Promise<void>;
  note(key: string): Promise<unknown>;
  setNote(key: string, value: string | null): Promise<void>;
  close(): void;
}

const LAST_OPEN = 'last-open';

/** The storage on a shelf. `now` gives milliseconds since 1970. */
export function createStorage(
  shelf: Shelf,
  { news, notes, now }: { news: ProjectNews; notes: LeavingNotes; now: () => number },
): ProjectStorage {
  return {
    keeps: shelf.keeps,
    list: () =>
      guarded(async () => {
        const all = (await shelf.summaries()).map(([id, summary]) => readSummary(id, summary));
        return ok(all.sort((one, other) => other.changedAt - one.changedAt));
      }),
    load: (id) => guarded(() => load(shelf, id)),
    save: (project, revision) =>
      guarded(async () => {
        await shelf.change(project.id, (kept) => nextRecord(project, revision, kept, now()));
        notes.drop(project.id);
        news.tell({ id: project.id, revision: revision + 1 });
        return ok(revision + 1);
      }),
    leave: (project, revision) => notes.leave(project, revision),
    remove: (id) =>
      guarded(async () => {
        await shelf.change(id, () => null);
        if ((await shelf.note(LAST_OPEN)) === id) await shelf.setNote(LAST_OPEN, null);
        news.tell({ id, revision: null });
        return ok(null);
      }),
    lastOpen: () =>
      guarded(async () => {
        const id = await shelf.note(LAST_OPEN);
        return ok(typeof id === 'string' ? id : null);
      }),
    setLastOpen: (id) =>
      guarded(async () => {
        await shelf.setNote(LAST_OPEN, id);
        return ok(null);
      }),
    watch: (listener) => news.watch(listener),
    close: () => {
      news.close();
      shelf.close();
    },
  };
}

async function load(shelf: Shelf, id: string): Promise<Loaded> {
  const record = await shelf.record(id);
  if (!record) return noSuchProject(id);
  const { name, revision } = readSummary(id, record.summary);
  const opened = openDocument(record.document);
  return opened.ok
    ? ok({ project: opened.value, revision })
    : { ...opened, damaged: { id, name, text: writeDocument(record.document) } };
}

/** The record to put in place of the one kept, if the saving is based on that one; throws the refusal if not. */
function nextRecord(project: Project, revision: number, kept: unknown, changedAt: number): ShelfRecord {
  const before = kept === undefined ? undefined : readSummary(project.id, kept);
  if (before === undefined && revision > 0) {
    const say =
      '"{name}" was removed in another tab. It is still open here; save it to a file or keep it as a new project.';
    throw new StorageRefusal('removed-elsewhere', phrase(say, { name: project.name }));
  }
  if (before !== undefined && before.revision !== revision) {
    const say =
      '"{name}" was changed in another tab. Nothing was overwritten; open that state, or keep this one as a copy.';
    throw new StorageRefusal('changed-elsewhere', phrase(say, { name: project.name }));
  }
  const summary: ProjectSummary = {
    id: project.id,
    name: project.name,
    changedAt,
    blocks: project.blocks.length,
    revision: revision + 1,
  };
  return { summary, document: project };
}

/** A summary as kept; one that cannot be read still stands in the list, so that its project can be opened or saved to a file. */
function readSummary(id: string, summary: unknown): ProjectSummary {
  const read = v.safeParse(summarySchema, summary);
  return read.success ? { ...read.output, id } : { id, name: id, changedAt: 0, blocks: 0, revision: 0 };
}

function noSuchProject(id: string) {
  const say = 'This project is no longer kept here. It may have been removed in another tab.';
  return failed('no-such-project', id, phrase(say));
}

async function guarded<R>(work: () => Promise<R>): Promise<R | { ok: false; problems: readonly Problem[] }> {
  try {
    return await work();
  } catch (error) {
    return { ok: false, problems: [storageProblem(error)] };
  }
}

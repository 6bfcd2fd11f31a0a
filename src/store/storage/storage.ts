// Keeps projects in the browser: lists, loads, saves and removes them, and knows which was last open. A saving never overwrites a
// newer state from another tab. Pictures are kept once, beside the projects, as long as a project, its kept history or what was left unsaved
// names them. indexedDb.ts and memory.ts hold the records; autosave.ts decides when to save.
import * as v from 'valibot';
import type { Change } from '../../editing/apply';
import { EMPTY_HISTORY, type History } from '../../editing/history';
import { keptPart, readHistory } from '../../editing/keptHistory';
import { openDocument } from '../../editing/openProject';
import { phrase } from '../../model/phrase';
import { picturesEntry } from '../../model/picture/inFile';
import {
  NO_PICTURES,
  type PictureId,
  type Pictures,
  picturesNamed,
  picturesUsed,
} from '../../model/picture/picture';
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
  /** How often this project was saved; a saving must name the revision it is based on. */
  revision: v.number(),
  /** The pictures that the project and its kept history name. Absent: none, as before there were pictures. */
  pictures: v.exactOptional(v.array(v.string())),
});

/** The entries of a list of projects, readable without opening any project. */
export type ProjectSummary = Readonly<v.InferOutput<typeof summarySchema>>;

export interface StoredProject {
  readonly project: Project;
  readonly revision: number;
  readonly history: History;
  /** Those of the pictures it names, now or in its history, that are kept. */
  readonly pictures: Pictures;
}

/** A kept quilt that cannot be opened: its name, and its unchecked document as the text of a file. */
export interface DamagedProject {
  readonly id: string;
  readonly name: string;
  readonly text: string;
}

/** A kept project, or why it cannot be opened; with `damaged` where it exists but is unsound. */
export type Loaded =
  | { readonly ok: true; readonly value: StoredProject }
  | { readonly ok: false; readonly problems: readonly Problem[]; readonly damaged?: DamagedProject };

/** The kept projects. Its functions never reject: they return failures as problems with words for the person. */
export interface ProjectStorage {
  /** False where the work is lost when the page closes (no IndexedDB); the screen must say so. */
  readonly keeps: boolean;
  /** All kept projects, last changed first. */
  list(): Promise<Result<readonly ProjectSummary[]>>;
  /** Reads and checks a project. For a damaged one it returns the problems and the text, to save to a file; it stays kept. */
  load(id: string): Promise<Loaded>;
  /**
   * Saves the project with the part of its history that is kept, and returns its new revision. `revision` is the one last loaded or saved, 0 for a new project. Refused
   * with 'changed-elsewhere' or 'removed-elsewhere' when another revision is kept; nothing is overwritten then. Those of `pictures` that it
   * names are kept with it, if they are not yet.
   */
  save(project: Project, revision: number, history?: History, pictures?: Pictures): Promise<Result<number>>;
  /** Keeps pictures that no saved project names yet. */
  keepPictures(pictures: Pictures): Promise<Result<null>>;
  /** Removes the pictures that nothing names: no project, no kept history, nothing left unsaved, and not `held`. */
  collectPictures(held: ReadonlySet<PictureId>): Promise<Result<null>>;
  /**
   * Notes this unsaved project synchronously, as the page goes away, to save it at the next visit. A saving that still
   * succeeds removes the note. False when it could not be noted.
   */
  leave(project: Project, revision: number, history?: History): boolean;
  /** Removes a project; to remove one that does not exist is no failure. */
  remove(id: string): Promise<Result<null>>;
  /** The id set last, or null. That project may not exist any more. */
  lastOpen(): Promise<Result<string | null>>;
  setLastOpen(id: string | null): Promise<Result<null>>;
  /** Calls back when another tab saves or removes a project, until the returned function is called. */
  watch(listener: (change: ProjectChange) => void): () => void;
  /** Closes the database and the channel to other tabs. */
  close(): void;
}

export interface ShelfRecord {
  readonly summary: ProjectSummary;
  readonly document: unknown;
  readonly history: unknown;
}

/** Part of a record as it is kept, unchecked. */
export type KeptRecord = Readonly<Record<keyof ShelfRecord, unknown>>;

/** A store of records. Its functions may reject; createStorage turns that into problems. */
export interface Shelf {
  readonly keeps: boolean;
  /** All ids with their summaries, unchecked. */
  summaries(): Promise<readonly (readonly [id: string, summary: unknown])[]>;
  record(id: string): Promise<KeptRecord | undefined>;
  /**
   * Reads the summary, then puts the record that `decide` returns, or removes it (null), in one transaction, with those of `pictures` that
   * are not there yet. If `decide` throws, nothing changes.
   */
  change(id: string, decide: (summary: unknown) => ShelfRecord | null, pictures?: Pictures): Promise<void>;
  /** Those of the pictures that are there, unchecked. */
  pictures(ids: readonly PictureId[]): Promise<readonly (readonly [PictureId, unknown])[]>;
  putPictures(pictures: Pictures): Promise<void>;
  /** Removes the pictures that are not `held` and that `namedBy` finds in no record, in one transaction. */
  collect(held: ReadonlySet<PictureId>, namedBy: (record: KeptRecord) => Iterable<PictureId>): Promise<void>;
  note(key: string): Promise<unknown>;
  setNote(key: string, value: string | null): Promise<void>;
  close(): void;
}

const LAST_OPEN = 'last-open';

/** The storage of projects on a shelf. `now` gives milliseconds since 1970. */
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
    save: (project, revision, history = EMPTY_HISTORY, pictures = NO_PICTURES) =>
      guarded(async () => {
        const part = keptPart(history);
        const named = [...new Set([...picturesUsed(project), ...namedInHistory(part)])].sort();
        const decide = (kept: unknown): ShelfRecord => {
          const { summary, document } = nextRecord(project, revision, kept, now());
          return { summary: { ...summary, pictures: named }, document, history: part };
        };
        await shelf.change(project.id, decide, someOf(pictures, named));
        notes.drop(project.id);
        news.tell({ id: project.id, revision: revision + 1 });
        return ok(revision + 1);
      }),
    leave: (project, revision, history) => notes.leave(project, revision, history),
    remove: (id) =>
      guarded(async () => {
        await shelf.change(id, () => null);
        if ((await shelf.note(LAST_OPEN)) === id) await shelf.setNote(LAST_OPEN, null);
        news.tell({ id, revision: null });
        return ok(null);
      }),
    keepPictures: (pictures) =>
      guarded(async () => {
        await shelf.putPictures(pictures);
        return ok(null);
      }),
    collectPictures: (held) =>
      guarded(async () => {
        await shelf.collect(new Set([...held, ...notes.pictures()]), namedInRecord);
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
  const pictures = readPictures(await shelf.pictures([...picturesNamed([record.document, record.history])]));
  if (opened.ok)
    return ok({ project: opened.value, revision, history: readHistory(record.history), pictures });
  const entry = picturesEntry(picturesNamed(record.document), pictures);
  return { ...opened, damaged: { id, name, text: writeDocument(record.document, entry) } };
}

const pictureSchema = v.object({
  type: v.picklist(['image/jpeg', 'image/png', 'image/webp']),
  width: v.number(),
  height: v.number(),
  bytes: v.instance(Uint8Array<ArrayBuffer>),
});

/** The kept pictures that can be read. */
function readPictures(kept: readonly (readonly [PictureId, unknown])[]): Pictures {
  const sound = kept.flatMap(([id, picture]) => {
    const read = v.safeParse(pictureSchema, picture);
    return read.success ? [[id, read.output] as const] : [];
  });
  return new Map(sound);
}

const namedBy = new WeakMap<Change, ReadonlySet<PictureId>>();

/** The pictures that the changes of a history name: undoing or redoing them brings those back. */
function namedInHistory({ done, undone }: History): PictureId[] {
  return [...done, ...undone].flatMap((change) => {
    const named = namedBy.get(change) ?? picturesNamed([change.patches, change.inverse]);
    namedBy.set(change, named);
    return [...named];
  });
}

/** The pictures that a record names; of one whose summary does not tell, every one that its document and history could mean. */
function namedInRecord({ summary, document, history }: KeptRecord): Iterable<PictureId> {
  const read = v.safeParse(summarySchema, summary);
  return (read.success && read.output.pictures) || picturesNamed([document, history]);
}

/** The record that replaces the kept one; throws a StorageRefusal if the saving is based on another revision. */
function nextRecord(
  project: Project,
  revision: number,
  kept: unknown,
  changedAt: number,
): Omit<ShelfRecord, 'history'> {
  const before = kept === undefined ? undefined : readSummary(project.id, kept);
  if (before === undefined && revision > 0) {
    const say =
      '"{name}" was removed in another tab. It is still open here; save it to a file or as a new project.';
    throw new StorageRefusal('removed-elsewhere', phrase(say, { name: project.name }));
  }
  if (before !== undefined && before.revision !== revision) {
    const say =
      '"{name}" was changed in another tab. Nothing was overwritten; open that version, or save this one as a copy.';
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

/** Reads a kept summary; for one that is damaged a substitute, so that its project is listed and can be opened or saved to a file. */
function readSummary(id: string, summary: unknown): ProjectSummary {
  const read = v.safeParse(summarySchema, summary);
  return read.success ? { ...read.output, id } : { id, name: id, changedAt: 0, blocks: 0, revision: 0 };
}

function someOf(pictures: Pictures, ids: readonly PictureId[]): Pictures {
  return new Map(
    ids.flatMap((id) => {
      const picture = pictures.get(id);
      return picture ? [[id, picture] as const] : [];
    }),
  );
}

function noSuchProject(id: string) {
  const say = 'This project is no longer saved here. It may have been removed in another tab.';
  return failed('no-such-project', id, phrase(say));
}

async function guarded<R>(work: () => Promise<R>): Promise<R | { ok: false; problems: readonly Problem[] }> {
  try {
    return await work();
  } catch (error) {
    return { ok: false, problems: [storageProblem(error)] };
  }
}

// Keeps projects in the browser: lists, loads, saves and removes them, and knows which was last open. A saving never overwrites a
// newer state from another tab. Pictures are kept once, beside the projects, as long as a project, its kept history or what was left unsaved
// names them. indexedDb.ts and memory.ts hold the records; autosave.ts decides when to save.
import * as v from 'valibot';
import type { Change } from '../../editing/apply';
import { EMPTY_HISTORY, type History } from '../../editing/history';
import { keptPart, readHistory } from '../../editing/keptHistory';
import { openDocument } from '../../editing/openDocument';
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
import { inTime } from './inTime';
import type { LeavingNotes } from './leaving';
import type { ProjectChange, ProjectNews } from './news';
import { StorageRefusal, storageProblem } from './storageProblem';
import { isSound, nextSummary, type ProjectSummary, readSummary, summarySchema } from './summary';

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
   * with 'changed-elsewhere' or 'removed-elsewhere' when another revision is kept; nothing is overwritten then. One that is gone though nobody
   * removed it is saved anew: its revisions begin at 1 again. Those of `pictures` that it names are kept with it, if they are not yet.
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
  /** Opens the shelf anew for what comes next, because it did not answer. */
  renew?(): void;
  close(): void;
}

const LAST_OPEN = 'last-open';

/** The removed quilts that are remembered, so that one that is gone for another reason is told apart. */
const REMOVED = 'removed';
const MOST_REMOVED = 500;

/** Milliseconds that the browser has to read or write; a quilt full of photographs takes two seconds on a slow disk. */
const PATIENCE = 15_000;

export interface StorageOptions {
  readonly news: ProjectNews;
  readonly notes: LeavingNotes;
  /** Milliseconds since 1970. */
  readonly now: () => number;
  /** Unique to this window, so that its savings are told from those of others. */
  readonly page?: string;
  readonly patience?: number;
  /** Checks a document that was read, as openDocument does; that unless given. */
  readonly check?: (document: unknown) => Promise<Result<Project>>;
}

/** Whether the answer of a piece of work is still waited for. */
interface Waiting {
  readonly over: boolean;
}

interface ToSave {
  readonly project: Project;
  readonly history: History;
  readonly pictures: Pictures;
}

/** The storage of projects on a shelf. */
export function createStorage(
  shelf: Shelf,
  { news, notes, now, page = '', patience = PATIENCE, check }: StorageOptions,
): ProjectStorage {
  /** The documents as this window last read or saved them. */
  const known = new Map<string, Project>();
  const guarded = async <R>(work: (waiting: Waiting) => Promise<R>) => {
    const waiting = { over: false };
    const giveUp = () => {
      waiting.over = true;
      shelf.renew?.();
    };
    try {
      return await inTime(work(waiting), patience, giveUp);
    } catch (error) {
      return { ok: false as const, problems: [storageProblem(error)] };
    }
  };
  /** The savings that the browser has not answered: one that succeeds after all is no change by another window. */
  const unanswered = new Set<string>();
  let savings = 0;
  const put = async (
    waiting: Waiting,
    revision: number,
    { project, history, pictures }: ToSave,
    least = 1,
  ) => {
    savings += 1;
    const saving = `${page}.${savings}`;
    const part = keptPart(history);
    const named = [...new Set([...picturesUsed(project), ...namedInHistory(part)])].sort();
    let next = 0;
    const decide = (kept: unknown): ShelfRecord => {
      const summary = nextSummary(project, { revision, saving, unanswered }, kept, now());
      next = Math.max(summary.revision, least);
      return { summary: { ...summary, revision: next, pictures: named }, document: project, history: part };
    };
    unanswered.add(saving);
    await shelf.change(project.id, decide, someOf(pictures, named)).finally(() => {
      if (!waiting.over) unanswered.delete(saving);
    });
    return next;
  };
  /**
   * The least revision of a saving that was refused and may begin anew: what was kept is gone and nobody removed it, or only its summary is
   * damaged. Null where it may not.
   */
  const anew = async (id: string, revision: number): Promise<number | null> => {
    const record = await shelf.record(id);
    if (!record) return (await removedIds(shelf)).includes(id) ? null : 1;
    const damaged = !isSound(record.summary) && sameText(record.document, known.get(id));
    return damaged ? revision + 1 : null;
  };
  return {
    keeps: shelf.keeps,
    list: () =>
      guarded(async () => {
        const all = (await shelf.summaries()).map(([id, summary]) => readSummary(id, summary));
        return ok(all.sort((one, other) => other.changedAt - one.changedAt));
      }),
    load: (id) =>
      guarded(async () => {
        const loaded = await load(shelf, id, check);
        if (loaded.ok) known.set(id, loaded.value.project);
        return loaded;
      }),
    save: (project, revision, history = EMPTY_HISTORY, pictures = NO_PICTURES) =>
      guarded(async (waiting) => {
        const given = { project, history, pictures };
        const saved = await put(waiting, revision, given).catch(async (refusal: unknown) => {
          if (!(refusal instanceof StorageRefusal) || revision === 0) throw refusal;
          const least = await anew(project.id, revision);
          if (least === null) throw refusal;
          return put(waiting, 0, given, least);
        });
        if (waiting.over) return ok(saved);
        known.set(project.id, project);
        notes.drop(project.id);
        news.tell({ id: project.id, revision: saved });
        return ok(saved);
      }),
    leave: (project, revision, history) => notes.leave(project, revision, history),
    remove: (id) =>
      guarded(async () => {
        const removed = [...(await removedIds(shelf)).filter((one) => one !== id), id];
        await shelf.setNote(REMOVED, removed.slice(-MOST_REMOVED).join(' '));
        await shelf.change(id, () => null);
        notes.removed(id);
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

async function removedIds(shelf: Shelf): Promise<readonly string[]> {
  const kept = await shelf.note(REMOVED);
  return typeof kept === 'string' ? kept.split(' ') : [];
}

async function load(shelf: Shelf, id: string, check: StorageOptions['check']): Promise<Loaded> {
  const record = await shelf.record(id);
  if (!record) return noSuchProject(id);
  const { name, revision } = readSummary(id, record.summary);
  const opened = check ? await check(record.document) : openDocument(record.document);
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

/** Whether two documents are written the same. */
export function sameText(one: unknown, other: unknown): boolean {
  return one === other || JSON.stringify(one) === JSON.stringify(other);
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
  const say = 'This quilt is no longer saved here. It may have been removed in another window.';
  return failed('no-such-project', id, phrase(say));
}

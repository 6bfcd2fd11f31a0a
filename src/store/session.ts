// The session ties the app store to the storage: which saved quilt is open, and how others are opened, made and removed. How the open one is
// saved is saving/'s. Every failure is shown as a problem and never loses the open project.
import { createStore } from 'zustand/vanilla';
import { EMPTY_HISTORY } from '../editing/history';
import type { ReadableFile } from '../editing/openFile';
import { createProject } from '../model/create';
import { type Phrase, phrase } from '../model/phrase';
import { lackingPictures } from '../model/picture/inFile';
import { NO_PICTURES, type PictureId, type Pictures } from '../model/picture/picture';
import type { Project } from '../model/project';
import type { Opened } from '../model/reading/readText';
import { failed, type Problem, type Result } from '../model/result';
import type { LengthUnit } from '../model/units';
import { AnalysisClient } from './analysis/analysisClient';
import { createApp, documentOf } from './app';
import { type Demo, firstDemo, firstKept, NO_WINDOW_NOTE, type WindowNote } from './firstQuilt';
import { createHandMoves } from './handMoves';
import { createLaying } from './laying';
import { stateTaken } from './saving/conflict';
import { type Kept, Saving } from './saving/saving';
import type { SessionState } from './saving/sessionState';
import { createSeeking } from './seeking';
import { createShuffling } from './shuffling';
import type { LeftCopy } from './storage/keepLeft';
import type { Loaded, ProjectStorage, StoredProject } from './storage/storage';
import type { UnitNote } from './unitOfPerson';

/** What an opening of the tool brings along besides the storage. */
interface Visit {
  readonly ofWindow: WindowNote;
  /** The copies made of what earlier pages left unsaved. */
  readonly left: readonly LeftCopy[];
}
const FIRST_VISIT: Visit = { ofWindow: NO_WINDOW_NOTE, left: [] };

/** Starts the session with the project of this window or the one last open, else with another that is kept, else with the first demo, else
 * with an empty project. `freshId` must never repeat. A person without a unit yet gets that of the first quilt, else the usual one. */
export async function startSession(
  storage: ProjectStorage,
  problem: Problem | null,
  demos: readonly Demo[],
  freshId: () => string,
  unit: { readonly note: UnitNote; readonly usual: LengthUnit },
  visit: Visit = FIRST_VISIT,
) {
  const { opened: kept, refused } = await firstKept(storage, visit.ofWindow);
  const measured = unit.note.read() ?? kept?.project.preferences.unit ?? unit.usual;
  unit.note.write(measured);
  const first =
    kept ?? (await firstDemo(demos, freshId, measured, refused?.damaged ? null : visit.ofWindow.read()));
  const app = createApp(first.project, first.history, measured);
  app.subscribe((now, before) => {
    if (now.unit !== before.unit) unit.note.write(now.unit);
  });
  const session = createStore<SessionState>()(() => ({
    saving: 'saved',
    // A project that does not exist any more (removed in another window, never saved) is no problem to show.
    problem:
      problem ??
      (refused && !refused.damaged
        ? (refused.problems.find((one) => one.code !== 'no-such-project') ?? null)
        : null),
    projects: [],
    remarks: kept ? lackingPictures(first.project, first.pictures) : [],
    damaged: refused && damageOf(refused),
    conflict: null,
    reading: null,
    toTell: visit.left.map(({ of, name }) => phrase(LEFT, { of, name })),
    lasting: null,
  }));
  return new Session({ app, state: session, storage, freshId, first, ofWindow: visit.ofWindow }, demos);
}

const LEFT = 'What was left unsaved of "{of}" is saved as "{name}".';

function damageOf(loaded: Loaded): SessionState['damaged'] {
  return loaded.ok || !loaded.damaged ? null : { ...loaded.damaged, problems: loaded.problems };
}

function notTaken({ code, message }: Problem) {
  return failed(code, '', phrase('This picture cannot be used: {reason}.', { reason: message }));
}

export class Session extends Saving {
  /** Work in workers for the open quilt; it goes on whatever step is on show. */
  readonly shuffling: ReturnType<typeof createShuffling>;
  readonly seeking: ReturnType<typeof createSeeking>;
  readonly laying: ReturnType<typeof createLaying>;
  readonly handMoves: ReturnType<typeof createHandMoves>;
  readonly analysing = new AnalysisClient();
  readonly demos: readonly Demo[];

  constructor(kept: Kept, demos: readonly Demo[]) {
    super(kept);
    const { app } = kept;
    this.demos = demos;
    this.shuffling = createShuffling(app);
    this.seeking = createSeeking(app);
    this.laying = createLaying(app);
    this.handMoves = createHandMoves(app);
    void this.collectPictures();
  }

  /** Removes what nothing names from the browser. What another tab holds in its own history it keeps anew when it saves. */
  private async collectPictures(): Promise<void> {
    await this.storage.collectPictures(new Set(this.pictures.state.getState().pictures.keys()));
  }

  /**
   * Takes a picture for the open quilt, before a command names it: checked, stripped of what does not draw it, and kept at once, since a page
   * that goes away could not keep it any more. Returns its id, or why it is not taken.
   */
  async takePicture(bytes: Uint8Array): Promise<Result<PictureId>> {
    const { roomFor, takePicture } = await import('../model/picture/takePicture');
    const taken = takePicture(bytes);
    if (!taken.ok) return notTaken(taken.problems[0]!);
    const { id, picture } = taken.value;
    const full = roomFor(picture, this.pictures.state.getState().pictures);
    if (full) return notTaken(full);
    const more = new Map([[id, picture]]);
    const kept = await this.storage.keepPictures(more);
    if (!kept.ok) return kept;
    this.pictures.add(more);
    return { ok: true, value: id };
  }

  /** Takes away what was told. */
  heard(): void {
    this.state.setState({ toTell: [] });
  }

  /** A kept project to look at, without opening it; null where it is damaged or gone. */
  async lookAt(id: string): Promise<Project | null> {
    const loaded = await this.storage.load(id);
    return loaded.ok ? loaded.value.project : null;
  }

  /** Opens a kept project. Saves the open one first; it stays open when the other cannot be opened. */
  async openKept(id: string): Promise<readonly Problem[]> {
    const unsaved = await this.unsaved();
    if (unsaved.length > 0) return unsaved;
    return this.openLoaded(await this.storage.load(id));
  }

  private openLoaded(loaded: Loaded): readonly Problem[] {
    if (loaded.ok) {
      const { project, revision, history, pictures } = loaded.value;
      this.show(project, revision, pictures, lackingPictures(project, pictures), history);
    } else this.state.setState({ damaged: damageOf(loaded) });
    return loaded.ok ? [] : loaded.problems;
  }

  /** Opens a chosen project file as a new project. While it is read, `reading` of the state stops it; nothing is opened then. */
  async openFile(file: ReadableFile): Promise<readonly Problem[]> {
    this.state.getState().reading?.stop();
    const { startReading } = await import('./reading/readFile');
    const reading = startReading(file);
    this.state.setState({ reading: { stop: reading.stop } });
    const opened = await reading.opened;
    this.state.setState({ reading: null });
    return opened === null ? [] : this.openOwn(opened);
  }

  private async openOwn(opened: Opened): Promise<readonly Problem[]> {
    if (!opened.ok) return opened.problems;
    const unsaved = await this.unsaved();
    if (unsaved.length > 0) return unsaved;
    this.show({ ...opened.value, id: this.freshId() }, 0, opened.pictures, opened.remarks);
    await this.saveNow();
    return [];
  }

  /** Opens an example as a new project. */
  async openDemo(demo: Demo): Promise<readonly Problem[]> {
    try {
      return await this.openFile(new Blob([await demo.text()]));
    } catch {
      const message = phrase('The example {name} could not be fetched.', { name: demo.name });
      return [{ code: 'demo-missing', path: demo.name, message }];
    }
  }

  /** Opens an empty project under this name, at the fabrics step. */
  async openNew(name: string): Promise<readonly Problem[]> {
    const unsaved = await this.unsaved();
    if (unsaved.length > 0) return unsaved;
    this.show(createProject(this.freshId(), name, this.app.getState().unit), 0, NO_PICTURES, []);
    this.app.getState().goTo('fabrics');
    await this.saveNow();
    return [];
  }

  /** Opens a copy of the open project, unsaved changes included, under another name. */
  async openCopy(name: string): Promise<readonly Problem[]> {
    return this.openAsCopy(documentOf(this.app.getState()), name);
  }

  /** Opens a project made from the open one (such as a colourway of it) as a new project. */
  async openAsCopy(project: Project, name: string): Promise<readonly Problem[]> {
    const unsaved = await this.unsaved();
    if (unsaved.length > 0) return unsaved;
    const { pictures } = this.pictures.state.getState();
    this.show({ ...project, id: this.freshId(), name }, 0, pictures, this.state.getState().remarks);
    await this.saveNow();
    return [];
  }

  /** In a conflict, the state of the open quilt that another window has kept; null where it is gone or damaged. */
  async otherState(): Promise<StoredProject | null> {
    const loaded = await this.storage.load(this.app.getState().project.id);
    return loaded.ok ? loaded.value : null;
  }

  /** Ends a conflict: this window's state or the other's is the quilt from now on, and an undo gives the one not taken. */
  async take(which: 'this' | 'other'): Promise<readonly Problem[]> {
    const { conflict } = this.state.getState();
    if (!conflict) return [];
    const unsaved = await this.unsaved();
    if (unsaved.length > 0) return unsaved;
    const taken = stateTaken(which, this.app, await this.storage.load(this.app.getState().project.id));
    if (!taken.ok) return taken.problems;
    await this.settle(taken.value);
    // Only once the other copy of it is saved; a new conflict has a copy of its own.
    return typeof this.state.getState().saving === 'string' ? this.remove(conflict.copy) : [];
  }

  /** Removes a kept project other than the open one. */
  async remove(id: string): Promise<readonly Problem[]> {
    const removed = await this.storage.remove(id);
    if (removed.ok && this.state.getState().damaged?.id === id) this.state.setState({ damaged: null });
    await this.refresh();
    await this.collectPictures();
    return removed.ok ? [] : removed.problems;
  }

  private show(
    project: Project,
    revision: number,
    pictures: Pictures,
    remarks: readonly Phrase[],
    history = EMPTY_HISTORY,
  ): void {
    this.begin(project, revision);
    this.state.setState({ remarks });
    // Those of the quilt that was open go once the other is on show.
    this.pictures.add(pictures);
    this.app.getState().open(project, history);
    this.pictures.replace(pictures);
    if (remarks.length > 0) this.app.getState().announce(remarks[0]!);
    this.remember(project.id);
  }
}

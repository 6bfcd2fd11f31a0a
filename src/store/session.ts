// The session ties the app store to the storage: it knows which kept project is open, saves it as it changes, and opens and keeps
// others. Every failure is shown as a problem and never loses the open project.
import { createStore, type StoreApi } from 'zustand/vanilla';
import { EMPTY_HISTORY, type History } from '../editing/history';
import { openFile, openProject, type ReadableFile } from '../editing/openProject';
import { createProject } from '../model/create';
import { type Phrase, phrase } from '../model/phrase';
import { lackingPictures } from '../model/picture/inFile';
import { NO_PICTURES, type PictureId, type Pictures } from '../model/picture/picture';
import { roomFor, takePicture } from '../model/picture/takePicture';
import type { Project } from '../model/project';
import type { Opened } from '../model/reading/read';
import { failed, type Problem, type Result } from '../model/result';
import type { LengthUnit } from '../model/units';
import { AnalysisClient } from './analysis/analysisClient';
import { type AppStore, createApp, documentOf } from './app';
import { createHandMoves } from './handMoves';
import { createLaying } from './laying';
import { createPicturesAtHand } from './picturesAtHand';
import { createSeeking } from './seeking';
import { createShuffling } from './shuffling';
import { type Autosave, type AutosaveState, createAutosave } from './storage/autosave';
import type {
  DamagedProject,
  Loaded,
  ProjectStorage,
  StoredProject,
} from './storage/storage';
import type { ProjectSummary } from './storage/summary';
import type { UnitNote } from './unitOfPerson';

/** An example that comes with the tool; `text` fetches its project file. */
export interface Demo {
  readonly name: string;
  readonly text: () => Promise<string>;
}

export interface SessionState {
  readonly saving: AutosaveState;
  /** The problem shown beside the project's name; null when all is well. */
  readonly problem: Problem | null;
  readonly projects: readonly ProjectSummary[];
  /** What is to be told of the open quilt's pictures: those that are missing or were refused. */
  readonly remarks: readonly Phrase[];
  /** The damaged quilt that could not be opened last, with its problems; null for none. */
  readonly damaged: (DamagedProject & { readonly problems: readonly Problem[] }) | null;
}

/** Milliseconds from a change to its saving: what was on screen a third of a second ago survives a crash. */
const SAVE_DELAY = 150;

/** Starts the session with the project last open, else with the first demo, else with an empty project. `freshId` must never repeat.
 * A person without a unit yet gets that of the quilt last open, else the usual one. */
export async function startSession(
  storage: ProjectStorage,
  problem: Problem | null,
  demos: readonly Demo[],
  freshId: () => string,
  unit: { readonly note: UnitNote; readonly usual: LengthUnit },
) {
  const last = await storage.lastOpen();
  const kept = last.ok && last.value !== null ? await storage.load(last.value) : null;
  const measured = unit.note.read() ?? (kept?.ok ? kept.value.project.preferences.unit : unit.usual);
  unit.note.write(measured);
  const first = kept?.ok ? kept.value : await firstDemo(demos, freshId, measured);
  const app = createApp(first.project, first.history, measured);
  app.subscribe((now, before) => {
    if (now.unit !== before.unit) unit.note.write(now.unit);
  });
  const session = createStore<SessionState>()(() => ({
    saving: 'saved',
    // A project that does not exist any more (removed in another tab, never saved) is no problem to show.
    problem:
      problem ??
      (kept && !kept.ok && !kept.damaged
        ? (kept.problems.find((one) => one.code !== 'no-such-project') ?? null)
        : null),
    projects: [],
    remarks: kept?.ok ? lackingPictures(first.project, first.pictures) : [],
    damaged: kept && damageOf(kept),
  }));
  return new Session(app, session, storage, demos, freshId, first.revision, first.pictures);
}

function damageOf(loaded: Loaded): SessionState['damaged'] {
  return loaded.ok || !loaded.damaged ? null : { ...loaded.damaged, problems: loaded.problems };
}

function notTaken({ code, message }: Problem) {
  return failed(code, '', phrase('This picture cannot be used: {reason}.', { reason: message }));
}

async function firstDemo(
  demos: readonly Demo[],
  freshId: () => string,
  unit: LengthUnit,
): Promise<StoredProject> {
  const text = await demos[0]?.text();
  const opened = text === undefined ? null : openProject(text);
  return {
    project: opened?.ok
      ? { ...opened.value, id: freshId() }
      : createProject(freshId(), 'My first wedge quilt', unit),
    revision: 0,
    history: EMPTY_HISTORY,
    pictures: opened?.ok ? opened.pictures : NO_PICTURES,
  };
}

export class Session {
  /** Work in workers for the open quilt; it goes on whatever step is on show. */
  readonly shuffling: ReturnType<typeof createShuffling>;
  readonly seeking: ReturnType<typeof createSeeking>;
  readonly laying: ReturnType<typeof createLaying>;
  readonly handMoves: ReturnType<typeof createHandMoves>;
  readonly analysing = new AnalysisClient();
  /** The pictures of the open quilt. */
  readonly pictures: ReturnType<typeof createPicturesAtHand>;
  private autosave: Autosave;
  private revision: number;
  /** The document last saved, or opened. */
  private savedProject: Project;
  /** The history with which each state of the project was reached, to be saved with it. */
  private readonly histories = new WeakMap<Project, History>();
  /** Why this browser keeps nothing; null where it keeps projects. */
  private readonly notKept: Problem | null;

  constructor(
    readonly app: AppStore,
    readonly state: StoreApi<SessionState>,
    private readonly storage: ProjectStorage,
    readonly demos: readonly Demo[],
    private readonly freshId: () => string,
    revision: number,
    pictures: Pictures,
  ) {
    this.pictures = createPicturesAtHand(pictures);
    this.shuffling = createShuffling(app);
    this.seeking = createSeeking(app);
    this.laying = createLaying(app);
    this.handMoves = createHandMoves(app);
    this.revision = revision;
    this.notKept = storage.keeps ? null : state.getState().problem;
    this.savedProject = documentOf(app.getState());
    this.autosave = this.makeAutosave();
    app.subscribe((now, before) => {
      if (now.project === before.project) return;
      this.histories.set(now.project, now.history);
      // A quilt that is only shown in another unit is no other document.
      if (documentOf(now) !== this.savedProject) this.autosave.changed(now.project);
    });
    void this.storage.setLastOpen(this.savedProject.id);
    void this.refresh();
    void this.collectPictures();
    this.storage.watch(() => void this.refresh());
  }

  get keeps(): boolean {
    return this.storage.keeps;
  }

  private makeAutosave(): Autosave {
    return createAutosave({
      delay: SAVE_DELAY,
      save: (project) => this.save(project),
      leave: (project) =>
        this.storage.leave(this.asDrawn(project), this.revision, this.histories.get(project)),
      onState: (saving) =>
        this.state.setState({
          saving,
          // In a browser that keeps nothing, the problem stays on show even when saving to memory succeeds.
          problem: typeof saving === 'object' ? saving.problem : this.storage.keeps ? null : this.notKept,
        }),
    });
  }

  private async save(project: Project): Promise<Result<null>> {
    const document = this.asDrawn(project);
    const { pictures } = this.pictures.state.getState();
    const saved = await this.storage.save(document, this.revision, this.histories.get(project), pictures);
    if (!saved.ok) return saved;
    this.revision = saved.value;
    this.savedProject = document;
    void this.refresh();
    return { ok: true, value: null };
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

  /** A state of the open project in the unit it was drawn in. */
  private asDrawn(project: Project): Project {
    return documentOf({ project, drawnIn: this.app.getState().drawnIn });
  }

  /** Saves unsaved changes: before the page is left or another project is opened. */
  flush(): Promise<AutosaveState> {
    return this.autosave.flush();
  }

  /** Notes unsaved changes for the next visit, as the page goes away. See saveOnLeaving. */
  leave(): void {
    this.autosave.leave();
  }

  /** Reads the list of kept projects again. */
  async refresh(): Promise<void> {
    const list = await this.storage.list();
    if (list.ok) this.state.setState({ projects: list.value });
    else this.state.setState({ problem: list.problems[0] ?? null });
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

  /** Opens the state of this project that another tab has kept, and discards the state that is open here. */
  async openOtherState(): Promise<readonly Problem[]> {
    return this.openLoaded(await this.storage.load(this.app.getState().project.id));
  }

  private openLoaded(loaded: Loaded): readonly Problem[] {
    if (loaded.ok) {
      const { project, revision, history, pictures } = loaded.value;
      this.show(project, revision, pictures, lackingPictures(project, pictures), history);
    } else this.state.setState({ damaged: damageOf(loaded) });
    return loaded.ok ? [] : loaded.problems;
  }

  /** Opens a chosen project file as a new project. */
  async openFile(file: ReadableFile): Promise<readonly Problem[]> {
    return this.openOwn(await openFile(file));
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
      return await this.openOwn(openProject(await demo.text()));
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
    await this.flush();
    const { pictures } = this.pictures.state.getState();
    this.show({ ...project, id: this.freshId(), name }, 0, pictures, this.state.getState().remarks);
    await this.saveNow();
    return [];
  }

  /** Removes a kept project other than the open one. */
  async remove(id: string): Promise<readonly Problem[]> {
    const removed = await this.storage.remove(id);
    if (removed.ok && this.state.getState().damaged?.id === id) this.state.setState({ damaged: null });
    await this.refresh();
    await this.collectPictures();
    return removed.ok ? [] : removed.problems;
  }

  /** Saves unsaved changes. Returns why that failed, so that the project must stay open; an empty list when it succeeded. */
  private async unsaved(): Promise<readonly Problem[]> {
    const saving = await this.flush();
    return typeof saving === 'string' || !this.storage.keeps ? [] : [saving.problem];
  }

  private show(
    project: Project,
    revision: number,
    pictures: Pictures,
    remarks: readonly Phrase[],
    history = EMPTY_HISTORY,
  ): void {
    this.autosave.stop();
    this.savedProject = project;
    this.revision = revision;
    this.autosave = this.makeAutosave();
    this.state.setState({
      saving: 'saved',
      problem: this.storage.keeps ? null : this.notKept,
      damaged: null,
      remarks,
    });
    // Those of the quilt that was open go once the other is on show.
    this.pictures.add(pictures);
    this.app.getState().open(project, history);
    this.pictures.replace(pictures);
    if (remarks.length > 0) this.app.getState().announce(remarks[0]!);
    void this.storage.setLastOpen(project.id);
  }

  private async saveNow(): Promise<void> {
    this.autosave.changed(this.app.getState().project);
    await this.flush();
  }
}

// The session ties the app store to the storage: it knows which kept project is open, saves it as it changes, and opens and keeps
// others. Every failure is shown as a problem and never loses the open project.
import { createStore, type StoreApi } from 'zustand/vanilla';
import { EMPTY_HISTORY, type History, record } from '../editing/history';
import type { ReadableFile } from '../editing/openFile';
import { wholeChange } from '../editing/wholeChange';
import { createProject } from '../model/create';
import { nameWith } from '../model/name';
import { type Phrase, phrase } from '../model/phrase';
import { lackingPictures } from '../model/picture/inFile';
import { NO_PICTURES, type PictureId, type Pictures } from '../model/picture/picture';
import type { Project } from '../model/project';
import type { Opened } from '../model/reading/readText';
import { failed, type Problem, type Result } from '../model/result';
import type { LengthUnit } from '../model/units';
import { AnalysisClient } from './analysis/analysisClient';
import { type AppStore, createApp, documentOf } from './app';
import { firstDemo, firstKept, NO_WINDOW_NOTE, type WindowNote } from './firstQuilt';
import { createHandMoves } from './handMoves';
import { createLaying } from './laying';
import { createPicturesAtHand } from './picturesAtHand';
import { createSeeking } from './seeking';
import { createShuffling } from './shuffling';
import { type Autosave, type AutosaveState, createAutosave } from './storage/autosave';
import type { LeftCopy } from './storage/keepLeft';
import type { DamagedProject, Loaded, ProjectStorage, StoredProject } from './storage/storage';
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
  /** The copy that this window's state is saved as while another window has changed the open quilt too; null while none has. */
  readonly conflict: { readonly copy: string } | null;
  /** A file that is being read; null while none is. */
  readonly reading: { readonly stop: () => void } | null;
  /** What is to be told once of the saved quilts. */
  readonly told: readonly Phrase[];
  /** How long what is saved lasts, where that is to be told; null where it lasts, or nobody knows yet. */
  readonly lasting: { readonly room: number | null; readonly removed: boolean } | null;
}

/** What an opening of the tool brings along besides the storage. */
interface Visit {
  readonly ofWindow: WindowNote;
  /** The copies made of what earlier pages left unsaved. */
  readonly left: readonly LeftCopy[];
}
const FIRST_VISIT: Visit = { ofWindow: NO_WINDOW_NOTE, left: [] };

/** Milliseconds from a change to its saving: what was on screen a third of a second ago survives a crash. */
const SAVE_DELAY = 150;

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
  const first = kept ?? (await firstDemo(demos, freshId, measured));
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
    told: visit.left.map(({ of, name }) => phrase(LEFT, { of, name })),
    lasting: null,
  }));
  return new Session(app, session, storage, demos, freshId, first, visit.ofWindow);
}

/** What the name of this window's copy ends in. */
const COPY = ' (of this window)';
const LEFT = 'What was left unsaved of "{of}" is saved as "{name}".';
const CLEARED = 'The quilts saved in this browser were cleared, not by Wedgewall. This one is saved again.';

function damageOf(loaded: Loaded): SessionState['damaged'] {
  return loaded.ok || !loaded.damaged ? null : { ...loaded.damaged, problems: loaded.problems };
}

function notTaken({ code, message }: Problem) {
  return failed(code, '', phrase('This picture cannot be used: {reason}.', { reason: message }));
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
  /** The revision that the copy of a conflict was saved with; see SessionState.conflict. */
  private copyRevision = 0;
  /** The document as it was opened, and as it was last saved to a file. */
  private openedProject: Project;
  private filedProject: Project | null = null;
  /** Whether a quilt that was changed and is kept nowhere was put away for another. */
  private lost = false;

  constructor(
    readonly app: AppStore,
    readonly state: StoreApi<SessionState>,
    private readonly storage: ProjectStorage,
    readonly demos: readonly Demo[],
    private readonly freshId: () => string,
    first: Pick<StoredProject, 'revision' | 'pictures'>,
    private readonly ofWindow: WindowNote,
  ) {
    this.pictures = createPicturesAtHand(first.pictures);
    this.shuffling = createShuffling(app);
    this.seeking = createSeeking(app);
    this.laying = createLaying(app);
    this.handMoves = createHandMoves(app);
    this.revision = first.revision;
    this.notKept = storage.keeps ? null : state.getState().problem;
    this.savedProject = documentOf(app.getState());
    this.openedProject = this.savedProject;
    this.autosave = this.makeAutosave();
    app.subscribe((now, before) => {
      if (now.project === before.project && now.history === before.history) return;
      this.histories.set(now.project, now.history);
      // A quilt that is only shown in another unit is no other document.
      if (now.project !== before.project && documentOf(now) !== this.savedProject)
        this.autosave.changed(now.project);
    });
    this.remember(this.savedProject.id);
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
        this.storage.leave(...this.toKeep(this.asDrawn(project)), this.histories.get(project)),
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
    const put = () => {
      const [kept, revision] = this.toKeep(document);
      const { pictures } = this.pictures.state.getState();
      return this.storage.save(kept, revision, this.histories.get(project), pictures);
    };
    let saved = await put();
    if (!saved.ok && saved.problems[0]?.code === 'changed-elsewhere') {
      this.state.setState({ conflict: { copy: this.freshId() } });
      this.copyRevision = 0;
      saved = await put();
    }
    if (!saved.ok) return saved;
    this.noteSaved(document, saved.value);
    await this.refresh();
    return { ok: true, value: null };
  }

  private noteSaved(document: Project, revision: number): void {
    const { conflict, told } = this.state.getState();
    if (conflict) {
      if (this.copyRevision === 0) this.remember(conflict.copy);
      this.copyRevision = revision;
    } else {
      if (revision <= this.revision) this.state.setState({ told: [...told, phrase(CLEARED)] });
      this.revision = revision;
    }
    this.savedProject = document;
  }

  /** The document as it is kept and the revision it is based on: in a conflict those of the copy. */
  private toKeep(document: Project): [project: Project, revision: number] {
    const { conflict } = this.state.getState();
    if (!conflict) return [document, this.revision];
    return [{ ...document, id: conflict.copy, name: nameWith(document.name, COPY) }, this.copyRevision];
  }

  /** Remembers a quilt as the one that is open: in the browser, and in this window. */
  private remember(id: string): void {
    this.ofWindow.write(id);
    void this.storage.setLastOpen(id);
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

  /** Reads the list of kept projects again, and shows what another window has made of the open one. */
  async refresh(): Promise<void> {
    const list = await this.storage.list();
    if (!list.ok) {
      this.state.setState({ problem: list.problems[0] ?? null });
      return;
    }
    this.state.setState({ projects: list.value });
    await this.heed(list.value);
  }

  private async heed(projects: readonly ProjectSummary[]): Promise<void> {
    if (this.revision === 0 || !this.isStill()) return;
    const { id } = this.savedProject;
    const revision = projects.find((one) => one.id === id)?.revision;
    // It is saved anew, unless another window has removed it: that is refused and told.
    if (revision === undefined) this.autosave.changed(this.app.getState().project);
    if (!revision || revision === this.revision) return;
    const loaded = await this.storage.load(id);
    if (!loaded.ok || loaded.value.revision === this.revision || !this.isStill(id)) return;
    this.follow(loaded.value);
    this.app.getState().announce(phrase('Another window has changed this quilt. It is shown as it is now.'));
  }

  /** Whether nothing waits to be saved here, so that another state may be shown; and the open quilt is this one. */
  private isStill(id = this.savedProject.id): boolean {
    const { saving, conflict } = this.state.getState();
    const open = documentOf(this.app.getState());
    return saving === 'saved' && conflict === null && open === this.savedProject && open.id === id;
  }

  private follow({ project, revision, history, pictures }: StoredProject): void {
    this.savedProject = project;
    this.revision = revision;
    this.pictures.add(pictures);
    this.app.getState().follow(project, history);
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
    const other = await this.storage.load(this.app.getState().project.id);
    const gone = !other.ok && other.problems[0]?.code === 'no-such-project';
    if (!other.ok && (which === 'other' || !gone)) return other.problems;
    const mine = documentOf(this.app.getState());
    const { history } = this.app.getState();
    this.state.setState({ conflict: null });
    this.remember(mine.id);
    if (!other.ok) {
      this.revision = 0;
      await this.saveNow();
    } else {
      const { project, revision, pictures } = other.value;
      this.savedProject = project;
      this.revision = revision;
      this.pictures.add(pictures);
      const [from, to, steps] =
        which === 'this' ? [project, mine, other.value.history] : [mine, project, history];
      const label = which === 'this' ? 'Take the state of this window' : 'Take the state of the other window';
      this.app.getState().follow(to, record(steps, wholeChange(from, to, phrase(label))));
      await this.saveNow();
    }
    // Only once the other copy of it is saved; a new conflict has a copy of its own.
    return typeof this.state.getState().saving === 'string' ? this.remove(conflict.copy) : [];
  }

  /** Saves a quilt again that another window has removed. */
  async saveAgain(): Promise<readonly Problem[]> {
    this.revision = 0;
    await this.saveNow();
    const { problem } = this.state.getState();
    return problem ? [problem] : [];
  }

  /** Whether closing the page now would lose work. */
  isAtRisk(): boolean {
    const isFiled = documentOf(this.app.getState()) === this.filedProject;
    if (this.storage.keeps) return typeof this.state.getState().saving !== 'string' && !isFiled;
    return this.lost || (this.isChanged() && !isFiled);
  }

  private isChanged(): boolean {
    return documentOf(this.app.getState()) !== this.openedProject;
  }

  /** Notes that the open quilt was saved to a file. */
  filed(): void {
    this.filedProject = documentOf(this.app.getState());
    // For who asks whether work is at risk.
    this.state.setState({});
  }

  /** Takes away what was told. */
  heard(): void {
    this.state.setState({ told: [] });
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
    if (typeof saving === 'string' || !this.storage.keeps) return [];
    // One that another window removed comes back as a copy at the next visit.
    return saving.problem.code === 'removed-elsewhere' ? [] : [saving.problem];
  }

  private show(
    project: Project,
    revision: number,
    pictures: Pictures,
    remarks: readonly Phrase[],
    history = EMPTY_HISTORY,
  ): void {
    this.lost ||= !this.storage.keeps && this.isAtRisk();
    this.autosave.stop();
    this.savedProject = project;
    this.openedProject = project;
    this.revision = revision;
    this.autosave = this.makeAutosave();
    this.state.setState({
      saving: 'saved',
      conflict: null,
      problem: this.storage.keeps ? null : this.notKept,
      damaged: null,
      remarks,
    });
    // Those of the quilt that was open go once the other is on show.
    this.pictures.add(pictures);
    this.app.getState().open(project, history);
    this.pictures.replace(pictures);
    if (remarks.length > 0) this.app.getState().announce(remarks[0]!);
    this.remember(project.id);
  }

  private async saveNow(): Promise<void> {
    this.autosave.changed(this.app.getState().project);
    await this.flush();
  }
}

// Saves the open quilt as it changes, and follows what other windows make of it: against which revision it is saved, as which copy where
// another window has changed it too, and whether work would be lost. Which quilt is open is the session's (session.ts).
import type { StoreApi } from 'zustand/vanilla';
import type { History } from '../../editing/history';
import { nameWith } from '../../model/name';
import { phrase } from '../../model/phrase';
import type { Project } from '../../model/project';
import type { Problem, Result } from '../../model/result';
import { type AppStore, documentOf } from '../app';
import type { WindowNote } from '../firstQuilt';
import { createPicturesAtHand } from '../picturesAtHand';
import { type Autosave, type AutosaveState, createAutosave } from '../storage/autosave';
import type { ProjectStorage, StoredProject } from '../storage/storage';
import type { ProjectSummary } from '../storage/summary';
import type { TakenState } from './conflict';
import type { SessionState } from './sessionState';

/** Milliseconds from a change to its saving: what was on screen a third of a second ago survives a crash. */
const SAVE_DELAY = 150;
/** What the name of this window's copy ends in. */
const COPY = ' (of this window)';
const CLEARED = 'The quilts saved in this browser were cleared, not by Wedgewall. This one is saved again.';

/** What there is to save, and where. */
export interface Kept {
  readonly app: AppStore;
  readonly state: StoreApi<SessionState>;
  readonly storage: ProjectStorage;
  readonly freshId: () => string;
  /** The open quilt as it was opened. */
  readonly first: Pick<StoredProject, 'revision' | 'pictures'>;
  readonly ofWindow: WindowNote;
}

export class Saving {
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

  readonly app: AppStore;
  readonly state: StoreApi<SessionState>;
  protected readonly storage: ProjectStorage;
  protected readonly freshId: () => string;
  private readonly ofWindow: WindowNote;

  constructor({ app, state, storage, freshId, first, ofWindow }: Kept) {
    this.app = app;
    this.state = state;
    this.storage = storage;
    this.freshId = freshId;
    this.ofWindow = ofWindow;
    this.pictures = createPicturesAtHand(first.pictures);
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
    const { conflict, toTell } = this.state.getState();
    if (conflict) {
      if (this.copyRevision === 0) this.remember(conflict.copy);
      this.copyRevision = revision;
    } else {
      if (revision <= this.revision) this.state.setState({ toTell: [...toTell, phrase(CLEARED)] });
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

  /** Begins to save another quilt, which is about to be shown. */
  protected begin(project: Project, revision: number): void {
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
    });
  }

  /** Ends a conflict with the state that was taken, and saves it. */
  protected async settle({ over, project, history }: TakenState): Promise<void> {
    this.state.setState({ conflict: null });
    this.remember(project.id);
    if (over) this.follow(over, { project, history });
    else this.revision = 0;
    await this.saveNow();
  }

  /** Remembers a quilt as the one that is open: in the browser, and in this window. */
  protected remember(id: string): void {
    this.ofWindow.write(id);
    void this.storage.setLastOpen(id);
  }

  /** Saves unsaved changes. Returns why that failed, so that the project must stay open; an empty list when it succeeded. */
  protected async unsaved(): Promise<readonly Problem[]> {
    const saving = await this.flush();
    if (typeof saving === 'string' || !this.storage.keeps) return [];
    // One that another window removed comes back as a copy at the next visit.
    return saving.problem.code === 'removed-elsewhere' ? [] : [saving.problem];
  }

  protected async saveNow(): Promise<void> {
    this.autosave.changed(this.app.getState().project);
    await this.flush();
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

  /** Shows what the storage has now, or the state that was made of it. */
  private follow(saved: StoredProject, shown: Pick<StoredProject, 'project' | 'history'> = saved): void {
    this.savedProject = saved.project;
    this.revision = saved.revision;
    this.pictures.add(saved.pictures);
    this.app.getState().follow(shown.project, shown.history);
  }

  /** A state of the open project in the unit it was drawn in. */
  private asDrawn(project: Project): Project {
    return documentOf({ project, drawnIn: this.app.getState().drawnIn });
  }
}

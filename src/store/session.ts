// The session ties the app store to the storage: it knows which kept project is open, saves it as it changes, and opens and keeps
// others. Every failure is shown as a problem and never loses the open project.
import { createStore, type StoreApi } from 'zustand/vanilla';
import { openFile, openProject, type ReadableFile } from '../editing/openProject';
import { createProject } from '../model/create';
import { phrase } from '../model/phrase';
import type { Project } from '../model/project';
import type { Problem, Result } from '../model/result';
import { AnalysisClient } from './analysis/analysisClient';
import { type AppStore, createApp } from './app';
import { createSeeking } from './seeking';
import { createShuffling } from './shuffling';
import { type Autosave, type AutosaveState, createAutosave } from './storage/autosave';
import type { DamagedProject, Loaded, ProjectStorage, ProjectSummary } from './storage/storage';

/** A project that comes with the tool; its text is fetched when it is wanted. */
export interface Demo {
  readonly name: string;
  readonly text: () => Promise<string>;
}

export interface SessionState {
  readonly saving: AutosaveState;
  /** Something to tell beside the project's name; null when all is well. */
  readonly problem: Problem | null;
  readonly projects: readonly ProjectSummary[];
  /** A kept quilt that was to be opened and is damaged, with what is wrong; null when none is told of. */
  readonly damaged: (DamagedProject & { readonly problems: readonly Problem[] }) | null;
}

const SAVE_DELAY = 600;

/** Starts the session: the project last open, else the first demo that opens, else an empty project. `freshId` must never repeat. */
export async function startSession(
  storage: ProjectStorage,
  problem: Problem | null,
  demos: readonly Demo[],
  freshId: () => string,
) {
  const last = await storage.lastOpen();
  const kept = last.ok && last.value !== null ? await storage.load(last.value) : null;
  const first = kept?.ok
    ? { project: kept.value.project, revision: kept.value.revision }
    : await firstDemo(demos, freshId);
  const app = createApp(first.project);
  const session = createStore<SessionState>()(() => ({
    saving: 'saved',
    // A project that is gone (removed in another tab, never saved) is no news.
    problem:
      problem ??
      (kept && !kept.ok && !kept.damaged
        ? (kept.problems.find((one) => one.code !== 'no-such-project') ?? null)
        : null),
    projects: [],
    damaged: kept && damageOf(kept),
  }));
  return new Session(app, session, storage, demos, freshId, first.revision);
}

function damageOf(loaded: Loaded): SessionState['damaged'] {
  return loaded.ok || !loaded.damaged ? null : { ...loaded.damaged, problems: loaded.problems };
}

async function firstDemo(
  demos: readonly Demo[],
  freshId: () => string,
): Promise<{ project: Project; revision: number }> {
  const text = await demos[0]?.text();
  const opened = text === undefined ? null : openProject(text);
  return {
    project: opened?.ok
      ? { ...opened.value, id: freshId() }
      : createProject(freshId(), 'My first wedge quilt'),
    revision: 0,
  };
}

export class Session {
  /** What runs beside the page for the open quilt, whatever step is on show. */
  readonly shuffling: ReturnType<typeof createShuffling>;
  readonly seeking: ReturnType<typeof createSeeking>;
  readonly analysing = new AnalysisClient();
  private autosave: Autosave;
  private revision: number;
  private savedProject: Project;
  /** Why nothing is kept in this browser; null where it is. */
  private readonly notKept: Problem | null;

  constructor(
    readonly app: AppStore,
    readonly state: StoreApi<SessionState>,
    private readonly storage: ProjectStorage,
    readonly demos: readonly Demo[],
    private readonly freshId: () => string,
    revision: number,
  ) {
    this.shuffling = createShuffling(app);
    this.seeking = createSeeking(app);
    this.revision = revision;
    this.notKept = storage.keeps ? null : state.getState().problem;
    this.savedProject = app.getState().project;
    this.autosave = this.makeAutosave();
    app.subscribe((now, before) => {
      if (now.project !== before.project && now.project !== this.savedProject)
        this.autosave.changed(now.project);
    });
    void this.storage.setLastOpen(this.savedProject.id);
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
      leave: (project) => this.storage.leave(project, this.revision),
      onState: (saving) =>
        this.state.setState({
          saving,
          // Where nothing is kept, saving to memory is no reason to say that it is.
          problem: typeof saving === 'object' ? saving.problem : this.storage.keeps ? null : this.notKept,
        }),
    });
  }

  private async save(project: Project): Promise<Result<null>> {
    const saved = await this.storage.save(project, this.revision);
    if (!saved.ok) return saved;
    this.revision = saved.value;
    this.savedProject = project;
    void this.refresh();
    return { ok: true, value: null };
  }

  /** Saves what is not saved yet; before the page is left, or another project is opened. */
  flush(): Promise<AutosaveState> {
    return this.autosave.flush();
  }

  /** The page goes away; what is unsaved is noted for the next visit. See saveOnLeaving. */
  leave(): void {
    this.autosave.leave();
  }

  async refresh(): Promise<void> {
    const list = await this.storage.list();
    if (list.ok) this.state.setState({ projects: list.value });
    else this.state.setState({ problem: list.problems[0] ?? null });
  }

  /** Opens a kept project. The open one is saved first and stays open when the other cannot be opened. */
  async openKept(id: string): Promise<readonly Problem[]> {
    const unsaved = await this.unsaved();
    if (unsaved.length > 0) return unsaved;
    return this.openLoaded(await this.storage.load(id));
  }

  /** Gives up what is open here for the state another tab has kept. What was open stays in the other tab's history only. */
  async openOtherState(): Promise<readonly Problem[]> {
    return this.openLoaded(await this.storage.load(this.app.getState().project.id));
  }

  private openLoaded(loaded: Loaded): readonly Problem[] {
    if (loaded.ok) this.show(loaded.value.project, loaded.value.revision);
    else this.state.setState({ damaged: damageOf(loaded) });
    return loaded.ok ? [] : loaded.problems;
  }

  /** Opens a chosen project file as a project of its own. */
  async openFile(file: ReadableFile): Promise<readonly Problem[]> {
    return this.openOwn(await openFile(file));
  }

  private async openOwn(opened: Result<Project>): Promise<readonly Problem[]> {
    if (!opened.ok) return opened.problems;
    const unsaved = await this.unsaved();
    if (unsaved.length > 0) return unsaved;
    this.show({ ...opened.value, id: this.freshId() }, 0);
    await this.saveNow();
    return [];
  }

  async openDemo(demo: Demo): Promise<readonly Problem[]> {
    try {
      return await this.openOwn(openProject(await demo.text()));
    } catch {
      const message = phrase('The example {name} could not be fetched.', { name: demo.name });
      return [{ code: 'demo-missing', path: demo.name, message }];
    }
  }

  async openNew(name: string): Promise<readonly Problem[]> {
    const unsaved = await this.unsaved();
    if (unsaved.length > 0) return unsaved;
    this.show(createProject(this.freshId(), name), 0);
    this.app.getState().goTo('fabrics');
    await this.saveNow();
    return [];
  }

  /** Keeps the open project, unsaved changes and all, under another name and goes on with that. */
  async openCopy(name: string): Promise<readonly Problem[]> {
    return this.openAsCopy(this.app.getState().project, name);
  }

  /** Goes on with a project made from the open one (a colourway of it) as one of its own. */
  async openAsCopy(project: Project, name: string): Promise<readonly Problem[]> {
    await this.flush();
    this.show({ ...project, id: this.freshId(), name }, 0);
    await this.saveNow();
    return [];
  }

  /** Removes a kept project other than the open one. */
  async remove(id: string): Promise<readonly Problem[]> {
    const removed = await this.storage.remove(id);
    if (removed.ok && this.state.getState().damaged?.id === id) this.state.setState({ damaged: null });
    await this.refresh();
    return removed.ok ? [] : removed.problems;
  }

  /** Saves what waits. Where that fails the open project must stay open: why, else an empty list. */
  private async unsaved(): Promise<readonly Problem[]> {
    const saving = await this.flush();
    return typeof saving === 'string' || !this.storage.keeps ? [] : [saving.problem];
  }

  private show(project: Project, revision: number): void {
    this.autosave.stop();
    this.savedProject = project;
    this.revision = revision;
    this.autosave = this.makeAutosave();
    this.state.setState({
      saving: 'saved',
      problem: this.storage.keeps ? null : this.notKept,
      damaged: null,
    });
    this.app.getState().open(project);
    void this.storage.setLastOpen(project.id);
  }

  private async saveNow(): Promise<void> {
    this.autosave.changed(this.app.getState().project);
    await this.flush();
  }
}

// Has the balance computed in a worker. It asks for one balance at a time, the newest first, and never for one that nobody wants
// any more. When the worker cannot start or breaks, the page computes the balance itself, a little later.
import type { Effect, Proposal } from '../../arrange/mend/proposals';
import type { WedgeOffers } from '../../arrange/mend/wedgeOffers';
import type { Standing } from '../../balance/standing';
import type { Move } from '../../model/moves';
import { type Phrase, phrase } from '../../model/phrase';
import type { BlockId, Project } from '../../model/project';
import { inPage, type WorkerLike } from '../workers/protocol';
import { WorkerClient } from '../workers/workerClient';
import { type Balance, keepBalance, knownBalance } from './analysis';
import { type AnalysisJobs, type BalanceNews, seamsOf } from './analysisJobs';

/** The jobs that are about an earlier analysis. */
type Question = Exclude<keyof AnalysisJobs, 'analyse'>;

export class AnalysisClient {
  private readonly client: WorkerClient<AnalysisJobs>;
  /** The last project sent to the worker. */
  private sent: Project | null = null;
  private seams: Balance['seams'] | null = null;
  private busy = false;
  private readonly questions: (() => Promise<void>)[] = [];
  private readonly wanted: Project[] = [];
  private readonly failed = new WeakMap<Project, Phrase>();
  private readonly numbers = new WeakMap<Project, number>();
  private readonly listeners = new Set<() => void>();
  private last = 0;

  constructor(start: () => WorkerLike<AnalysisJobs> = newWorker) {
    this.client = new WorkerClient<AnalysisJobs>({
      start,
      explain: (reason) => (typeof reason === 'string' ? phrase('{reason}', { reason }) : reason),
      onStart: () => {
        this.sent = null;
      },
      standIn: () => inPage<AnalysisJobs>(async () => new (await import('./analyst')).Analyst()),
    });
  }

  /** Wants the balance of a sound project until the returned function is called; `knownBalance` then has it, or `reason`. */
  want(project: Project): () => void {
    this.wanted.push(project);
    this.next();
    return () => {
      const at = this.wanted.lastIndexOf(project);
      if (at >= 0) this.wanted.splice(at, 1);
    };
  }

  /** Why the balance of a project could not be computed; null unless it failed. */
  reason(project: Project): Phrase | null {
    return this.failed.get(project) ?? null;
  }

  /** Calls back when a balance has arrived or failed, until the returned function is called. */
  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };

  /** Proposals to mend a finding; null when the worker failed. */
  proposals(project: Project, finding: string): Promise<readonly Proposal[] | null> {
    return this.question('propose', project, (about) => ({ about, finding }));
  }

  /** The effect of moves on a project whose balance is known; null when the worker failed. */
  effect(project: Project, moves: readonly Move[]): Promise<Effect | null> {
    return this.question('effect', project, (about) => ({ about, moves }));
  }

  /**
   * How a project whose balance is known would stand after moves; null when the worker failed, or when it is not `wanted` any more
   * by the time it would be asked.
   */
  standing(project: Project, moves: readonly Move[], wanted: () => boolean): Promise<Standing | null> {
    return this.question('standing', project, (about) => ({ about, moves }), wanted);
  }

  /** The wedges that could lie in a place of a block, from 0; null when the worker failed. */
  offers(project: Project, block: BlockId, place: number): Promise<WedgeOffers | null> {
    return this.question('offers', project, (about) => ({ about, block, place }));
  }

  private question<K extends Question>(
    job: K,
    project: Project,
    ask: (about: number) => AnalysisJobs[K]['ask'],
    wanted: () => boolean = () => true,
  ): Promise<AnalysisJobs[K]['answer'] | null> {
    return new Promise((heard) => {
      this.questions.push(async () => heard(wanted() ? await this.askAbout(job, project, ask) : null));
      this.next();
    });
  }

  /** Asks a question about an analysis; if the worker has dropped that analysis, it is computed again first. */
  private async askAbout<K extends Question>(
    job: K,
    project: Project,
    ask: (about: number) => AnalysisJobs[K]['ask'],
    again = false,
  ): Promise<AnalysisJobs[K]['answer'] | null> {
    const about = this.numbers.get(project) ?? 0;
    const outcome = await this.client.ask(job, () => ask(about));
    if (!outcome?.ok) return null;
    if (outcome.value !== null || again) return outcome.value;
    await this.analyse(project);
    return this.askAbout(job, project, ask, true);
  }

  /** Begins the next work: analyses first, because questions are about them. */
  private next(): void {
    if (this.busy) return;
    const project = this.wanted.findLast((one) => !knownBalance(one) && !this.failed.has(one));
    const work = project ? () => this.analyse(project) : this.questions.shift();
    if (!work) return;
    this.busy = true;
    void work().finally(() => {
      this.busy = false;
      this.next();
    });
  }

  private async analyse(project: Project): Promise<void> {
    this.last += 1;
    const analysis = this.last;
    const outcome = await this.client.ask('analyse', () => {
      const parts = partsSince(this.sent, project);
      this.sent = project;
      return { analysis, parts };
    });
    if (outcome?.ok) {
      this.numbers.set(project, analysis);
      this.keep(project, outcome.value);
    } else if (outcome) this.failed.set(project, outcome.problems[0]!.message);
    for (const listener of this.listeners) listener();
  }

  private keep(project: Project, { seams, ...figures }: BalanceNews): void {
    this.seams = seams ? seamsOf(seams) : this.seams;
    if (!this.seams) throw new Error('keep: the first answer has no seams');
    if (!knownBalance(project)) keepBalance({ ...figures, project, seams: this.seams });
  }
}

/** Returns the parts of a project that differ from the project sent before. */
function partsSince(sent: Project | null, project: Project): Partial<Project> {
  if (!sent) return project;
  const keys = Object.keys({ ...sent, ...project }) as (keyof Project)[];
  return Object.fromEntries(
    keys.filter((key) => sent[key] !== project[key]).map((key) => [key, project[key]]),
  );
}

function newWorker(): WorkerLike<AnalysisJobs> {
  return new Worker(new URL('./analysisWorker.ts', import.meta.url), { type: 'module' });
}

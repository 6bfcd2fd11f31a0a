// Has the balance worked out beside the page: what is wanted is asked for one at a time, the newest first; what is no longer
// wanted is never asked for. A worker that cannot start or breaks is stood in for by the page itself, a little later.
import type { Effect, Proposal } from '../../arrange/mend/proposals';
import type { WedgeOffers } from '../../arrange/mend/wedgeOffers';
import { printMix } from '../../cloth/print/printMix';
import type { Move } from '../../model/moves';
import type { BlockId, Project } from '../../model/project';
import { type Balance, keepBalance, knownBalance } from './analysis';
import type { BalanceNews, FromAnalyst, ToAnalyst } from './analysisMessages';
import { Analyst } from './analyst';

/** The part of a Worker that is used. */
export interface AnalysisWorker {
  onmessage: ((event: MessageEvent<FromAnalyst>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  postMessage(message: ToAnalyst): void;
  terminate(): void;
}

interface Asked {
  readonly message: ToAnalyst;
  readonly heard: (answer: FromAnalyst) => void;
}

type Ask = (number: number, about: number) => ToAnalyst;

/** A question that waits; what it is about may have to be analysed first. */
interface Question {
  readonly project: Project;
  readonly ask: Ask;
  readonly heard: (answer: FromAnalyst) => void;
  /** It was asked once and the analysis was gone. */
  readonly again?: boolean;
}

export class AnalysisClient {
  private worker: AnalysisWorker | null = null;
  private sent: Project | null = null;
  private seams: Balance['seams'] | null = null;
  private asked: Asked | null = null;
  private readonly questions: Question[] = [];
  private readonly wanted: Project[] = [];
  /** A project whose analysis has made room for later ones and is asked about again. */
  private renewed: Project | null = null;
  private readonly failed = new WeakMap<Project, string>();
  private readonly numbers = new WeakMap<Project, number>();
  private readonly listeners = new Set<() => void>();
  private last = 0;

  constructor(private readonly makeWorker: () => AnalysisWorker = newWorker) {}

  /** Asks for the balance of a sound project until the returned function is called. See `knownBalance` and `reason`. */
  want(project: Project): () => void {
    this.wanted.push(project);
    this.next();
    return () => {
      const at = this.wanted.lastIndexOf(project);
      if (at >= 0) this.wanted.splice(at, 1);
    };
  }

  /** Why the balance of a project could not be worked out; null unless it failed. */
  reason(project: Project): string | null {
    return this.failed.get(project) ?? null;
  }

  /** Calls back when a balance has come or failed. */
  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };

  /** Ways to mend a finding; null when that failed. */
  async proposals(project: Project, finding: string): Promise<readonly Proposal[] | null> {
    const answer = await this.question(project, (number, about) => ({
      kind: 'propose',
      number,
      about,
      finding,
    }));
    return answer.kind === 'proposals' ? answer.proposals : null;
  }

  /** What moves would do to a project whose balance is known; null as above. */
  async effect(project: Project, moves: readonly Move[]): Promise<Effect | null> {
    const answer = await this.question(project, (number, about) => ({
      kind: 'effect',
      number,
      about,
      moves,
    }));
    return answer.kind === 'effect' ? answer.effect : null;
  }

  /** The wedges that could lie in a place of a block; null as above. */
  async offers(project: Project, block: BlockId, place: number): Promise<WedgeOffers | null> {
    const ask: Ask = (number, about) => ({ kind: 'offers', number, about, block, place });
    const answer = await this.question(project, ask);
    return answer.kind === 'offers' ? answer.offers : null;
  }

  private question(project: Project, ask: Ask): Promise<FromAnalyst> {
    return new Promise((heard) => {
      this.questions.push({ project, ask, heard });
      this.next();
    });
  }

  /** Analyses come before questions, which are about them. */
  private next(): void {
    if (this.asked) return;
    const wanted = this.wanted.findLast((one) => !knownBalance(one) && !this.failed.has(one));
    const first = wanted ?? this.renewed;
    if (!wanted) this.renewed = null;
    const asked = first ? this.analysing(first) : this.asking(this.questions.shift());
    if (!asked) return;
    this.asked = asked;
    try {
      this.worker ??= this.started(this.makeWorker());
      this.worker.postMessage(asked.message);
    } catch {
      this.standIn();
    }
  }

  private asking(question: Question | undefined): Asked | null {
    if (!question) return null;
    const { project, ask, heard } = question;
    this.last += 1;
    const again = (answer: FromAnalyst) => {
      if (answer.kind !== 'gone' || question.again) {
        heard(answer);
        return;
      }
      this.questions.unshift({ ...question, again: true });
      this.renewed = project;
    };
    return { message: ask(this.last, this.numbers.get(project) ?? -1), heard: again };
  }

  private analysing(project: Project): Asked {
    this.last += 1;
    const number = this.last;
    const parts = partsSince(this.sent, project);
    this.sent = project;
    const heard = (answer: FromAnalyst) => {
      if (answer.kind === 'balance') {
        this.numbers.set(project, number);
        this.keep(project, answer.news);
      } else this.failed.set(project, answer.kind === 'failed' ? answer.reason : answer.kind);
      for (const listener of this.listeners) listener();
    };
    return { message: { kind: 'analyse', number, parts }, heard };
  }

  private keep(project: Project, { seams, ...news }: BalanceNews): void {
    this.seams = seams
      ? { ...seams, cloths: { ...seams.cloths, clothOf: printMix }, radialMemo: new Map() }
      : this.seams;
    if (!this.seams) throw new Error('keep: the first answer has no seams');
    if (!knownBalance(project)) keepBalance({ ...news, project, seams: this.seams });
  }

  private started(worker: AnalysisWorker): AnalysisWorker {
    worker.onmessage = ({ data }) => {
      if (data.number !== this.asked?.message.number) return;
      const { heard } = this.asked;
      this.asked = null;
      heard(data);
      this.next();
    };
    worker.onerror = () => this.standIn();
    return worker;
  }

  /** Goes on without a worker; what it was asked is asked again. */
  private standIn(): void {
    this.worker?.terminate();
    this.worker = this.started(new AnalystHere());
    const { asked } = this;
    this.asked = null;
    this.sent = null;
    if (asked && asked.message.kind !== 'analyse') {
      asked.heard({ kind: 'gone', number: asked.message.number });
    }
    this.next();
  }
}

/** The analyst in the page itself: after the screen has had a turn. */
class AnalystHere implements AnalysisWorker {
  onmessage: ((event: MessageEvent<FromAnalyst>) => void) | null = null;
  onerror: ((event: ErrorEvent) => void) | null = null;
  private readonly analyst = new Analyst();

  postMessage(message: ToAnalyst): void {
    setTimeout(() => this.onmessage?.({ data: this.analyst.answer(message) } as MessageEvent<FromAnalyst>));
  }

  terminate(): void {
    this.onmessage = null;
  }
}

/** What of a project is not the same as in the one sent before. */
function partsSince(sent: Project | null, project: Project): Partial<Project> {
  if (!sent) return project;
  const keys = Object.keys({ ...sent, ...project }) as (keyof Project)[];
  return Object.fromEntries(
    keys.filter((key) => sent[key] !== project[key]).map((key) => [key, project[key]]),
  );
}

function newWorker(): AnalysisWorker {
  return new Worker(new URL('./analysisWorker.ts', import.meta.url), { type: 'module' });
}

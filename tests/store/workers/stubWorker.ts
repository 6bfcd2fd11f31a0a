// A worker the test speaks for. Whatever goes either way must be plain data, and goes through a clone as it would to a worker.
import {
  type Answers,
  answering,
  type FromWorker,
  type Jobs,
  type ToWorker,
  type WorkerLike,
} from '../../../src/store/workers/protocol';
import { notPlain } from './plainData';

/** What arrives on the other side. */
export function sent<Message>(message: Message): Message {
  const fault = notPlain(message);
  if (fault) throw new Error(`not plain data: ${fault}`);
  return structuredClone(message);
}

export class StubWorker<J extends Jobs<J>> implements WorkerLike<J> {
  onmessage: ((event: MessageEvent<FromWorker<J>>) => void) | null = null;
  onerror: ((event: ErrorEvent) => void) | null = null;
  onmessageerror: ((event: MessageEvent) => void) | null = null;
  readonly heard: ToWorker<J>[] = [];
  ended = false;

  postMessage(message: ToWorker<J>): void {
    this.heard.push(sent(message));
  }

  terminate(): void {
    this.ended = true;
  }

  /** The ask it heard last, of one job. */
  asked<K extends keyof J>(job: K): { readonly number: number; readonly ask: J[K]['ask'] } {
    const last = this.heard.findLast((one) => one.kind === 'ask');
    if (last?.kind !== 'ask' || last.job !== job) throw new Error(`${String(job)} was not asked for`);
    return last as { number: number; ask: J[K]['ask'] };
  }

  get stops(): number {
    return this.heard.filter((one) => one.kind === 'stop').length;
  }

  say(message: FromWorker<J>): void {
    this.onmessage?.({ data: sent(message) } as MessageEvent<FromWorker<J>>);
  }

  tell<K extends keyof J>(job: K, progress: J[K]['progress']): void {
    this.say({ kind: 'progress', number: this.asked(job).number, progress });
  }

  answer<K extends keyof J>(job: K, answer: J[K]['answer']): void {
    this.say({ kind: 'answer', number: this.asked(job).number, answer });
  }

  fail(job: keyof J, reason: string): void {
    this.say({ kind: 'failed', number: this.asked(job).number, reason });
  }

  break(message: string): void {
    this.onerror?.({ message } as ErrorEvent);
  }
}

/** Makes stub workers and keeps them, in the order they were started. */
export function stubs<J extends Jobs<J>>(): { workers: StubWorker<J>[]; start: () => StubWorker<J> } {
  const workers: StubWorker<J>[] = [];
  const start = () => {
    const worker = new StubWorker<J>();
    workers.push(worker);
    return worker;
  };
  return { workers, start };
}

/** A worker that does its jobs in this very thread as soon as the caller is done. */
export class WorkingStub<J extends Jobs<J>> extends StubWorker<J> {
  private readonly work: (message: ToWorker<J>) => void;

  constructor(answers: Answers<J>) {
    super();
    this.work = answering(answers, (message) => this.say(message));
  }

  override postMessage(message: ToWorker<J>): void {
    super.postMessage(message);
    const heard = this.heard.at(-1)!;
    queueMicrotask(() => this.work(heard));
  }
}

/** Lets promises settle. */
export function settled(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve));
}

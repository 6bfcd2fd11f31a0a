// The page's side of a worker: starts the worker at the first ask, has one ask at a time, and settles every ask. It replaces a
// worker that breaks, hangs or never starts once; then the ask fails with a reason. protocol.ts is the worker's side.
import { type Phrase, phrase } from '../../model/phrase';
import { failed, ok, type Result } from '../../model/result';
import { type FromWorker, type Jobs, reasonOf, type WorkerLike } from './protocol';

/** An answer, or a problem with code 'worker-failed', or null for an ask that was dropped. An ask settles once and never rejects. */
export type Settled<Answer> = Result<Answer> | null;

/** Work that is going on in a worker. */
export interface Running<Answer> {
  readonly answer: Promise<Settled<Answer>>;
  /** Ends the work; the answer is the result so far. */
  readonly stop: () => void;
  /** Ends the work at once, without an answer. */
  readonly cancel: () => void;
}

export interface WorkerOptions<J extends Jobs<J>> {
  readonly start: () => WorkerLike<J>;
  /** Words for the person on why there is no answer to a job. */
  readonly explain: (reason: string | Phrase, job: keyof J) => Phrase;
  /** Seconds without a message after which a working worker counts as hanging; WORK unless given. */
  readonly patience?: number;
  /** Called before a worker is started; the new worker knows nothing of earlier asks. */
  readonly onStart?: () => void;
  /** A substitute for a worker that broke twice; not for one that hung, because the page would hang as well. */
  readonly standIn?: () => WorkerLike<J>;
  /** Calls back every second until the returned function is called; tests pass one of their own. */
  readonly everySecond?: (tick: () => void) => () => void;
}

/** Seconds without a first message after which a worker counts as not started. */
const START = 10;
/** Seconds of patience: a part of the work on the largest wall (40 × 40 blocks) takes 1.5, on slow machines more. */
const WORK = 20;

const NOT_STARTED = phrase('its helper did not start');
const HANGS = phrase('its helper no longer answers');
const NOT_READ = phrase('a message could not be read');

interface Asked<J extends Jobs<J>> {
  readonly number: number;
  readonly job: keyof J;
  readonly ask: () => J[keyof J]['ask'];
  readonly hear: (progress: J[keyof J]['progress']) => void;
  readonly settle: (outcome: Settled<J[keyof J]['answer']>) => void;
}

interface Pending<J extends Jobs<J>> extends Asked<J> {
  /** Number of workers lost during this ask. */
  lost: number;
  stopping: boolean;
  /** Whether the worker has begun; and the seconds since its last message. */
  begun: boolean;
  quiet: number;
}

export class WorkerClient<J extends Jobs<J>> {
  private worker: WorkerLike<J> | null = null;
  private pending: Pending<J> | null = null;
  private number = 0;
  private closed = false;
  private endTicks: (() => void) | null = null;

  constructor(private readonly options: WorkerOptions<J>) {}

  /**
   * Asks for one job. `ask` is called when it is sent, and again for a new worker. An earlier ask that is still pending is
   * dropped together with its worker.
   */
  ask<K extends keyof J>(
    job: K,
    ask: () => J[K]['ask'],
    hear: (progress: J[K]['progress']) => void = () => {},
  ): Promise<Settled<J[K]['answer']>> {
    this.putAside();
    if (this.closed) return Promise.resolve(null);
    return new Promise((settle) => {
      this.number += 1;
      const asked = { number: this.number, job, ask, hear, settle } as Asked<J>;
      const pending = { ...asked, lost: 0, stopping: false, begun: false, quiet: 0 };
      this.pending = pending;
      this.endTicks = (this.options.everySecond ?? everySecond)(() => this.tick());
      this.send(pending);
    });
  }

  /** Tells the worker to answer with what it has so far. */
  stop(): void {
    if (!this.pending) return;
    this.pending.stopping = true;
    this.worker?.postMessage({ kind: 'stop', number: this.pending.number });
  }

  /** Ends the worker at once and for good; a pending ask and all later ones settle with null. */
  close(): void {
    this.closed = true;
    this.putAside();
    this.endWorker();
  }

  private send(pending: Pending<J>): void {
    const { number, job, ask } = pending;
    try {
      this.worker ??= this.started(this.options.start);
      this.worker.postMessage({ kind: 'ask', number, job, ask: ask() });
      if (pending.stopping) this.stop();
    } catch (error) {
      this.broken(reasonOf(error));
    }
  }

  private started(start: () => WorkerLike<J>): WorkerLike<J> {
    this.options.onStart?.();
    const worker = start();
    worker.onmessage = ({ data }) => this.hear(data);
    worker.onerror = ({ message }) => this.broken(message || NOT_STARTED);
    worker.onmessageerror = () => this.broken(NOT_READ);
    return worker;
  }

  private hear(message: FromWorker<J>): void {
    const { pending } = this;
    if (!pending || message.number !== pending.number) return;
    pending.begun = true;
    pending.quiet = 0;
    if (message.kind === 'progress') pending.hear(message.progress);
    else if (message.kind === 'answer') this.settle(ok(message.answer));
    else if (message.kind === 'failed') this.fail(message.reason);
  }

  /** Counts one second. While the page sleeps there are no ticks, so that those seconds do not count against the worker. */
  private tick(): void {
    const { pending } = this;
    if (!pending) return;
    pending.quiet += 1;
    if (pending.quiet < (pending.begun ? (this.options.patience ?? WORK) : START)) return;
    this.anew(pending.begun ? HANGS : NOT_STARTED, null);
  }

  private broken(reason: string | Phrase): void {
    this.anew(reason, this.options.standIn ?? null);
  }

  /** Sends the pending ask to a new worker after a first loss, to the substitute after a second, else fails. */
  private anew(reason: string | Phrase, standIn: (() => WorkerLike<J>) | null): void {
    this.endWorker();
    const { pending } = this;
    if (!pending) return;
    pending.lost += 1;
    pending.begun = false;
    pending.quiet = 0;
    if (pending.lost > 2 || (pending.lost > 1 && !standIn)) {
      this.fail(reason);
      return;
    }
    if (pending.lost > 1 && standIn) this.worker = this.started(standIn);
    this.send(pending);
  }

  private fail(reason: string | Phrase): void {
    const { pending } = this;
    if (pending) this.settle(failed('worker-failed', '', this.options.explain(reason, pending.job)));
  }

  /** Drops the pending ask together with its worker. */
  putAside(): void {
    if (!this.pending) return;
    this.endWorker();
    this.settle(null);
  }

  private settle(outcome: Settled<J[keyof J]['answer']>): void {
    this.endTicks?.();
    const { pending } = this;
    this.pending = null;
    pending?.settle(outcome);
  }

  private endWorker(): void {
    const { worker } = this;
    this.worker = null;
    if (!worker) return;
    worker.onmessage = null;
    worker.onerror = null;
    worker.onmessageerror = null;
    worker.terminate();
  }
}

function everySecond(tick: () => void): () => void {
  const ticks = setInterval(tick, 1000);
  return () => clearInterval(ticks);
}

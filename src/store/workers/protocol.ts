// What goes between the page and any of its workers: ask, then progress any number of times, then one answer or one failure;
// stop asks for the answer as it stands. This file owns the messages and the worker's side; workerClient.ts is the page's.
import type { Plain } from './plain';

/**
 * The jobs of a worker by name: what each is asked, what it tells on the way, what it answers. One type for both sides, which
 * fits only where everything is plain data.
 */
export type Jobs<J> = {
  readonly [K in keyof J]: {
    readonly ask: PlainPart<J[K], 'ask'>;
    readonly progress: PlainPart<J[K], 'progress'>;
    readonly answer: PlainPart<J[K], 'answer'>;
  };
};
type PlainPart<Job, Part extends string> =
  Job extends Readonly<Record<Part, infer Data>> ? Plain<Data> : never;

/** Asks are numbered; whatever is told of one bears its number, so that the answer to an older one is refused. */
export interface Ask<J extends Jobs<J>> {
  readonly kind: 'ask';
  readonly number: number;
  readonly job: keyof J;
  readonly ask: J[keyof J]['ask'];
}
export type ToWorker<J extends Jobs<J>> =
  | Ask<J>
  /** Answer with what there is so far. */
  | { readonly kind: 'stop'; readonly number: number };

export type FromWorker<J extends Jobs<J>> =
  /** The worker runs and has begun. */
  | { readonly kind: 'heard'; readonly number: number }
  | { readonly kind: 'progress'; readonly number: number; readonly progress: J[keyof J]['progress'] }
  | { readonly kind: 'answer'; readonly number: number; readonly answer: J[keyof J]['answer'] }
  | { readonly kind: 'failed'; readonly number: number; readonly reason: string };

/** The part of a Worker that is used. */
export interface WorkerLike<J extends Jobs<J>> {
  onmessage: ((event: MessageEvent<FromWorker<J>>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  onmessageerror: ((event: MessageEvent) => void) | null;
  postMessage(message: ToWorker<J>): void;
  terminate(): void;
}

/** What a job has at hand while it works. */
export interface AtWork<Progress> {
  readonly tell: (progress: Progress) => void;
  /**
   * Runs a generator to its end. Between its parts, of a few milliseconds each, messages are heard; `next(true)` tells it to
   * stop. `hear` gets every part, with `due` when it is time to tell how it stands: a job that tells nothing for long counts
   * as one that hangs.
   */
  readonly run: <Part, Outcome>(
    going: Generator<Part, Outcome, boolean>,
    hear: (part: Part, due: boolean) => void,
  ) => Promise<Outcome>;
}

/** How a worker does each of its jobs; whatever is thrown becomes a failure in the words of the error. */
export type Answers<J extends Jobs<J>> = {
  readonly [K in keyof J]: (
    ask: J[K]['ask'],
    work: AtWork<J[K]['progress']>,
  ) => J[K]['answer'] | Promise<J[K]['answer']>;
};

/** Milliseconds between two messages of progress: as often as a wall is worth drawing anew. */
const TELL_EVERY = 80;

/** Makes this worker answer; called once, in the worker's own file. */
export function serve<J extends Jobs<J>>(answers: Answers<J>): void {
  const hear = answering(answers, (message) => self.postMessage(message));
  self.onmessage = ({ data }: MessageEvent<ToWorker<J>>) => hear(data);
}

/** A worker in the page itself, which works after the screen has had a turn: for where no worker can be started. */
export function inPage<J extends Jobs<J>>(answers: Answers<J>): WorkerLike<J> {
  const hear = answering(answers, (data) => worker.onmessage?.({ data } as MessageEvent<FromWorker<J>>));
  const worker: WorkerLike<J> = {
    onmessage: null,
    onerror: null,
    onmessageerror: null,
    postMessage: (message) => setTimeout(() => hear(message)),
    terminate: () => {
      worker.onmessage = null;
    },
  };
  return worker;
}

/** The worker's side of the protocol: does what it hears and posts what there is to tell. */
export function answering<J extends Jobs<J>>(
  answers: Answers<J>,
  post: (message: FromWorker<J>) => void,
): (message: ToWorker<J>) => void {
  let stopped = 0;
  const answer = async (message: Ask<J>) => {
    const { number, job, ask } = message;
    try {
      post({ kind: 'heard', number });
      const work: AtWork<J[keyof J]['progress']> = {
        tell: (progress) => post({ kind: 'progress', number, progress }),
        run: (going, hear) => runInParts(going, hear, () => stopped === number),
      };
      post({ kind: 'answer', number, answer: await answers[job](ask, work) });
    } catch (error) {
      post({ kind: 'failed', number, reason: reasonOf(error) });
    }
  };
  return (message) => {
    if (message.kind === 'stop') stopped = message.number;
    else void answer(message);
  };
}

async function runInParts<Part, Outcome>(
  going: Generator<Part, Outcome, boolean>,
  hear: (part: Part, due: boolean) => void,
  stopped: () => boolean,
): Promise<Outcome> {
  const channel = new MessageChannel();
  let told = performance.now();
  try {
    for (;;) {
      const part = going.next(stopped());
      if (part.done) return part.value;
      const due = performance.now() - told >= TELL_EVERY;
      if (due) told = performance.now();
      hear(part.value, due);
      await otherTasks(channel);
    }
  } finally {
    channel.port1.close();
  }
}

/** Lets messages that wait be heard. A timer would sleep four milliseconds each time; a message does not. */
function otherTasks({ port1, port2 }: MessageChannel): Promise<void> {
  return new Promise((resolve) => {
    port1.onmessage = () => resolve();
    port2.postMessage(null);
  });
}

/** An error in words. */
export function reasonOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

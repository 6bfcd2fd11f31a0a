// The protocol between the page and its workers: the page sends an ask; the worker sends progress any number of times, then one
// answer or one failure. A stop requests the answer so far. This file owns the messages and the worker's side; workerClient.ts
// owns the page's side.
import type { Plain } from './plain';

/**
 * The jobs of a worker by name, each with its ask, its progress and its answer. Both sides share this type; it accepts plain
 * data only.
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

/** A numbered ask. Every message about it carries its number, so that an answer to an older ask is ignored. */
export interface Ask<J extends Jobs<J>> {
  readonly kind: 'ask';
  readonly number: number;
  readonly job: keyof J;
  readonly ask: J[keyof J]['ask'];
}
export type ToWorker<J extends Jobs<J>> =
  | Ask<J>
  /** The worker must answer with what it has so far. */
  | { readonly kind: 'stop'; readonly number: number };

export type FromWorker<J extends Jobs<J>> =
  /** The worker has begun with the ask. */
  | { readonly kind: 'heard'; readonly number: number }
  | { readonly kind: 'progress'; readonly number: number; readonly progress: J[keyof J]['progress'] }
  | { readonly kind: 'answer'; readonly number: number; readonly answer: J[keyof J]['answer'] }
  | { readonly kind: 'failed'; readonly number: number; readonly reason: string };

/** The members of a Worker that the client uses. */
export interface WorkerLike<J extends Jobs<J>> {
  onmessage: ((event: MessageEvent<FromWorker<J>>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  onmessageerror: ((event: MessageEvent) => void) | null;
  postMessage(message: ToWorker<J>): void;
  terminate(): void;
}

/** Functions that a job calls while it works. */
export interface AtWork<Progress> {
  /** Sends progress to the page. */
  readonly tell: (progress: Progress) => void;
  /**
   * Runs a generator to its end. Between its parts, of a few milliseconds at most, the worker receives messages; `next(true)`
   * tells the generator to stop. `hear` gets every part; `due` is true when it is time to send progress, because a job that
   * sends none for long counts as hanging.
   */
  readonly run: <Part, Outcome>(
    going: Generator<Part, Outcome, boolean>,
    hear: (part: Part, due: boolean) => void,
  ) => Promise<Outcome>;
}

/** One function for each job of a worker. An error that it throws becomes a failure with the error's message. */
export type Answers<J extends Jobs<J>> = {
  readonly [K in keyof J]: (
    ask: J[K]['ask'],
    work: AtWork<J[K]['progress']>,
  ) => J[K]['answer'] | Promise<J[K]['answer']>;
};

/** Milliseconds between two messages of progress; the page need not draw the wall more often. */
const TELL_EVERY = 80;

/** Milliseconds of work between two looks at messages; a generator may yield far more often. */
const LOOK_EVERY = 4;

/** Makes this worker answer its messages; called once, in the worker's own file. */
export function serve<J extends Jobs<J>>(answers: Answers<J>): void {
  const hear = answering(answers, (message) => self.postMessage(message));
  self.onmessage = ({ data }: MessageEvent<ToWorker<J>>) => hear(data);
}

/** A substitute that works in the page, after the screen has had a turn: for browsers that cannot start a worker. `load` has its code. */
export function inPage<J extends Jobs<J>>(load: () => Promise<Answers<J>>): WorkerLike<J> {
  const say = (data: FromWorker<J>) => worker.onmessage?.({ data } as MessageEvent<FromWorker<J>>);
  let coming: Promise<(message: ToWorker<J>) => void> | null = null;
  const take = async (message: ToWorker<J>) => {
    try {
      coming ??= load().then((answers) => answering(answers, say));
      (await coming)(message);
    } catch (error) {
      say({ kind: 'failed', number: message.number, reason: reasonOf(error) });
    }
  };
  const worker: WorkerLike<J> = {
    onmessage: null,
    onerror: null,
    onmessageerror: null,
    postMessage: (message) => setTimeout(() => void take(message)),
    terminate: () => {
      worker.onmessage = null;
    },
  };
  return worker;
}

/** The worker's side of the protocol: a function that receives messages, does their jobs and posts the answers. */
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
  let looked = told;
  try {
    for (;;) {
      const part = going.next(stopped());
      if (part.done) return part.value;
      const now = performance.now();
      const due = now - told >= TELL_EVERY;
      if (due) told = now;
      hear(part.value, due);
      if (now - looked < LOOK_EVERY) continue;
      await otherTasks(channel);
      looked = performance.now();
    }
  } finally {
    channel.port1.close();
  }
}

/** Lets the worker receive waiting messages. It posts a message instead of a timer, which would sleep four milliseconds. */
function otherTasks({ port1, port2 }: MessageChannel): Promise<void> {
  return new Promise((resolve) => {
    port1.onmessage = () => resolve();
    port2.postMessage(null);
  });
}

/** The message of an error, or of anything else that was thrown. */
export function reasonOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

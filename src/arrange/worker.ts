// The shell in which arranging runs beside the page: takes a project and a wish, tells how it stands, answers once. It yields
// after every few milliseconds, so that a stop is heard. Everything that decides is in shuffle.ts and alternatives.ts.
import { chooseAlternatives, tryingAlternatives } from './alternatives';
import type { FromWorker, ToWorker } from './messages';
import { arranging, type ShuffleProgress } from './shuffle';

/** Milliseconds between two messages of progress: as often as a wall is worth drawing anew. */
const TELL_EVERY = 80;

let stopped = false;
const channel = new MessageChannel();
const now = () => performance.now();

self.onmessage = (event: MessageEvent<ToWorker>) => {
  const message = event.data;
  if (message.kind === 'stop') stopped = true;
  else void answering(() => answerTo(message));
};

async function answerTo(message: Exclude<ToWorker, { kind: 'stop' }>): Promise<FromWorker> {
  if (message.kind === 'shuffle') return shuffle(message);
  if (message.kind === 'alternatives') return seek(message);
  const { project, wish, count, tries } = message;
  return { kind: 'found', alternatives: chooseAlternatives(project, wish, count, tries) };
}

/** Whatever goes wrong is said, never lost. */
async function answering(work: () => Promise<FromWorker>): Promise<void> {
  try {
    tell(await work());
  } catch (error) {
    tell({ kind: 'failed', reason: error instanceof Error ? error.message : String(error) });
  }
}

async function shuffle({ project, wish }: Extract<ToWorker, { kind: 'shuffle' }>): Promise<FromWorker> {
  let moves: ShuffleProgress['moves'] = null;
  const result = await run(arranging(project, wish, now), (progress, due) => {
    moves = progress.moves ?? moves;
    if (!due) return;
    tell({ kind: 'progress', progress: { ...progress, moves } });
    moves = null;
  });
  return { kind: 'done', result };
}

async function seek(message: Extract<ToWorker, { kind: 'alternatives' }>): Promise<FromWorker> {
  const { project, wish, count, share } = message;
  const tries = await run(tryingAlternatives(project, wish, count, share, now), (part, due) => {
    if (due) tell({ kind: 'share', share: part });
  });
  return { kind: 'tried', tries };
}

/** Runs a generator to its end, hearing messages in between; `due` is true when it is time to tell of it. */
async function run<Step, Outcome>(
  going: Generator<Step, Outcome, boolean>,
  hear: (step: Step, due: boolean) => void,
): Promise<Outcome> {
  let told = now();
  for (;;) {
    const step = going.next(stopped);
    if (step.done) return step.value;
    const due = now() - told >= TELL_EVERY;
    if (due) told = now();
    hear(step.value, due);
    await otherTasks();
  }
}

/** Lets messages that wait be heard. A timer would sleep four milliseconds each time; a message does not. */
function otherTasks(): Promise<void> {
  return new Promise((resolve) => {
    channel.port1.onmessage = () => resolve();
    channel.port2.postMessage(null);
  });
}

function tell(message: FromWorker): void {
  self.postMessage(message);
}

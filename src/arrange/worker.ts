// The shell in which a shuffle runs beside the page: takes a project and a wish, tells how it stands, answers once. It yields
// after every few milliseconds, so that a stop is heard. Everything that decides is in shuffle.ts.
import type { FromWorker, ToWorker } from './messages';
import { arranging, type ShuffleProgress } from './shuffle';

/** Milliseconds between two messages of progress: as often as a wall is worth drawing anew. */
const TELL_EVERY = 80;

let stopped = false;
const channel = new MessageChannel();

self.onmessage = (event: MessageEvent<ToWorker>) => {
  const message = event.data;
  if (message.kind === 'stop') stopped = true;
  else void shuffle(message);
};

async function shuffle({ project, wish }: Extract<ToWorker, { kind: 'shuffle' }>): Promise<void> {
  try {
    const going = arranging(project, wish, () => performance.now());
    let told = performance.now();
    let moves: ShuffleProgress['moves'] = null;
    for (;;) {
      const step = going.next(stopped);
      if (step.done) {
        answer({ kind: 'done', result: step.value });
        return;
      }
      moves = step.value.moves ?? moves;
      if (performance.now() - told >= TELL_EVERY) {
        told = performance.now();
        answer({ kind: 'progress', progress: { ...step.value, moves } });
        moves = null;
      }
      await otherTasks();
    }
  } catch (error) {
    answer({ kind: 'failed', reason: error instanceof Error ? error.message : String(error) });
  }
}

/** Lets messages that wait be heard. A timer would sleep four milliseconds each time; a message does not. */
function otherTasks(): Promise<void> {
  return new Promise((resolve) => {
    channel.port1.onmessage = () => resolve();
    channel.port2.postMessage(null);
  });
}

function answer(message: FromWorker): void {
  self.postMessage(message);
}

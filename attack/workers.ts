// Workers that end, hang, never start, or say what they should not, in any order: every ask is settled once, within bounded seconds, with
// an answer, a sentence or nothing; and Stop and Cancel always work.
import { phrase } from '../src/model/phrase';
import type { FromWorker } from '../src/store/workers/protocol';
import { type Settled, WorkerClient } from '../src/store/workers/workerClient';
import { dice } from '../tests/balance/tops';
import { StubWorker } from '../tests/store/workers/stubWorker';
import { type Chance, one } from './mutate';
import { sentencesOf } from './quilts';
import type { Try, Trying } from './tally';

interface CountJobs {
  readonly count: { readonly ask: number; readonly progress: number; readonly answer: string };
}

/** Seconds after which an ask must be settled, whatever its workers do: three of them may not start, or hang. */
const MOST_SECONDS = 100;

/** One client with one to five asks of workers that behave by chance. */
export const failingWorkers: Try = async (number, trying) => {
  const chance = dice(number);
  const workers: StubWorker<CountJobs>[] = [];
  const ticking = new Set<() => void>();
  const client = new WorkerClient<CountJobs>({
    start: () => {
      if (chance.below(8) === 0) throw new Error('no worker');
      const worker = new StubWorker<CountJobs>();
      workers.push(worker);
      return worker;
    },
    explain: (reason) => phrase('It failed: {reason}.', { reason }),
    everySecond: (tick) => {
      ticking.add(tick);
      return () => ticking.delete(tick);
    },
  });
  for (let left = 1 + chance.below(5); left > 0; left -= 1)
    await askOnce(client, workers, ticking, chance, trying);
  client.close();
  if (ticking.size > 0) trying.fault('it counts on after it was closed');
};

async function askOnce(
  client: WorkerClient<CountJobs>,
  workers: readonly StubWorker<CountJobs>[],
  ticking: ReadonlySet<() => void>,
  chance: Chance,
  trying: Trying,
): Promise<void> {
  const settled: Settled<string>[] = [];
  const answer = client.ask(
    'count',
    () => chance.below(100),
    () => {},
  );
  void answer.then((outcome) => settled.push(outcome));
  for (let second = 0; second < MOST_SECONDS && settled.length === 0; second += 1) {
    if (chance.below(3) === 0) disturb(client, workers, chance);
    for (const tick of ticking) tick();
    await Promise.resolve();
    await Promise.resolve();
  }
  // A worker that goes on telling for ever is at work: it is ended from the page.
  if (settled.length === 0) {
    client.putAside();
    await Promise.resolve();
    await Promise.resolve();
  }
  if (settled.length !== 1) trying.fault('an ask is never settled');
  const [outcome] = settled;
  if (outcome && !outcome.ok) trying.refused(sentencesOf(outcome.problems));
}

function disturb(
  client: WorkerClient<CountJobs>,
  workers: readonly StubWorker<CountJobs>[],
  chance: Chance,
): void {
  const worker = workers.at(-1 - chance.below(Math.max(1, workers.length)));
  const number = worker?.heard.findLast((one) => one.kind === 'ask')?.number ?? 0;
  const say = (message: FromWorker<CountJobs>) => worker?.say(message);
  const acts: readonly (() => void)[] = [
    () => say({ kind: 'heard', number }),
    () => say({ kind: 'progress', number, progress: 1 }),
    () => say({ kind: 'answer', number, answer: 'done' }),
    () => say({ kind: 'failed', number, reason: one(['', 'it broke', 'x'.repeat(120)], chance) }),
    () => say({ kind: 'answer', number: number + 7, answer: 'to nobody' }),
    () => say({ kind: 'none such', number } as unknown as FromWorker<CountJobs>),
    () => worker?.break(one(['', 'out of memory'], chance)),
    () => worker?.onmessageerror?.({} as MessageEvent),
    () => client.stop(),
    () => {
      if (chance.below(4) === 0) client.putAside();
    },
  ];
  one(acts, chance)();
}

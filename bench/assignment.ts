// The assignment engine on the published grids of QAPLIB: how surely and how soon it comes to the best cost known, on one core
// and on two; and what mending the table of swaps saves. `npx tsx bench/assignment.ts` runs it by itself.
import { fork } from 'node:child_process';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { type ReducedProblem, reduceAssignment, swapDelta } from '../src/arrange/assignment/problem';
import { solveAssignment } from '../src/arrange/assignment/solve';
import { SwapTable } from '../src/arrange/assignment/swapTable';
import { qaplib } from '../tests/arrange/qaplib';
import type { AssignmentShare } from './assignmentShare';
import type { BenchRow } from './row';

const SEEDS = 10;
const LONG_SEEDS = 3;

/** Tells each row when it is measured, and gives all of them in the end. About a minute and a half. */
export async function benchAssignment(report: (row: BenchRow) => void = () => {}): Promise<BenchRow[]> {
  const rows: BenchRow[] = [];
  const tell = (row: BenchRow) => {
    rows.push(row);
    report(row);
  };
  for (const name of ['nug12', 'nug14', 'nug15', 'nug20', 'nug25']) tell(surely(name, 2000));
  tell(surely('nug30', 3000, 500));
  tell(surely('sko42', 3000));
  tell(withinPercent('one core', await longRuns(1)));
  tell(withinPercent('two cores', await longRuns(2)));
  tell(mending());
  return rows;
}

/** All seeds to the published cost within the limit, and the median within `median`, milliseconds. */
function surely(name: string, limit: number, median = limit): BenchRow {
  const { problem, best, proved } = qaplib(name);
  const times: number[] = [];
  let reached = 0;
  for (let seed = 1; seed <= SEEDS; seed++) {
    const start = performance.now();
    const { cost } = solveAssignment({
      ...problem,
      seed,
      budget: { milliseconds: limit },
      now: () => performance.now(),
      target: best,
    });
    times.push(performance.now() - start);
    if (cost === best) reached++;
  }
  times.sort((one, other) => one - other);
  const middle = (times[SEEDS / 2 - 1]! + times[SEEDS / 2]!) / 2;
  return {
    name: `assignment ${name}: ${proved ? 'published optimum' : 'best cost known'}, ${best}`,
    toReach: `${SEEDS} of ${SEEDS} seeds, median ≤ ${median / 1000} s, each ≤ ${limit / 1000} s`,
    measured: `${reached} of ${SEEDS}, median ${seconds(middle)}, most ${seconds(times.at(-1)!)}`,
    ok: reached === SEEDS && middle <= median,
  };
}

interface LongRun {
  readonly percent: number;
  readonly iterations: number;
}

/** sko100a for ten seconds: on each core from a seed of its own, the better one counts. */
async function longRuns(cores: number): Promise<LongRun[]> {
  const runs: LongRun[] = [];
  for (let seed = 1; seed <= LONG_SEEDS; seed++) {
    const seeds = Array.from({ length: cores }, (_, core) => seed + 1000 * core);
    const answers = await Promise.all(seeds.map(onCoreOfItsOwn));
    const cost = Math.min(...answers.map((answer) => answer.cost));
    const iterations = answers.reduce((sum, answer) => sum + answer.iterations, 0);
    runs.push({ percent: 100 * (cost / qaplib('sko100a').best - 1), iterations });
  }
  return runs;
}

function onCoreOfItsOwn(seed: number): Promise<AssignmentShare> {
  return new Promise((resolve, reject) => {
    const share = fork(fileURLToPath(new URL('./assignmentShare.ts', import.meta.url)), [
      'sko100a',
      String(seed),
      '10000',
    ]);
    share.once('message', (message) => resolve(message as AssignmentShare));
    share.once('error', reject);
    share.once('exit', (code) => code && reject(new Error(`assignmentShare ended with ${code}`)));
  });
}

function withinPercent(where: string, runs: readonly LongRun[]): BenchRow {
  const iterations = runs.reduce((sum, run) => sum + run.iterations, 0) / runs.length;
  return {
    name: `assignment sko100a, 10 s on ${where}: above the best cost known`,
    toReach: `≤ 0.05 % on ${LONG_SEEDS} of ${LONG_SEEDS} seeds`,
    measured: `${runs.map((run) => run.percent.toFixed(3)).join(', ')} % (${Math.round(iterations / 1000)} thousand swaps)`,
    ok: runs.every((run) => run.percent <= 0.05),
  };
}

/** A swap made, all others weighed anew and the best one found: by the table, and by working each out in O(n). */
function mending(): BenchRow {
  const reduced = reduceAssignment(qaplib('sko100a').problem);
  const table = new SwapTable(reduced);
  table.load(Int32Array.from({ length: reduced.size }, (_, item) => item));
  const mended = () => {
    for (let count = 0; count < 200; count++) table.swap(count % 99, 99, count, 0);
  };
  let mend = Number.POSITIVE_INFINITY;
  let anew = Number.POSITIVE_INFINITY;
  for (let round = 0; round < 12; round++) {
    mend = Math.min(mend, milliseconds(mended) / 200);
    anew = Math.min(
      anew,
      milliseconds(() => weighAll(reduced, table.places)),
    );
  }
  return {
    name: 'assignment sko100a: all 4,950 swaps weighed after each swap, against one by one in O(n)',
    toReach: '≥ 30 ×',
    measured: `${(anew / mend).toFixed(0)} × (${(1 / mend).toFixed(0)} thousand swaps a second)`,
    ok: anew / mend >= 30,
  };
}

function weighAll(reduced: ReducedProblem, places: Int32Array): number {
  let least = Number.POSITIVE_INFINITY;
  for (let u = 0; u < reduced.size; u++) {
    for (let v = u + 1; v < reduced.size; v++) least = Math.min(least, swapDelta(reduced, places, u, v));
  }
  return least;
}

function milliseconds(job: () => void): number {
  const start = performance.now();
  job();
  return performance.now() - start;
}

function seconds(time: number): string {
  return `${(time / 1000).toFixed(3)} s`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  await benchAssignment((row) =>
    console.log(`${row.ok ? 'ok  ' : 'MISS'} ${row.name} | ${row.toReach} | ${row.measured}`),
  );
}

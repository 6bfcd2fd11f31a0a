// What is proved of the walls that people sew: the best of twelve blocks, and how far from it sixteen and twenty stand after a
// shuffle. `npx tsx bench/proof.ts 16 20` goes on with each of 20 walls of 16 blocks for 5 minutes and prints how far it comes.
import process from 'node:process';
import { provingFurther } from '../src/arrange/provingFurther';
import type { ShuffleWish } from '../src/arrange/shuffle';
import type { ArrangeResult } from '../src/arrange/verdict';
import type { Project } from '../src/model/project';
import { arrange } from '../tests/arrange/toTheEnd';
import { scrappyTop } from '../tests/balance/tops';
import type { BenchRow, Extent } from './row';

/** Walls, by extent. */
const TOPS = { sample: 4, all: 20 };
const WISH: ShuffleWish = {
  seed: 1,
  scopes: { swap: true, turn: true, shiftCorners: false, trade: false, strips: false },
  budget: { steps: 200_000 },
};
const SHAPES: Readonly<Record<number, readonly [rows: number, columns: number]>> = {
  12: [3, 4],
  16: [4, 4],
  20: [4, 5],
};

/** Milliseconds of this process at work: what others compute beside it does not count. */
function worked(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

interface Proved {
  readonly proved: boolean;
  /** Seconds from the shuffle's answer on. */
  readonly seconds: number;
  readonly points: number;
}

/** Shuffles, then searches on for so many seconds at most. */
function prove(project: Project, most: number): Proved {
  const found = arrange(project, WISH);
  const start = worked();
  const result = found.left ? searchOn(project, found, most) : found;
  const { verdict } = result;
  return {
    proved: verdict.kind === 'proved',
    seconds: (worked() - start) / 1000,
    points: verdict.kind === 'proved' ? 0 : 100 * verdict.by,
  };
}

function searchOn(project: Project, found: ArrangeResult, most: number): ArrangeResult {
  const going = provingFurther(project, WISH, found);
  const start = worked();
  for (;;) {
    const step = going.next(worked() - start > 1000 * most);
    if (step.done) return step.value;
  }
}

/** The figures of walls of 12 blocks: shuffle and proof together, as the person waits for them. */
export function benchProof(extent: Extent): BenchRow[] {
  const tops = TOPS[extent];
  const times: number[] = [];
  let proved = 0;
  for (let seed = 1; seed <= tops; seed++) {
    const start = worked();
    if (prove(scrappyTop({ rows: 3, columns: 4, seed }), 60).proved) proved += 1;
    times.push((worked() - start) / 1000);
  }
  const median = times.toSorted((one, other) => one - other)[tops / 2]!;
  return [
    {
      name: `${tops} walls of 12 blocks, turned and swapped, all terms: the best layout proved, with the shuffle before it`,
      toReach: `${tops} of ${tops}, median ≤ 10 s, each ≤ 60 s`,
      measured: `${proved} of ${tops}, median ${median.toFixed(1)} s, most ${Math.max(...times).toFixed(1)} s`,
      ok: proved === tops && median <= 10 && Math.max(...times) <= 60,
    },
  ];
}

function byHand([size, count]: readonly number[]): void {
  const [rows, columns] = SHAPES[size!] ?? [1, size!];
  for (let seed = 1; seed <= count!; seed++) {
    const { proved, seconds, points } = prove(scrappyTop({ rows, columns, seed }), 300);
    console.log(
      `${size} blocks, top ${seed}: ${proved ? 'proved' : `within ${points.toFixed(1)} points`} after ${seconds.toFixed(0)} s more`,
    );
  }
}

const asked = process.argv.slice(2).map(Number);
if (process.argv[1]?.endsWith('proof.ts') && asked.length === 2) byHand(asked);

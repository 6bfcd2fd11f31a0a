// What is proved of the walls that people sew: the best of twelve blocks, and how far from it larger ones stand after a shuffle.
// `npx tsx bench/proof.ts 16 20` goes on with each of 20 walls of 16 blocks for 5 minutes and prints how far it comes.
import process from 'node:process';
import { provingFurther } from '../src/arrange/provingFurther';
import { budgetFor } from '../src/arrange/search/effort';
import type { ShuffleWish } from '../src/arrange/shuffle';
import type { ArrangeResult } from '../src/arrange/verdict';
import type { Project } from '../src/model/project';
import { arrange } from '../tests/arrange/toTheEnd';
import { scrappyTop } from '../tests/balance/tops';
import type { BenchRow, Extent } from './row';

/** Walls, by extent. */
const TOPS = { sample: 4, all: 20 };
/** Larger walls, by extent. */
const WALLS = { sample: 2, all: 5 };
/** Walls of 80 blocks, each of which takes ten seconds. */
const LARGE = { sample: 1, all: 5 };
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

/** Walls of 12 blocks proved; how far from the best a shuffle is said to end on larger ones, and where wedges may be traded. */
export function benchProof(extent: Extent): BenchRow[] {
  const walls = WALLS[extent];
  return [
    twelveBlocks(TOPS[extent]),
    points({ size: 20, shape: SHAPES[20]!, most: 3, within: 2, walls }),
    points({
      size: 80,
      shape: [8, 10],
      most: 5,
      within: 10,
      walls: LARGE[extent],
      steps: budgetFor('short', 80).steps / 2,
    }),
    traded(walls),
  ];
}

/** Shuffle and proof together, as the person waits for them. */
function twelveBlocks(tops: number): BenchRow {
  const times: number[] = [];
  let proved = 0;
  for (let seed = 1; seed <= tops; seed++) {
    const start = worked();
    if (prove(scrappyTop({ rows: 3, columns: 4, seed }), 60).proved) proved += 1;
    times.push((worked() - start) / 1000);
  }
  const median = times.toSorted((one, other) => one - other)[tops / 2]!;
  return {
    name: `${tops} walls of 12 blocks, turned and swapped, all terms: the best layout proved, with the shuffle before it`,
    toReach: `${tops} of ${tops}, median ≤ 10 s, each ≤ 60 s`,
    measured: `${proved} of ${tops}, median ${median.toFixed(1)} s, most ${Math.max(...times).toFixed(1)} s`,
    ok: proved === tops && median <= 10 && Math.max(...times) <= 60,
  };
}

interface Gap {
  readonly size: number;
  readonly shape: readonly [rows: number, columns: number];
  readonly most: number;
  /** Seconds. */
  readonly within: number;
  readonly walls: number;
  /** Of the search, where it is not WISH's: of 80 blocks as many as one of two workers has for the shortest that is offered. */
  readonly steps?: number;
}

/** How far above the best a shuffle is at most, and how long that took to find out once the search was over. */
function points({ size, shape: [rows, columns], most, within, walls, steps }: Gap): BenchRow {
  const wish = steps === undefined ? WISH : { ...WISH, budget: { steps } };
  let sum = 0;
  let longest = 0;
  for (let seed = 1; seed <= walls; seed++) {
    let closing = 0;
    const { verdict } = arrange(scrappyTop({ rows, columns, seed }), wish, {
      onProgress: (progress) => {
        if (progress.closing && closing === 0) closing = worked();
      },
    });
    // Where the bound was ready before the search was over there is nothing to wait for.
    if (closing > 0) longest = Math.max(longest, (worked() - closing) / 1000);
    sum += verdict.kind === 'proved' ? 0 : 100 * verdict.by;
  }
  return {
    name: `${size} blocks, turned and swapped: points at most above the best possible, ${walls === 1 ? 'one wall' : `mean of ${walls} walls`}`,
    toReach: `≤ ${most} points, within ${within} s`,
    measured: `${(sum / walls).toFixed(1)} points, ${longest.toFixed(1)} s at most`,
    ok: sum / walls <= most && longest <= within,
  };
}

/** How much of the score stays unproved where wedges may be traded. */
function traded(walls: number): BenchRow {
  const shares = Array.from({ length: walls }, (_, at) => {
    const wish: ShuffleWish = { ...WISH, scopes: { ...WISH.scopes, trade: true } };
    const { after, bound } = arrange(scrappyTop({ rows: 4, columns: 5, seed: at + 1 }), wish);
    return 100 * (1 - bound / after.total);
  });
  return {
    name: `20 blocks, wedges traded: share of the score above its bound, ${walls} walls`,
    toReach: 'below 100 % each, ≤ 60 %',
    measured: shares.map((one) => `${one.toFixed(1)} %`).join(', '),
    ok: shares.every((one) => one <= 60),
  };
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

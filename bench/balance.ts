// The analyser's speed: time per block on walls of 20, 100 and 400 blocks, and re-analysis after one turn against a full
// analysis; and how much it has to say of tops nobody has arranged.
import { analyse, reanalyse } from '../src/balance/analyse';
import { type Move, moved } from '../src/model/moves';
import type { Project } from '../src/model/project';
import { scrappyTop } from '../tests/balance/tops';
import type { BenchRow, Extent } from './row';

/** By extent: rounds of which the least counts, and tops of whose findings the mean does. */
const COUNTS = { sample: { rounds: 6, tops: 10 }, all: { rounds: 15, tops: 30 } };

export function benchBalance(extent: Extent): BenchRow[] {
  const { rounds, tops } = COUNTS[extent];
  const walls = [[4, 5], [10, 10], [20, 20]].map(([rows, columns]) =>
    scrappyTop({ rows: rows!, columns: columns!, seed: 2 }),
  ); // biome-ignore format: a row
  return [...linearity(walls, rounds), ...afterChanges(walls[2]!, rounds), ...findings(tops)];
}

/** Least of several rounds, the walls in turn, so that a busy moment hits none alone. Milliseconds. */
function leastTimes(jobs: readonly (() => void)[], rounds: number): number[] {
  for (const job of jobs) job();
  const least = jobs.map(() => Number.POSITIVE_INFINITY);
  for (let round = 0; round < rounds; round++) {
    jobs.forEach((job, at) => {
      const start = performance.now();
      job();
      least[at] = Math.min(least[at]!, performance.now() - start);
    });
  }
  return least;
}

/** A fresh list of fabrics, so that nothing kept from the last round helps. */
function afresh(project: Project): Project {
  return { ...project, fabrics: [...project.fabrics] };
}

/** The cloth's colours are worked out once for a list of fabrics and kept: that part would flatter the larger walls. */
function linearity(walls: readonly Project[], rounds: number): BenchRow[] {
  const jobs = walls.map((project) => () => void analyse(project));
  const times = leastTimes(jobs, rounds);
  const perBlock = times.map((time, at) => time / walls[at]!.blocks.length);
  const pairs = [[1, 0], [2, 0], [2, 1]] as const; // biome-ignore format: a row
  return pairs.map(([at, than]) => {
    const ratio = perBlock[at]! / perBlock[than]!;
    return {
      name: `analysis, time per block at ${walls[at]!.blocks.length} against ${walls[than]!.blocks.length} blocks`,
      toReach: '≤ 1.5 ×',
      measured: `${ratio.toFixed(2)} × (${times[at]!.toFixed(1)} ms in all, ${times[than]!.toFixed(1)} ms)`,
      ok: ratio <= 1.5,
    };
  });
}

function afterChanges(project: Project, rounds: number): BenchRow[] {
  const before = analyse(project);
  const turn = (project.wall.cells[57]!.turn + 1) % 4;
  const changes: readonly (readonly [string, readonly Move[], number])[] = [
    ['one turn', [{ kind: 'turn', block: project.wall.cells[57]!.block, turn }], 0.1],
    ['one swap', [{ kind: 'swap', cell: 57, other: 301 }], 0.5],
  ];
  const after = changes.map(([, moves]) => moved(project, moves));
  // As when it is opened: a wall of another size between has its steps laid out anew too.
  const other = scrappyTop({ rows: 1, columns: 2, seed: 1 });
  const jobs = [
    () => {
      analyse(other);
      analyse(afresh(project));
    },
    ...after.map((changed) => () => void reanalyse(before, changed)),
  ];
  const [full, ...times] = leastTimes(jobs, rounds);
  return changes.map(([name, , most], at) => {
    const share = times[at]! / full!;
    return {
      name: `re-analysis after ${name} at 400 blocks against a full one`,
      toReach: `≤ ${most}`,
      measured: `${share.toFixed(3)} (${times[at]!.toFixed(1)} of ${full!.toFixed(1)} ms)`,
      ok: share <= most,
    };
  });
}

/** Random scrappy tops of 20 blocks must not drown in warnings; the same tops hung from dark to light must be told of. */
function findings(count: number): BenchRow[] {
  const tops = Array.from({ length: count }, (_, seed) =>
    scrappyTop({ rows: 4, columns: 5, seed: seed + 100 }),
  );
  const typical = tops.map((top) => analyse(top).findings.length);
  const bad = tops.map((top) => analyse(darkToLight(top)).findings.length);
  return [
    {
      name: `findings for a random scrappy top of 20 blocks, mean of ${count}`,
      toReach: '≤ 3',
      measured: spreadOf(typical),
      ok: mean(typical) <= 3,
    },
    {
      name: `findings for the same tops hung from dark to light, mean of ${count}`,
      toReach: 'more than at random',
      measured: spreadOf(bad),
      ok: mean(bad) > mean(typical),
    },
  ];
}

/** Spoilt on purpose: the darkest blocks in the first row, the lightest in the last. */
function darkToLight(top: Project): Project {
  const { lightness } = analyse(top).model;
  const order = top.blocks.map((block, at) => ({ id: block.id, light: lightness[at]! }));
  order.sort((one, other) => one.light - other.light);
  const cells = top.wall.cells.map((cell, at) => cell && { ...cell, block: order[at]!.id });
  return { ...top, wall: { ...top.wall, cells } };
}

function mean(counts: readonly number[]): number {
  return counts.reduce((sum, count) => sum + count, 0) / counts.length;
}

function spreadOf(counts: readonly number[]): string {
  const sorted = counts.toSorted((one, other) => one - other);
  return `${mean(counts).toFixed(1)} (from ${sorted[0]} to ${sorted.at(-1)}, median ${sorted[Math.floor(sorted.length / 2)]})`;
}

// The analyser's speed: time per block on walls of 20, 100 and 400 blocks, and re-analysis after one turn against a full
// analysis; and how much it has to say of tops nobody has arranged.
import { analyse, reanalyse } from '../src/balance/analyse';
import { type Move, moved } from '../src/model/moves';
import type { Project } from '../src/model/project';
import { scrappyTop } from '../tests/balance/tops';
import type { BenchRow } from './row';

const ROUNDS = 15;

export function benchBalance(): BenchRow[] {
  const walls = [[4, 5], [10, 10], [20, 20]].map(([rows, columns]) =>
    scrappyTop({ rows: rows!, columns: columns!, seed: 2 }),
  ); // biome-ignore format: a row
  return [...linearity(walls), ...afterChanges(walls[2]!), findings()];
}

/** Least of several rounds, the walls in turn, so that a busy moment hits none alone. Milliseconds. */
function leastTimes(jobs: readonly (() => void)[]): number[] {
  for (const job of jobs) job();
  const least = jobs.map(() => Number.POSITIVE_INFINITY);
  for (let round = 0; round < ROUNDS; round++) {
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

function linearity(walls: readonly Project[]): BenchRow[] {
  const times = leastTimes(walls.map((project) => () => void analyse(afresh(project))));
  const perBlock = times.map((time, at) => time / walls[at]!.blocks.length);
  return [1, 2].map((at) => {
    const ratio = perBlock[at]! / perBlock[0]!;
    return {
      name: `analysis, time per block at ${walls[at]!.blocks.length} against 20 blocks`,
      toReach: '≤ 1.5 ×',
      measured: `${ratio.toFixed(2)} × (${times[at]!.toFixed(1)} ms in all, ${times[0]!.toFixed(1)} ms at 20)`,
      ok: ratio <= 1.5,
    };
  });
}

function afterChanges(project: Project): BenchRow[] {
  const before = analyse(project);
  const turn = (project.wall.cells[57]!.turn + 1) % 4;
  const changes: readonly (readonly [string, readonly Move[], number])[] = [
    ['one turn', [{ kind: 'turn', block: project.wall.cells[57]!.block, turn }], 0.1],
    ['one swap', [{ kind: 'swap', cell: 57, other: 301 }], 0.5],
  ];
  const after = changes.map(([, moves]) => moved(project, moves));
  const [full, ...times] = leastTimes([
    () => void analyse(afresh(project)),
    ...after.map((changed) => () => void reanalyse(before, changed)),
  ]);
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

/** Random scrappy tops of 20 blocks must not drown in warnings. */
function findings(): BenchRow {
  const counts = Array.from(
    { length: 30 },
    (_, seed) => analyse(scrappyTop({ rows: 4, columns: 5, seed: seed + 100 })).findings.length,
  );
  const mean = counts.reduce((sum, count) => sum + count, 0) / counts.length;
  return {
    name: 'findings for a random scrappy top of 20 blocks, mean of 30',
    toReach: '≤ 3',
    measured: mean.toFixed(1),
    ok: mean <= 3,
  };
}

// Reading of blocks and walls from rendered pictures, against what is true of them. `npx tsx bench/photo.ts` runs it by itself;
// BENCH_PICTURES=300 measures so many blocks and a fifth as many walls (a sample unless given).
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import type { Project } from '../src/model/project';
import { atOnce } from '../src/model/work/parts';
import { findCorners } from '../src/photo/block/corners';
import { readBlock } from '../src/photo/block/readBlock';
import { knowledgeOf, type ReadBlock } from '../src/photo/block/readLook';
import { shapeOf } from '../src/photo/block/shape';
import { findGrid, type GridLaid } from '../src/photo/wall/grid';
import { cellsOf, likenessOf } from '../src/photo/wall/gridBy';
import { readWall } from '../src/photo/wall/readWall';
import { blockMarks, cornersOff, isGridFound } from '../tests/photo/render/marks';
import { blockShot, type WallShot, wallShot } from '../tests/photo/render/shots';
import type { BenchRow, Extent } from './row';

/** Pictures of blocks, by extent. */
const PICTURES = { sample: 6, all: Number(process.env.BENCH_PICTURES ?? 24) };
/** Pictures of the bench are others than those of the tests. */
const FIRST_SEED = 1000;
/** The first wall of ten rows and eight columns. */
const LARGE_WALL = 1027;

export async function benchPhoto(extent: Extent): Promise<BenchRow[]> {
  const count = PICTURES[extent];
  const share = sharesIn(extent);
  const large = extent === 'all' ? await times() : [];
  const wallCount = Math.max(2, Math.round(count / 5));
  return [...(await blocks(count, share)), ...(await walls(wallCount, share)), ...large];
}

type Share = (
  name: string,
  of: string,
  right: number,
  all: number,
  goal: number,
  beside?: string,
) => BenchRow;

/** Rows of shares. A sample is too small to have each share itself: it reaches the goal unless it is further below than chance makes it. */
function sharesIn(extent: Extent): Share {
  return (name, of, right, all, goal, beside = '') => {
    const percent = all === 0 ? 100 : (100 * right) / all;
    const measured = `${percent.toFixed(1)} % of ${all} ${of}${beside}`;
    const byChance = extent === 'sample' && atMostByChance(right, all, goal / 100) >= 0.05;
    const toReach = extent === 'sample' ? `≥ ${goal} %, or short of it by chance (p ≥ 0.05)` : `≥ ${goal} %`;
    return { name, toReach, measured, ok: percent >= goal || byChance };
  };
}

/** How likely at most so many of all are right where each is with this chance (binomial distribution). */
function atMostByChance(right: number, all: number, chance: number): number {
  let term = (1 - chance) ** all;
  let sum = term;
  for (let count = 1; count <= right; count += 1) {
    term *= (((all - count + 1) / count) * chance) / (1 - chance);
    sum += term;
  }
  return sum;
}

/** The same without the sets of the project. */
function without(right: number, all: number): string {
  return all === 0 ? '' : ` (by the fabrics alone ${((100 * right) / all).toFixed(1)} % of ${all})`;
}

async function blocks(count: number, share: Share): Promise<BenchRow[]> {
  const sums = { corners: 0, turns: 0, wedges: 0, rims: 0, sure: 0, sureRight: 0, bands: 0 };
  const alone = { ...sums };
  for (let seed = FIRST_SEED; seed < FIRST_SEED + count; seed += 1) {
    const shot = await blockShot(seed);
    const { wedge } = shot.project;
    const found = atOnce(findCorners(shot.pixels, shapeOf(wedge, wedge.outerSeam)));
    if (!found) continue;
    if (cornersOff(found.corners, shot.corners) <= 0.01) sums.corners += 1;
    const readBy = (project: Project) =>
      atOnce(readBlock(shot.pixels, found.corners, knowledgeOf(project), found.lens.bend))!;
    const { known } = readBy(shot.project);
    if (known?.number === shot.number && known.quarters === shot.quarters) sums.turns += 1;
    // Rims and bands are read as of a block that nobody knows: from fabrics and sets; and beside it from the fabrics alone.
    const strange = blockMarks(readBy({ ...shot.project, blocks: [] }), shot);
    const bare = blockMarks(readBy({ ...shot.project, blocks: [], stripSets: [] }), shot);
    for (const key of ['wedges', 'rims', 'sure', 'sureRight', 'bands'] as const) {
      sums[key] += strange[key];
      alone[key] += bare[key];
    }
  }
  return [
    share(
      'picture of a block: four corners found, within 1 % of its width',
      'pictures',
      sums.corners,
      count,
      95,
    ),
    share(
      'picture of a block: rim fabric right',
      'places',
      sums.rims,
      sums.wedges,
      97,
      without(alone.rims, alone.wedges),
    ),
    share(
      'picture of a block: rim fabric right where marked sure',
      'places',
      sums.sureRight,
      sums.sure,
      99.5,
    ),
    share(
      'picture of a block: bands of a wedge right in order',
      'wedges',
      sums.bands,
      sums.wedges,
      90,
      without(alone.bands, alone.wedges),
    ),
    share('picture of a block: known block and its turn', 'pictures', sums.turns, count, 99),
  ];
}

async function walls(count: number, share: Share): Promise<BenchRow[]> {
  let [grids, right, hung] = [0, 0, 0];
  for (let seed = FIRST_SEED; seed < FIRST_SEED + count; seed += 1) {
    const shot = await wallShot(seed);
    const grid = atOnce(findGrid(shot.pixels, shapeOf(shot.project.wedge, 0)));
    if (!grid || !isGridFound(grid, shot)) continue;
    grids += 1;
    const read = readOf(shot, grid);
    read.forEach((block, at) => {
      const truth = shot.cells[at];
      if (!truth) return;
      hung += 1;
      if (block?.known?.number === truth.number && block.known.quarters === truth.quarters) right += 1;
    });
  }
  return [
    share('picture of a wall: grid found, every cell within 2 %', 'pictures', grids, count, 90),
    share('picture of a wall: known blocks and their turns', 'blocks', right, hung, 99),
  ];
}

/** The blocks of a wall whose grid was found, by rows. */
function readOf({ pixels, project }: WallShot, grid: GridLaid): (ReadBlock | null)[] {
  const cells = cellsOf(grid, pixels, project.wedge);
  const likeness = atOnce(likenessOf(pixels, grid, project.wedge));
  return atOnce(readWall(pixels, { cells, likeness, bend: grid.bend }, knowledgeOf(project)));
}

/** Seconds of one core. */
function coreSeconds(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}

async function times(): Promise<BenchRow[]> {
  const shot = await blockShot(FIRST_SEED, 4000);
  const { wedge } = shot.project;
  const start = coreSeconds();
  const found = atOnce(findCorners(shot.pixels, shapeOf(wedge, wedge.outerSeam)))!;
  atOnce(readBlock(shot.pixels, found.corners, knowledgeOf(shot.project), found.lens.bend));
  const block = coreSeconds() - start;
  const wall = await wallShot(LARGE_WALL, 3600, [10, 8]);
  const before = coreSeconds();
  const grid = atOnce(findGrid(wall.pixels, shapeOf(wall.project.wedge, 0)));
  if (grid) readOf(wall, grid);
  const whole = coreSeconds() - before;
  const cells = wall.rows * wall.columns;
  return [
    {
      name: 'a picture of 12 to 16 megapixels to a block',
      toReach: '≤ 2 s of one core',
      measured: `${block.toFixed(1)} s`,
      ok: block <= 2,
    },
    {
      name: `a picture of a wall of ${cells} blocks`,
      toReach: '≤ 15 s of one core',
      measured: `${whole.toFixed(1)} s`,
      ok: whole <= 15,
    },
  ];
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  for (const { name, toReach, measured, ok } of await benchPhoto('all'))
    console.log(`${ok ? 'yes' : 'no '}  ${name}: ${measured} (${toReach})`);
}

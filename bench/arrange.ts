// The arranger's marks: moves a second against full recomputation and which term holds it up, the exhaustive optimum of small
// walls, the first good arrangement of 20 blocks, and how far the bound lies below what is found.

import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { decisionsOf } from '../src/arrange/decisions';
import { costTables } from '../src/arrange/live/costTables';
import { LiveWall } from '../src/arrange/live/liveWall';
import { contactsOf } from '../src/arrange/proof/contactTables';
import { spreadOf } from '../src/arrange/proof/spreadAssignment';
import { ALL_SCOPES } from '../src/arrange/score';
import { Search } from '../src/arrange/search/search';
import { StripOrders, withRoomForOne } from '../src/arrange/search/stripOrders';
import { termScales } from '../src/balance/score/termScales';
import { evaluateTerms } from '../src/balance/score/terms';
import { DEFAULT_WEIGHTS, TERM_NAMES, type Terms, weighted } from '../src/balance/score/weights';
import { wallModel } from '../src/balance/wall/wallModel';
import { clothTable } from '../src/cloth/cloths';
import type { Project } from '../src/model/project';
import { allPairs, leastOfAll } from '../tests/arrange/allPairs';
import { arrange, bestOf } from '../tests/arrange/toTheEnd';
import { dice, scrappyTop } from '../tests/balance/tops';
import type { BenchRow } from './row';

const AT_THE_WALL = { ...ALL_SCOPES, trade: false, strips: false };

export function benchArrange(): BenchRow[] {
  return [...movesASecond(), ...otherScopes(), ...sixBlocks(), ...twentyBlocks(), ...openTwenty()];
}

function deskFor(project: Project, scopes = AT_THE_WALL, weights: Terms = DEFAULT_WEIGHTS) {
  const model = wallModel(project, clothTable(project.fabrics));
  const scales = termScales(model);
  const tables = costTables(model, scales, weights);
  const decisions = decisionsOf(project, model, scopes);
  return { model, scales, tables, decisions, wall: new LiveWall(tables, decisions.spare) };
}

interface Timed {
  readonly calls: number;
  readonly job: (call: number) => void;
}

/** Least microseconds a call of several rounds, the jobs in turn, so that a busy moment hits none alone. */
function microseconds(jobs: readonly Timed[]): number[] {
  const least = jobs.map(() => Number.POSITIVE_INFINITY);
  for (let round = 0; round < 9; round++) {
    jobs.forEach(({ calls, job }, at) => {
      const start = performance.now();
      for (let call = 0; call < calls; call++) job(call);
      least[at] = Math.min(least[at]!, ((performance.now() - start) * 1000) / calls);
    });
  }
  return least;
}

/** Turns and exchanges in the share the search tries them. */
function evaluating({ wall, decisions }: ReturnType<typeof deskFor>): Timed {
  const random = dice(5);
  const { cells, turnable, orientations } = decisions;
  const plan = Array.from({ length: 3000 }, (_, at) => {
    const first = random.below(cells.length);
    return {
      cell: cells[first]!,
      other: cells[(first + 1 + random.below(cells.length - 1)) % cells.length]!,
      block: turnable[random.below(turnable.length)]!,
      turns: at % 3 === 0,
    };
  });
  const job = (call: number) => {
    const { cell, other, block, turns } = plan[call % plan.length]!;
    if (turns) {
      const was = wall.orientationOf[block]!;
      wall.turn(block, orientations[block]![call % orientations[block]!.length]!);
      wall.turn(block, was);
    } else {
      wall.swapCost(
        cell,
        other,
        wall.orientationOf[wall.blockIn[cell]!]!,
        wall.orientationOf[wall.blockIn[other]!]!,
      );
    }
  };
  return { calls: 20_000, job };
}

function movesASecond(): BenchRow[] {
  const project = scrappyTop({ rows: 20, columns: 20, seed: 3 });
  const desk = deskFor(project);
  const none = Object.fromEntries(TERM_NAMES.map((name) => [name, 0])) as Terms;
  const [full, step, contacts, noFabrics] = microseconds([
    { calls: 10, job: () => void weighted(evaluateTerms(desk.scales, desk.model), DEFAULT_WEIGHTS) },
    evaluating(desk),
    evaluating(deskFor(project, AT_THE_WALL, none)),
    evaluating(deskFor(project, AT_THE_WALL, { ...DEFAULT_WEIGHTS, fabricSpread: 0 })),
  ]) as [number, number, number, number];
  const ratio = full / step;
  const fabrics = Math.max(0, step - noFabrics);
  const share = (part: number) => `${Math.round((100 * part) / step)} %`;
  return [
    {
      name: 'moves evaluated a second against full recomputation, all terms, 400 blocks',
      toReach: '≥ 100 ×',
      measured:
        `${ratio.toFixed(0)} × (${Math.round(1000 / step)} thousand a second; ` +
        `${fabrics > contacts ? 'fabricSpread' : 'clashLength with lookAlikes'} limits it: fabricSpread takes ` +
        `${share(fabrics)} of a move, contacts and the rest of the walk ${share(contacts)})`,
      ok: ratio >= 100,
    },
  ];
}

/** Trades of wedges, and other orders of strips (each changes all wedges of its set), tried and not made. */
function otherScopes(): BenchRow[] {
  const project = scrappyTop({ rows: 20, columns: 20, seed: 3 });
  const desk = deskFor(project, ALL_SCOPES);
  const { wall, decisions, model } = desk;
  const random = dice(7);
  const places = decisions.tradable[0];
  const pairs = Array.from({ length: 3000 }, () => [
    places[random.below(places.length)]!,
    places[random.below(places.length)]!,
  ]) as [number, number][];
  const spare = new Int32Array(decisions.spare.length + 2);
  const roomy = new LiveWall(withRoomForOne(desk.tables), spare);
  const orders = new StripOrders(project, roomy, decisions.sets);
  const drawn = xoroshiro128plus(3);
  const full = { calls: 10, job: () => void weighted(evaluateTerms(desk.scales, model), DEFAULT_WEIGHTS) };
  let wedges = 0;
  let tries = 0;
  const [whole, trade, strips] = microseconds([
    full,
    { calls: 20_000, job: (call) => void wall.tradeCost(...pairs[call % pairs.length]!) },
    {
      calls: 300,
      job: () => {
        const tried = orders.tryOne(drawn);
        tries += 1;
        if (!tried) return;
        wedges += tried.wedges;
        orders.takeBack();
      },
    },
  ]) as [number, number, number];
  const row = (what: string, time: number, least: number, more = ''): BenchRow => ({
    name: `${what} evaluated a second against full recomputation, all terms, 400 blocks`,
    toReach: `≥ ${least} ×`,
    measured: `${(whole / time).toFixed(0)} × (${(1000 / time).toFixed(1)} thousand a second${more})`,
    ok: whole / time >= least,
  });
  return [
    row('trades of two wedges', trade, 100),
    row('other orders of strips', strips, 5, `, ${(wedges / tries).toFixed(1)} wedges changed by each`),
  ];
}

const WALLS = 100;
/** Walls whose optimum is also found by going through all 2,949,120 arrangements one by one. */
const ENUMERATED = 10;

function sixBlocks(): BenchRow[] {
  let bySearch = 0;
  let proved = 0;
  let enumerated = 0;
  for (let seed = 1; seed <= WALLS; seed++) {
    const project = scrappyTop({ rows: 3, columns: 2, seed, fabrics: 8 + (seed % 16), sets: 5 });
    const { tables, decisions, wall } = deskFor(project);
    const best = bestOf(contactsOf(tables, decisions), spreadOf(tables))!.cost;
    const search = new Search(wall, decisions, seed);
    while (search.steps < 30_000) search.advance(search.steps / 30_000);
    if (Math.abs(search.best.cost - best) < 1e-8) bySearch += 1;
    const result = arrange(project, { seed, scopes: AT_THE_WALL, budget: { steps: 30_000 } });
    if (result.verdict.kind === 'proved' && Math.abs(result.after.total - best) < 1e-8) proved += 1;
    if (seed <= ENUMERATED && Math.abs(leastOfAll(allPairs(project)).least - best) < 1e-8) enumerated += 1;
  }
  return [
    {
      name: `${WALLS} six-block walls: the best by the exact search, proved; ${ENUMERATED} of them by enumeration too`,
      toReach: `${WALLS} of ${WALLS}, and the same by enumeration`,
      measured: `${proved} of ${WALLS}; ${enumerated} of ${ENUMERATED} also gone through one by one`,
      ok: proved === WALLS && enumerated === ENUMERATED,
    },
    {
      name: `${WALLS} six-block walls: the optimum by the search alone, 30,000 steps`,
      toReach: `${WALLS} of ${WALLS}`,
      measured: `${bySearch} of ${WALLS}`,
      ok: bySearch === WALLS,
    },
  ];
}

/** Within this part of a top by chance of the best of a long search, an arrangement is good. */
const GOOD = 0.03;

function twentyBlocks(): BenchRow[] {
  const tops = [1, 2, 3, 4, 5].map((seed) => scrappyTop({ rows: 4, columns: 5, seed }));
  const chance = TERM_NAMES.reduce((sum, name) => sum + DEFAULT_WEIGHTS[name], 0);
  const times: number[] = [];
  const gaps: number[] = [];
  const ofScore: number[] = [];
  for (const project of tops) {
    const long = arrange(project, { seed: 9, scopes: AT_THE_WALL, budget: { steps: 1_000_000 } });
    const { bound, after } = long;
    gaps.push((after.total - bound) / chance);
    ofScore.push((after.total - bound) / after.total);
    times.push(timeToGood(project, after.total + GOOD * chance));
  }
  const median = times.toSorted((one, other) => one - other)[2]!;
  const mean = (parts: readonly number[]) => parts.reduce((sum, one) => sum + one, 0) / parts.length;
  return [
    {
      name: '20 blocks, all terms: first good arrangement (within 3 points of the best of a million steps)',
      toReach: '≤ 200 ms',
      measured: `median ${median.toFixed(0)} ms, most ${Math.max(...times).toFixed(0)} ms of five tops`,
      ok: median <= 200,
    },
    {
      name: '20 blocks, all terms: gap between the bound and what is found',
      toReach: 'a bound above 0, reported',
      measured: `${(100 * mean(gaps)).toFixed(1)} points (${(100 * mean(ofScore)).toFixed(0)} % of the score), mean of five tops`,
      ok: gaps.every((gap) => gap >= 0 && gap < 1),
    },
  ];
}

/** The bound where wedges may be traded: with all blocks open, and with every second one sewn in its row. */
function openTwenty(): BenchRow[] {
  const chance = TERM_NAMES.reduce((sum, name) => sum + DEFAULT_WEIGHTS[name], 0);
  return [false, true].map((sewn) => {
    const results = [1, 2, 3].map((seed) => {
      const project = scrappyTop({ rows: 4, columns: 5, seed });
      project.blocks.forEach((block, at) => {
        if (sewn && at % 2 === 1) block.progress = 'joined';
      });
      const scopes = { ...AT_THE_WALL, trade: true };
      return arrange(project, { seed: 9, scopes, budget: { steps: 400_000 } });
    });
    const points = results.map(({ after, bound }) => (100 * (after.total - bound)) / chance);
    const mean = points.reduce((sum, one) => sum + one, 0) / points.length;
    const bound = results.reduce((sum, one) => sum + one.bound, 0) / results.length;
    return {
      name: `20 blocks, wedges traded too${sewn ? ', every second block in its row' : ''}: gap between the bound and what is found`,
      toReach: 'reported',
      measured: `${mean.toFixed(1)} points, bound ${bound.toFixed(2)}, mean of three tops`,
      ok: points.every((one) => one >= -1e-7),
    };
  });
}

/** Milliseconds from asking until the search of a budget of five seconds tells of a score this good. */
function timeToGood(project: Project, good: number): number {
  const start = performance.now();
  let found = Number.POSITIVE_INFINITY;
  arrange(
    project,
    { seed: 4, scopes: AT_THE_WALL, budget: { milliseconds: 5000 } },
    {
      now: () => performance.now(),
      shouldStop: () => found < Number.POSITIVE_INFINITY,
      onProgress: ({ best }) => {
        if (best <= good) found = Math.min(found, performance.now() - start);
      },
    },
  );
  return found;
}

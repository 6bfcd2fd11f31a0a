import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { eigenvaluesOf } from '../../../src/arrange/branch/eigenvalues';
import { nearestToMean, type Rest, restOf } from '../../../src/arrange/choices/blockOfTrades';
import { leastOfTwo, leastSquare } from '../../../src/arrange/choices/leastOfTwo';
import type { WedgesOfTip } from '../../../src/arrange/choices/wedgeSums';
import { decisionsOf, type Scopes } from '../../../src/arrange/decisions';
import { type CostTables, costTables, FIRST_FABRIC } from '../../../src/arrange/live/costTables';
import { firstAdditive } from '../../../src/arrange/live/tradePrices';
import { leastSeams } from '../../../src/arrange/proof/seamTransport';
import { kernelTable } from '../../../src/arrange/proof/spreadAssignment';
import { timesCounted, tradeBound } from '../../../src/arrange/proof/tradeBound';
import { type Form, weightsUnder } from '../../../src/arrange/proof/weightsUnder';
import { termScales } from '../../../src/balance/score/termScales';
import { evaluateTerms } from '../../../src/balance/score/terms';
import { DEFAULT_WEIGHTS, type Terms, weighted } from '../../../src/balance/score/weights';
import { wallModel } from '../../../src/balance/wall/wallModel';
import { clothTable } from '../../../src/cloth/cloths';
import { wedgeLedger } from '../../../src/cutting/wedges/ledger';
import type { Place, Project } from '../../../src/model/project';
import { dice, scrappyTop } from '../../balance/tops';
import { runs } from '../../runs';
import { ruledTop } from '../awkwardTop';
import { arrange } from '../toTheEnd';

const NONE: Scopes = { swap: false, turn: false, shiftCorners: false, trade: false, strips: false };

function ended<T>(going: Generator<void, T>): T {
  for (;;) {
    const step = going.next();
    if (step.done) return step.value;
  }
}

function floorOf(project: Project, scopes: Scopes, weights: Terms = DEFAULT_WEIGHTS): number {
  const model = wallModel(project, clothTable(project.fabrics));
  const tables = costTables(model, termScales(model), weights);
  return ended(tradeBound(project, tables, decisionsOf(project, model, scopes)));
}

/** Scores of a project against the scales it had at first. */
function judge(project: Project): (now: Project) => number {
  const model = wallModel(project, clothTable(project.fabrics));
  const scales = termScales(model);
  return (now) => weighted(evaluateTerms(scales, wallModel(now, model.cloths)), DEFAULT_WEIGHTS);
}

/** Two blocks of six wedges side by side in few cloths, the second one sewn, with a wedge or two to spare. */
function smallTop(seed: number): Project {
  const project = scrappyTop({ rows: 1, columns: 2, seed, perBlock: 6, fabrics: 4, sets: 3 });
  project.blocks[1]!.progress = seed % 2 === 0 ? 'joined' : 'octagon';
  const random = dice(seed);
  for (const row of wedgeLedger(project)) {
    row.set.cut = { up: row.used.up + random.below(2), down: row.used.down + random.below(2) };
  }
  return project;
}

/** The least score over every way to lay the wedges that are there in the first block, and every turn of it. */
function bestTrade(project: Project): number {
  const score = judge(project);
  const first = project.blocks[0]!;
  const left = new Map<string, number>();
  for (const { set, left: more } of wedgeLedger(project)) {
    left.set(`${set.id} up`, more.up).set(`${set.id} down`, more.down);
  }
  for (const place of first.places) left.set(keyOf(place!), left.get(keyOf(place!))! + 1);
  let least = Number.POSITIVE_INFINITY;
  const lay = (places: Place[]) => {
    if (places.length === first.places.length) {
      for (const turn of [0, 1]) {
        const cells = project.wall.cells.map((cell, at) => (at === 0 ? { ...cell!, turn } : cell));
        const blocks = [{ ...first, places }, ...project.blocks.slice(1)];
        least = Math.min(least, score({ ...project, blocks, wall: { ...project.wall, cells } }));
      }
      return;
    }
    for (const set of project.stripSets) {
      const wedge: Place = { set: set.id, tip: first.places[places.length]!.tip };
      const there = left.get(keyOf(wedge))!;
      if (there === 0) continue;
      left.set(keyOf(wedge), there - 1);
      lay([...places, wedge]);
      left.set(keyOf(wedge), there);
    }
  };
  lay([]);
  return least;
}

function keyOf(place: Place): string {
  return `${place.set} ${place.tip}`;
}

/** Strips of a set that are put in every order. */
const FREE = 4;

function ordersOf<T>(list: readonly T[]): T[][] {
  if (list.length < 2) return [[...list]];
  return list.flatMap((one, at) => ordersOf(list.toSpliced(at, 1)).map((rest) => [one, ...rest]));
}

describe('the bound where wedges may be traded or strips reordered', () => {
  it('is never above the best of all ways to lay the wedges that are there, and mostly says something', () => {
    let above = 0;
    for (let seed = 1; seed <= 12; seed++) {
      const project = smallTop(seed);
      const best = bestTrade(project);
      const bound = floorOf(project, { ...NONE, turn: true, trade: true });
      expect(bound).toBeLessThanOrEqual(best + 1e-9);
      if (bound > 0.1 * best) above += 1;
    }
    expect(above).toBeGreaterThan(8);
  });

  it('is never above that where two tips of a sort lie side by side', () => {
    for (let seed = 1; seed <= 12; seed++) {
      const project = withTipsOutOfTurn(smallTop(seed));
      const bound = floorOf(project, { ...NONE, turn: true, trade: true });
      expect(bound).toBeLessThanOrEqual(bestTrade(project) + 1e-9);
    }
  });

  it('is never above the best of all orders of the strips of a set', () => {
    for (let seed = 1; seed <= 6; seed++) {
      const project = scrappyTop({ rows: 1, columns: 2, seed, fabrics: 4, sets: 3 });
      project.stripSets.forEach((set, at) => {
        if (at > 0) set.progress = 'sewn';
      });
      const score = judge(project);
      const [first, ...others] = project.stripSets;
      first!.strips.forEach((strip, at) => {
        if (at >= FREE) strip.locked = true;
      });
      const scores = ordersOf(first!.strips.slice(0, FREE)).map((strips) =>
        score({
          ...project,
          stripSets: [{ ...first!, strips: [...strips, ...first!.strips.slice(FREE)] }, ...others],
        }),
      );
      const bound = floorOf(project, { ...NONE, strips: true });
      expect(bound).toBeLessThanOrEqual(Math.min(...scores) + 1e-9);
      expect(bound).toBeGreaterThan(0);
    }
  });

  it('is never above what the search finds in any scope, with pins, sewn blocks and corners by a rule', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 1e6 }),
        fc.boolean(),
        fc.boolean(),
        fc.boolean(),
        (seed, swap, trade, strips) => {
          const project = ruledTop(seed, 8);
          const random = dice(seed);
          if (seed % 2 === 0) project.setting.cornerRule = null;
          for (const block of project.blocks) {
            if (!block.places.includes(null) && random.below(2) === 0) block.progress = 'octagon';
          }
          for (const cell of project.wall.cells) if (cell && random.below(4) === 0) cell.pinned = true;
          for (const set of project.stripSets) if (random.below(2) === 0) set.progress = 'sewn';
          const scopes = { ...NONE, turn: true, swap, trade, strips };
          const result = arrange(project, { seed, scopes, budget: { steps: 8000 } });
          expect(result.bound).toBeLessThanOrEqual(result.after.total + 1e-9);
          expect(result.bound).toBeGreaterThan(0);
          expect(result.verdictWords.say).toMatch(
            /^(Best possible by \{ways\}, proved|Nothing is free to move|At most \{points\} points above the best possible)/,
          );
        },
      ),
      { numRuns: runs(5, 40) },
    );
  });
});

/** The tips of the first block with one up and one down exchanged. */
function withTipsOutOfTurn(project: Project): Project {
  const [first, ...others] = project.blocks;
  const places = first!.places.map((place, at) => {
    const tip = at === 1 ? 'up' : at === 2 ? 'down' : place!.tip;
    return { ...place!, tip } as const;
  });
  return { ...project, blocks: [{ ...first!, places }, ...others] };
}

/** The least square of what a block can be off the average; 0 where it can be nothing. */
function leastFromMean(tables: CostTables, tips: readonly [WedgesOfTip, WedgesOfTip], rest: Rest): number {
  return ended(nearestToMean(tables, tips, rest, 1, null))?.squares[0] ?? 0;
}

/** Every way to lay wedges of the sets in six places, tip-up first. */
function everyLaying(project: Project): Place[][] {
  let lists: Place[][] = [[]];
  for (const { tip } of project.blocks[0]!.places as Place[])
    lists = lists.flatMap((list) => project.stripSets.map(({ id: set }) => [...list, { set, tip }]));
  return lists;
}

describe('two blocks whose wedges may all be exchanged', () => {
  it('are never bounded above the best of all ways to lay both from plenty of wedges, and mostly a good part of it', () => {
    const even = { ...DEFAULT_WEIGHTS, clashLength: 0, lookAlikes: 0, wholeTopWeight: 0 };
    const shares: number[] = [];
    for (let seed = 1; seed <= runs(3, 12); seed++) {
      const project = scrappyTop({ rows: 1, columns: 2, seed, perBlock: 6, fabrics: 8, sets: 2 });
      const { cloths } = wallModel(project, clothTable(project.fabrics));
      const scales = termScales(wallModel(project, cloths));
      const [first, second] = project.blocks;
      const layings = everyLaying(project);
      const terms = layings.flatMap((places) =>
        layings.map((others) => {
          const blocks = [
            { ...first!, places },
            { ...second!, places: others },
          ];
          return evaluateTerms(scales, wallModel({ ...project, blocks }, cloths));
        }),
      );
      for (const weights of [DEFAULT_WEIGHTS, even]) {
        const best = Math.min(...terms.map((one) => weighted(one, weights)));
        const bound = floorOf(project, { ...NONE, trade: true }, weights);
        expect(bound).toBeLessThanOrEqual(best + 1e-9);
        if (best > 1e-6) shares.push(bound / best);
      }
    }
    expect(shares.filter((share) => share > 0.3).length).toBeGreaterThan(shares.length / 2);
  });

  it('come together as near as any two that are listed, or no nearer than those that are not could', () => {
    const figure = fc.integer({ min: -9, max: 9 });
    fc.assert(
      fc.property(
        fc.array(fc.tuple(figure, figure, figure, fc.integer({ min: 0, max: 40 })), {
          minLength: 2,
          maxLength: 40,
        }),
        fc.integer({ min: 1, max: 40 }),
        fc.constantFrom(0.05, 0.4, 2),
        (blocks, listed, own) => {
          const all = blocks.map(([x, y, z, more]) => ({
            at: [x, y, z],
            square: x * x + y * y + z * z + more,
            more,
          }));
          all.sort((one, other) => one.square - other.square);
          const beyond = all[listed]?.square ?? Number.POSITIVE_INFINITY;
          // One is left out where it is too far off, or where what counts besides is twice as much as it lacks.
          const some = all.filter(
            ({ square, more }) => square - more < beyond && more < 2 * (beyond - square + more),
          );
          const together = (one: (typeof all)[number], other: (typeof all)[number]) =>
            own * (one.square + other.square) +
            one.at.reduce((sum, value, axis) => sum + (value + other.at[axis]!) ** 2, 0);
          const least = (list: typeof all) =>
            Math.min(...list.flatMap((one) => list.map((other) => together(one, other))));
          const [found] = ended(
            leastOfTwo(
              {
                figures: Float64Array.from(some.flatMap(({ at }) => at)),
                squares: Float64Array.from(some, ({ square }) => square),
                beyond,
              },
              [own, 1],
            ),
          );
          expect(found).toBeLessThanOrEqual(least(all) + 1e-9);
          expect(found).toBeCloseTo(Math.min(least(some), (own + own / (1 + own)) * beyond), 9);
        },
      ),
      { numRuns: runs(200, 800) },
    );
  });
});

describe('the wedges of one block', () => {
  it('and those of another come no nearer to the average, seams counted, than the nearest that are listed let them', () => {
    let nearer = 0;
    fc.assert(
      fc.property(
        fc.nat(),
        fc.integer({ min: 1, max: 60 }),
        fc.constantFrom(0.2, 0.8),
        fc.constantFrom(0.02, 0.2, 1),
        (seed, most, own, times) => {
          const project = scrappyTop({ rows: 1, columns: 2, seed, perBlock: 6, fabrics: 5, sets: 3 });
          const model = wallModel(project, clothTable(project.fabrics));
          const tables = costTables(model, termScales(model), DEFAULT_WEIGHTS);
          const rest = restOf(tables, 0, new Set([0, 1, 2, 3, 4, 5]), 0);
          const stock = new Int32Array(6).fill(3);
          const tips = [0, 1].map(
            (tip): WedgesOfTip => ({ types: [tip, 2 + tip, 4 + tip], stock, places: 3 }),
          );
          const random = dice(seed);
          const costs = Array.from({ length: 36 }, () => (random.part() < 0.3 ? 0 : random.part()));
          const seam = (type: number, next: number) =>
            costs[6 * Math.min(type, next) + Math.max(type, next)]!;
          const [few, all] = [most, 1000].map((listed) => {
            const lengths = ended(
              nearestToMean(tables, [tips[0]!, tips[1]!], rest, listed, { seam, times }),
            )!;
            return { lengths, least: ended(leastOfTwo(lengths, [own]))[0]! };
          });
          expect(all!.lengths.beyond).toBe(Number.POSITIVE_INFINITY);
          expect(few!.least).toBeLessThanOrEqual(all!.least + 1e-12);
          expect(leastSquare(few!.lengths)).toBeLessThanOrEqual(all!.lengths.squares[0]! + 1e-12);
          if (few!.least < all!.least) nearer += 1;
        },
      ),
      { numRuns: runs(60, 400) },
    );
    expect(nearer).toBeGreaterThan(0);
  });

  it('come as near to the average as the best of all choices, gone through one by one', () => {
    fc.assert(
      fc.property(fc.nat(), fc.integer({ min: 0, max: 3 }), (seed, places) => {
        const project = scrappyTop({ rows: 1, columns: 2, seed, perBlock: 6, fabrics: 5, sets: 3 });
        const model = wallModel(project, clothTable(project.fabrics));
        const tables = costTables(model, termScales(model), DEFAULT_WEIGHTS);
        const random = dice(seed);
        const stock = Int32Array.from({ length: 6 }, () => random.below(4));
        const freed = new Set(Array.from({ length: 6 }, (_, place) => place));
        const rest = restOf(tables, 0, freed, FIRST_FABRIC);
        const squareOf = (types: readonly number[]) =>
          tables.fabrics.reduce((sum, fabric, at) => {
            const area = types.reduce(
              (all, type) => all + model.typeFabricArea[type * model.fabricCount + fabric]!,
              0,
            );
            const { meanFabric } = tables.scales;
            return sum + ((area - meanFabric[fabric]!) * tables.scale[3 + at]!) ** 2;
          }, 0);
        const choices = (tip: number): number[][] => {
          let lists: number[][] = [[]];
          for (let more = 0; more < places; more++)
            lists = lists.flatMap((list) => [0, 2, 4].map((type) => [...list, type + tip]));
          return lists.filter((list) =>
            list.every((type) => list.filter((o) => o === type).length <= stock[type]!),
          );
        };
        const all = choices(0).flatMap((ups) => choices(1).map((downs) => squareOf([...ups, ...downs])));
        const tip = (at: number) => ({ types: [at, 2 + at, 4 + at], stock, places });
        const found = leastFromMean(tables, [tip(0), tip(1)], rest);
        expect(found).toBeCloseTo(all.length > 0 ? Math.min(...all) : 0, 10);
      }),
      { numRuns: 60 },
    );
  });

  it('come as near in value and colour too, where all wedges are of one size', () => {
    fc.assert(
      fc.property(fc.nat(), (seed) => {
        const project = scrappyTop({ rows: 1, columns: 2, seed, perBlock: 6, fabrics: 5, sets: 3 });
        const [first, ...others] = project.blocks;
        const model = wallModel(project, clothTable(project.fabrics));
        const scales = termScales(model);
        const tables = costTables(model, scales, DEFAULT_WEIGHTS);
        expect(firstAdditive(tables)).toBe(0);
        const stock = new Int32Array(6);
        for (const type of model.typeAt) stock[type]! += 1;
        let least = Number.POSITIVE_INFINITY;
        const lay = (places: Place[]) => {
          if (places.length < 6) {
            const tip = first!.places[places.length]!.tip;
            for (const { id: set } of project.stripSets) lay([...places, { set, tip }]);
            return;
          }
          const now = wallModel({ ...project, blocks: [{ ...first!, places }, ...others] }, model.cloths);
          const laid = now.typeAt.slice(0, 6);
          if (stock.some((there, type) => laid.filter((one) => one === type).length > there)) return;
          const square = restOf({ ...tables, model: now }, 0, new Set(), 0).figures;
          least = Math.min(
            least,
            square.reduce((sum, one) => sum + one * one, 0),
          );
        };
        lay([]);
        const tip = (at: number) => ({ types: [at, 2 + at, 4 + at], stock, places: 3 });
        const rest = restOf(tables, 0, new Set([0, 1, 2, 3, 4, 5]), 0);
        expect(leastFromMean(tables, [tip(0), tip(1)], rest)).toBeCloseTo(least, 10);
      }),
      { numRuns: runs(3, 12) },
    );
  });

  it('bound a wall of twenty blocks of which every wedge may be traded', () => {
    const project = scrappyTop({ rows: 4, columns: 5, seed: 1 });
    expect(floorOf(project, { ...NONE, swap: true, turn: true, trade: true })).toBeGreaterThan(0.0235);
  });
});

/** K − Σ weight · form. */
function lessForms(
  kernel: Float64Array,
  size: number,
  forms: readonly Form[],
  weights: Float64Array,
): Float64Array {
  const left = kernel.slice();
  forms.forEach(({ cells, own }, at) => {
    for (const one of cells) {
      for (const other of cells) left[one * size + other]! -= weights[at]! * (one === other ? 1 + own : 1);
    }
  });
  return left;
}

describe('the weights of cells', () => {
  it('come to no more than the kernel, whatever lies in the cells, and to more than its least eigenvalue in each', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 6 }),
        fc.integer({ min: 2, max: 6 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (rows, columns, part) => {
          const model = wallModel(
            scrappyTop({ rows, columns, seed: 1, sets: 3 }),
            clothTable(scrappyTop({ rows, columns, seed: 1, sets: 3 }).fabrics),
          );
          const tables = costTables(model, termScales(model), DEFAULT_WEIGHTS);
          const size = rows * columns;
          const kernel = kernelTable(tables, Int32Array.from(model.blockIn.keys()));
          const singles = Array.from(
            { length: size },
            (_, cell): Form => ({ cells: [cell], own: 0, least: 1 }),
          );
          const weights = ended(weightsUnder(kernel, size, singles));
          expect(Math.min(...eigenvaluesOf(lessForms(kernel, size, singles, weights), size))).toBeGreaterThan(
            0,
          );
          expect(Math.min(...weights)).toBeGreaterThanOrEqual(0);
          const own = part * 0.9 + 0.05;
          const beside = Array.from({ length: size - 1 }, (_, cell): Form[] =>
            (cell + 1) % columns === 0 ? [] : [{ cells: [cell, cell + 1], own, least: 1 + 2 * own }],
          ).flat();
          const forms = [...singles, ...beside];
          const more = ended(weightsUnder(kernel, size, forms));
          expect(Math.min(...eigenvaluesOf(lessForms(kernel, size, forms, more), size))).toBeGreaterThan(0);
          expect(Math.min(...more)).toBeGreaterThanOrEqual(0);
          const worth = more.reduce((all, one, at) => all + one * forms[at]!.least, 0);
          // What a block costs by itself counts with it in all forms of its cell, once at most.
          for (let cell = 0; cell < size; cell++) {
            const counted = forms.reduce(
              (sum, form, at) =>
                form.cells.some((one) => one === cell)
                  ? sum + more[at]! * (form.cells.length === 1 ? 1 : form.own)
                  : sum,
              0,
            );
            expect(counted * timesCounted(kernel, size)).toBeLessThan(1);
          }
          expect(worth).toBeGreaterThan(0.999 * weights.reduce((all, one) => all + one, 0));
          const sum = weights.reduce((all, one) => all + one, 0);
          // On a wall of two by two both are the same.
          expect(sum).toBeGreaterThan(0.99 * size * Math.min(...eigenvaluesOf(kernel, size)));
          if (size >= 12 && Math.min(rows, columns) > 2)
            expect(sum).toBeGreaterThan(1.5 * size * Math.min(...eigenvaluesOf(kernel, size)));
        },
      ),
      { numRuns: runs(8, 25) },
    );
  });
});

describe('the cheapest seams between two stocks of wedges', () => {
  it('are those of every way to lay them, gone through one by one', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 2 }), { minLength: 3, maxLength: 3 }),
        fc.array(fc.integer({ min: 0, max: 2 }), { minLength: 3, maxLength: 3 }),
        fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 9, maxLength: 9 }),
        fc.integer({ min: 0, max: 6 }),
        (rows, columns, cost, wanted) => {
          const sum = (list: readonly number[]) => list.reduce((one, other) => one + other, 0);
          const seams = Math.min(wanted, sum(rows), sum(columns));
          let least = Number.POSITIVE_INFINITY;
          const lay = (at: number, left: number, room: number[], there: number[], spent: number) => {
            if (left === 0) least = Math.min(least, spent);
            if (left === 0 || at === 9) return;
            const [row, column] = [Math.floor(at / 3), at % 3];
            for (let many = 0; many <= Math.min(left, room[row]!, there[column]!); many++) {
              const less = (list: number[], index: number) => list.with(index, list[index]! - many);
              lay(at + 1, left - many, less(room, row), less(there, column), spent + many * cost[at]!);
            }
          };
          lay(0, seams, rows, columns, 0);
          const stocks = {
            rows: Int32Array.from(rows),
            columns: Int32Array.from(columns),
            cost: Float64Array.from(cost),
          };
          expect(ended(leastSeams(stocks, seams)).cost).toBeCloseTo(least, 9);
        },
      ),
      { numRuns: runs(70, 200) },
    );
  });
});

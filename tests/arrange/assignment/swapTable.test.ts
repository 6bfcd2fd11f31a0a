import fc from 'fast-check';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { describe, expect, it } from 'vitest';
import { placeSymmetries } from '../../../src/arrange/assignment/placeSymmetry';
import { Population } from '../../../src/arrange/assignment/population';
import { assignmentCost, reduceAssignment, swapDelta } from '../../../src/arrange/assignment/problem';
import { SwapTable } from '../../../src/arrange/assignment/swapTable';
import { sweepArrays } from '../../../src/arrange/assignment/sweep';
import { runs } from '../../runs';
import { anyKind, costByDefinition, draws, madeProblem } from './assignmentCases';
import { qaplib } from './qaplib';

function shuffledPlaces(size: number, draw: (below: number) => number): Int32Array {
  const keys = Array.from({ length: size }, (_, place) => [draw(1e6), place] as const);
  return Int32Array.from(keys.sort((one, other) => one[0] - other[0]).map(([, place]) => place));
}

function traded(places: Int32Array, u: number, v: number): Int32Array {
  const after = places.slice();
  after[u] = places[v]!;
  after[v] = places[u]!;
  return after;
}

describe('the cost of an arrangement and of a swap', () => {
  it('are those of the definition, for any tables', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9 }), anyKind, fc.nat(), (size, kind, seed) => {
        const problem = madeProblem(size, { ...kind, fixed: 0 }, seed);
        const draw = draws(seed + 1);
        const places = shuffledPlaces(size, draw);
        const before = costByDefinition(problem, places);
        expect(assignmentCost(problem, places)).toBeCloseTo(before, 8);
        const [u, v] = [draw(size), draw(size)];
        const after = costByDefinition(problem, traded(places, u, v));
        expect(swapDelta(problem, places, u, v)).toBeCloseTo(after - before, 8);
      }),
      { numRuns: 300, seed: 3 },
    );
  });

  it('are the same when fixed items and diagonals are taken out', () => {
    fc.assert(
      fc.property(fc.integer({ min: 4, max: 9 }), anyKind, fc.nat(), (size, kind, seed) => {
        const problem = madeProblem(size, { ...kind, diagonals: true, fixed: 2 }, seed);
        const reduced = reduceAssignment(problem);
        expect(reduced.size).toBe(size - 2);
        const inner = shuffledPlaces(reduced.size, draws(seed));
        const places = problem.fixed!.slice();
        reduced.items.forEach((item, at) => {
          places[item] = reduced.freePlaces[inner[at]!]!;
        });
        expect(assignmentCost(reduced, inner) + reduced.constant).toBeCloseTo(
          costByDefinition(problem, places),
          8,
        );
      }),
      { numRuns: 100, seed: 4 },
    );
  });
});

describe('the table of swaps', () => {
  it('stays true through any swaps, for tables of any kind, in vectors and in plain code alike', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 17 }), anyKind, fc.nat(), (size, kind, seed) => {
        const reduced = reduceAssignment(madeProblem(size, { ...kind, fixed: 0 }, seed));
        const draw = draws(seed + 9);
        const tables = [new SwapTable(reduced), new SwapTable(reduced, true)] as const;
        const start = shuffledPlaces(size, draw);
        for (const table of tables) table.load(start);
        for (let swap = 1; swap <= 12; swap++) {
          const r = draw(size);
          const s = (r + 1 + draw(size - 1)) % size;
          for (const table of tables) table.swap(r, s, swap, Number.NEGATIVE_INFINITY);
        }
        const [table, plain] = tables;
        expect(table.cost).toBeCloseTo(assignmentCost(reduced, table.places), 7);
        let least = Number.POSITIVE_INFINITY;
        for (let u = 0; u < size; u++) {
          for (let v = 0; v < size; v++) {
            if (u === v) continue;
            const change = swapDelta(reduced, table.places, u, v);
            expect(table.delta(u, v)).toBeCloseTo(change, 7);
            expect(plain.delta(u, v)).toBe(table.delta(u, v));
            least = Math.min(least, change);
          }
        }
        expect(table.delta(table.best.first, table.best.second)).toBeCloseTo(least, 7);
        expect(plain.best).toEqual(table.best);
      }),
      { numRuns: runs(50, 150), seed: 6 },
    );
  });

  it('stays exact for whole numbers however many swaps are made', () => {
    const reduced = reduceAssignment(
      madeProblem(
        13,
        {
          symmetricFlow: false,
          symmetricDistance: false,
          diagonals: true,
          linear: true,
          fractions: false,
          fixed: 0,
        },
        5,
      ),
    );
    const draw = draws(17);
    const table = new SwapTable(reduced);
    table.load(shuffledPlaces(13, draw));
    for (let swap = 1; swap <= 400; swap++) {
      const r = draw(13);
      table.swap(r, (r + 1 + draw(12)) % 13, swap, Number.NEGATIVE_INFINITY);
    }
    const fresh = new SwapTable(reduced);
    fresh.load(table.places);
    expect(table.cost).toBe(assignmentCost(reduced, table.places));
    for (let u = 0; u < 13; u++) {
      for (let v = 0; v < u; v++) expect(table.delta(u, v)).toBe(fresh.delta(u, v));
    }
  });

  it('passes over barred moves, save one that would beat the record', () => {
    const reduced = reduceAssignment(qaplib('nug12').problem);
    const table = new SwapTable(reduced);
    table.load(Int32Array.from({ length: 12 }, (_, item) => item));
    table.swap(0, 1, 1, Number.NEGATIVE_INFINITY);
    const { first, second } = table.best;
    const best = table.delta(first, second);
    const cost = table.cost;
    table.swap(2, 3, 1, Number.NEGATIVE_INFINITY);
    table.barredUntil.fill(9);
    table.swap(2, 3, 8, cost + best);
    expect(table.cost).toBe(cost);
    expect(table.best.first).toBe(-1);
    table.swap(2, 3, 8, Number.NEGATIVE_INFINITY);
    table.swap(2, 3, 8, cost + best + 1);
    expect([table.best.first, table.best.second]).toEqual([first, second]);
    table.swap(2, 3, 9, Number.NEGATIVE_INFINITY);
    expect(table.best.first).toBeGreaterThanOrEqual(0);
  });

  it('is mended in WebAssembly vectors here, bit for bit as in plain code', () => {
    for (const size of [12, 13, 31, 100]) {
      const fast = sweepArrays(size, false);
      const plain = sweepArrays(size, true);
      expect(fast.half.buffer.byteLength % 65_536).toBe(0);
      expect(plain.half.buffer.byteLength % 65_536).not.toBe(0);
      const draw = draws(size);
      for (const arrays of [fast, plain]) arrays.half.fill(Number.POSITIVE_INFINITY);
      for (let u = 0; u < size; u++) {
        const [a, b] = [draw(999) / 7 - 60, draw(999) / 11 - 40];
        for (const arrays of [fast, plain]) {
          arrays.flowChange[u] = a;
          arrays.distanceChange[u] = b;
        }
        for (let v = u + 1; v < size; v++) {
          const [half, skew] = [draw(1e6) / 3, draw(1e6) / 13];
          for (const { stride, ...arrays } of [fast, plain]) {
            arrays.half[u * stride + v] = half;
            arrays.skew[u * stride + v] = skew;
          }
        }
      }
      const before = plain.half.slice();
      fast.sweep();
      plain.sweep();
      expect(plain.half).not.toEqual(before);
      expect(fast.half).toEqual(plain.half);
      for (let u = 0; u < size; u++) {
        const row = u * plain.stride;
        expect(fast.skew.slice(row + u + 1, row + size)).toEqual(plain.skew.slice(row + u + 1, row + size));
        const least = Math.min(...plain.half.slice(row + u + 1, row + size));
        expect(Math.min(fast.rowMinima[2 * u]!, fast.rowMinima[2 * u + 1]!)).toBe(least);
        expect(plain.rowMinima[2 * u]).toBe(least);
      }
    }
  });
});

describe('the population', () => {
  const size = 20;
  const same = Int32Array.from({ length: size }, (_, item) => item);
  const mirrored = same.map((place) => size - 1 - place);

  /** Twelve that agree on the first ten items, every other one mirrored. */
  function agreeing(): Population {
    const draw = draws(4);
    const population = new Population(size, [same, mirrored], xoroshiro128plus(2));
    const offered = new Int32Array(size);
    for (let member = 0; member < 12; member++) {
      const rest = shuffledPlaces(10, draw);
      for (let item = 0; item < 10; item++) {
        offered[item] = item;
        offered[item + 10] = rest[item]! + 10;
      }
      population.offer(member % 2 ? offered.map((place) => mirrored[place]!) : offered, 100 - member);
    }
    return population;
  }

  /** How many of the first ten items lie as agreed, or all mirrored. */
  function kept(child: Int32Array): number {
    const alike = (image: Int32Array) => image.slice(0, 10).filter((place, item) => place === item).length;
    return Math.max(alike(child), alike(child.map((place) => mirrored[place]!)));
  }

  it('keeps in a child what both its parents agree on, mirrored or not, and gives every item a place', () => {
    const population = agreeing();
    for (let count = 0; count < 10; count++) {
      const child = population.next();
      expect(child.slice().sort()).toEqual(same);
      expect(kept(child)).toBe(10);
    }
  });

  it('starts afresh when nothing has come of its children for long', () => {
    const population = agreeing();
    const draw = draws(9);
    for (let count = 0; count < 25; count++) {
      expect(kept(population.next())).toBe(10);
      population.offer(shuffledPlaces(size, draw), 1000);
    }
    expect(kept(population.next())).toBeLessThan(5);
  });

  it('does not start afresh while its children are good', () => {
    const population = agreeing();
    const draw = draws(9);
    for (let count = 0; count < 40; count++) {
      const child = population.next();
      population.offer(child, 50 - count);
      population.offer(shuffledPlaces(size, draw), 1000);
    }
    expect(kept(population.next())).toBe(10);
  });
});

describe('the symmetries of the places', () => {
  it.each([
    ['nug12', 4],
    ['nug25', 8],
    ['sko100a', 8],
  ])('of %s are the %i of its grid and leave every distance as it is', (name, count) => {
    const { problem } = qaplib(name);
    const { size, distance } = problem;
    const found = placeSymmetries(reduceAssignment(problem));
    expect(new Set(found.map((image) => image.join())).size).toBe(count);
    const moved = found.flatMap((image) =>
      [...distance].filter(
        (one, at) => distance[image[Math.floor(at / size)]! * size + image[at % size]!] !== one,
      ),
    );
    expect(moved).toEqual([]);
  });

  it('are gone when one place is dearer than the rest', () => {
    const { problem } = qaplib('nug12');
    const linear = new Float64Array(144);
    linear[5 * 12 + 1] = 1;
    const [only, ...more] = placeSymmetries(reduceAssignment({ ...problem, linear }));
    expect([...only!]).toEqual([...only!.keys()]);
    expect(more).toEqual([]);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leastRing } from '../../../src/arrange/choices/leastRing';
import { nearestPairs } from '../../../src/arrange/choices/nearestPairs';
import { atOnce } from '../../../src/model/work/parts';
import { runs } from '../../runs';

const WIDTH = 4;
const vectors = (most: number) =>
  fc.array(fc.array(fc.integer({ min: -9, max: 9 }), { minLength: WIDTH, maxLength: WIDTH }), {
    minLength: 1,
    maxLength: most,
  });

describe('pairs with short sums', () => {
  it('are the shortest of all pairs, gone through one by one, in order', () => {
    fc.assert(
      fc.property(vectors(40), vectors(90), fc.integer({ min: 1, max: 30 }), (ones, others, most) => {
        const all = ones.flatMap((one) =>
          others.map((other) => one.reduce((sum, value, at) => sum + (value + other[at]!) ** 2, 0)),
        );
        all.sort((one, other) => one - other);
        const found = atOnce(
          nearestPairs(Float64Array.from(ones.flat()), Float64Array.from(others.flat()), WIDTH, most),
        );
        expect(found).toHaveLength(Math.min(most, all.length));
        found.forEach(({ one, other, square }, at) => {
          expect(square).toBeCloseTo(all[at]!, 8);
          const sum = ones[one]!.map((value, axis) => value + others[other]![axis]!);
          expect(sum.reduce((all, value) => all + value * value, 0)).toBeCloseTo(square, 8);
        });
        expect(new Set(found.map(({ one, other }) => `${one} ${other}`)).size).toBe(found.length);
      }),
      { numRuns: runs(150, 600) },
    );
  });
});

describe('seams round a block', () => {
  it('cost the least of all ways to lay its wedges', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 5 }), { minLength: 36, maxLength: 36 }),
        fc.array(fc.integer({ min: 0, max: 2 }), { minLength: 3, maxLength: 3 }),
        fc.array(fc.integer({ min: 0, max: 2 }), { minLength: 3, maxLength: 3 }),
        (costs, ones, others) => {
          const ups = ones.map((one) => 2 * one);
          const downs = others.map((one) => 2 * one + 1);
          const seam = (type: number, next: number) =>
            costs[6 * Math.min(type, next) + Math.max(type, next)]!;
          let least = Number.POSITIVE_INFINITY;
          for (const [a, b, c] of ordersOfThree(ups)) {
            for (const [d, e, f] of ordersOfThree(downs)) {
              const ring = [a, d, b, e, c, f];
              least = Math.min(
                least,
                ring.reduce((sum, type, at) => sum + seam(type, ring[(at + 1) % 6]!), 0),
              );
            }
          }
          expect(leastRing(ups, downs, seam)).toBe(least);
          expect(leastRing(ups, downs, seam, 5)).toBe(Math.min(least, 5));
        },
      ),
      { numRuns: runs(100, 400) },
    );
  });
});

function ordersOfThree([a, b, c]: readonly number[]): readonly (readonly [number, number, number])[] {
  const [x, y, z] = [a!, b!, c!];
  return [
    [x, y, z],
    [x, z, y],
    [y, x, z],
    [y, z, x],
    [z, x, y],
    [z, y, x],
  ];
}

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Tree } from '../../../src/arrange/choices/tree';
import { dice } from '../../balance/tops';
import { runs } from '../../runs';

const WIDTH = 3;

/** Vectors of whole numbers from −9 to 9. */
function someVectors(count: number, seed: number): number[][] {
  const random = dice(seed);
  return Array.from({ length: count }, () => Array.from({ length: WIDTH }, () => random.below(19) - 9));
}

describe('a tree of vectors', () => {
  it('visits each vector within reach once', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 300 }),
        fc.nat(),
        fc.integer({ min: 0, max: 60 }),
        (count, seed, reach) => {
          const [place, ...vectors] = someVectors(count + 1, seed);
          const tree = new Tree(Float64Array.from(vectors.flat()), WIDTH);
          const visited = new Set<number>();
          tree.forNear(
            place!,
            () => reach,
            (at) => {
              const of = tree.order[at]!;
              expect(visited).not.toContain(of);
              visited.add(of);
              expect(Array.from(tree.vectors.subarray(at * WIDTH, (at + 1) * WIDTH))).toEqual(vectors[of]);
            },
          );
          vectors.forEach((one, at) => {
            const square = one.reduce((sum, value, axis) => sum + (value - place![axis]!) ** 2, 0);
            if (square <= reach) expect(visited).toContain(at);
          });
        },
      ),
      { numRuns: runs(100, 400) },
    );
  });

  it('visits few of many where the reach is short', () => {
    const vectors = someVectors(1000, 1);
    let visited = 0;
    new Tree(Float64Array.from(vectors.flat()), WIDTH).forNear(
      [6, 6, 6],
      () => 4,
      () => {
        visited += 1;
      },
    );
    expect(visited).toBeGreaterThan(0);
    expect(visited).toBeLessThan(300);
  });
});

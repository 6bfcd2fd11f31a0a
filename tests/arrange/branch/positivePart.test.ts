import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { eigenpairsOf } from '../../../src/arrange/branch/eigenvalues';
import { vectorsFor } from '../../../src/arrange/branch/inverseIteration';
import { positivePartOf } from '../../../src/arrange/branch/positivePart';
import { atOnce } from '../../../src/model/work/parts';
import { dice } from '../../balance/tops';
import { runs } from '../../runs';

/** Symmetric, of a rank and with eigenvalues many of which are the same: entries of few numbers, now and then in blocks. */
function awkward(size: number, seed: number): Float64Array {
  const { below, part } = dice(seed);
  const kind = below(5);
  const matrix = new Float64Array(size * size);
  const vectors = Array.from({ length: kind === 0 ? size : 1 + below(size) }, () =>
    Float64Array.from({ length: size }, (_, at) => {
      if (kind === 1) return below(3) - 1;
      return kind === 2 && at % 2 === 0 ? 0 : part() - 0.5;
    }),
  );
  for (const vector of vectors) {
    const times = kind === 3 ? 1 : part() - 0.5;
    for (let at = 0; at < matrix.length; at++)
      matrix[at]! += times * vector[Math.floor(at / size)]! * vector[at % size]!;
  }
  if (kind === 4) for (let at = 0; at < size; at++) matrix[at * size + at]! -= 1;
  return matrix;
}

describe('the positive part of a matrix', () => {
  it('is the sum over all eigenvalues above 0, also where many are the same or 0', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 24 }), fc.nat({ max: 1e6 }), (size, seed) => {
        const matrix = seed % 20 === 0 ? new Float64Array(size * size) : awkward(size, seed);
        const { values, vectors } = eigenpairsOf(matrix, size);
        const positive = atOnce(positivePartOf(matrix.slice(), size));
        for (let row = 0; row < size; row++) {
          for (let column = 0; column < size; column++) {
            let sum = 0;
            for (let k = 0; k < size; k++) {
              sum += Math.max(0, values[k]!) * vectors[k * size + row]! * vectors[k * size + column]!;
            }
            expect(positive[row * size + column]).toBeCloseTo(sum, 9);
          }
        }
      }),
      { numRuns: runs(75, 300) },
    );
  });
});

describe('inverse iteration', () => {
  it('says so where what it is given is no eigenvalue', () => {
    const diagonal = Float64Array.of(1, 2, 3);
    const beside = Float64Array.of(1, 1, 0);
    // Eigenvalues are 2 and 2 ± √3.
    expect(atOnce(vectorsFor(Float64Array.of(2, 2 - Math.sqrt(3)), diagonal, beside))).not.toBeNull();
    expect(atOnce(vectorsFor(Float64Array.of(2.4), diagonal, beside))).toBeNull();
  });
});

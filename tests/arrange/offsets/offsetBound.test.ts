import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { eigenvaluesOf } from '../../../src/arrange/branch/eigenvalues';
import { OffsetBound } from '../../../src/arrange/offsets/offsetBound';
import type { GridAssignment } from '../../../src/arrange/offsets/offsetProblem';
import { OffsetTable } from '../../../src/arrange/offsets/offsetTable';
import { WaveMatrix } from '../../../src/arrange/offsets/waveMatrix';
import { atOnce } from '../../../src/model/work/parts';
import { dice } from '../../balance/tops';
import { runs } from '../../runs';
import { costOf, everyArrangement } from '../branch/problems';
import { spreadWall } from '../groups/spreadWall';

const shapes = fc.constantFrom<readonly [number, number]>([2, 3], [1, 6], [2, 2], [3, 2], [5, 1], [1, 3]);

/** Costs by offset that are nothing beyond two cells, items of any sort, and what an item costs by itself in a cell. */
function gridProblem(rows: number, columns: number, seed: number): GridAssignment {
  const { part } = dice(seed);
  const size = rows * columns;
  const any = () => 2 * part() - 1;
  const form = () => {
    const near = Array.from({ length: 9 }, any);
    const cells = Float64Array.from({ length: size * size }, (_, at) => {
      const [one, other] = [Math.floor(at / size), at % size];
      const down = Math.abs(Math.floor(one / columns) - Math.floor(other / columns));
      const across = Math.abs((one % columns) - (other % columns));
      if (one === other) return any();
      return down > 2 || across > 2 ? 0 : near[3 * down + across]!;
    });
    const table = Float64Array.from({ length: size * size }, any);
    const items = table.map((one, at) => one + table[(at % size) * size + Math.floor(at / size)]!);
    return { cells, items };
  };
  return {
    rows,
    columns,
    size,
    constant: any(),
    linear: Float64Array.from({ length: size * size }, any),
    forms: Array.from({ length: 1 + (seed % 2) }, form),
  };
}

const leastOf = (problem: GridAssignment) =>
  Math.min(
    ...everyArrangement(problem.size).map((cellOf) =>
      costOf({ ...problem, moments: [], beside: new Float64Array(problem.size ** 4) }, cellOf),
    ),
  );

/** Figures of an arrangement, even over the mirrors of the wall: the whole wall is looked at from all four sides. */
function figuresOf(table: OffsetTable, rows: number, columns: number, cellOf: readonly number[]) {
  const figures = table.none('place');
  const { size } = table;
  const turns = [0, 1, 2, 3].map((turn) => (cell: number) => {
    const [row, column] = [Math.floor(cell / columns), cell % columns];
    return (turn & 1 ? rows - 1 - row : row) * columns + (turn & 2 ? columns - 1 - column : column);
  });
  for (const turned of turns) {
    cellOf.forEach((cell, item) => {
      const place = table.placeOf(turned(cell));
      // A place's cells share what is there.
      figures.places[place * size + item]! += 1 / (4 * table.placeRoot[place]!);
      for (let other = 0; other <= item; other++) {
        const offset = table.offsetOf(turned(cell), turned(cellOf[other]!));
        figures.pairs[offset * table.pairs + (item * (item + 1)) / 2 + other]! +=
          1 / (4 * table.offsetRoot[offset]!);
      }
    });
  }
  figures.whole.forEach((_, wave) => {
    figures.whole[wave] = table.waveRoot(wave);
  });
  return figures;
}

describe('the bound by offsets', () => {
  it('is never above the best of all arrangements, gone through one by one, whenever it is taken', () => {
    fc.assert(
      fc.property(fc.nat({ max: 1e6 }), shapes, (seed, [rows, columns]) => {
        const problem = gridProblem(rows, columns, seed);
        const least = leastOf(problem);
        const bounding = OffsetBound.of(problem)!;
        for (const _ of bounding.ascending(75)) expect(bounding.bound).toBeLessThanOrEqual(least + 1e-8);
        expect(bounding.bound).toBeLessThanOrEqual(least + 1e-8);
        expect(bounding.bound).toBeGreaterThan(Number.NEGATIVE_INFINITY);
      }),
      { numRuns: runs(30, 400) },
    );
  });

  it('comes near the best of walls whose blocks are to be spread', () => {
    const shares: number[] = [];
    fc.assert(
      fc.property(fc.nat({ max: 1e6 }), fc.constantFrom(...GRIDS), (seed, [rows, columns]) => {
        const { problem } = spreadWall(rows, columns, seed);
        const grid = { ...problem, rows, columns };
        const least = leastOf(grid);
        const bounding = OffsetBound.of(grid)!;
        atOnce(bounding.ascending(120));
        expect(bounding.bound).toBeLessThanOrEqual(least + 1e-9);
        shares.push((bounding.bound - problem.constant) / (least - problem.constant));
      }),
      { numRuns: runs(8, 30) },
    );
    expect(shares.filter((one) => one > 0.75).length).toBeGreaterThan(runs(6, 24));
  });

  it('is not for costs that go by more than the offset', () => {
    const problem = gridProblem(2, 3, 1);
    const [{ cells, items }] = problem.forms as [GridAssignment['forms'][0]];
    const other = cells.slice();
    other[1]! += 0.5;
    other[6]! += 0.5;
    expect(OffsetBound.of(problem)).not.toBeNull();
    expect(OffsetBound.of({ ...problem, forms: [{ cells: other, items }] })).toBeNull();
  });
});

const GRIDS = [
  [2, 3],
  [1, 6],
  [3, 2],
] as const;

describe('figures by offset', () => {
  it('of an arrangement are whole again from their waves, of which none has a negative eigenvalue', () => {
    fc.assert(
      fc.property(fc.nat({ max: 1e6 }), shapes, (seed, [rows, columns]) => {
        const table = new OffsetTable(rows, columns);
        const { size } = table;
        const arrangements = everyArrangement(size);
        const figures = figuresOf(table, rows, columns, arrangements[seed % arrangements.length]!);
        const waves = table.toWaves(figures);
        const again = table.fromWaves(waves);
        again.pairs.forEach((one, at) => {
          expect(one).toBeCloseTo(figures.pairs[at]!, 9);
        });
        again.places.forEach((one, at) => {
          expect(one).toBeCloseTo(figures.places[at]!, 9);
        });
        const before = { pairs: waves.pairs.slice(), places: waves.places.slice() };
        table.wall.forEach((wall, wave) => {
          const pairs = waves.pairs.subarray(wave * table.pairs, (wave + 1) * table.pairs);
          const places = waves.places.subarray(wave * size, (wave + 1) * size);
          const zero = Float64Array.from([...Array.from({ length: size }, () => 1), -wall]);
          const whole = atOnce(new WaveMatrix(size).positivePart(pairs, places, figures.whole[wave]!, zero));
          expect(whole).toBeCloseTo(figures.whole[wave]!, 9);
        });
        // Nothing was below 0, and nothing along the vector that stands for a full wall.
        waves.pairs.forEach((one, at) => {
          expect(one).toBeCloseTo(before.pairs[at]!, 9);
        });
        waves.places.forEach((one, at) => {
          expect(one).toBeCloseTo(before.places[at]!, 9);
        });
      }),
      { numRuns: runs(14, 40) },
    );
  });

  it('turns a matrix of a wave into the nearest without negative eigenvalues that is 0 along the wall', () => {
    fc.assert(
      fc.property(fc.nat({ max: 1e6 }), fc.integer({ min: 2, max: 7 }), (seed, size) => {
        const { part } = dice(seed);
        const any = (length: number) => Float64Array.from({ length }, () => 2 * part() - 1);
        const pairs = any((size * (size + 1)) / 2);
        const places = any(size);
        const zero = any(size + 1);
        const corner = atOnce(new WaveMatrix(size).positivePart(pairs, places, part(), zero));
        const width = size + 1;
        const matrix = new Float64Array(width * width);
        for (let row = 0, at = 0; row < size; row++) {
          for (let column = 0; column <= row; column++, at++)
            matrix[row * width + column] = matrix[column * width + row] = pairs[at]!;
          matrix[row * width + size] = matrix[size * width + row] = places[row]!;
        }
        matrix[width * width - 1] = corner;
        expect(Math.min(...eigenvaluesOf(matrix, width))).toBeGreaterThan(-1e-9);
        for (let row = 0; row < width; row++) {
          const along = zero.reduce((sum, one, column) => sum + one * matrix[row * width + column]!, 0);
          expect(along).toBeCloseTo(0, 9);
        }
      }),
      { numRuns: 60 },
    );
  });
});

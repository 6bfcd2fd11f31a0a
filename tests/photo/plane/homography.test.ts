// Homographies against published numbers, and the laws they keep.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Point } from '../../../src/geometry/point';
import { composed, homographyThrough, inverseOf, projected } from '../../../src/photo/plane/homography';

const points = (rows: readonly (readonly [number, number])[]): Point[] => rows.map(([x, y]) => ({ x, y }));

/** Point pairs with matrices as printed, or worked out exactly in fractions from the printed points. */
const PUBLISHED = [
  {
    // OpenCV-Python Tutorials, 'Geometric Transformations of Images', Perspective Transformation: points; matrix exact in fractions.
    from: points([[56, 65], [368, 52], [28, 387], [389, 390]]),
    to: points([[0, 0], [300, 0], [0, 300], [300, 300]]),
    matrix: [684383410350 / 648167835433, 59511600900 / 648167835433, -42193725038100 / 648167835433, 30399722850 / 648167835433, 729593348400 / 648167835433, -49125952125600 / 648167835433, 237555389 / 1296335670866, 332728533 / 648167835433, 1],
    within: 1e-11,
  },
  {
    // ImageMagick v6 Examples, 'Distorting Images', Perspective Distortion: points and the eight numbers as printed.
    from: points([[7, 40], [4, 124], [85, 122], [85, 2]]),
    to: points([[4, 30], [4, 123], [100, 123], [100, 30]]),
    matrix: [1.945622, 0.071451, -12.187838, 0.799032, 1.276214, -24.470275, 0.006258, 0.000715, 1],
    within: 6e-7,
  },
  {
    // ImageMagick v6 Examples, 'Distorting Images', Perspective Internals: the eight numbers as printed.
    from: points([[0, 0], [0, 46], [70, 0], [70, 46]]),
    to: points([[3, 0], [10, 46], [70, 7], [60, 40]]),
    matrix: [1.430099, 0.24665, 3, 0.147296, 1.434591, 0, 0.006757, 0.009448, 1],
    within: 6e-7,
  },
  {
    // scikit-image gallery, 'Using geometric transformations': points; matrix exact in fractions.
    from: points([[0, 0], [0, 50], [300, 50], [300, 0]]),
    to: points([[155, 15], [65, 40], [260, 130], [360, 95]]),
    matrix: [1183 / 2532, -5866 / 3165, 155, 1327 / 6330, 2957 / 6330, 15, -19 / 31650, -13 / 15825, 1],
    within: 1e-10,
  },
]; // biome-ignore format: published numbers

describe('a homography', () => {
  it.each(PUBLISHED)('has the published numbers', ({ from, to, matrix, within }) => {
    const found = homographyThrough(from, to)!;
    for (const [at, entry] of found.entries()) expect(Math.abs(entry - matrix[at]!)).toBeLessThan(within);
  });

  it('has the inverse that ImageMagick prints', () => {
    const { from, to } = PUBLISHED[1]!;
    const inverse = [0.533277, -0.033042, 5.690943, -0.392491, 0.833446, 15.611041, -0.003057, -0.000389, 1];
    for (const [at, entry] of inverseOf(homographyThrough(from, to)!)!.entries())
      expect(Math.abs(entry - inverse[at]!)).toBeLessThan(6e-7);
  });

  const corner = fc.record({
    x: fc.double({ min: -0.3, max: 0.3, noNaN: true }),
    y: fc.double({ min: -0.3, max: 0.3, noNaN: true }),
  });
  const square = points([
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ]);

  it('takes the corners where they belong, and its inverse brings every point back', () => {
    fc.assert(
      fc.property(fc.tuple(corner, corner, corner, corner), (shifts) => {
        const to = square.map(({ x, y }, at) => ({
          x: 500 + 300 * (x + shifts[at]!.x),
          y: 400 + 300 * (y + shifts[at]!.y),
        }));
        const found = homographyThrough(square, to)!;
        square.forEach((point, at) => {
          const there = projected(found, point);
          expect(Math.hypot(there.x - to[at]!.x, there.y - to[at]!.y)).toBeLessThan(1e-6);
          const back = projected(inverseOf(found)!, there);
          expect(Math.hypot(back.x - point.x, back.y - point.y)).toBeLessThan(1e-8);
        });
        const same = composed(inverseOf(found)!, found);
        for (const [at, entry] of same.entries()) expect(entry).toBeCloseTo(at % 4 === 0 ? 1 : 0, 6);
      }),
    );
  });

  it('is of least squares for many points: errors of the points mostly cancel', () => {
    const truth = homographyThrough(
      square,
      points([
        [10, 20],
        [630, 5],
        [600, 470],
        [30, 440],
      ]),
    )!;
    const grid = Array.from({ length: 400 }, (_, at) => ({
      x: ((at % 20) - 9.5) / 9.5,
      y: (Math.floor(at / 20) - 9.5) / 9.5,
    }));
    const seen = grid.map((point, at) => {
      const { x, y } = projected(truth, point);
      return { x: x + Math.sin(at * 12.9898) * 2, y: y + Math.cos(at * 78.233) * 2 };
    });
    const found = homographyThrough(grid, seen)!;
    for (const point of square) {
      const [one, other] = [projected(found, point), projected(truth, point)];
      expect(Math.hypot(one.x - other.x, one.y - other.y)).toBeLessThan(0.8);
    }
  });

  it('is not there for too few points, or where three of four lie on a line', () => {
    expect(homographyThrough(square.slice(1), square.slice(1))).toBeNull();
    expect(
      homographyThrough(
        points([
          [0, 0],
          [1, 0],
          [2, 0],
          [1, 1],
        ]),
        square,
      ),
    ).toBeNull();
    expect(
      homographyThrough(
        square,
        points([
          [0, 0],
          [1, 1],
          [2, 2],
          [0, 2],
        ]),
      ),
    ).toBeNull();
    expect(inverseOf([1, 2, 3, 2, 4, 6, 0, 0, 1])).toBeNull();
  });
});

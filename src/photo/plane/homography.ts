// Homographies: how points of one plane lie in another, as a camera sees them. Lens distortion is left to lens.ts.
import type { Point } from '../../geometry/point';

/** A 3 × 3 matrix, row by row, that acts on (x, y, 1); its last entry is 1 where it can be. */
export type Homography = readonly number[];

/** Where a homography takes a point. Points on its horizon give infinite coordinates. */
export function projected(h: Homography, { x, y }: Point): Point {
  const depth = h[6]! * x + h[7]! * y + h[8]!;
  return { x: (h[0]! * x + h[1]! * y + h[2]!) / depth, y: (h[3]! * x + h[4]! * y + h[5]!) / depth };
}

/** The homography that acts as `second` after `first`. */
export function composed(second: Homography, first: Homography): Homography {
  return normalised(
    Array.from({ length: 9 }, (_, at) => {
      const row = 3 * Math.floor(at / 3);
      const column = at % 3;
      return [0, 1, 2].reduce((sum, k) => sum + second[row + k]! * first[3 * k + column]!, 0);
    }),
  );
}

/** The inverse, by cofactors; null for a homography that flattens the plane. */
export function inverseOf(homography: Homography): Homography | null {
  const [a, b, c, d, e, f, g, h, i] = homography as [number, number, number, number, number, number, number, number, number]; // biome-ignore format: nine
  const cofactors = [e * i - f * h, c * h - b * i, b * f - c * e, f * g - d * i, a * i - c * g, c * d - a * f, d * h - e * g, b * g - a * h, a * e - b * d]; // biome-ignore format: nine
  const determinant = a * cofactors[0]! + b * cofactors[3]! + c * cofactors[6]!;
  const size = Math.max(...homography.map(Math.abs));
  if (!(Math.abs(determinant) > 1e-14 * size ** 3)) return null;
  return normalised(cofactors);
}

/**
 * The homography that takes `from` to `to`: exact for four points, of least squares for more. Method: the normalised direct
 * linear transformation (Hartley and Zisserman, 'Multiple View Geometry in Computer Vision', 2nd ed., algorithm 4.2). Null for
 * fewer than four pairs, and where three of four points lie on a line.
 */
export function homographyThrough(from: readonly Point[], to: readonly Point[]): Homography | null {
  if (from.length < 4 || from.length !== to.length) return null;
  const [before, after] = [conditioning(from), conditioning(to)];
  const back = after && inverseOf(after);
  if (!before || !back) return null;
  const normal = new Float64Array(81);
  from.forEach((point, index) => {
    const { x, y } = projected(before, point);
    const { x: u, y: v } = projected(after, to[index]!);
    addSquare(normal, [x, y, 1, 0, 0, 0, -u * x, -u * y, -u]);
    addSquare(normal, [0, 0, 0, x, y, 1, -v * x, -v * y, -v]);
  });
  const { vector, gap } = leastEigenvector(normal, 9);
  if (!(gap > 1e-9)) return null;
  const found = composed(back, composed(vector, before));
  return inverseOf(found) ? found : null;
}

/**
 * The homography from the square of corners (−1, −1), (1, −1), (1, 1), (−1, 1) to four corners in that order, in closed form
 * (Heckbert, 'Fundamentals of Texture Mapping and Image Warping', 1989, § 2.2.3). For corners of a proper quadrilateral; others
 * give entries that are no numbers.
 */
export function squareTo(corners: readonly Point[]): Homography {
  const [p0, p1, p2, p3] = corners as [Point, Point, Point, Point];
  const sum = { x: p0.x - p1.x + p2.x - p3.x, y: p0.y - p1.y + p2.y - p3.y };
  const one = { x: p1.x - p2.x, y: p1.y - p2.y };
  const other = { x: p3.x - p2.x, y: p3.y - p2.y };
  const across = one.x * other.y - one.y * other.x;
  const g = (sum.x * other.y - sum.y * other.x) / across;
  const h = (one.x * sum.y - one.y * sum.x) / across;
  const unit = [p1.x - p0.x + g * p1.x, p3.x - p0.x + h * p3.x, p0.x, p1.y - p0.y + g * p1.y, p3.y - p0.y + h * p3.y, p0.y, g, h, 1]; // biome-ignore format: a matrix
  return composed(unit, [0.5, 0, 0.5, 0, 0.5, 0.5, 0, 0, 1]);
}

function normalised(h: readonly number[]): Homography {
  const last = h[8]!;
  const size = Math.max(...h.map(Math.abs));
  const by = Math.abs(last) > 1e-12 * size ? last : size;
  return h.map((entry) => entry / by);
}

/** The shift and scale that bring points to a mean of 0 and a mean distance of √2; null where they are all one point. */
function conditioning(points: readonly Point[]): Homography | null {
  const middle = { x: 0, y: 0 };
  for (const { x, y } of points) {
    middle.x += x / points.length;
    middle.y += y / points.length;
  }
  const spread =
    points.reduce((sum, { x, y }) => sum + Math.hypot(x - middle.x, y - middle.y), 0) / points.length;
  if (!(spread > 0 && Number.isFinite(spread))) return null;
  const scale = Math.SQRT2 / spread;
  return [scale, 0, -scale * middle.x, 0, scale, -scale * middle.y, 0, 0, 1];
}

function addSquare(matrix: Float64Array, row: readonly number[]): void {
  row.forEach((one, i) => {
    if (one !== 0) for (const [j, other] of row.entries()) matrix[i * 9 + j]! += one * other;
  });
}

/** The eigenvector of the least eigenvalue of a symmetric matrix, by Jacobi's rotations, and the gap to the next as a share of the greatest. */
function leastEigenvector(symmetric: Float64Array, size: number): { vector: number[]; gap: number } {
  const a = Float64Array.from(symmetric);
  const v = new Float64Array(size * size);
  for (let i = 0; i < size; i += 1) v[i * size + i] = 1;
  for (let sweep = 0; sweep < 60; sweep += 1) {
    let off = 0;
    for (let p = 0; p < size; p += 1) for (let q = p + 1; q < size; q += 1) off += rotated(a, v, size, p, q);
    if (off < 1e-30) break;
  }
  const order = Array.from({ length: size }, (_, i) => i).sort((i, j) => a[i * size + i]! - a[j * size + j]!);
  const at = (rank: number) => a[order[rank]! * (size + 1)]!;
  return {
    vector: Array.from({ length: size }, (_, i) => v[i * size + order[0]!]!),
    gap: (at(1) - at(0)) / at(size - 1),
  };
}

/** Turns one off-diagonal entry to 0; returns its square as it was. */
function rotated(a: Float64Array, v: Float64Array, size: number, p: number, q: number): number {
  const entry = a[p * size + q]!;
  if (Math.abs(entry) < 1e-300) return 0;
  const theta = (a[q * size + q]! - a[p * size + p]!) / (2 * entry);
  const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.sqrt(theta * theta + 1));
  const cos = 1 / Math.sqrt(t * t + 1);
  const sin = t * cos;
  const turn = (m: Float64Array, i: number, j: number) => {
    const [one, other] = [m[i]!, m[j]!];
    m[i] = cos * one - sin * other;
    m[j] = sin * one + cos * other;
  };
  for (let k = 0; k < size; k += 1) turn(a, k * size + p, k * size + q);
  for (let k = 0; k < size; k += 1) turn(a, p * size + k, q * size + k);
  for (let k = 0; k < size; k += 1) turn(v, k * size + p, k * size + q);
  return entry * entry;
}

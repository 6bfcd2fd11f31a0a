// Linear algebra of 3 × 3 matrices, for conversions between colour spaces.

export type Row = readonly [number, number, number];
/** Three rows; acts on column vectors. */
export type Matrix = readonly [Row, Row, Row];

/** The product matrix × column vector. */
export function transform(matrix: Matrix, column: Row): [number, number, number] {
  // By index: every pixel of a photograph comes through here, and taking lists apart costs more than the sums.
  const top = matrix[0];
  const middle = matrix[1];
  const bottom = matrix[2];
  const x = column[0];
  const y = column[1];
  const z = column[2];
  return [
    top[0] * x + top[1] * y + top[2] * z,
    middle[0] * x + middle[1] * y + middle[2] * z,
    bottom[0] * x + bottom[1] * y + bottom[2] * z,
  ];
}

/** The product left × right: `right` acts first. */
export function multiply(left: Matrix, right: Matrix): Matrix {
  const column = (index: 0 | 1 | 2): Row => [right[0][index], right[1][index], right[2][index]];
  const columns = [column(0), column(1), column(2)].map((each) => transform(left, each));
  const row = (index: 0 | 1 | 2): Row => [columns[0]![index], columns[1]![index], columns[2]![index]];
  return [row(0), row(1), row(2)];
}

/** The inverse by cofactors. Throws on a singular matrix. */
export function invert([[a, b, c], [d, e, f], [g, h, i]]: Matrix): Matrix {
  const determinant = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
  if (determinant === 0 || !Number.isFinite(determinant)) throw new RangeError('invert: singular matrix');
  const over = 1 / determinant;
  return [
    [(e * i - f * h) * over, (c * h - b * i) * over, (b * f - c * e) * over],
    [(f * g - d * i) * over, (a * i - c * g) * over, (c * d - a * f) * over],
    [(d * h - e * g) * over, (b * g - a * h) * over, (a * e - b * d) * over],
  ];
}

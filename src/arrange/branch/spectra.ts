// Keeps the eigenpairs of a form's cells, or items, for every set of them that is still open: a branch and bound meets the
// same sets again and again.
import { eigenpairsOf } from './eigenvalues';

/** A symmetric matrix on a set of m of its rows, beside the vector of ones. */
export interface Spectrum {
  /** The m − 1 eigenvalues beside ones, ascending. */
  readonly values: Float64Array;
  /** Row × (m − 1) + k. */
  readonly vectors: Float64Array;
  /** Sum of each row over the set, and of all. */
  readonly sums: Float64Array;
  readonly all: number;
}

/** Sets kept; of 16 a set takes about 1 kB. */
const MOST_KEPT = 1 << 16;

export class Spectra {
  private readonly known = new Map<number, Spectrum>();

  constructor(
    private readonly matrix: Float64Array,
    private readonly size: number,
  ) {}

  /** `set` has a bit for each row. */
  of(set: number): Spectrum {
    let found = this.known.get(set);
    if (!found) {
      if (this.known.size >= MOST_KEPT) this.known.clear();
      found = spectrumOf(this.matrix, this.size, membersOf(set, this.size));
      this.known.set(set, found);
    }
    return found;
  }
}

/** The members of a set, ascending. */
function membersOf(set: number, size: number): number[] {
  const members: number[] = [];
  for (let at = 0; at < size; at++) if ((set >> at) & 1) members.push(at);
  return members;
}

function spectrumOf(matrix: Float64Array, size: number, members: readonly number[]): Spectrum {
  const count = members.length;
  const sums = new Float64Array(count);
  let all = 0;
  members.forEach((row, at) => {
    for (const column of members) sums[at]! += matrix[row * size + column]!;
    all += sums[at]!;
  });
  // (I − J/m) A (I − J/m), with the vector of ones pushed up to be the last.
  const table = new Float64Array(count * count);
  let norm = 1;
  for (let row = 0; row < count; row++) {
    for (let column = 0; column < count; column++) {
      const one = matrix[members[row]! * size + members[column]!]!;
      norm += Math.abs(one);
      table[row * count + column] = one - (sums[row]! + sums[column]!) / count + all / (count * count);
    }
  }
  const { values, vectors } = eigenpairsOf(
    table.map((one) => one + (2 * norm) / count),
    count,
  );
  const width = count - 1;
  const kept = Float64Array.from(
    { length: count * width },
    (_, at) => vectors[(at % width) * count + Math.floor(at / width)]!,
  );
  return { values: values.slice(0, width), vectors: kept, sums, all };
}

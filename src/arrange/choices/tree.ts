// Vectors in a tree of halves, so that those near a place are found without going through all (a k-d tree; Bentley 1975).

/** The most vectors in a leaf. */
const LEAF = 16;

export class Tree {
  /** Index of each vector in the list it was made from, leaf by leaf. */
  readonly order: Int32Array;
  /** Vectors in that order. */
  readonly vectors: Float64Array;
  /** Coordinate at which each node is halved: 2n + 1 and 2n + 2 are the halves of node n. */
  private readonly halves: Float64Array;
  private readonly depth: number;

  /** `vectors` has them row by row; coordinate 0 halves the list, 1 its halves, and so on: those that differ most come first. */
  constructor(
    vectors: Float64Array,
    private readonly width: number,
  ) {
    const count = vectors.length / width;
    this.depth = Math.min(width, Math.max(0, Math.ceil(Math.log2(count / LEAF))));
    this.order = Int32Array.from({ length: count }, (_, at) => at);
    this.halves = new Float64Array(2 ** this.depth - 1);
    this.halve(vectors, 0, 0, 0, count);
    this.vectors = new Float64Array(vectors.length);
    this.order.forEach((from, to) => {
      this.vectors.set(vectors.subarray(from * width, (from + 1) * width), to * width);
    });
  }

  private halve(vectors: Float64Array, node: number, axis: number, from: number, to: number): void {
    if (axis === this.depth) return;
    const along = (at: number) => vectors[at * this.width + axis]!;
    this.order.subarray(from, to).sort((one, other) => along(one) - along(other));
    const middle = (from + to) >> 1;
    this.halves[node] = along(this.order[middle]!);
    this.halve(vectors, 2 * node + 1, axis + 1, from, middle);
    this.halve(vectors, 2 * node + 2, axis + 1, middle, to);
  }

  /** Visits the places of all vectors that may be within a square distance of `place`, nearest leaves first; `reach` says it anew each time it is asked. */
  forNear(place: ArrayLike<number>, reach: () => number, visit: (at: number) => void): void {
    const { depth, halves } = this;
    const look = (node: number, axis: number, from: number, to: number, square: number): void => {
      if (square > reach()) return;
      if (axis === depth) {
        for (let at = from; at < to; at++) visit(at);
        return;
      }
      const middle = (from + to) >> 1;
      const past = place[axis]! - halves[node]!;
      const far = square + past * past;
      if (past < 0) {
        look(2 * node + 1, axis + 1, from, middle, square);
        look(2 * node + 2, axis + 1, middle, to, far);
      } else {
        look(2 * node + 2, axis + 1, middle, to, square);
        look(2 * node + 1, axis + 1, from, middle, far);
      }
    };
    look(0, 0, 0, this.order.length, 0);
  }
}

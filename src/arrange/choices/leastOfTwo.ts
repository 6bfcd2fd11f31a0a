// Finds how near to the average two blocks side by side can come, each by itself and both together.

export interface Lengths {
  /** Figures of blocks less the average, block × channel. */
  readonly figures: Float64Array;
  /** Square of the length of each, or more, ascending. */
  readonly squares: Float64Array;
  /** No block that is not listed has a square below this. */
  readonly beyond: number;
}

/** Blocks looked at between two pauses. */
const PAUSE = 16;

/**
 * The least own · (f² + g²) + |f + g|² over any two blocks f and g with the squares f² and g², the same twice among them; `own` above 0.
 * Exact, or less where a block that is not listed could be one of the two. Yields every few milliseconds.
 */
export function* leastOfTwo({ figures, squares, beyond }: Lengths, own: number): Generator<void, number> {
  const width = figures.length / squares.length;
  const shortest = Math.min(squares[0]!, beyond);
  let least = own * (beyond + shortest);
  for (let one = 0; one < squares.length && own * (squares[one]! + shortest) < least; one++) {
    if (one % PAUSE === 0) yield;
    for (let other = 0; other <= one; other++) {
      let sum = own * (squares[one]! + squares[other]!);
      if (sum >= least) break;
      for (let k = 0; k < width && sum < least; k++)
        sum += (figures[one * width + k]! + figures[other * width + k]!) ** 2;
      least = Math.min(least, sum);
    }
  }
  return least;
}

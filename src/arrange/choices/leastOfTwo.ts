// Finds how near to the average two blocks side by side can come, each by itself and both together.
import { squares as squareOf } from '../../balance/score/termScales';
import { axesOf, turned } from './nearestPairs';
import { Tree } from './tree';

export interface Lengths {
  /** Figures of blocks less the average, block × channel; two channels or more. */
  readonly figures: Float64Array;
  /** Square of the length of each, or more, ascending. */
  readonly squares: Float64Array;
  /** The square of the length of a block that is not listed is not below this, or counts for twice as much more as it is below. */
  readonly beyond: number;
}

/** No block has a square below this, listed or not. */
export function leastSquare({ squares, beyond }: Lengths): number {
  return Math.min(squares[0] ?? beyond, beyond);
}

/** Blocks looked at between two pauses. */
const PAUSE = 16;

/**
 * For each of some `owns` above 0, the least own · (f² + g²) + |f + g|² over any two blocks f and g with the squares f² and g², the same
 * twice among them. Exact, or less where a block that is not listed could be one of the two. Yields every few milliseconds.
 */
export function* leastOfTwo(
  { figures, squares, beyond }: Lengths,
  owns: readonly number[],
): Generator<void, number[]> {
  // Beside f the best g is −f / (1 + own), where both come to own · f² + own / (1 + own) · |f|².
  const least = owns.map((own) => (own + own / (1 + own)) * beyond);
  if (squares.length === 0) return least;
  const width = figures.length / squares.length;
  const blocks = turned(figures, axesOf(figures, width), width);
  const tree = new Tree(blocks, width);
  for (let one = 0; one < squares.length; one++) {
    if (one % PAUSE === 0) yield;
    const block = blocks.subarray(one * width, (one + 1) * width);
    owns.forEach((own, at) => {
      least[at] = leastBeside({ tree, squares, one, block }, own, least[at]!);
    });
  }
  return least;
}

interface Beside {
  readonly tree: Tree;
  readonly squares: Float64Array;
  /** A block by its index, and its figures as the tree has them. */
  readonly one: number;
  readonly block: Float64Array;
}

/** The least of that block and any that comes no later in the list; `most` where it is not below that. */
function leastBeside({ tree, squares, one, block }: Beside, own: number, most: number): number {
  const { vectors, order } = tree;
  const alone = own * squares[one]!;
  const beside = alone + (own / (1 + own)) * squareOf(block);
  let least = most;
  if (beside >= least) return least;
  const best = block.map((figure) => -figure / (1 + own));
  const reach = () => (least - beside) / (1 + own);
  tree.forNear(best, reach, (at) => {
    const other = order[at]!;
    if (other > one) return;
    let sum = alone + own * squares[other]!;
    const from = at * block.length;
    for (let k = 0; k < block.length && sum < least; k++) sum += (block[k]! + vectors[from + k]!) ** 2;
    if (sum < least) least = sum;
  });
  return least;
}

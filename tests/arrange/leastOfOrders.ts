// The least score of twelve blocks over all 479,001,600 orders, gone through one by one, whatever the turns: with sums taken from
// balance/ alone (allPairs.ts), so that a proof is checked by what shares nothing with it.
import type { AllPairs } from './allPairs';

const SIZE = 12;
const TURNS = 4;

/** The least of a block in a cell and of two blocks in two cells, whatever their turns. */
function leastOfTurns({ options, alone, pair }: AllPairs) {
  const one = new Float64Array(SIZE * SIZE);
  // Row: cell × size + block; column the same of an earlier cell.
  const two = new Float64Array(SIZE ** 4);
  for (let cell = 0; cell < SIZE; cell++) {
    for (let block = 0; block < SIZE; block++) {
      const from = cell * options + block * TURNS;
      one[cell * SIZE + block] = Math.min(...alone.subarray(from, from + TURNS));
      for (let before = 0; before < cell; before++) {
        for (let other = 0; other < SIZE; other++) {
          let least = Number.POSITIVE_INFINITY;
          for (let turn = 0; turn < TURNS; turn++) {
            const at = ((before * SIZE + cell) * options + other * TURNS + turn) * options + block * TURNS;
            least = Math.min(least, ...pair.subarray(at, at + TURNS));
          }
          two[(cell * SIZE + block) * SIZE * SIZE + before * SIZE + other] = least;
        }
      }
    }
  }
  return { one, two };
}

/**
 * The least cost of all orders of a wall of twelve below `most`, and how many orders there were; half a minute and more. Of an
 * order that may be below, every two blocks with their best turns, all turns are tried.
 */
export function leastOfOrders(pairs: AllPairs, most: number): { least: number; count: number } {
  const { one, two } = leastOfTurns(pairs);
  const hung = new Int32Array(SIZE);
  const added = new Float64Array(SIZE);
  let least = most;
  let count = 0;
  const hang = (cell: number, used: number, cost: number) => {
    if (cell === SIZE) {
      count += 1;
      if (cost < least) least = Math.min(least, turned(pairs, hung, added, least));
      return;
    }
    for (let block = 0; block < SIZE; block++) {
      if (used & (1 << block)) continue;
      const row = cell * SIZE + block;
      let sum = one[row]!;
      const from = row * SIZE * SIZE;
      for (let before = 0; before < cell; before++) sum += two[from + before * SIZE + hung[before]!]!;
      hung[cell] = block;
      added[cell] = sum;
      hang(cell + 1, used | (1 << block), cost + sum);
    }
  };
  hang(0, 0, pairs.empty);
  return { least, count };
}

/** The least cost of an order below `most` over all turns; `added` is what each cell adds at least. */
function turned(
  { empty, options, alone, pair }: AllPairs,
  hung: Int32Array,
  added: Float64Array,
  most: number,
) {
  const chosen = new Int32Array(SIZE);
  let least = most;
  const turn = (cell: number, cost: number, rest: number) => {
    if (cost + rest >= least) return;
    if (cell === SIZE) {
      least = cost;
      return;
    }
    for (let turns = 0; turns < TURNS; turns++) {
      const option = hung[cell]! * TURNS + turns;
      let sum = cost + alone[cell * options + option]!;
      for (let before = 0; before < cell; before++)
        sum += pair[((before * SIZE + cell) * options + chosen[before]!) * options + option]!;
      chosen[cell] = option;
      turn(cell + 1, sum, rest - added[cell]!);
    }
  };
  turn(
    0,
    empty,
    added.reduce((sum, one) => sum + one, 0),
  );
  return least;
}

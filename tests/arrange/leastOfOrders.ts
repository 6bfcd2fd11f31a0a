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

/** The least cost of all orders of a wall of twelve, and how many there were; half a minute. No layout costs less. */
export function leastOfOrders(pairs: AllPairs): { least: number; count: number } {
  const { one, two } = leastOfTurns(pairs);
  const hung = new Int32Array(SIZE);
  let least = Number.POSITIVE_INFINITY;
  let count = 0;
  const hang = (cell: number, used: number, cost: number) => {
    if (cell === SIZE) {
      count += 1;
      if (cost < least) least = cost;
      return;
    }
    for (let block = 0; block < SIZE; block++) {
      if (used & (1 << block)) continue;
      const row = cell * SIZE + block;
      let sum = cost + one[row]!;
      const from = row * SIZE * SIZE;
      for (let before = 0; before < cell; before++) sum += two[from + before * SIZE + hung[before]!]!;
      hung[cell] = block;
      hang(cell + 1, used | (1 << block), sum);
    }
  };
  hang(0, 0, pairs.empty);
  return { least, count };
}

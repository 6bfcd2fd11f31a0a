// How few rims must meet a rim of the same fabric: exact for one block, a proven lower bound for many. Wedges tip up and
// tip down alternate round the block, so n = N/2 ups and n downs sit in a ring and only an up ever meets a down.
import { total } from '../../model/lengths';

/**
 * The fewest seams of one block at which a fabric meets itself on the rim, for a fabric on `ups` of the n up wedges and
 * `downs` of the n down wedges. Summed over the fabrics this is exactly the fewest clashes of the block:
 * nothing when one of them is 0 or together they are fewer than n; 1 when they are just n (each other wedge keeps two of
 * them apart, except where the ring turns from ups to downs); 2 for each one more. Checked by enumeration in the tests.
 */
export function fewestClashes(ups: number, downs: number, half: number): number {
  if (ups === 0 || downs === 0 || ups + downs < half) return 0;
  return ups + downs === half ? 1 : 2 * (ups + downs - half);
}

/** How many wedges of each rim fabric there are to choose from, tip up and tip down. */
export interface RimSupply {
  readonly ups: readonly number[];
  readonly downs: readonly number[];
  /** Wedges whose rim cannot clash (background cloth). */
  readonly harmless: { readonly ups: number; readonly downs: number };
}

/**
 * A lower bound on the clashes of `blocks` whole blocks made from this supply: each fabric must fill the places that all
 * others leave, and its own clashes cannot be fewer than those of the best spread of that many. Fabrics add up.
 */
export function leastClashes(supply: RimSupply, blocks: number, half: number): number {
  const need = blocks * half;
  const allUps = total(supply.ups) + supply.harmless.ups;
  const allDowns = total(supply.downs) + supply.harmless.downs;
  return supply.ups.reduce((total, there, fabric) => {
    const ups = Math.max(0, Math.min(there, need - (allUps - there)));
    const down = supply.downs[fabric]!;
    const downs = Math.max(0, Math.min(down, need - (allDowns - down)));
    return total + bestSpread(ups, downs, blocks, half);
  }, 0);
}

/**
 * At least this many clashes when one fabric has to stand on `ups` and `downs` rims of `blocks` blocks. Some blocks may
 * take it on all their ups and no down (or the other way), which costs nothing; the others share the rest, and the cost
 * of a block by its sum is 0 up to n − 1, then 1, 1, 2, 2, … for each more, so even shares are best.
 */
function bestSpread(ups: number, downs: number, blocks: number, half: number): number {
  if (ups + downs <= (half - 1) * blocks) return 0;
  let least = Number.POSITIVE_INFINITY;
  for (let allUp = 0; allUp <= Math.min(blocks, Math.floor(ups / half)); allUp += 1) {
    const most = Math.min(blocks - allUp, Math.floor(downs / half));
    for (let allDown = 0; allDown <= most; allDown += 1) {
      const mixed = blocks - allUp - allDown;
      const beyond = ups + downs - half * (allUp + allDown) - (half - 1) * mixed;
      const cost = beyond <= 0 ? 0 : Math.min(beyond, 2 * mixed) + 2 * Math.max(0, beyond - 2 * mixed);
      if (beyond > 0 && mixed === 0) continue;
      least = Math.min(least, cost);
    }
  }
  return Number.isFinite(least) ? least : 0;
}

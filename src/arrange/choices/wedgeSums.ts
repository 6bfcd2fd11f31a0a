// Lists every choice of wedges of one tip for a block, with what the wedges of each add to the figures of the block.
import type { CostTables } from '../live/costTables';
import { wedgeFigures } from '../live/tradePrices';
import type { Pair } from './nearestPairs';

/** The most choices of one tip that are listed; pairs of them are looked through in a second or two. */
const MOST_SUMS = 20_000;

export interface WedgesOfTip {
  /** Wedge types of one tip, and how many there are of each. */
  readonly types: readonly number[];
  readonly stock: Int32Array;
  /** How many of them lie in the block. */
  readonly places: number;
}

export interface WedgeSums {
  /** Scaled figures, choice × channel. */
  readonly figures: Float64Array;
  /** Wedge types, choice × place. */
  readonly types: Int32Array;
  /** How many wedges each holds. */
  readonly places: number;
}

/** Wedge types of a tip of which any are there. */
export function typesThere(stock: Int32Array, tip: number): number[] {
  return Array.from(stock.keys()).filter((type) => type % 2 === tip && stock[type]! > 0);
}

/** The wedge types that a choice holds. */
export function heldIn({ types, places }: WedgeSums, choice: number): Int32Array {
  return types.subarray(choice * places, (choice + 1) * places);
}

/** Every choice of wedges of a tip for a block of some area, figures from channel `first` on added to `base`; null where there are too many or none. */
export function sumsOf(
  tables: CostTables,
  { types, stock, places }: WedgesOfTip,
  { first, area }: { readonly first: number; readonly area: number },
  base: Float64Array,
): WedgeSums | null {
  const width = base.length;
  const figures = types.map((type) => wedgeFigures(tables, type, first, area));
  const sums: number[] = [];
  const chosen: number[] = [];
  const sum = base.slice();
  const held: number[] = [];
  const add = (at: number, times: number) => {
    for (let channel = 0; channel < width; channel++) sum[channel]! += times * figures[at]![channel]!;
  };
  /** False once there are too many. */
  const choose = (from: number, left: number): boolean => {
    if (left === 0) {
      for (const one of sum) sums.push(one);
      chosen.push(...held);
      return sums.length <= MOST_SUMS * width;
    }
    if (from === types.length) return true;
    const most = Math.min(left, stock[types[from]!]!);
    for (let times = 0; times <= most; times++) {
      add(from, times);
      for (let one = 0; one < times; one++) held.push(types[from]!);
      const goesOn = choose(from + 1, left - times);
      held.length -= times;
      add(from, -times);
      if (!goesOn) return false;
    }
    return true;
  };
  if (!choose(0, places) || sums.length === 0) return null;
  return { figures: Float64Array.from(sums), types: Int32Array.from(chosen), places };
}

/** The figures of pairs of choices, pair × channel. */
export function summed(
  ups: WedgeSums,
  downs: WedgeSums,
  pairs: readonly Pair[],
  width: number,
): Float64Array {
  const figures = new Float64Array(pairs.length * width);
  pairs.forEach(({ one, other }, choice) => {
    for (let k = 0; k < width; k++)
      figures[choice * width + k] = ups.figures[one * width + k]! + downs.figures[other * width + k]!;
  });
  return figures;
}

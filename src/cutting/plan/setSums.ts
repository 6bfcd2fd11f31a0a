// Which strips of each width so many sets can take together: all sums of set patterns, one set after another. A sum is kept as one
// number with a digit for each width. Which sum is wanted is setTotals'.

/** So many sums are kept after each set; where there are more, the most promising go on. */
const MOST_SUMS = 60_000;
/** For each further set patterns are laid on sums so many times at most; where that is not enough, the most promising go on. */
export const MOST_STEPS = 2_000_000;
/** So many are the most promising; fewer where there are more than a hundred patterns to lay on each. */
const MOST_PROMISING = 6_000;
const PROMISING_STEPS = 600_000;

/** The sums of so many sets. */
export interface Layer {
  /** Strips of each width, one sum after another. */
  readonly strips: Int32Array;
  /** False where sums were left out. */
  readonly exact: boolean;
}

export interface Sums {
  /** The sums of so many sets, 0 or more and no more than `sumsOf` was asked for; worked out when first asked for. */
  readonly layer: (sets: number) => Layer;
  /** The patterns that make up a sum of this layer, the last one first. */
  readonly patternsOf: (sets: number, sum: number) => number[];
  /** How many times a pattern was laid on a sum so far. */
  readonly steps: () => number;
}

/** Sums in the order they were first reached, each with the sum before it and the pattern that was laid on that. */
interface Reached {
  readonly keys: Float64Array;
  readonly by: Int32Array;
  readonly from: Int32Array;
}

type KeyedLayer = Layer & Reached;

/** The sums of up to `most` patterns (one or more are given, no two alike). `cost` tells the most promising sums. */
export function sumsOf(
  patterns: readonly (readonly number[])[],
  most: number,
  cost: (counts: Int32Array) => number,
): Sums {
  const widths = patterns[0]!.length;
  const base = most * Math.max(...patterns.flat()) + 1;
  const keys = Float64Array.from(patterns, (one) => one.reduceRight((key, strips) => key * base + strips, 0));
  const promising = Math.min(MOST_PROMISING, Math.ceil(PROMISING_STEPS / keys.length));
  const start = { keys: new Float64Array(1), by: new Int32Array(1), from: new Int32Array(1) };
  const layers: KeyedLayer[] = [{ ...start, strips: new Int32Array(widths), exact: true }];
  let steps = 0;

  const bestOf = (reached: Reached): number[] => {
    const strips = stripsOf(reached.keys, base, widths);
    const costs = reached.keys.map((_, sum) => cost(strips.subarray(sum * widths, (sum + 1) * widths)));
    const order = Array.from(costs.keys()).sort((one, other) => costs[one]! - costs[other]!);
    return order.slice(0, promising);
  };
  const grow = (before: KeyedLayer): KeyedLayer => {
    const few = stepsOn(before, keys.length) > MOST_STEPS ? bestOf(before) : null;
    const next = new FirstReached();
    const whole = before.exact && !few;
    for (const sum of few ?? before.keys.keys()) {
      // The way to a sum that is reached first is of patterns in their order, as long as no sum is left out: no pattern before
      // the one that made this sum reaches a new one.
      const first = whole ? before.by[sum]! : 0;
      steps += keys.length - first;
      for (let pattern = first; pattern < keys.length; pattern += 1) {
        next.reach(before.keys[sum]! + keys[pattern]!, pattern, sum);
      }
    }
    const reached = next.all();
    const tooMany = reached.keys.length > MOST_SUMS;
    const kept = tooMany ? picked(reached, bestOf(reached)) : reached;
    return { ...kept, strips: stripsOf(kept.keys, base, widths), exact: whole && !tooMany };
  };
  const layer = (sets: number) => {
    while (layers.length <= sets) layers.push(grow(layers.at(-1)!));
    return layers[sets]!;
  };
  const patternsOf = (sets: number, sum: number) => {
    const chosen: number[] = [];
    let at = sum;
    for (let set = sets; set > 0; set -= 1) {
      const { by, from } = layer(set);
      chosen.push(by[at]!);
      at = from[at]!;
    }
    return chosen;
  };
  return { layer, patternsOf, steps: () => steps };
}

/** How many steps it takes to lay the patterns on each of these sums. */
function stepsOn({ by, exact }: KeyedLayer, patterns: number): number {
  const all = by.length * patterns;
  return exact ? by.reduce((left, first) => left - first, all) : all;
}

function picked({ keys, by, from }: Reached, order: readonly number[]): Reached {
  return {
    keys: Float64Array.from(order, (at) => keys[at]!),
    by: Int32Array.from(order, (at) => by[at]!),
    from: Int32Array.from(order, (at) => from[at]!),
  };
}

/** Strips of each width of these sums, one sum after another. */
function stripsOf(keys: Float64Array, base: number, widths: number): Int32Array {
  const strips = new Int32Array(keys.length * widths);
  let at = 0;
  for (let rest of keys) {
    for (let width = 0; width < widths; width += 1) {
      const digit = rest % base;
      strips[at] = digit;
      rest = (rest - digit) / base;
      at += 1;
    }
  }
  return strips;
}

/** Spreads whole numbers over a table (Knuth's multiplier, 2³² divided by the golden ratio). */
const SPREADING = 0x9e3779b1;

/** Sums in the order they are reached: a table with open addressing, as a Map takes ten times as long for millions. */
class FirstReached {
  private size = 0;
  private bits = 10;
  /** Where in the lists a sum is, plus 1; 0 for none. */
  private table = new Int32Array(1 << this.bits);
  private keys = new Float64Array(1 << (this.bits - 1));
  private by = new Int32Array(1 << (this.bits - 1));
  private from = new Int32Array(1 << (this.bits - 1));

  /** Notes how a sum was reached, if it is the first time. */
  reach(key: number, pattern: number, from: number): void {
    const slot = this.slotOf(key);
    if (this.table[slot] !== 0) return;
    this.table[slot] = this.size + 1;
    this.keys[this.size] = key;
    this.by[this.size] = pattern;
    this.from[this.size] = from;
    this.size += 1;
    if (this.size === this.keys.length) this.double();
  }

  all(): Reached {
    const { keys, by, from, size } = this;
    return { keys: keys.slice(0, size), by: by.slice(0, size), from: from.slice(0, size) };
  }

  /** The place of a sum in the table, or the free one where it belongs. */
  private slotOf(key: number): number {
    const mask = this.table.length - 1;
    let slot = Math.imul(key, SPREADING) >>> (32 - this.bits);
    for (let at = this.table[slot]!; at !== 0 && this.keys[at - 1] !== key; at = this.table[slot]!) {
      slot = (slot + 1) & mask;
    }
    return slot;
  }

  private double(): void {
    const { keys, by, from } = this;
    this.bits += 1;
    this.table = new Int32Array(1 << this.bits);
    this.keys = new Float64Array(keys.length * 2);
    this.keys.set(keys);
    this.by = new Int32Array(by.length * 2);
    this.by.set(by);
    this.from = new Int32Array(from.length * 2);
    this.from.set(from);
    for (let at = 0; at < this.size; at += 1) this.table[this.slotOf(keys[at]!)] = at + 1;
  }
}

// How many strips of each width so many sets need, all high enough, near a wanted proportion and with least cloth.
// An integer problem: exact for few sets, a stated heuristic for many.
import { finishedWidth } from '../../geometry/stripSet';
import { HAIR, isTooNarrow } from '../../model/lengths';
import type { Inches } from '../../model/units';

/** A cut width and its part in the proportion (2 : 2 : 1 and the like; parts need not add up to anything). */
export interface WidthPart {
  readonly width: Inches;
  readonly part: number;
}

export interface StripTotals {
  /** Strips of each width, in the order of `widths`. */
  readonly counts: readonly number[];
  /** Strips of each width in each set. */
  readonly sets: readonly (readonly number[])[];
  /** Width of cloth in all, plus OFF_PROPORTION for each strip off the proportion. */
  readonly cost: number;
  /** True where no other choice costs less. */
  readonly exact: boolean;
}

/** A strip off the proportion (half of Σ|count − share|, so a strip of another width counts once) is worth so much width. */
export const OFF_PROPORTION: Inches = 2;
/** So many sets are solved exactly; more are put together from groups of this size. */
const EXACT_SETS = 10;
/** A set goes less than this beyond its height, inches. */
const MOST_BEYOND: Inches = 0.5;
/** More widths than this are not sewn into one set; the first ones given are used. */
const MOST_WIDTHS = 5;
const MOST_PATTERNS = 400;
const MOST_STATES = 60_000;

/** What totals cost: the cloth, and how far they are off the proportion. */
export function totalsCost(counts: readonly number[], widths: readonly WidthPart[]): number {
  const parts = widths.reduce((sum, one) => sum + one.part, 0);
  const strips = counts.reduce((sum, count) => sum + count, 0);
  return counts.reduce((cost, count, at) => {
    const { width, part } = widths[at]!;
    return cost + count * width + (OFF_PROPORTION / 2) * Math.abs(count - (strips * part) / parts);
  }, 0);
}

/**
 * Every way to make one set: counts by width that reach the height and go less than half an inch beyond it (or less than
 * the narrowest strip adds, where that is more). Empty when a width vanishes in its seams. `exact` is false where there
 * were too many to list.
 */
export function setPatterns(
  widths: readonly Inches[],
  height: Inches,
  seam: Inches,
): { patterns: number[][]; exact: boolean } {
  const gains = widths.map((width) => finishedWidth(width, seam));
  const needed = finishedWidth(height, seam);
  if (widths.some((width) => isTooNarrow(width, seam))) return { patterns: [], exact: true };
  const beyond = Math.max(MOST_BEYOND, Math.min(...gains));
  const patterns: number[][] = [];
  const grow = (at: number, counts: number[], reach: number): void => {
    if (at === widths.length) {
      if (reach >= needed - HAIR && reach < needed + beyond - HAIR) patterns.push([...counts]);
      return;
    }
    const most = Math.floor((needed + beyond - reach) / gains[at]!);
    for (let count = 0; count <= most && patterns.length <= MOST_PATTERNS; count += 1) {
      counts[at] = count;
      grow(at + 1, counts, reach + count * gains[at]!);
    }
    counts[at] = 0;
  };
  grow(
    0,
    widths.map(() => 0),
    0,
  );
  return { patterns: patterns.slice(0, MOST_PATTERNS), exact: patterns.length <= MOST_PATTERNS };
}

/**
 * The cheapest totals by the number of sets. Up to ten sets every sum of patterns is looked at (dynamic programming over
 * totals, exact); more sets repeat the best ten and finish exactly, which keeps the proportion but may miss a little cloth.
 */
export function totalsTable(
  parts: readonly WidthPart[],
  height: Inches,
  seam: Inches,
): (sets: number) => StripTotals | null {
  const given = parts.filter((one) => one.part > 0);
  const widths = given.slice(0, MOST_WIDTHS);
  const none = widths.map(() => 0);
  const { patterns, exact } = setPatterns(
    widths.map((one) => one.width),
    height,
    seam,
  );
  if (widths.length === 0 || patterns.length === 0) return () => null;
  const sums = sumsOf(patterns, widths);
  let group: Sum | null = null;
  const spread = (row: readonly number[]) => parts.map((one) => row[widths.indexOf(one)] ?? 0);
  return (sets) => {
    if (sets <= 0) return null;
    const groups = Math.floor((sets - 1) / EXACT_SETS);
    if (groups > 0) group ??= bestSum(patterns, sums, EXACT_SETS, widths, none);
    const repeated = Array.from({ length: groups }, () => group!.sets).flat();
    const before = none.map((_, at) => groups * (group?.counts[at] ?? 0));
    const end = bestSum(patterns, sums, sets - groups * EXACT_SETS, widths, before);
    const counts = before.map((count, at) => count + end.counts[at]!);
    return {
      counts: spread(counts),
      sets: [...repeated, ...end.sets].map(spread),
      cost: totalsCost(counts, widths),
      exact: exact && groups === 0 && end.exact && widths.length === given.length,
    };
  };
}

interface Sum {
  readonly counts: readonly number[];
  readonly sets: readonly (readonly number[])[];
  readonly exact: boolean;
}

/** All sums of up to ten patterns, layer by layer. A sum is kept as one number with a digit for each width. */
interface Sums {
  readonly keys: readonly number[];
  readonly base: number;
  /** After so many sets; worked out when first asked for. */
  readonly layer: (sets: number) => Layer;
}

interface Layer {
  /** For each sum the pattern by which it was first reached. */
  readonly by: ReadonlyMap<number, number>;
  /** The same sums as strips of each width, one sum after another. */
  readonly strips: Int32Array;
  readonly exact: boolean;
}

function sumsOf(patterns: readonly number[][], widths: readonly WidthPart[]): Sums {
  const base = EXACT_SETS * Math.max(...patterns.flat()) + 1;
  const keys = patterns.map((pattern) => pattern.reduceRight((key, strips) => key * base + strips, 0));
  const asLayer = (by: ReadonlyMap<number, number>, exact: boolean): Layer => ({
    by,
    strips: Int32Array.from([...by.keys()].flatMap((key) => countsOf(key, base, widths.length))),
    exact,
  });
  const layers = [asLayer(new Map([[0, -1]]), true)];
  const grow = (before: Layer): Layer => {
    const next = new Map<number, number>();
    for (const key of before.by.keys()) {
      keys.forEach((step, pattern) => {
        if (!next.has(key + step)) next.set(key + step, pattern);
      });
    }
    if (next.size <= MOST_STATES) return asLayer(next, before.exact);
    // Too many widths for all sums: the most promising go on.
    const cost = (key: number) => totalsCost(countsOf(key, base, widths.length), widths);
    const rated = [...next].map(([key, pattern]) => ({ key, pattern, cost: cost(key) }));
    const kept = rated.sort((one, other) => one.cost - other.cost).slice(0, MOST_STATES / 10);
    return asLayer(new Map(kept.map(({ key, pattern }) => [key, pattern])), false);
  };
  const layer = (sets: number) => {
    while (layers.length <= sets) layers.push(grow(layers.at(-1)!));
    return layers[sets]!;
  };
  return { keys, base, layer };
}

function countsOf(key: number, base: number, widths: number): number[] {
  let rest = key;
  return Array.from({ length: widths }, () => {
    const digit = rest % base;
    rest = (rest - digit) / base;
    return digit;
  });
}

/** The best sum of so many patterns on top of `before`. */
function bestSum(
  patterns: readonly number[][],
  { keys, base, layer }: Sums,
  count: number,
  widths: readonly WidthPart[],
  before: readonly number[],
): Sum {
  const { by, strips, exact } = layer(count);
  const at = cheapest(strips, widths, before);
  const counts = [...strips.subarray(at * widths.length, (at + 1) * widths.length)];
  const sets: number[][] = [];
  let key = counts.reduceRight((sum, digit) => sum * base + digit, 0);
  for (let set = count; set > 0; set -= 1) {
    const pattern = (set === count ? by : layer(set).by).get(key)!;
    sets.push([...patterns[pattern]!]);
    key -= keys[pattern]!;
  }
  return { counts, sets, exact };
}

/** Which of the sums costs least on top of `before`: totalsCost without a list for each, as there are thousands. */
function cheapest(strips: Int32Array, widths: readonly WidthPart[], before: readonly number[]): number {
  const parts = widths.reduce((sum, one) => sum + one.part, 0);
  const shares = widths.map((one) => one.part / parts);
  const size = widths.length;
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let sum = 0; sum < strips.length / size; sum += 1) {
    let all = 0;
    for (let at = 0; at < size; at += 1) all += strips[sum * size + at]! + before[at]!;
    let cost = 0;
    for (let at = 0; at < size; at += 1) {
      const count = strips[sum * size + at]! + before[at]!;
      cost += count * widths[at]!.width + (OFF_PROPORTION / 2) * Math.abs(count - all * shares[at]!);
    }
    if (cost < least - 1e-9) [best, least] = [sum, cost];
  }
  return best;
}

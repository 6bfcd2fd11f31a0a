// How many strips of each width so many sets need, all high enough, near a wanted proportion and with least cloth.
// An integer problem: exact for few sets, a stated heuristic for many.
import { finishedWidth } from '../../geometry/stripSet';
import { HAIR, isTooNarrow } from '../../model/lengths';
import type { Inches } from '../../model/units';
import { type Sums, sumsOf } from './setSums';

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

/** What totals cost: the cloth, and how far they are off the proportion. */
export function totalsCost(counts: ArrayLike<number>, widths: readonly WidthPart[]): number {
  const parts = widths.reduce((sum, one) => sum + one.part, 0);
  let strips = 0;
  for (let at = 0; at < widths.length; at += 1) strips += counts[at]!;
  return widths.reduce(
    (cost, { width, part }, at) =>
      cost + counts[at]! * width + (OFF_PROPORTION / 2) * Math.abs(counts[at]! - (strips * part) / parts),
    0,
  );
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
  const sums = sumsOf(patterns, EXACT_SETS, (counts) => totalsCost(counts, widths));
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

/** The best sum of so many patterns on top of `before`. */
function bestSum(
  patterns: readonly number[][],
  sums: Sums,
  count: number,
  widths: readonly WidthPart[],
  before: readonly number[],
): Sum {
  const { strips, exact } = sums.layer(count);
  const at = cheapest(strips, widths, before);
  const counts = [...strips.subarray(at * widths.length, (at + 1) * widths.length)];
  const sets = sums.patternsOf(count, at).map((pattern) => [...patterns[pattern]!]);
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

// How many strips of each width so many sets need, all high enough, near a wanted proportion and with least cloth.
// An integer problem: exact for few sets, a stated heuristic for many.
import type { Inches } from '../model/units';

/** A cut width and its part in the proportion (2 : 2 : 1 and the like; parts need not add up to anything). */
export interface WidthPart {
  readonly width: Inches;
  readonly part: number;
}

export interface TotalsWanted {
  readonly sets: number;
  readonly widths: readonly WidthPart[];
  /** Least height of a set. */
  readonly height: Inches;
  readonly seam: Inches;
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
  const gains = widths.map((width) => width - 2 * seam);
  const needed = height - 2 * seam;
  if (gains.some((gain) => gain <= 1e-9)) return { patterns: [], exact: true };
  const beyond = Math.max(MOST_BEYOND, Math.min(...gains));
  const patterns: number[][] = [];
  const grow = (at: number, counts: number[], reach: number): void => {
    if (patterns.length > MOST_PATTERNS) return;
    if (at === widths.length) {
      if (reach >= needed - 1e-9 && reach < needed + beyond - 1e-9) patterns.push([...counts]);
      return;
    }
    const most = Math.floor((needed + beyond - reach) / gains[at]!);
    for (let count = 0; count <= most; count += 1) {
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
 * The cheapest totals. Up to ten sets every sum of patterns is looked at (dynamic programming over totals, exact); more
 * sets repeat the best ten and finish exactly, which keeps the proportion but may miss a little cloth. Null when no
 * strip of these widths can make a set, or nothing is asked.
 */
export function stripTotals(wanted: TotalsWanted): StripTotals | null {
  const widths = wanted.widths.filter((one) => one.part > 0);
  if (wanted.sets <= 0 || widths.length === 0) return null;
  const { patterns, exact } = setPatterns(
    widths.map((one) => one.width),
    wanted.height,
    wanted.seam,
  );
  if (patterns.length === 0) return null;
  const groups = Math.floor((wanted.sets - 1) / EXACT_SETS);
  const last = wanted.sets - groups * EXACT_SETS;
  const group =
    groups > 0
      ? bestSum(
          patterns,
          EXACT_SETS,
          widths,
          widths.map(() => 0),
        )
      : null;
  const before = widths.map((_, at) => groups * (group?.counts[at] ?? 0));
  const end = bestSum(patterns, last, widths, before);
  const sets = [...Array.from({ length: groups }, () => group!.sets).flat(), ...end.sets];
  const counts = widths.map((_, at) => before[at]! + end.counts[at]!);
  const spread = (row: readonly number[]) =>
    wanted.widths.map((one) => (one.part > 0 ? row[widths.indexOf(one)]! : 0));
  return {
    counts: spread(counts),
    sets: sets.map(spread),
    cost: totalsCost(counts, widths),
    exact: exact && groups === 0 && end.exact,
  };
}

interface Sum {
  readonly counts: readonly number[];
  readonly sets: readonly (readonly number[])[];
  readonly exact: boolean;
}

/** The best sum of `count` patterns on top of `before`. */
function bestSum(
  patterns: readonly number[][],
  count: number,
  widths: readonly WidthPart[],
  before: readonly number[],
): Sum {
  let layer = new Map<string, { counts: number[]; from: string | null; pattern: number }>();
  const layers: (typeof layer)[] = [];
  layer.set(widths.map(() => 0).join(' '), { counts: widths.map(() => 0), from: null, pattern: -1 });
  let exact = true;
  const costOf = (counts: readonly number[]) =>
    totalsCost(
      counts.map((one, at) => one + before[at]!),
      widths,
    );
  for (let set = 0; set < count; set += 1) {
    layers.push(layer);
    const next: typeof layer = new Map();
    for (const [key, { counts }] of layer) {
      patterns.forEach((pattern, index) => {
        const grown = counts.map((one, at) => one + pattern[at]!);
        const to = grown.join(' ');
        if (!next.has(to)) next.set(to, { counts: grown, from: key, pattern: index });
      });
    }
    if (next.size > MOST_STATES) {
      // Too many widths for all sums: the most promising go on.
      exact = false;
      const kept = [...next].sort((one, other) => costOf(one[1].counts) - costOf(other[1].counts));
      layer = new Map(kept.slice(0, MOST_STATES / 10));
    } else layer = next;
  }
  let [bestKey, best] = [...layer][0]!;
  for (const [key, state] of layer) {
    if (costOf(state.counts) < costOf(best.counts) - 1e-9) [bestKey, best] = [key, state];
  }
  const sets: number[][] = [];
  let state = layer.get(bestKey)!;
  for (let set = count - 1; set >= 0; set -= 1) {
    sets.push([...patterns[state.pattern]!]);
    state = layers[set]!.get(state.from!)!;
  }
  return { counts: best.counts, sets, exact };
}

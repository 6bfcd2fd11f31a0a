// What so many sets in the wanted proportion need: strips of each width, and how many of them one fabric may be. Neighbours in
// a set differ, so of a set of s strips at most every other one, ⌈s/2⌉, is of one fabric (our rule, from 'no fabric beside itself').
import type { WedgePlan } from '../../model/project';
import type { Inches } from '../../model/units';
import { HEIGHT_TO_SPARE } from '../sets/setScore';
import { setPatterns, totalsTable, type WidthPart } from './setTotals';

export interface SetNeed {
  /** Strips of each width, in the order of the widths. */
  readonly counts: readonly number[];
  /** Their widths side by side. */
  readonly cloth: Inches;
  /** Most strips of one fabric among them. */
  readonly ofOne: number;
  /** The least width the other fabrics then have to give. */
  readonly ofOthers: Inches;
}

export interface SetNeeds {
  readonly widths: readonly Inches[];
  /** The same for every wanted number of sets, 1 or more; null when no set of these widths is possible. */
  readonly of: (sets: number) => SetNeed | null;
  /** Cloth side by side that no number of sets up to this one goes below, for each set; all fabrics, and all but one. */
  readonly least: (sets: number) => { readonly cloth: Inches; readonly others: Inches };
}

/** Beyond so many sets the least cloth is bounded, not looked up. */
const LOOKED_UP = 60;

const kept = new Map<string, SetNeeds>();
const MOST_KEPT = 12;

/** The needs of one proportion; kept, as the same ones are asked for over and over. */
export function setNeeds(parts: readonly WidthPart[], wedge: WedgePlan): SetNeeds {
  const key = JSON.stringify([parts, wedge.cutHeight, wedge.seam]);
  const found = kept.get(key);
  if (found) return found;
  if (kept.size >= MOST_KEPT) kept.clear();
  const needs = needsOf(parts, wedge);
  kept.set(key, needs);
  return needs;
}

function needsOf(parts: readonly WidthPart[], wedge: WedgePlan): SetNeeds {
  const widths = parts.map((one) => one.width);
  const totals = totalsTable(parts, wedge.cutHeight + HEIGHT_TO_SPARE, wedge.seam);
  const known = new Map<number, SetNeed | null>();
  const of = (sets: number): SetNeed | null => {
    const found = known.get(sets);
    if (found !== undefined) return found;
    const total = totals(sets);
    const need = total ? needOf(total.counts, total.sets, widths) : null;
    known.set(sets, need);
    return need;
  };
  const bounds = new Map<number, { cloth: Inches; others: Inches }>();
  const least = (sets: number) => {
    const upTo = Math.min(sets, LOOKED_UP + 1);
    const found = bounds.get(upTo) ?? leastUpTo(upTo);
    bounds.set(upTo, found);
    return found;
  };
  const leastUpTo = (sets: number) => {
    let cloth = Number.POSITIVE_INFINITY;
    let others = Number.POSITIVE_INFINITY;
    for (let at = 1; at <= Math.min(sets, LOOKED_UP); at += 1) {
      const need = of(at);
      if (!need) break;
      cloth = Math.min(cloth, need.cloth / at);
      others = Math.min(others, need.ofOthers / at);
    }
    if (sets <= LOOKED_UP) return { cloth, others };
    const thin = leastPattern(parts, wedge);
    // More sets repeat the best ten; only the last ten at the most are chosen anew.
    return {
      cloth: Math.min(cloth, (of(10)!.cloth * 6 + thin.cloth * 10) / 70),
      others: Math.min(others, (of(10)!.ofOthers * 6 + thin.others * 10) / 70),
    };
  };
  return { widths, of, least };
}

function needOf(
  counts: readonly number[],
  sets: readonly (readonly number[])[],
  widths: readonly Inches[],
): SetNeed {
  const cloth = clothOf(counts, widths);
  const ofOne = sets.reduce((sum, set) => sum + Math.ceil(stripsIn(set) / 2), 0);
  return { counts, cloth, ofOne, ofOthers: cloth - widest(counts, widths, ofOne) };
}

/** The thinnest set there is, whatever the proportion. */
function leastPattern(parts: readonly WidthPart[], wedge: WedgePlan): { cloth: Inches; others: Inches } {
  const widths = parts.filter((one) => one.part > 0).map((one) => one.width);
  const { patterns } = setPatterns(widths, wedge.cutHeight + HEIGHT_TO_SPARE, wedge.seam);
  const each = patterns.map((set) => needOf(set, [set], widths));
  return {
    cloth: Math.min(...each.map((one) => one.cloth)),
    others: Math.min(...each.map((one) => one.ofOthers)),
  };
}

function clothOf(counts: readonly number[], widths: readonly Inches[]): Inches {
  return counts.reduce((sum, count, at) => sum + count * widths[at]!, 0);
}

function stripsIn(counts: readonly number[]): number {
  return counts.reduce((sum, count) => sum + count, 0);
}

/** Width of the widest so many strips. */
function widest(counts: readonly number[], widths: readonly Inches[], strips: number): Inches {
  let left = strips;
  let sum = 0;
  for (const at of widths.map((_, index) => index).sort((one, other) => widths[other]! - widths[one]!)) {
    const taken = Math.min(left, counts[at]!);
    sum += taken * widths[at]!;
    left -= taken;
  }
  return sum;
}

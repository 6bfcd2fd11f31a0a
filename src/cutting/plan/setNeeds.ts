// What so many sets of one height in the wanted proportion need: strips of each width, and how many of them one fabric may be.
// Neighbours in a set differ, so of a set of s strips at most every other one, ⌈s/2⌉, is of one fabric (our rule, from 'no
// fabric beside itself').
import { finishedWidth } from '../../geometry/stripSet';
import type { WedgePlan } from '../../model/project';
import type { Inches } from '../../model/units';
import { setPatterns, totalsTable, type WidthPart } from './setTotals';

export interface SetNeed {
  /** Strips of each width, in the order of the widths. */
  readonly counts: readonly number[];
  /** Strips of each width in each set. */
  readonly sets: readonly (readonly number[])[];
  /** Their widths side by side. */
  readonly cloth: Inches;
  /** What they add to the heights of their sets, altogether. */
  readonly gain: Inches;
  /** Most strips of one fabric among them. */
  readonly ofOne: number;
  /** The least width the other fabrics then have to give. */
  readonly ofOthers: Inches;
}

/** The most that strips add to heights for each inch of cloth; of all of it, and of all but one fabric's. */
export interface GainRates {
  readonly cloth: number;
  readonly others: number;
}

export interface SetNeeds {
  /** The same for every wanted number of sets, 1 or more; null when no set of these widths is possible. */
  readonly of: (sets: number) => SetNeed | null;
  /** Rates that no number of sets up to this one goes beyond. */
  readonly rates: (sets: number) => GainRates;
  /** What no number of sets up to this one adds beyond `rate` for each inch of its cloth; Infinity where nothing is known. */
  readonly beyond: (sets: number, rate: number) => Inches;
}

/** Beyond so many sets the rates are bounded, not looked up. */
const LOOKED_UP = 60;

const kept = new Map<string, SetNeeds>();
const MOST_KEPT = 60;

/** The needs of one proportion for sets so high or a little higher; kept, as the same ones are asked for over and over. */
export function setNeeds(parts: readonly WidthPart[], wedge: WedgePlan, height: Inches): SetNeeds {
  const key = JSON.stringify([parts, height, wedge.seam]);
  const found = kept.get(key);
  if (found) return found;
  if (kept.size >= MOST_KEPT) kept.clear();
  const needs = needsOf(parts, wedge.seam, height);
  kept.set(key, needs);
  return needs;
}

function needsOf(parts: readonly WidthPart[], seam: Inches, height: Inches): SetNeeds {
  const widths = parts.map((one) => one.width);
  const totals = totalsTable(parts, height, seam);
  const known = new Map<number, SetNeed | null>();
  const of = (sets: number): SetNeed | null => {
    const found = known.get(sets);
    if (found !== undefined) return found;
    const total = totals(sets);
    const need = total ? needOf(total.sets, widths, seam) : null;
    known.set(sets, need);
    return need;
  };
  const upTo = (sets: number) =>
    Array.from({ length: Math.min(sets, LOOKED_UP) }, (_, at) => of(at + 1)).filter((need) => need !== null);
  const bounds = new Map<number, GainRates>();
  const rates = (sets: number) => {
    const most = Math.min(sets, LOOKED_UP + 1);
    const found = bounds.get(most) ?? ratesOf(upTo(most), most > LOOKED_UP ? beyondLookedUp() : null);
    bounds.set(most, found);
    return found;
  };
  // More sets repeat the best ten; only the last ten at the most are chosen anew, at best as the thriftiest set there is.
  const beyondLookedUp = (): GainRates => {
    const given = parts.filter((one) => one.part > 0).map((one) => one.width);
    const each = setPatterns(given, height, seam).patterns.map((set) => needOf([set], given, seam));
    const one = ratesOf(each, null);
    const ten = of(10)!;
    const rate = (best: number, of10: Inches, most: Inches) =>
      (6 * ten.gain + best * 10 * most) / (6 * of10 + 10 * most);
    return {
      cloth: rate(one.cloth, ten.cloth, Math.max(...each.map((need) => need.cloth))),
      others: rate(one.others, ten.ofOthers, Math.max(...each.map((need) => need.ofOthers))),
    };
  };
  const beyond = (sets: number, rate: number): Inches =>
    sets > LOOKED_UP
      ? Number.POSITIVE_INFINITY
      : Math.max(0, ...upTo(sets).map((need) => need.gain - rate * need.cloth));
  return { of, rates, beyond };
}

function ratesOf(needs: readonly SetNeed[], more: GainRates | null): GainRates {
  return {
    cloth: Math.max(more?.cloth ?? 0, ...needs.map((need) => need.gain / need.cloth)),
    others: Math.max(more?.others ?? 0, ...needs.map((need) => need.gain / need.ofOthers)),
  };
}

/** What these sets need; a set as its strips of each width. */
export function needOf(
  sets: readonly (readonly number[])[],
  widths: readonly Inches[],
  seam: Inches,
): SetNeed {
  const counts = widths.map((_, at) => sets.reduce((sum, set) => sum + set[at]!, 0));
  const cloth = counts.reduce((sum, count, at) => sum + count * widths[at]!, 0);
  const gain = counts.reduce((sum, count, at) => sum + count * finishedWidth(widths[at]!, seam), 0);
  const ofOne = sets.reduce((sum, set) => sum + Math.ceil(stripsIn(set) / 2), 0);
  return { counts, sets, cloth, gain, ofOne, ofOthers: cloth - widest(counts, widths, ofOne) };
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

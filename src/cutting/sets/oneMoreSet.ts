// Whether one set more can be laid from some strips, and of which. The rules: a set gives two wedges or more, it is as long as
// its shortest strip, and no fabric lies beside itself. Rules can be lifted, to learn which of them leaves a strip.
import { finishedWidth } from '../../geometry/stripSet';
import { HAIR, isTooNarrow } from '../../model/lengths';
import type { FabricId, StripOnHand, WedgePlan } from '../../model/project';
import type { Inches } from '../../model/units';
import { leastLength } from '../wedges/setKinds';
import { heightFor } from '../wedges/yield';

/** What can be lifted. */
export interface SetRules {
  /** False lets a fabric lie beside itself. */
  readonly neighboursDiffer: boolean;
  /** False lets every strip be as long as one likes. */
  readonly lengths: boolean;
}

export const ALL_RULES: SetRules = { neighboursDiffer: true, lengths: true };

/** A single strip and what it adds to the height of a set. */
interface Single {
  readonly row: StripOnHand;
  readonly gain: Inches;
}

/** Whether strips of this row can lie in any set: they do not vanish in their seams and are long enough for two wedges. */
export function canBeLaid(row: StripOnHand, wedge: WedgePlan): boolean {
  return row.count > 0 && !isTooNarrow(row.width, wedge.seam) && row.length >= leastLength(wedge) - HAIR;
}

/** What the strips of a set so long have to add to its height altogether, so that two wedges fit on it; may be Infinity. */
function leastGain(length: Inches, wedge: WedgePlan): Inches {
  return finishedWidth(Math.max(wedge.cutHeight, heightFor(2, length, wedge)), wedge.seam);
}

/**
 * One set from these strips, as the rows it takes one strip each from, widest first; null where there is none. Strips it can do
 * without are left out, the narrowest first. Longer sets come first. With `including` only sets with a strip of that row count, and it is not left out.
 */
export function oneMoreSet(
  rows: readonly StripOnHand[],
  wedge: WedgePlan,
  rules: SetRules = ALL_RULES,
  including?: StripOnHand,
): StripOnHand[] | null {
  const found = enoughStrips(rows, wedge, rules, including);
  return found && noneToSpare(found.most, found.wanted, rules, including).map(({ row }) => row);
}

/** Whether oneMoreSet finds one; quicker than to ask of which strips. */
export function makesOneMore(
  rows: readonly StripOnHand[],
  wedge: WedgePlan,
  rules: SetRules,
  including: StripOnHand,
): boolean {
  return enoughStrips(rows, wedge, rules, including) !== null;
}

/** All strips that could go into the longest set there is, and what they have to add to its height. */
function enoughStrips(
  rows: readonly StripOnHand[],
  wedge: WedgePlan,
  rules: SetRules,
  including?: StripOnHand,
): { most: Single[]; wanted: Inches } | null {
  const fit = rows.filter((row) => canBeLaid(row, wedge));
  if (including && !fit.includes(including)) return null;
  const longest = including && rules.lengths ? including.length : Number.POSITIVE_INFINITY;
  const lengths = rules.lengths
    ? [...new Set(fit.map((row) => row.length))]
        .filter((length) => length <= longest + HAIR)
        .sort((one, other) => other - one)
    : [Number.POSITIVE_INFINITY];
  for (const length of lengths) {
    const long = rules.lengths ? fit.filter((row) => row.length >= length - HAIR) : fit;
    const wanted = Number.isFinite(length)
      ? leastGain(length, wedge)
      : finishedWidth(wedge.cutHeight, wedge.seam);
    const most = mostTogether(singlesOf(long, wedge), rules, including);
    if (total(most) >= wanted - HAIR) return { most, wanted };
  }
  return null;
}

/** What these strips can add at the most to a number of sets, no fabric beside itself: all others, and one more a set. */
export function mostReach(rows: readonly StripOnHand[], sets: number, wedge: WedgePlan): Inches {
  return total(withoutExcess(singlesOf(rows, wedge), sets));
}

/** The strips these sets could take without a fabric beside itself, as rows: the narrowest of a fabric there is too much of go. */
export function widestFor(rows: readonly StripOnHand[], sets: number, wedge: WedgePlan): StripOnHand[] {
  const counts = new Map<StripOnHand, number>();
  for (const { row } of withoutExcess(singlesOf(rows, wedge), sets))
    counts.set(row, (counts.get(row) ?? 0) + 1);
  return rows.flatMap((row) => (counts.has(row) ? [{ ...row, count: counts.get(row)! }] : []));
}

function singlesOf(rows: readonly StripOnHand[], wedge: WedgePlan): Single[] {
  return rows
    .flatMap((row) => {
      const gain = finishedWidth(row.width, wedge.seam);
      return Array.from({ length: row.count }, () => ({ row, gain }));
    })
    .sort((one, other) => other.gain - one.gain);
}

/** The strips that add most to one set: all, but of a fabric there is too much of only the widest. */
function mostTogether(singles: readonly Single[], rules: SetRules, including?: StripOnHand): Single[] {
  if (!rules.neighboursDiffer) return [...singles];
  // The strip that has to be in it comes before wider ones of its fabric.
  const first = singles.find((one) => one.row === including);
  const rest = singles.filter((one) => one !== first);
  return withoutExcess(first ? [first, ...rest] : rest, 1);
}

/** Of so many sets no more than one strip a set beyond all others can be of one fabric; the first ones are. */
function withoutExcess(singles: readonly Single[], sets: number): Single[] {
  const counts = countsOf(singles);
  const [most] = [...counts].sort((one, other) => other[1] - one[1]);
  if (!most) return [];
  let open = singles.length - most[1] + sets;
  if (most[1] <= open) return [...singles];
  return singles.filter(({ row }) => {
    if (row.fabric !== most[0]) return true;
    open -= 1;
    return open >= 0;
  });
}

/** Leaves out the narrowest strips first, as long as the rest makes a set. */
function noneToSpare(
  singles: readonly Single[],
  wanted: Inches,
  rules: SetRules,
  including?: StripOnHand,
): Single[] {
  const held = singles.find((one) => one.row === including);
  const counts = countsOf(singles);
  let [spare, strips] = [total(singles) - wanted, singles.length];
  const kept = singles.toSorted((one, other) => one.gain - other.gain);
  return kept
    .filter((one) => {
      const { fabric } = one.row;
      if (one === held || one.gain > spare + HAIR) return true;
      counts.set(fabric, counts.get(fabric)! - 1);
      if (rules.neighboursDiffer && Math.max(...counts.values()) > Math.ceil((strips - 1) / 2)) {
        counts.set(fabric, counts.get(fabric)! + 1);
        return true;
      }
      spare -= one.gain;
      strips -= 1;
      return false;
    })
    .reverse();
}

/** Whether the strips of one set can be sewn so that no fabric lies beside itself: none is more than every other strip. */
export function canDiffer(strips: readonly { readonly fabric: FabricId }[]): boolean {
  const counts = countsOf(strips.map((row) => ({ row })));
  return Math.max(0, ...counts.values()) <= Math.ceil(strips.length / 2);
}

function countsOf(
  singles: readonly { readonly row: { readonly fabric: FabricId } }[],
): Map<FabricId, number> {
  const counts = new Map<FabricId, number>();
  for (const { row } of singles) counts.set(row.fabric, (counts.get(row.fabric) ?? 0) + 1);
  return counts;
}

function total(singles: readonly Single[]): Inches {
  return singles.reduce((sum, one) => sum + one.gain, 0);
}

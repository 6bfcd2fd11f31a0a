// Kinds of strip sets of one length: so many wedges need a set so high, and higher sets may give more. What to cut for them
// is the plan's and the making's.
import { cutWidth, finishedWidth } from '../../geometry/stripSet';
import { HAIR } from '../../model/lengths';
import type { WedgePlan } from '../../model/project';
import type { Inches } from '../../model/units';
import { heightFor, lengthFor, wedgesOnLength } from './yield';

/** Sets are not planned higher than this above their wedge for a wedge more (our rule: twice the half inch to spare). */
const MOST_TO_SPARE: Inches = 1;

export interface SetKind {
  readonly wedges: number;
  /** The least height that strips of the given widths reach and so many wedges fit on. */
  readonly height: Inches;
  /** What its strips add to the height, altogether (finishedWidth). */
  readonly gain: Inches;
}

/** Sets are not planned higher than this. */
export function highestPlanned(wedge: WedgePlan): Inches {
  return wedge.cutHeight + MOST_TO_SPARE;
}

/** Strips shorter than this make no set of two wedges, however high it is planned. */
export function leastLength(wedge: WedgePlan): Inches {
  return lengthFor(2, highestPlanned(wedge), wedge);
}

/**
 * The kinds of sets of this length, fewest wedges first: each gives more wedges than the one before and is higher. Sets are
 * at least `least` high and give two wedges or more; none where the length is too short for that.
 */
export function setKinds(
  length: Inches,
  wedge: WedgePlan,
  widths: readonly Inches[],
  least: Inches = wedge.cutHeight,
  most: Inches = Math.max(least, wedge.cutHeight + MOST_TO_SPARE),
): SetKind[] {
  const gains = widths.map((width) => finishedWidth(width, wedge.seam));
  const kindFrom = (height: Inches): SetKind => {
    const gain = reachedGain(finishedWidth(height, wedge.seam), gains);
    const reached = cutWidth(gain, wedge.seam);
    return { wedges: wedgesOnLength(length, reached, wedge), height: reached, gain };
  };
  const kinds: SetKind[] = [];
  for (let wedges = 2; ; ) {
    const height = Math.max(least, heightFor(wedges, length, wedge));
    if (height > most + HAIR) return kinds;
    const kind = kindFrom(height);
    if (kinds.at(-1) && kind.gain < kinds.at(-1)!.gain + HAIR) kinds.pop();
    kinds.push(kind);
    wedges = Math.max(wedges, kind.wedges) + 1;
  }
}

/** Beyond so many widths almost every height can be reached. */
const MOST_WIDTHS = 3;

/** The least sum of these gains that is no less than `wanted`, inches. */
export function reachedGain(wanted: Inches, gains: readonly Inches[]): Inches {
  if (gains.length === 0 || gains.length > MOST_WIDTHS || gains.some((gain) => gain <= HAIR)) return wanted;
  let best = Number.POSITIVE_INFINITY;
  const add = (at: number, sum: Inches) => {
    const gain = gains[at]!;
    const open = Math.max(0, wanted - sum);
    if (at === gains.length - 1) {
      best = Math.min(best, sum + Math.ceil(open / gain - HAIR) * gain);
      return;
    }
    for (let count = 0; ; count += 1) {
      add(at + 1, sum + count * gain);
      if (count * gain >= open - HAIR) return;
    }
  };
  add(0, 0);
  return best;
}

export interface WedgeTable {
  /** Most wedges of sets whose strips add so much altogether. */
  readonly most: (gain: Inches) => number;
  /** What strips add, at the least, to the sets of so many wedges; never less for more wedges. */
  readonly gain: (wedges: number) => Inches;
  /** Those sets, the highest first. */
  readonly sets: (wedges: number) => SetKind[];
}

/** The thriftiest sets of these kinds for any number of wedges: dynamic programming, one wedge after another. */
export function wedgeTable(kinds: readonly SetKind[]): WedgeTable {
  const least: Inches[] = [0];
  const last: SetKind[] = [];
  const gain = (wedges: number): Inches => {
    if (kinds.length === 0) return wedges > 0 ? Number.POSITIVE_INFINITY : 0;
    for (let at = least.length; at <= wedges; at += 1) {
      let best = Number.POSITIVE_INFINITY;
      for (const kind of kinds) {
        const sum = least[Math.max(0, at - kind.wedges)]! + kind.gain;
        if (sum < best - HAIR) {
          best = sum;
          last[at] = kind;
        }
      }
      least[at] = best;
    }
    return least[Math.max(0, wedges)]!;
  };
  const most = (there: Inches): number => {
    let wedges = 0;
    while (gain(wedges + 1) <= there + HAIR) wedges += 1;
    return wedges;
  };
  const sets = (wedges: number): SetKind[] => {
    gain(wedges);
    const chosen: SetKind[] = [];
    for (let open = wedges; open > 0 && last[open]; open -= chosen.at(-1)!.wedges) chosen.push(last[open]!);
    return chosen.sort((one, other) => other.height - one.height);
  };
  return { most, gain, sets };
}

/**
 * So many sets for so many wedges or more, as like one another as can be: all of one kind, but for those that may be of the
 * kind below. Null where even the highest do not give so many.
 */
export function evenSets(count: number, wedges: number, kinds: readonly SetKind[]): SetKind[] | null {
  const at = kinds.findIndex((kind) => count * kind.wedges >= wedges);
  const kind = kinds[at];
  if (!kind) return null;
  const below = kinds[at - 1] ?? kind;
  const over = count * kind.wedges - wedges;
  const low = below === kind ? 0 : Math.floor(over / (kind.wedges - below.wedges));
  return Array.from({ length: count }, (_, set) => (set < count - low ? kind : below));
}

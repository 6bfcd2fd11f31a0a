// A bound on the wedges that pieces of cloth give, which no plan goes beyond, however strips are cut across and however high
// their sets are. It tells whether a plan is proved. A set of n wedges takes strips that add its least height for n wedges;
// what strips add for each inch of cloth is bounded by the proportion they are cut in.
import { cutWidth, finishedWidth } from '../../geometry/stripSet';
import { HAIR, piecesIn } from '../../model/lengths';
import type { WedgePlan } from '../../model/project';
import type { Inches } from '../../model/units';
import { reachedGain } from '../wedges/setKinds';
import { lengthFor, wedgesOnLength } from '../wedges/yield';
import { MOST_LENGTHS, type Piece, partsOf } from './clothPieces';
import { fillOf } from './fillSets';
import type { SetWish } from './setWishes';

export interface WedgeBound {
  /** No plan gives more wedges of what is left of the pieces, so deep each. */
  readonly of: (depths: readonly Inches[]) => number;
  /** The same for whole pieces, counted more closely: long sets are whole numbers. */
  readonly whole: number;
}

/** Sets so high, `gain` added by their strips, that give so many wedges; they take so much of a length. */
interface Part {
  readonly wedges: number;
  readonly gain: Inches;
  readonly length: Inches;
}

/** Lengths are looked at in sixteenths: a part a little shorter than it is, a piece a little longer. */
const STEP: Inches = 1 / 16;
/** Heights looked at one by one; where strips reach more the long sets are not counted. */
const MOST_HEIGHTS = 48;
/** Cells of the table of long sets. */
const MOST_CELLS = 12_000;

/** The bound for all plans, each of some of one list of wishes, and for all sets laid from their strips. */
export function wedgeBound(
  pieces: readonly Piece[],
  lists: readonly (readonly SetWish[])[],
  wedge: WedgePlan,
  neighboursDiffer: boolean,
): WedgeBound {
  const [first] = lists.flat();
  if (!first || pieces.length === 0) return { of: () => 0, whole: 0 };
  const { widths } = first;
  const longest = pieces[0]!.length;
  const parts = partsFor(widths, longest, wedge);
  const worth = worthTable(parts, longest);
  const rates = ratesOf(pieces, lists, wedge);
  const rooms = (depths: readonly Inches[]) =>
    pieces.map(({ fabric, length }, at) => ({ fabric, length, width: fillOf(depths[at]!, widths) }));
  const of = (depths: readonly Inches[]) => {
    const rated = rooms(depths).map(({ fabric, length, width }) => ({
      fabric,
      worth: width * worth(length),
    }));
    const all = rated.reduce((sum, one) => sum + one.worth, 0);
    if (all <= 0) return 0;
    const most = Math.min(...rates.all.map(({ rate, beyond }) => all * rate + beyond * worth(longest)));
    if (!neighboursDiffer || !Number.isFinite(rates.others)) return Math.floor(most + 1e-6);
    return Math.floor(Math.min(most, (all - largest(rated)) * rates.others) + 1e-6);
  };
  const depths = pieces.map((piece) => piece.depth);
  const long = Math.min(
    ...rates.all.map(({ rate, beyond }) => withLongSets(rooms(depths), parts, longest, rate, beyond)),
  );
  return { of, whole: Math.min(of(depths), Math.floor(long + 1e-6)) };
}

function largest(rated: readonly { readonly fabric: string; readonly worth: number }[]): number {
  const byFabric = new Map<string, number>();
  for (const { fabric, worth } of rated) byFabric.set(fabric, (byFabric.get(fabric) ?? 0) + worth);
  return Math.max(...byFabric.values());
}

interface Rates {
  /** Strips add at most rate · cloth + beyond, by each of these. */
  readonly all: readonly { readonly rate: number; readonly beyond: Inches }[];
  /** The same for the cloth of all fabrics but one. */
  readonly others: number;
}

/**
 * What strips add for the cloth they are cut from: as the best number of sets does; or as the proportion does, and what the
 * single numbers of sets are off it. Ends that are cut beyond the need of the sets are not in the proportion and do not count.
 */
function ratesOf(pieces: readonly Piece[], lists: readonly (readonly SetWish[])[], wedge: WedgePlan): Rates {
  const { widths } = lists.flat()[0]!;
  const thrifty = Math.max(...widths.map((width) => finishedWidth(width, wedge.seam) / width));
  const entries = lists.map((wishes) =>
    wishes.map((wish) => {
      const cloth = pieces.reduce((sum, piece) => sum + piece.depth * partsOf(piece, wish.least), 0);
      return wish.needs.map((need, at) => {
        const most = (rate: number) => Math.max(1, piecesIn(cloth * rate, wish.kinds[at]!.gain));
        // First as if all strips were of the width that is thriftiest, then as they are in so many sets.
        return { need, sets: most(need.rates(most(thrifty)).cloth) };
      });
    }),
  );
  const all = entries.flat(2);
  const rates = all.map(({ need, sets }) => need.rates(sets));
  const best = Math.max(...rates.map((rate) => rate.cloth));
  const ten = Math.max(
    ...all.map(({ need, sets }) => {
      const { gain, cloth } = need.of(Math.min(10, sets))!;
      return gain / cloth;
    }),
  );
  const off = entries.map((wishes) => {
    const each = wishes.map((wish) => wish.reduce((sum, { need, sets }) => sum + need.beyond(sets, ten), 0));
    const most = each.sort((one, other) => other - one).slice(0, MOST_LENGTHS);
    return most.reduce((sum, one) => sum + one, 0);
  });
  return {
    all: [
      { rate: best, beyond: 0 },
      { rate: ten, beyond: Math.max(...off) },
    ],
    others: Math.max(...rates.map((rate) => rate.others)),
  };
}

/** Every part worth cutting: all heights that strips reach, up to twice the wedge, where more height gives nothing more. */
function partsFor(widths: readonly Inches[], longest: Inches, wedge: WedgePlan): Part[] {
  const gains = widths.map((width) => finishedWidth(width, wedge.seam));
  const reached = heightsReached(gains, wedge);
  return reached.flatMap((gain, at) => {
    // Where heights were too many to list, one stands for all up to the next: as thrifty as the lower, as good as the higher.
    const height = cutWidth(reached.length > MOST_HEIGHTS ? (reached[at + 1] ?? gain) : gain, wedge.seam);
    const most = wedgesOnLength(longest, height, wedge);
    return Array.from({ length: Math.max(0, most - 1) }, (_, index): Part => {
      return { wedges: index + 2, gain, length: lengthFor(index + 2, height, wedge) };
    });
  });
}

/** Longer than MOST_HEIGHTS where the heights are evenly spaced stand-ins. */
function heightsReached(gains: readonly Inches[], wedge: WedgePlan): Inches[] {
  const low = finishedWidth(wedge.cutHeight, wedge.seam);
  const high = finishedWidth(2 * wedge.cutHeight, wedge.seam);
  const reached: Inches[] = [];
  for (let next = low; reached.length <= MOST_HEIGHTS; next = reached.at(-1)! + 1e-6) {
    const gain = reachedGain(next, gains);
    reached.push(gain);
    if (gain >= high - HAIR) return reached;
  }
  const count = 2 * MOST_HEIGHTS;
  return Array.from({ length: count + 1 }, (_, at) => low + ((high - low) * at) / count);
}

/** By length: the most wedges that parts of it give for each inch that its strip adds to their heights. */
function worthTable(parts: readonly Part[], longest: Inches): (length: Inches) => number {
  const best = new Map<number, number>();
  for (const { wedges, gain, length } of parts) {
    const cells = Math.floor(length / STEP);
    best.set(cells, Math.max(best.get(cells) ?? 0, wedges / gain));
  }
  const shortest = [...best].sort((one, other) => one[0] - other[0]);
  const table = new Float64Array(Math.ceil(longest / STEP) + 2);
  for (let at = 1; at < table.length; at += 1) {
    let most = table[at - 1]!;
    for (const [cells, rate] of shortest) {
      if (cells > at) break;
      most = Math.max(most, rate + table[at - cells]!);
    }
    table[at] = most;
  }
  return (length) => table[Math.max(0, Math.ceil(length / STEP - 1e-6))]!;
}

interface Room {
  readonly length: Inches;
  /** What strips can fill of its depth. */
  readonly width: Inches;
}

/**
 * Sets longer than half the longest piece: no strip gives two of them, and there is a whole number of each. A long set takes
 * what it needs of the strips that are long enough; the rest of those strips, and all others, give what shorter parts are worth.
 */
function withLongSets(
  rooms: readonly Room[],
  parts: readonly Part[],
  longest: Inches,
  rate: number,
  beyond: Inches,
): number {
  if (!Number.isFinite(beyond)) return Number.POSITIVE_INFINITY;
  const half = longest / 2;
  const worth = worthTable(
    parts.filter((part) => part.length <= half + HAIR),
    longest,
  );
  const lengths = new Map<Inches, Inches>([[longest, beyond]]);
  for (const { length, width } of rooms) lengths.set(length, (lengths.get(length) ?? 0) + rate * width);
  const rows = [...lengths].filter(([, gain]) => gain > 0);
  const there = rows.reduce((sum, [, gain]) => sum + gain, 0);
  const cell = Math.max(1 / 64, there / MOST_CELLS);
  const most = new Float64Array(Math.floor(there / cell + 1e-6) + 1);
  const long = parts
    .filter((part) => part.length > half + HAIR)
    .map((part) => {
      const from = rows.filter(([length]) => length >= part.length - HAIR);
      const more = from.map(([length]) => worth(length - part.length) - worth(length));
      return {
        ...part,
        room: from.reduce((sum, [, gain]) => sum + gain, 0),
        more: part.wedges + part.gain * Math.max(...more),
      };
    })
    .filter((part) => part.more > 0)
    .sort((one, other) => other.length - one.length);
  for (const { gain, room, more } of long) {
    const cost = Math.floor(gain / cell + 1e-6);
    const end = Math.min(most.length - 1, Math.floor(room / cell + 1e-6));
    for (let at = cost; at <= end; at += 1) {
      const taken = most[at - cost]! + more;
      if (taken > most[at]!) most[at] = taken;
    }
  }
  return rows.reduce((sum, [length, gain]) => sum + gain * worth(length), 0) + Math.max(...most);
}

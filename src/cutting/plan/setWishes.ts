// The sets that a plan may make of its cloth: for every length worth looking at, how many wedges sets of which heights give,
// and the strips for any number of wedges.
import { finishedWidth } from '../../geometry/stripSet';
import { HAIR, piecesIn } from '../../model/lengths';
import type { WedgePlan } from '../../model/project';
import type { Inches } from '../../model/units';
import { type SetKind, setKinds, wedgeTable } from '../wedges/setKinds';
import { lengthFor } from '../wedges/yield';
import { type Piece, setLengths } from './clothPieces';
import { needOf, type SetNeed, type SetNeeds, setNeeds } from './setNeeds';
import type { WidthPart } from './setTotals';

/** Sets of one length. */
export interface SetWish {
  readonly widths: readonly Inches[];
  /** Strips have to be so long. */
  readonly least: Inches;
  /** Fewest wedges first. */
  readonly kinds: readonly SetKind[];
  /** What sets of each kind need, in the order of the kinds. */
  readonly needs: readonly SetNeeds[];
  /** A number of wedges that so much cloth does not go beyond; `others` is all of it but one fabric's. */
  readonly most: (cloth: Inches, others: Inches) => number;
  /** The thriftiest sets for so many wedges or more. */
  readonly of: (wedges: number) => SetNeed;
  /** Whether those give one wedge more as well. */
  readonly sameForOneMore: (wedges: number) => boolean;
}

/** No more sets than this are planned. */
const MOST_SETS = 400;

/**
 * Wishes for these pieces with sets `spare` or more above the wedge, those of most wedges first. Lengths that give the same
 * kinds of sets are one wish, for strips as long as the kinds need.
 */
export function setWishes(
  pieces: readonly Piece[],
  parts: readonly WidthPart[],
  wedge: WedgePlan,
  spare: Inches,
): SetWish[] {
  const found = new Map<string, SetWish>();
  for (const length of setLengths(pieces)) {
    const widths = parts.map((one) => one.width);
    const kinds = setKinds(length, wedge, widths, wedge.cutHeight + spare);
    const key = kinds.map(({ wedges, height }) => `${wedges} ${height}`).join();
    const wish = kinds.length > 0 && !found.has(key) ? wishOf(kinds, parts, wedge) : null;
    if (wish) found.set(key, wish);
  }
  const most = (wish: SetWish) => wish.kinds.at(-1)!.wedges;
  return [...found.values()].sort((one, other) => most(other) - most(one) || other.least - one.least);
}

/** Null where no set of these widths is possible. */
function wishOf(kinds: readonly SetKind[], parts: readonly WidthPart[], wedge: WedgePlan): SetWish | null {
  const widths = parts.map((one) => one.width);
  const needs = kinds.map(({ height }) => setNeeds(parts, wedge, height));
  if (needs.some((need) => need.of(1) === null)) return null;
  const least = Math.max(...kinds.map(({ wedges, height }) => lengthFor(wedges, height, wedge)));
  const table = wedgeTable(kinds);
  const known = new Map<number, SetNeed>();
  const of = (wedges: number) => {
    const need = known.get(wedges) ?? madeOf(table.sets(wedges));
    known.set(wedges, need);
    return need;
  };
  const sameForOneMore = (wedges: number) => table.gain(wedges + 1) <= table.gain(wedges) + HAIR;
  const madeOf = (sets: readonly SetKind[]): SetNeed => {
    const each = kinds.flatMap((kind, at) => {
      const count = sets.filter((one) => one === kind).length;
      return count > 0 ? needs[at]!.of(count)!.sets : [];
    });
    return needOf(each, widths, wedge.seam);
  };
  const thin = Math.min(...kinds.map((kind) => kind.gain));
  const most = (cloth: Inches, others: Inches) => {
    const gains = widths.map((width) => finishedWidth(width, wedge.seam) / width);
    const sets = Math.min(MOST_SETS, piecesIn(cloth * Math.max(...gains), thin));
    if (sets < 1) return 0;
    const rates = needs.map((need) => need.rates(sets));
    const gain = Math.min(
      cloth * Math.max(...rates.map((rate) => rate.cloth)),
      others * Math.max(...rates.map((rate) => rate.others)),
    );
    return Math.min(MOST_SETS * kinds[0]!.wedges, table.most(Math.min(gain, MOST_SETS * thin)));
  };
  return { widths, least, kinds, needs, most, of, sameForOneMore };
}

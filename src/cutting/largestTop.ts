// Planning backwards: from the cloth and strips on hand to the largest top, what runs out first and what to buy for more.
// Strips on hand count as cloth of their own width, which may be cut narrower; cloth is cut in the wanted proportion.
import { counted, type Phrase, phrase } from '../model/phrase';
import type { ClothOnHand, Fabric, FabricId, StripOnHand, WedgePlan } from '../model/project';
import type { Inches } from '../model/units';
import { bestFill, cutCloth } from './cutCloth';
import { HEIGHT_TO_SPARE } from './setScore';
import { totalsTable, type WidthPart } from './setTotals';
import { lengthFor, type WedgeCount, wedgesOnLength } from './yield';

export interface ClothBasket {
  readonly fabrics: readonly Fabric[];
  readonly clothOnHand: readonly ClothOnHand[];
  readonly stripsOnHand: readonly StripOnHand[];
  readonly wedge: WedgePlan;
  readonly widths: readonly WidthPart[];
  /** Wedges of sets there are already; their strips are not in the basket. */
  readonly there?: WedgeCount;
}

export interface StripsCut {
  readonly fabric: FabricId;
  readonly width: Inches;
  readonly length: Inches;
  readonly count: number;
}

/** One piece of cloth, or one strip, and the strips cut from it. */
export interface PieceCut {
  readonly of: 'cloth' | 'strips';
  /** Id of its row in the basket. */
  readonly row: string;
  /** Strips by width, in the order of `widths`. */
  readonly counts: readonly number[];
}

export interface LargestTop {
  readonly blocks: number;
  /** Sets by the length of their strips, longest first. */
  readonly sets: readonly { readonly length: Inches; readonly count: number }[];
  /** What to cut. Never more than there is. */
  readonly strips: readonly StripsCut[];
  /** The same piece by piece; pieces left whole are not listed. */
  readonly pieces: readonly PieceCut[];
  /** Width of cloth left of each fabric after it, inches, over all lengths of strips. */
  readonly left: readonly { readonly fabric: FabricId; readonly inches: Inches }[];
  /** The fabric that runs out first when all are used alike, or null when no set can be made or there is one fabric. */
  readonly runsOutFirst: FabricId | null;
  /** True where no more sets can be cut in this proportion. */
  readonly exact: boolean;
  readonly words: readonly Phrase[];
}

export interface ClothToBuy {
  readonly blocks: number;
  /** Cloth to buy, cut across its usable width; a whole number of eighths of a yard. 0 when there is enough. */
  readonly inches: Inches;
  readonly words: Phrase;
}

/** Pieces whose strips differ by no more than this go into the same sets. */
const SAME_LENGTH: Inches = 2;
const EIGHTH_YARD: Inches = 4.5;
/** Nobody buys more than this of one fabric for strips (50 yards); a need beyond it is a slip in the figures. */
const MOST_TO_BUY: Inches = 1_800;
const MOST_SETS = 400;

interface Piece {
  readonly fabric: FabricId;
  readonly depth: Inches;
  readonly of: PieceCut['of'];
  readonly row: string;
}

interface LengthGroup {
  readonly length: Inches;
  readonly pieces: readonly Piece[];
}

/** The largest top the basket makes; 0 blocks when it makes none. */
export function largestTop(basket: ClothBasket): LargestTop {
  const { wedge, widths } = basket;
  const groups = lengthGroups(basket);
  const fillings = groups.map((group) => fillGroup(group, widths, wedge));
  const sets = groups.map((group, at) => ({ length: group.length, count: fillings[at]!.sets }));
  const strips = groups.flatMap((group, at) => stripsOf(group, fillings[at]!.cuts, widths));
  const pieces = groups.flatMap((group, at) => piecesCut(group, fillings[at]!.cuts));
  const blocks = blocksOf(sets, wedge, basket.there);
  const left = clothLeft(basket, strips, widths);
  const exact = fillings.every((filling) => filling.exact);
  const runsOutFirst = scarcest(basket, groups);
  const words = topWords(basket, blocks, sets, exact, runsOutFirst);
  const made = sets.filter((set) => set.count > 0);
  return { blocks, sets: made, strips, pieces, left, runsOutFirst, exact, words };
}

/**
 * The least cloth, in eighths of a yard of this usable width, that makes `blocks` blocks possible: tried, not estimated.
 * Any fabrics will do; several shorter lengths want a little more. Null when even 50 yards would not do.
 */
export function clothToBuy(basket: ClothBasket, blocks: number, usableWidth: Inches): ClothToBuy | null {
  const makes = (inches: Inches) =>
    largestTop({ ...basket, clothOnHand: [...basket.clothOnHand, bought(basket, inches, usableWidth)] })
      .blocks;
  let enough = 0;
  if (largestTop(basket).blocks < blocks) {
    // Doubling, then halving: more cloth never makes fewer blocks.
    let high = 1;
    while (makes(high * EIGHTH_YARD) < blocks) {
      high *= 2;
      if (high * EIGHTH_YARD > MOST_TO_BUY) return null;
    }
    let low = Math.floor(high / 2);
    while (high - low > 1) {
      const middle = Math.floor((low + high) / 2);
      if (makes(middle * EIGHTH_YARD) >= blocks) high = middle;
      else low = middle;
    }
    enough = high;
  }
  const inches = enough * EIGHTH_YARD;
  const values = { blocks, cloth: { inches }, width: { inches: usableWidth } };
  const words =
    enough === 0
      ? phrase('The cloth on hand is enough for {blocks} blocks.', values)
      : phrase('For {blocks} blocks buy {cloth} more, {width} wide, of one or several fabrics.', values);
  return { blocks, inches, words };
}

function bought(basket: ClothBasket, depth: Inches, stripLength: Inches): ClothOnHand {
  const fabric = basket.fabrics[0]?.id ?? '';
  return { id: 'to buy', fabric, kind: 'yardage', stripLength, depth, count: 1 };
}

/** Cloth and strips by strip length, longest first; what is too short for two wedges is left out. */
function lengthGroups(basket: ClothBasket): LengthGroup[] {
  const least = lengthFor(2, basket.wedge.cutHeight, basket.wedge);
  const rows = [
    ...basket.clothOnHand.map(({ id, fabric, depth, stripLength, count }) => ({
      of: 'cloth' as const, row: id, fabric, depth, length: stripLength, count,
    })),
    ...basket.stripsOnHand.map(({ id, fabric, width, length, count }) => ({
      of: 'strips' as const, row: id, fabric, depth: width, length, count,
    })),
  ]
    .filter((row) => row.length >= least && row.count > 0)
    .sort((one, other) => other.length - one.length); // biome-ignore format: short
  const groups: (typeof rows)[] = [];
  for (const row of rows) {
    const group = groups.at(-1);
    if (group && group[0]!.length - row.length <= SAME_LENGTH) group.push(row);
    else groups.push([row]);
  }
  return groups.map((group) => ({
    length: group.at(-1)!.length,
    pieces: group.flatMap(({ of, row, fabric, depth, count }) =>
      Array.from({ length: count }, () => ({ of, row, fabric, depth })),
    ),
  }));
}

interface Filling {
  readonly sets: number;
  readonly cuts: readonly (readonly number[])[];
  readonly exact: boolean;
}

/** The most sets from one length of cloth: from a bound that no cut can beat downwards, the first number that can be cut. */
function fillGroup(group: LengthGroup, parts: readonly WidthPart[], wedge: WedgePlan): Filling {
  const widths = parts.map((one) => one.width);
  const fill = group.pieces.reduce((sum, piece) => sum + bestFill(piece.depth, widths), 0);
  const totals = totalsTable(parts, wedge.cutHeight + HEIGHT_TO_SPARE, wedge.seam);
  if (!totals(1)) return { sets: 0, cuts: [], exact: true };
  const most = mostByCloth(fill, widths, (sets) => totals(sets)!.counts, wedge);
  let exact = true;
  for (let sets = most; sets > 0; sets -= 1) {
    const wanted = totals(sets)!;
    const cut = cutCloth(group.pieces, widths, wanted.counts);
    exact = exact && wanted.exact;
    if (cut.enough) return { sets, cuts: cut.cuts, exact };
    exact = exact && cut.proved;
  }
  return { sets: 0, cuts: [], exact };
}

/** The most sets whose strips, laid side by side, are no wider than what the pieces can be filled with. */
function mostByCloth(
  fill: Inches,
  widths: readonly Inches[],
  counts: (sets: number) => readonly number[],
  wedge: WedgePlan,
): number {
  const fits = (sets: number) =>
    counts(sets).reduce((sum, count, at) => sum + count * widths[at]!, 0) <= fill + 1e-9;
  // No set takes less cloth than its height and its seams at the widest strips.
  const widest = Math.max(...widths);
  const gain = widest - 2 * wedge.seam;
  const leastCloth = ((wedge.cutHeight + HEIGHT_TO_SPARE - 2 * wedge.seam) * widest) / gain;
  let high = Math.min(MOST_SETS, Math.floor(fill / leastCloth + 1e-9));
  let low = 0;
  // More sets take more cloth, up to a strip or two for the proportion; a few more than found are tried for that.
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (fits(middle)) low = middle;
    else high = middle - 1;
  }
  for (let more = low + 3; more > low; more -= 1) if (more <= MOST_SETS && fits(more)) return more;
  return low;
}

function stripsOf(
  group: LengthGroup,
  cuts: readonly (readonly number[])[],
  widths: readonly WidthPart[],
): StripsCut[] {
  const rows = new Map<string, { fabric: FabricId; width: Inches; length: Inches; count: number }>();
  cuts.forEach((cut, piece) => {
    const { fabric } = group.pieces[piece]!;
    cut.forEach((count, at) => {
      if (count === 0) return;
      const { width } = widths[at]!;
      const key = `${fabric} ${width}`;
      const row = rows.get(key) ?? { fabric, width, length: group.length, count: 0 };
      row.count += count;
      rows.set(key, row);
    });
  });
  return [...rows.values()];
}

function piecesCut(group: LengthGroup, cuts: readonly (readonly number[])[]): PieceCut[] {
  return cuts.flatMap((counts, piece) => {
    const { of, row } = group.pieces[piece]!;
    return counts.some((count) => count > 0) ? [{ of, row, counts }] : [];
  });
}

/**
 * Whole blocks from these sets beside the wedges there are, counted for sets just as high as the wedge, their first tips
 * chosen to balance.
 */
function blocksOf(
  sets: readonly { length: Inches; count: number }[],
  wedge: WedgePlan,
  there: WedgeCount = { up: 0, down: 0 },
): number {
  let { up, down } = there;
  for (const { length, count } of sets) {
    const each = wedgesOnLength(length, wedge.cutHeight, wedge);
    for (let set = 0; set < count; set += 1) {
      const [more, less] = [Math.ceil(each / 2), Math.floor(each / 2)];
      const upFirst = up <= down;
      up += upFirst ? more : less;
      down += upFirst ? less : more;
    }
  }
  return Math.floor(Math.min(up, down) / (wedge.perBlock / 2));
}

function clothLeft(basket: ClothBasket, strips: readonly StripsCut[], widths: readonly WidthPart[]) {
  const there = clothByFabric(basket);
  const used = new Map<FabricId, Inches>();
  for (const { fabric, width, count } of widths.length === 0 ? [] : strips) {
    used.set(fabric, (used.get(fabric) ?? 0) + width * count);
  }
  return basket.fabrics
    .filter((fabric) => there.has(fabric.id))
    .map(({ id }) => ({ fabric: id, inches: there.get(id)! - (used.get(id) ?? 0) }));
}

function clothByFabric(basket: ClothBasket): Map<FabricId, Inches> {
  const there = new Map<FabricId, Inches>();
  const add = (fabric: FabricId, inches: Inches) => there.set(fabric, (there.get(fabric) ?? 0) + inches);
  for (const { fabric, depth, count } of basket.clothOnHand) add(fabric, depth * count);
  for (const { fabric, width, count } of basket.stripsOnHand) add(fabric, width * count);
  return there;
}

/** The fabric there is least of, width times length: used alike, it is the first that is gone. */
function scarcest(basket: ClothBasket, groups: readonly LengthGroup[]): FabricId | null {
  const areas = new Map<FabricId, number>();
  for (const { length, pieces } of groups) {
    for (const { fabric, depth } of pieces) areas.set(fabric, (areas.get(fabric) ?? 0) + depth * length);
  }
  if (areas.size < 2) return null;
  const known = basket.fabrics.filter((fabric) => areas.has(fabric.id));
  return known.reduce((least, one) => (areas.get(one.id)! < areas.get(least.id)! ? one : least)).id;
}

function topWords(
  basket: ClothBasket,
  blocks: number,
  sets: readonly { length: Inches; count: number }[],
  exact: boolean,
  runsOutFirst: FabricId | null,
): Phrase[] {
  const made = sets.reduce((sum, set) => sum + set.count, 0);
  if (made === 0) {
    const height = { inches: basket.wedge.cutHeight + HEIGHT_TO_SPARE };
    const nothing = phrase('The cloth on hand does not make a strip set {height} high.', { height });
    const short = phrase('The cloth that is left does not make another strip set {height} high.', { height });
    return [basket.there ? short : nothing];
  }
  const enough = { blocks: counted(blocks, '1 block', '{count} blocks') };
  const words = [
    basket.there
      ? counted(
          made,
          'The cloth that is left makes 1 more strip set. With the sets there are it is enough for {blocks}.',
          'The cloth that is left makes {count} more strip sets. With the sets there are it is enough for {blocks}.',
          enough,
        )
      : counted(
          made,
          'The cloth on hand makes 1 strip set, enough for {blocks}.',
          'The cloth on hand makes {count} strip sets, enough for {blocks}.',
          enough,
        ),
    exact
      ? phrase('More sets cannot be cut from it in this proportion of widths.')
      : phrase('A cut that gives more sets may exist; the best one found is shown.'),
  ];
  const least = basket.fabrics.find((fabric) => fabric.id === runsOutFirst);
  if (least) words.push(phrase('Used alike, {fabric} runs out first.', { fabric: least.name }));
  return words;
}

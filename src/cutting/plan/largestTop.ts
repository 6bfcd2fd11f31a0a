// Planning backwards: from the cloth and strips on hand to the largest top and what runs out first. Strips on hand count as
// cloth of their own width, which may be cut narrower; cloth is cut in the wanted proportion. What to buy: clothToBuy.ts.
import { HAIR } from '../../model/lengths';
import { counted, type Phrase, phrase } from '../../model/phrase';
import type { ClothOnHand, Fabric, FabricId, StripOnHand, WedgePlan } from '../../model/project';
import type { Inches } from '../../model/units';
import { HEIGHT_TO_SPARE } from '../sets/setScore';
import type { WedgeCount } from '../wedges/yield';
import { type Piece, piecesOf, SAME_LENGTH } from './clothPieces';
import { type RunsOut, runsOut } from './runsOut';
import type { WidthPart } from './setTotals';
import { plannedHeight, type SetsOfLength } from './topGroups';
import { searchTop, type TopFound } from './topSearch';

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

/** Strips of one width cut side by side from a piece, each then cut across into parts of one length. */
export interface StripCut {
  readonly width: Inches;
  readonly count: number;
  readonly parts: number;
  readonly length: Inches;
}

/** One piece of cloth, or one strip, and the strips cut from it. */
export interface PieceCut {
  readonly of: Piece['of'];
  /** Id of its row in the basket. */
  readonly row: string;
  readonly strips: readonly StripCut[];
}

export interface SetsPlanned {
  readonly length: Inches;
  readonly count: number;
  /** Strips of each width in each of them, in the order of the basket's widths: one way to share them out. */
  readonly perSet: readonly (readonly number[])[];
}

export interface LargestTop {
  readonly blocks: number;
  /** Sets by the length of their strips, longest first; none where the cloth adds no block. */
  readonly sets: readonly SetsPlanned[];
  /** What to cut. Never more than there is. */
  readonly strips: readonly StripsCut[];
  /** The same piece by piece; pieces left whole are not listed. */
  readonly pieces: readonly PieceCut[];
  /** Width of cloth left of each fabric after it, inches, over all lengths of strips. */
  readonly left: readonly { readonly fabric: FabricId; readonly inches: Inches }[];
  /** What runs out first in this plan; null where nothing does or there is one fabric. */
  readonly runsOut: RunsOut | null;
  /** Blocks there would be if a fabric might lie beside itself, where that is more; else null. */
  readonly withoutRule: number | null;
  /**
   * True where more blocks are proved to be out of reach: of any plan of this kind (for every length, sets of any of the heights
   * that setKinds lists, their strips in the proportion as totalsTable counts them for so many sets), and of all sets
   * of two wedges or more, of any height, that can be laid from the strips of such a plan. Not covered: strips of other widths or
   * proportions, and strips on hand sewn wider than these widths.
   */
  readonly exact: boolean;
  readonly words: readonly Phrase[];
}

/** The largest top the basket makes; 0 blocks when it makes none. Neighbours in its sets can always differ. */
export function largestTop(basket: ClothBasket): LargestTop {
  const widths = basket.widths.map((one) => one.width);
  const pieces = piecesOf(basket.clothOnHand, basket.stripsOnHand, basket.wedge);
  const found = searchTop(pieces, basket.widths, basket.wedge, basket.there ?? NONE);
  const cuts = pieces.map((piece, at) => stripsFrom(piece, at, found.groups, widths));
  const strips = asRows(pieces, cuts);
  const withoutRule = blocksWithoutRule(basket, pieces, found);
  const made = found.groups.map(({ length, sets }) => ({ length, count: sets.length, perSet: sets }));
  const plan = { blocks: found.blocks, exact: found.exact, withoutRule, sets: made };
  const gone = runsOut(basket.fabrics, pieces, cuts, widths, made);
  return {
    ...plan,
    strips,
    pieces: pieces.flatMap(({ of, row }, at) =>
      cuts[at]!.length > 0 ? [{ of, row, strips: cuts[at]! }] : [],
    ),
    left: clothLeft(basket, pieces, cuts),
    runsOut: gone,
    words: [
      ...topWords(basket, plan, found.anySet),
      ...lackWords(basket, pieces, plan),
      ...(gone ? [gone.words] : []),
    ],
  };
}

const NONE: WedgeCount = { up: 0, down: 0 };

/** Whether the basket makes so many blocks: the same search, stopped where it knows. */
export function makesBlocks(basket: ClothBasket, blocks: number): boolean {
  const { wedge, widths, there = NONE } = basket;
  const pieces = piecesOf(basket.clothOnHand, basket.stripsOnHand, wedge);
  return searchTop(pieces, widths, wedge, there, { enough: blocks }).blocks >= blocks;
}

/**
 * The strips of one piece. A strip not much longer than its set is left as long as it is, to be trimmed once it is sewn; where
 * there are sets of several lengths each is cut to its own, so that they are told apart.
 */
function stripsFrom(
  piece: Piece,
  at: number,
  groups: readonly SetsOfLength[],
  widths: readonly Inches[],
): StripCut[] {
  return groups.flatMap(({ length, cuts, parts: allParts }) => {
    const parts = allParts[at]!;
    const whole = piece.length / parts;
    const long = groups.length === 1 && whole - length <= SAME_LENGTH + 1e-9 ? whole : length;
    return cuts[at]!.flatMap((count, width) =>
      count > 0 ? [{ width: widths[width]!, count, parts, length: long }] : [],
    );
  });
}

/** All strips by fabric, width and length, as they come off the ruler. */
function asRows(pieces: readonly Piece[], cuts: readonly (readonly StripCut[])[]): StripsCut[] {
  const rows = new Map<string, { fabric: FabricId; width: Inches; length: Inches; count: number }>();
  cuts.forEach((strips, at) => {
    const { fabric } = pieces[at]!;
    for (const { width, count, parts, length } of strips) {
      const key = `${fabric} ${width} ${length}`;
      const row = rows.get(key) ?? { fabric, width, length, count: 0 };
      row.count += count * parts;
      rows.set(key, row);
    }
  });
  return [...rows.values()];
}

/** What the rule that neighbours differ costs: looked into only where one fabric outweighs the others. */
function blocksWithoutRule(basket: ClothBasket, pieces: readonly Piece[], found: TopFound): number | null {
  const { fabric, share } = largestFabric(pieces);
  if (fabric === null || share < 0.5) return null;
  const free = searchTop(pieces, basket.widths, basket.wedge, basket.there ?? NONE, {
    neighboursDiffer: false,
  });
  return free.blocks > found.blocks ? free.blocks : null;
}

/** The fabric there is most of, width times length, and its part of everything. */
function largestFabric(pieces: readonly Piece[]): { fabric: FabricId | null; share: number } {
  const areas = new Map<FabricId, number>();
  for (const { fabric, depth, length } of pieces)
    areas.set(fabric, (areas.get(fabric) ?? 0) + depth * length);
  const [most] = [...areas].sort((one, other) => other[1] - one[1]);
  if (!most) return { fabric: null, share: 0 };
  return { fabric: most[0], share: most[1] / [...areas.values()].reduce((sum, area) => sum + area, 0) };
}

function clothLeft(basket: ClothBasket, pieces: readonly Piece[], cuts: readonly (readonly StripCut[])[]) {
  const left = new Map<FabricId, Inches>();
  const add = (fabric: FabricId, inches: Inches) => left.set(fabric, (left.get(fabric) ?? 0) + inches);
  for (const { fabric, depth, count } of basket.clothOnHand) add(fabric, depth * count);
  for (const { fabric, width, count } of basket.stripsOnHand) add(fabric, width * count);
  cuts.forEach((strips, at) => {
    for (const { width, count } of strips) add(pieces[at]!.fabric, -width * count);
  });
  return basket.fabrics
    .filter((fabric) => left.has(fabric.id))
    .map(({ id }) => ({ fabric: id, inches: left.get(id)! }));
}

type Plan = Pick<LargestTop, 'blocks' | 'sets' | 'exact' | 'withoutRule'>;

function topWords(basket: ClothBasket, plan: Plan, anySet: boolean): Phrase[] {
  const { blocks, sets, exact } = plan;
  const made = sets.reduce((sum, set) => sum + set.count, 0);
  if (made === 0) {
    const height = { inches: basket.wedge.cutHeight };
    const nothing = anySet
      ? phrase('The fabric on hand makes strip sets, but no whole block.')
      : phrase('The fabric on hand does not make a strip set {height} high.', { height });
    const short = anySet
      ? phrase('The fabric that is left makes strip sets, but no more blocks.')
      : phrase('The fabric that is left does not make another strip set {height} high.', { height });
    return [basket.there ? short : nothing, ...(anySet ? [exactWords(exact)] : [])];
  }
  const enough = { blocks: counted(blocks, '1 block', '{count} blocks') };
  const says = basket.there
    ? counted(
        made,
        'The fabric that is left makes 1 more strip set. With the sets you have that is enough for {blocks}.',
        'The fabric that is left makes {count} more strip sets. With the sets you have that is enough for {blocks}.',
        enough,
      )
    : counted(
        made,
        'The fabric on hand makes 1 strip set, enough for {blocks}.',
        'The fabric on hand makes {count} strip sets, enough for {blocks}.',
        enough,
      );
  return [says, ...lengthWords(sets), ...heightWords(basket, sets), exactWords(exact)];
}

function exactWords(exact: boolean): Phrase {
  return exact
    ? phrase('No more blocks can be cut from it with this mix of widths.')
    : phrase('A cut that gives more blocks may exist; the best one found is shown.');
}

/** Said where sets are planned lower than usual, as they then leave less for sewing that is not quite straight. */
function heightWords({ widths, wedge }: ClothBasket, sets: Plan['sets']): Phrase[] {
  const cut = widths.map((one) => one.width);
  const heights = sets.flatMap((set) => set.perSet.map((counts) => plannedHeight(counts, cut, wedge.seam)));
  const height = Math.min(...heights);
  if (height >= wedge.cutHeight + HEIGHT_TO_SPARE - HAIR) return [];
  const say =
    'For this many blocks, sets are planned from {height} high, with {spare} to spare above the wedge. Sew exact seams.';
  return [phrase(say, { height: { inches: height }, spare: { inches: height - wedge.cutHeight } })];
}

function lengthWords(sets: Plan['sets']): Phrase[] {
  if (sets.length < 2) return [];
  const each = sets.map(({ length, count }) =>
    counted(count, '1 set {length} long', '{count} sets {length} long', { length: { inches: length } }),
  );
  const [first, ...rest] = each;
  return [rest.reduce((said, one) => phrase('{said}, {one}', { said, one }), first!)];
}

function lackWords(basket: ClothBasket, pieces: readonly Piece[], { withoutRule }: Plan): Phrase[] {
  if (withoutRule === null) return [];
  const { fabric } = largestFabric(pieces);
  const name = basket.fabrics.find((one) => one.id === fabric)?.name ?? '';
  const blocks = counted(withoutRule, '1 block', '{count} blocks');
  const only = new Set(pieces.map((piece) => piece.fabric)).size === 1;
  const say = only
    ? '{fabric} alone makes no set: neighbours in a set must differ. With a second fabric, better a third, up to {blocks} are possible.'
    : 'Neighbours in a set must differ, so {fabric} can be no more than every other strip. With some of it in other fabrics, up to {blocks} are possible.';
  return [phrase(say, { fabric: name, blocks })];
}

// The search for the most blocks: sets of the longest length first, what is left of the cloth for shorter ones, and back again
// to fewer long ones. A bound no cut can beat tells when it may stop, and whether the answer is proved.
import type { WedgePlan } from '../../model/project';
import type { Inches } from '../../model/units';
import { lengthFor, type WedgeCount, wedgesOnLength } from '../wedges/yield';
import { type Piece, partsOf, SAME_LENGTH, setSizes } from './clothPieces';
import { fillSets } from './fillSets';
import type { SetNeeds } from './setNeeds';
import { mostWedges } from './wedgeBound';

/** Sets of one length and the strips cut for them, piece by piece. */
export interface SetsOfLength {
  readonly sets: number;
  /** Wedges each of them gives. */
  readonly wedges: number;
  /** As long as the shortest strip. */
  readonly length: Inches;
  /** Strips of each width from each piece, in the order of the pieces. */
  readonly cuts: readonly (readonly number[])[];
  /** So many strips of the set's length one strip from each piece gives, cut across. */
  readonly parts: readonly number[];
}

export interface TopFound {
  readonly blocks: number;
  readonly groups: readonly SetsOfLength[];
  /** True where no cut gives more blocks. */
  readonly exact: boolean;
}

/** Fillings tried before the best so far is taken. */
const MOST_TRIED = 160;
/** The same where only a yes or no is asked. */
const MOST_TRIED_FOR_ENOUGH = 40;
/** So many pieces make a filling cost as much as one more. */
const LARGE = 12;

interface Search {
  readonly pieces: readonly Piece[];
  readonly needs: SetNeeds;
  readonly wedge: WedgePlan;
  readonly there: WedgeCount;
  readonly neighboursDiffer: boolean;
  readonly sizes: readonly number[];
  readonly bound: number;
  readonly mostTried: number;
  tried: number;
  best: { blocks: number; groups: readonly SetsOfLength[] };
}

export interface SearchWish {
  /** False lets a fabric lie beside itself: only to say what it costs that it may not. */
  readonly neighboursDiffer?: boolean;
  /** The search may stop at so many blocks. */
  readonly enough?: number;
}

/** The most blocks these pieces give beside the wedges there are. */
export function searchTop(
  pieces: readonly Piece[],
  needs: SetNeeds,
  wedge: WedgePlan,
  there: WedgeCount,
  { neighboursDiffer = true, enough = Number.POSITIVE_INFINITY }: SearchWish = {},
): TopFound {
  const blocks = blocksOf([], there, wedge);
  const most = mostWedges(pieces, pieces.map((piece) => piece.depth), needs, wedge, neighboursDiffer); // biome-ignore format: short
  const bound = Math.floor((there.up + there.down + most) / wedge.perBlock + 1e-9);
  const search: Search = {
    pieces, needs, wedge, there, neighboursDiffer, sizes: setSizes(pieces, wedge),
    bound: Math.min(bound, enough), tried: 0,
    mostTried: enough === Number.POSITIVE_INFINITY ? MOST_TRIED : MOST_TRIED_FOR_ENOUGH,
    best: { blocks, groups: [] },
  }; // biome-ignore format: short
  // Where no cut reaches what is enough, none is looked for.
  if (needs.of(1) && (enough === Number.POSITIVE_INFINITY || bound >= enough)) fillFrom(search, 0, pieces.map((piece) => piece.depth), []); // biome-ignore format: short
  return { ...search.best, exact: search.best.blocks >= Math.max(bound, blocks) };
}

function fillFrom(search: Search, size: number, depths: readonly Inches[], groups: readonly SetsOfLength[]) {
  keepBest(search, groups);
  const { pieces, needs, wedge } = search;
  if (search.best.blocks >= search.bound || size === search.sizes.length) return;
  const made = groups.reduce((sum, group) => sum + group.sets * group.wedges, 0);
  const more = made + mostWedges(pieces, depths, needs, wedge, search.neighboursDiffer);
  if (Math.floor((search.there.up + search.there.down + more) / wedge.perBlock) <= search.best.blocks) return;
  const wedges = search.sizes[size]!;
  const least = lengthFor(wedges, wedge.cutHeight, wedge);
  const left = pieces.map((piece, at) => ({
    fabric: piece.fabric, depth: depths[at]!, parts: partsOf(piece, least),
  })); // biome-ignore format: short
  for (let most = Number.POSITIVE_INFINITY; most > 0 && search.tried < search.mostTried; ) {
    search.tried += 1 + Math.floor(pieces.length / LARGE);
    const { sets, cuts } = fillSets(left, needs, most, search.neighboursDiffer);
    if (sets === 0) break;
    const parts = left.map((one) => one.parts);
    const length = setLength(pieces, parts, cuts);
    const apart = groups.every((group) => group.length - length > SAME_LENGTH + 1e-9);
    if (apart) {
      const rest = depths.map((depth, at) => depth - widthOf(cuts[at]!, needs.widths));
      fillFrom(search, size + 1, rest, [
        ...groups,
        { sets, wedges: wedgesOnLength(length, wedge.cutHeight, wedge), length, cuts, parts },
      ]);
      if (search.best.blocks >= search.bound) return;
    }
    most = apart ? sets - 1 : 0;
  }
  fillFrom(search, size + 1, depths, groups);
}

/** Keeps these sets where they make more blocks; groups that add no block are left out, but for the first. */
function keepBest(search: Search, groups: readonly SetsOfLength[]): void {
  const blocks = blocksOf(groups, search.there, search.wedge);
  const first = search.best.groups.length === 0 && groups.length > 0;
  if (blocks < search.best.blocks || (blocks === search.best.blocks && !first)) return;
  let kept = groups;
  for (const group of groups.slice(1)) {
    const without = kept.filter((one) => one !== group);
    if (blocksOf(without, search.there, search.wedge) === blocks) kept = without;
  }
  search.best = { blocks, groups: kept };
}

function setLength(
  pieces: readonly Piece[],
  parts: readonly number[],
  cuts: readonly (readonly number[])[],
): Inches {
  return Math.min(
    ...pieces.flatMap((piece, at) =>
      cuts[at]!.some((count) => count > 0) ? [piece.length / parts[at]!] : [],
    ),
  );
}

function widthOf(counts: readonly number[], widths: readonly Inches[]): Inches {
  return counts.reduce((sum, count, at) => sum + count * widths[at]!, 0);
}

/**
 * Whole blocks from these sets beside the wedges there are, counted for sets just as high as the wedge, their first tips
 * chosen to balance.
 */
function blocksOf(groups: readonly SetsOfLength[], there: WedgeCount, wedge: WedgePlan): number {
  let { up, down } = there;
  for (const { wedges, sets } of groups) {
    for (let set = 0; set < sets; set += 1) {
      const [more, less] = [Math.ceil(wedges / 2), Math.floor(wedges / 2)];
      const upFirst = up <= down;
      up += upFirst ? more : less;
      down += upFirst ? less : more;
    }
  }
  return Math.floor(Math.min(up, down) / (wedge.perBlock / 2));
}

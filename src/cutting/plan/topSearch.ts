// The search for the most blocks: sets of the longest length first, what is left of the cloth for shorter ones, and back again
// to fewer long ones. Sets with the usual half inch to spare come first, lower ones only where they make more blocks. A bound
// no plan can beat tells when it may stop, and whether the answer is proved.
import type { WedgePlan } from '../../model/project';
import type { Inches } from '../../model/units';
import { HEIGHT_TO_SPARE } from '../sets/setScore';
import type { WedgeCount } from '../wedges/yield';
import { MOST_LENGTHS, type Piece, partsOf, SAME_LENGTH } from './clothPieces';
import { fillSets } from './fillSets';
import type { WidthPart } from './setTotals';
import { type SetWish, setWishes } from './setWishes';
import {
  blocksOfGroups,
  laidAnew,
  type SetsOfLength,
  wedgesOfSets,
  wedgesWith,
  wholeBlocks,
  withoutUnneeded,
} from './topGroups';
import { type WedgeBound, wedgeBound } from './wedgeBound';

export interface TopFound {
  readonly blocks: number;
  /** No set of them can be left out; none where the cloth adds no block. */
  readonly groups: readonly SetsOfLength[];
  /** True where neither another plan nor sets of any height laid from its strips give more blocks. */
  readonly exact: boolean;
  /** Whether the cloth makes a set at all. */
  readonly anySet: boolean;
}

/** What sets have above the wedge: half an inch, else a quarter, else nothing. */
const SPARES: readonly Inches[] = [HEIGHT_TO_SPARE, HEIGHT_TO_SPARE / 2, 0];
/** Fillings tried for each before the best so far is taken. */
const MOST_TRIED = 100;
/** So many pieces make a filling cost as much as one more. */
const LARGE = 12;

interface Search {
  readonly pieces: readonly Piece[];
  wishes: readonly SetWish[];
  readonly widths: readonly Inches[];
  readonly wedge: WedgePlan;
  readonly there: WedgeCount;
  readonly neighboursDiffer: boolean;
  readonly bound: WedgeBound;
  /** Enough blocks, or as many as there can be. */
  readonly most: number;
  tried: number;
  best: { blocks: number; groups: readonly SetsOfLength[] };
  anySet: boolean;
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
  parts: readonly WidthPart[],
  wedge: WedgePlan,
  there: WedgeCount,
  { neighboursDiffer = true, enough = Number.POSITIVE_INFINITY }: SearchWish = {},
): TopFound {
  const blocks = wholeBlocks(there, wedge);
  const wishes = SPARES.map((spare) => setWishes(pieces, parts, wedge, spare));
  const bound = wedgeBound(pieces, wishes, wedge, neighboursDiffer);
  const most = Math.max(blocks, Math.floor((there.up + there.down + bound.whole) / wedge.perBlock));
  const search: Search = {
    pieces, wishes: [], widths: parts.map((part) => part.width), wedge, there, neighboursDiffer, bound,
    most: Math.min(most, enough), tried: 0, best: { blocks, groups: [] }, anySet: false,
  }; // biome-ignore format: short
  // Where no cut reaches what is enough, none is looked for.
  if (Number.isFinite(enough) && most < enough) return { ...search.best, exact: false, anySet: false };
  for (const some of wishes) {
    if (search.best.blocks >= search.most && search.anySet) break;
    search.tried = 0;
    search.wishes = some;
    const depths = pieces.map((piece) => piece.depth);
    fillFrom(search, 0, depths, []);
    improve(search);
  }
  return { ...search.best, exact: search.best.blocks >= most, anySet: search.anySet };
}

function fillFrom(search: Search, size: number, depths: readonly Inches[], groups: readonly SetsOfLength[]) {
  keepBest(search, groups);
  const { pieces, wedge, widths, there } = search;
  const wish = search.wishes[size];
  if (search.best.blocks >= search.most || !wish || groups.length === MOST_LENGTHS) return;
  const made = groups.flatMap((group) => wedgesOfSets(group.sets, group.length, widths, wedge));
  const all = made.reduce((sum, wedges) => sum + wedges, there.up + there.down);
  if (Math.floor((all + search.bound.of(depths)) / wedge.perBlock) <= search.best.blocks) return;
  const left = pieces.map((piece, at) => ({
    fabric: piece.fabric, depth: depths[at]!, parts: partsOf(piece, wish.least),
  })); // biome-ignore format: short
  const enough = (wedge.perBlock / 2) * search.most;
  const { up, down } = wedgesWith(made, there);
  let most = 2 * Math.max(0, enough - up, enough - down);
  while (most > 0 && search.tried < MOST_TRIED) {
    search.tried += 1 + Math.floor(pieces.length / LARGE);
    const filled = fillSets(left, wish, most, search.neighboursDiffer);
    if (!filled) break;
    search.anySet = true;
    const { sets, cuts } = filled;
    const parts = left.map((one) => one.parts);
    const length = setLength(pieces, parts, cuts);
    if (!groups.every((group) => group.length - length > SAME_LENGTH + 1e-9)) break;
    const rest = depths.map((depth, at) => depth - widthOf(cuts[at]!, widths));
    fillFrom(search, size + 1, rest, [...groups, { sets, length, cuts, parts }]);
    if (search.best.blocks >= search.most) return;
    most = filled.wedges - wish.kinds[0]!.wedges;
  }
  fillFrom(search, size + 1, depths, groups);
}

/** Keeps these sets where they make more blocks. */
function keepBest(search: Search, groups: readonly SetsOfLength[]): void {
  const blocks = blocksOfGroups(groups, search.widths, search.wedge, search.there);
  if (blocks > search.best.blocks) search.best = { blocks, groups };
}

/** Lays the strips of the best plan anew where other sets of them give more, and leaves out what no block needs. */
function improve(search: Search): void {
  const { widths, wedge, there } = search;
  const fabrics = search.pieces.map((piece) => piece.fabric);
  const laid = search.best.groups.map((group) =>
    laidAnew(group, fabrics, widths, wedge, search.neighboursDiffer),
  );
  keepBest(search, laid);
  const groups = withoutUnneeded(search.best.groups, fabrics, widths, wedge, there);
  search.best = { ...search.best, groups };
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

// The cloth one fabric takes: its lines, laid out on real cloth, and what that comes to in yards or metres, or in fat
// quarters where those are cheaper.

import { sellingUnit } from '../../model/buying';
import { counted, type Phrase, phrase } from '../../model/phrase';
import type { Fabric, FabricId, Project } from '../../model/project';
import type { Inches } from '../../model/units';
import { isStraight, straightened } from '../plan/clothPieces';
import { type ClothLayout, layOutCutting } from './clothLayout';
import { buyWords, clothText, INCHES_IN, toBuy } from './clothLength';
import { type Cloth, type CuttingLine, cuttingLines } from './cuttingLine';
import { fatQuarter, fatQuarterWords } from './fatQuarter';
import { linesOnCloth, partsOf } from './linesOnCloth';
import {
  lengthCost,
  money,
  type Priced,
  partOfPrice,
  piecesCost,
  pricedLength,
  pricedQuarters,
} from './money';
import type { NeededPiece } from './neededPiece';
import type { CuttingScope } from './setStrips';

/** Where no prices say otherwise, more fat quarters of one fabric than this are bought as a length. */
const MOST_UNPRICED = 4;

export type Purchase =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'length'; readonly inches: Inches }
  | { readonly kind: 'fatQuarters'; readonly count: number };

export interface FabricYardage {
  readonly fabric: Fabric;
  readonly lines: readonly CuttingLine[];
  /** Where every cut lies; a cut's `line` is an index into `lines`. */
  readonly layout: ClothLayout;
  readonly buy: Purchase;
  /** How `buy` came about, and what it costs. */
  readonly why: readonly Phrase[];
  /** What it costs, to the cent; null without a price. */
  readonly cost: number | null;
  /** Whether the cloth and strips on hand are enough, in words; null where none is on hand. */
  readonly onHand: { readonly enough: boolean; readonly words: Phrase } | null;
}

/** What can be cut of a piece of cloth on hand. */
export interface Piece {
  readonly across: Inches;
  readonly along: Inches;
}

/** The cloth of one fabric for these rows, all of that fabric; `stock` is what of it is on hand for them. */
export function fabricYardage(
  project: Project,
  fabric: Fabric,
  pieces: readonly NeededPiece[],
  scope: CuttingScope,
  stock: readonly Piece[] = clothOnHand(project, fabric.id),
): FabricYardage {
  const cloth: Cloth = {
    width: project.preferences.usableWidth,
    oneWay: fabric.oneWay === true,
    longPieces: project.buying.longPieces,
    unit: project.preferences.unit,
  };
  // Of the whole quilt everything is cut from new cloth; of what is left, only what is not on the table.
  const rows = scope === 'whole' ? pieces.map((piece) => ({ ...piece, onHand: 0 })) : pieces;
  const { lines, layout } = linesOnCloth(rows, cloth, scope === 'left' ? stock : []);
  const unit = sellingUnit(project);
  const length = toBuy(layout.length, project.buying, unit);
  const quarters = project.buying.fatQuarters
    ? fatQuarters(project, fabric, rows, length.inches, scope, stock)
    : null;
  const buy: Purchase = quarters
    ? { kind: 'fatQuarters', count: quarters.layout.newSheets }
    : length.inches > 0
      ? { kind: 'length', inches: length.inches }
      : { kind: 'nothing' };
  const { cost, costWords } = costOf(project, fabric, buy);
  const straightened = scope === 'left' ? straightenWords(project, fabric.id) : [];
  return {
    fabric,
    lines: quarters?.lines ?? lines,
    layout: quarters?.layout ?? layout,
    buy,
    why: [
      ...straightened,
      ...buyWords(layout.length, length, project),
      ...(quarters?.why ?? []),
      ...(costWords ? [costWords] : []),
    ],
    cost,
    onHand: onHandWords(project, fabric, pieces, stock),
  };
}

/**
 * What can be cut of every piece of cloth of a fabric on hand: its edge is straightened as that of bought cloth is. Precut
 * strips are straight. 0 along where nothing is left.
 */
export function clothOnHand(project: Project, fabric: FabricId): Piece[] {
  return project.clothOnHand
    .filter((one) => one.fabric === fabric)
    .flatMap((one) => {
      const piece = { across: one.stripLength, along: straightened(one, project.buying.straighten) };
      return Array.from({ length: one.count }, () => piece);
    });
}

/** Says what is cut off the cloth of this fabric on hand before anything else; nothing where nothing is. */
export function straightenWords(project: Project, fabric: FabricId): Phrase[] {
  const { straighten } = project.buying;
  const cloth = project.clothOnHand.some((one) => one.fabric === fabric && !isStraight(one));
  if (!cloth || straighten === 0) return [];
  return [
    phrase('Of every piece of fabric on hand {straighten} is cut off to straighten the edge.', {
      straighten: { inches: straighten },
    }),
  ];
}

/** Price of a yard or metre of this fabric; null where none is known. */
export function priceOf(project: Project, fabric: Pick<Fabric, 'price'>): number | null {
  return fabric.price ?? project.buying.price;
}

/** Price of a fat quarter: as written down, else a quarter of the price of a length, to the cent. */
export function fatQuarterPrice(project: Project, fabric: Pick<Fabric, 'price'>): number | null {
  const price = priceOf(project, fabric);
  return project.buying.fatQuarterPrice ?? (price === null ? null : partOfPrice(price, 4));
}

function costOf(project: Project, fabric: Fabric, buy: Purchase): Priced {
  if (buy.kind === 'nothing') return { cost: 0, costWords: null };
  return buy.kind === 'fatQuarters'
    ? pricedQuarters(buy.count, fatQuarterPrice(project, fabric), project)
    : pricedLength(buy.inches, priceOf(project, fabric), project);
}

/** The lines cut from fat quarters where that is cheaper than `length` of cloth; null where it is not or a piece does not fit. */
function fatQuarters(
  project: Project,
  fabric: Fabric,
  pieces: readonly NeededPiece[],
  length: Inches,
  scope: CuttingScope,
  stock: readonly Piece[],
): { lines: CuttingLine[]; layout: ClothLayout; why: Phrase[] } | null {
  if (length <= 0) return null;
  const unit = sellingUnit(project);
  const sheet = fatQuarter(project);
  const ways = fabric.oneWay ? [sheet] : [sheet, { across: sheet.along, along: sheet.across }];
  const [best] = ways
    .flatMap(({ across, along }) => {
      const lines = cuttingLines(pieces, {
        width: across,
        oneWay: fabric.oneWay === true,
        longPieces: 'whole',
        unit: project.preferences.unit,
      });
      // Strips joined from short lengths are no saving to the person who has to join them.
      if (lines.some((line) => line.problem || line.join)) return [];
      const cloth = { width: across, sheetLength: along };
      const layout = layOutCutting(partsOf(lines), cloth, scope === 'left' ? stock : []);
      return layout ? [{ lines, layout }] : [];
    })
    .sort((one, other) => one.layout.newSheets - other.layout.newSheets);
  if (!best) return null;
  const count = best.layout.newSheets;
  const each = fatQuarterPrice(project, fabric);
  const price = priceOf(project, fabric);
  const values = { count, length: clothText(length, unit) };
  const size = fatQuarterWords(project);
  if (each !== null && price !== null) {
    const [quarters, cloth] = [piecesCost(count, each), lengthCost(length, price, unit)];
    if (quarters >= cloth) return null;
    const say = 'All of it fits on {count} fat quarters: {quarters} against {cloth} for {length}.';
    const why = phrase(say, {
      ...values,
      quarters: money(quarters, project),
      cloth: money(cloth, project),
    });
    return { ...best, why: [size, why] };
  }
  // Without prices a fat quarter counts as a quarter of the length it was cut from.
  if (count > MOST_UNPRICED || count * INCHES_IN[unit] >= 4 * length - 1e-6) return null;
  const one = 'All of it fits on 1 fat quarter, which is less fabric than {length}.';
  const many = 'All of it fits on {count} fat quarters, which is less fabric than {length}.';
  return { ...best, why: [size, counted(count, one, many, values)] };
}

/** Lays what is not cut yet on the cloth on hand and says whether it is enough. */
function onHandWords(
  project: Project,
  fabric: Fabric,
  pieces: readonly NeededPiece[],
  stock: readonly Piece[],
): FabricYardage['onHand'] {
  const needed = pieces.reduce((sum, piece) => sum + piece.count, 0);
  const cut = pieces.reduce((sum, piece) => sum + piece.onHand, 0);
  if (needed === 0 || (stock.length === 0 && cut === 0)) return null;
  const cloth: Cloth = {
    width: project.preferences.usableWidth,
    oneWay: fabric.oneWay === true,
    longPieces: project.buying.longPieces,
    unit: project.preferences.unit,
  };
  return restWords(linesOnCloth(pieces, cloth, stock).layout.length, project);
}

/** Whether the cloth on hand does, when so much new cloth is needed beside it. */
export function restWords(length: Inches, project: Project): NonNullable<FabricYardage['onHand']> {
  if (length <= 0) return { enough: true, words: phrase('What is on hand is enough.') };
  const short = toBuy(length, project.buying, sellingUnit(project)).inches;
  const words = phrase('What is on hand is not enough: {cloth} more.', {
    cloth: clothText(short, sellingUnit(project)),
  });
  return { enough: false, words };
}

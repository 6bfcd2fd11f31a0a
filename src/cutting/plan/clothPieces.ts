// What strips are cut from: every piece of cloth and every strip on hand, one by one, with the set lengths worth looking at.
import { piecesIn } from '../../model/lengths';
import type { ClothOnHand, FabricId, StripOnHand, WedgePlan } from '../../model/project';
import type { Inches } from '../../model/units';
import { leastLength } from '../wedges/setKinds';

/** Strips whose lengths differ by no more than this are laid into the same set. */
export const SAME_LENGTH: Inches = 2;
/** A strip is cut across into so many at the most: what is shorter than a third of the cloth is a scrap, not a plan. */
const MOST_PARTS = 3;
/** A plan has sets of so many lengths at the most: more are hard to keep apart on the table (our rule). */
export const MOST_LENGTHS = 3;

export interface Piece {
  readonly of: 'cloth' | 'strips';
  /** Id of its row. */
  readonly row: string;
  readonly fabric: FabricId;
  /** Length of the strips cut from it. */
  readonly length: Inches;
  /** What strips are cut from, side by side. */
  readonly depth: Inches;
}

/** True for cloth whose edge needs no straightening. */
export function isStraight({ kind }: Pick<ClothOnHand, 'kind'>): boolean {
  return kind === 'precut strips';
}

/** What is left of the depth of a piece on hand, inches, once its cut edge is straightened; precut strips are straight. Never below 0. */
export function straightened(piece: ClothOnHand, straighten: Inches): Inches {
  return isStraight(piece) ? piece.depth : Math.max(0, piece.depth - straighten);
}

/** Every piece long enough for a set of two wedges (leastLength), longest first. */
export function piecesOf(
  clothOnHand: readonly ClothOnHand[],
  stripsOnHand: readonly StripOnHand[],
  wedge: WedgePlan,
): Piece[] {
  const least = leastLength(wedge);
  const rows = [
    ...clothOnHand.map(({ id, fabric, depth, stripLength, count }) => ({
      piece: { of: 'cloth' as const, row: id, fabric, depth, length: stripLength },
      count,
    })),
    ...stripsOnHand.map(({ id, fabric, width, length, count }) => ({
      piece: { of: 'strips' as const, row: id, fabric, depth: width, length },
      count,
    })),
  ];
  return rows
    .filter(({ piece }) => piece.length >= least - 1e-9)
    .sort((one, other) => other.piece.length - one.piece.length)
    .flatMap(({ piece, count }) => Array.from({ length: count }, () => piece));
}

/**
 * Lengths that sets may have, longest first: whole pieces, halves and thirds of them. Pieces of about one length count with
 * the shortest of them, as they are laid together.
 */
export function setLengths(pieces: readonly Piece[]): Inches[] {
  const shortest: Inches[] = [];
  let longest = Number.POSITIVE_INFINITY;
  for (const { length } of pieces) {
    if (shortest.length > 0 && longest - length <= SAME_LENGTH + 1e-9) shortest[shortest.length - 1] = length;
    else {
      longest = length;
      shortest.push(length);
    }
  }
  const lengths = shortest.flatMap((length) =>
    Array.from({ length: MOST_PARTS }, (_, at) => length / (at + 1)),
  );
  return [...new Set(lengths)].sort((one, other) => other - one);
}

/** Strips for a set of this length that one strip as long as the piece gives, cut across; at most three. */
export function partsOf(piece: Piece, setLength: Inches): number {
  return Math.min(MOST_PARTS, piecesIn(piece.length, setLength));
}

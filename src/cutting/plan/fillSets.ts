// The most wedges of sets of one length from the pieces as they are: strips shared evenly among the fabrics where that can be, else as
// tightly as they go. Long strips are cut across into two or three.
import type { FabricId } from '../../model/project';
import type { Inches } from '../../model/units';
import { bestFill, cutCloth } from './cutCloth';
import type { SetNeed } from './setNeeds';
import type { SetWish } from './setWishes';

/** A piece as far as it is not cut yet. */
export interface PieceLeft {
  readonly fabric: FabricId;
  readonly depth: Inches;
  /** Strips of the set's length that one strip from it gives; 0 leaves it out. */
  readonly parts: number;
}

export interface Filling {
  readonly wedges: number;
  /** Strips of each width in each set. */
  readonly sets: readonly (readonly number[])[];
  /** Strips of each width cut side by side from each piece, before they are cut across. */
  readonly cuts: readonly (readonly number[])[];
}

/** Steps of the exact packing: it is asked again and again, so it may take no second. */
const PACKING_WORK = 4_000_000;
/** Packings tried for one filling; after that strips are dealt only. */
const MOST_PACKED = 4;

/** The most wedges, no more than `most`, whose strips could be cut; null where there are none. `neighboursDiffer` false lets a fabric lie beside itself. */
export function fillSets(
  pieces: readonly PieceLeft[],
  wish: SetWish,
  most: number,
  neighboursDiffer: boolean,
): Filling | null {
  const { widths } = wish;
  const room = roomOf(pieces, widths);
  let packings = MOST_PACKED;
  const first = Math.min(
    most,
    wish.most(room.all, neighboursDiffer ? room.others : Number.POSITIVE_INFINITY),
  );
  for (let wedges = first; wedges > 0; wedges -= 1) {
    if (wedges < first && wish.sameForOneMore(wedges)) continue;
    const need = wish.of(wedges);
    if (!fits(room, need, neighboursDiffer)) continue;
    const ofOne = neighboursDiffer ? need.ofOne : Number.POSITIVE_INFINITY;
    const cuts = cutFor(pieces, widths, need.counts, ofOne, packings > 0);
    packings -= 1;
    if (cuts) return { wedges, sets: need.sets, cuts };
  }
  return null;
}

interface Room {
  readonly all: Inches;
  /** Without the fabric there is most of. */
  readonly others: Inches;
}

const filled = new Map<string, Inches>();
const MOST_KEPT = 4_000;

/** What strips of these widths can fill of a depth, kept: the same depths come again and again. */
export function fillOf(depth: Inches, widths: readonly Inches[]): Inches {
  const key = `${depth} ${widths.join(' ')}`;
  const found = filled.get(key);
  if (found !== undefined) return found;
  if (filled.size > MOST_KEPT) filled.clear();
  const fill = bestFill(depth, widths);
  filled.set(key, fill);
  return fill;
}

function roomOf(pieces: readonly PieceLeft[], widths: readonly Inches[]): Room {
  const byFabric = new Map<FabricId, Inches>();
  for (const { fabric, depth, parts } of pieces) {
    if (parts > 0) byFabric.set(fabric, (byFabric.get(fabric) ?? 0) + parts * fillOf(depth, widths));
  }
  const rooms = [...byFabric.values()];
  const all = rooms.reduce((sum, room) => sum + room, 0);
  return { all, others: all - Math.max(0, ...rooms) };
}

function fits(room: Room, need: SetNeed, neighboursDiffer: boolean): boolean {
  return need.cloth <= room.all + 1e-9 && (!neighboursDiffer || need.ofOthers <= room.others + 1e-9);
}

function cutFor(
  pieces: readonly PieceLeft[],
  widths: readonly Inches[],
  needed: readonly number[],
  ofOne: number,
  mayPack: boolean,
): number[][] | null {
  return (
    dealt(pieces, widths, needed, ofOne, 'evenly') ??
    dealt(pieces, widths, needed, ofOne, 'tightly') ??
    dealt(pieces, widths, needed, ofOne, 'fromTheMost') ??
    (mayPack ? packed(pieces, widths, needed, ofOne) : null)
  );
}

type Dealing = 'evenly' | 'tightly' | 'fromTheMost';

/**
 * Widest strips first. evenly: each from the fabric that has given fewest so far; fromTheMost: from the fabric with most
 * left, so that a scarce one is spared for narrow strips; and each from the piece it leaves least of. Null where some strip
 * finds no piece.
 */
function dealt(
  pieces: readonly PieceLeft[],
  widths: readonly Inches[],
  needed: readonly number[],
  ofOne: number,
  dealing: Dealing,
): number[][] | null {
  const left = pieces.map((piece) => piece.depth);
  const cuts = pieces.map(() => widths.map(() => 0));
  const given = new Map<FabricId, number>(pieces.map(({ fabric }) => [fabric, 0]));
  const there = new Map<FabricId, number>();
  for (const { fabric, depth, parts } of pieces) there.set(fabric, (there.get(fabric) ?? 0) + depth * parts);
  for (const at of widths.map((_, index) => index).sort((one, other) => widths[other]! - widths[one]!)) {
    let open = needed[at]!;
    while (open > 0) {
      let best = -1;
      for (const [piece, { fabric, parts }] of pieces.entries()) {
        if (parts === 0 || left[piece]! < widths[at]! - 1e-9 || given.get(fabric)! >= ofOne) continue;
        if (best < 0 || before(piece, best)) best = piece;
      }
      if (best < 0) return null;
      const { fabric, parts } = pieces[best]!;
      const used = Math.min(parts, open, ofOne - given.get(fabric)!);
      left[best]! -= widths[at]!;
      there.set(fabric, there.get(fabric)! - widths[at]! * parts);
      cuts[best]![at]! += 1;
      given.set(fabric, given.get(fabric)! + used);
      open -= used;
    }
  }
  return cuts;

  function before(one: number, other: number): boolean {
    const [mine, its] = [pieces[one]!.fabric, pieces[other]!.fabric];
    const byFabric =
      dealing === 'evenly'
        ? given.get(mine)! - given.get(its)!
        : dealing === 'fromTheMost'
          ? there.get(its)! - there.get(mine)!
          : 0;
    return (byFabric || left[one]! - left[other]!) < 0;
  }
}

/** The exact search of cutCloth, where every piece gives equally many parts; null where one fabric then has too many. */
function packed(
  pieces: readonly PieceLeft[],
  widths: readonly Inches[],
  needed: readonly number[],
  ofOne: number,
): number[][] | null {
  const [parts = 0, ...others] = [...new Set(pieces.map((piece) => piece.parts).filter((one) => one > 0))];
  if (parts === 0 || others.length > 0) return null;
  const open = pieces.map((piece) => (piece.parts > 0 ? piece : { ...piece, depth: 0 }));
  const strips = needed.map((count) => Math.ceil(count / parts));
  const { enough, cuts } = cutCloth(open, widths, strips, PACKING_WORK);
  if (!enough) return null;
  const byFabric = new Map<FabricId, number>();
  cuts.forEach((row, at) => {
    const { fabric } = pieces[at]!;
    byFabric.set(fabric, (byFabric.get(fabric) ?? 0) + parts * row.reduce((sum, count) => sum + count, 0));
  });
  return [...byFabric.values()].every((count) => count <= ofOne) ? cuts.map((row) => [...row]) : null;
}

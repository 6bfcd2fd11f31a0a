// The most sets of one length from the pieces as they are: strips shared evenly among the fabrics where that can be, else as
// tightly as they go. Long strips are cut across into two or three.
import { piecesIn } from '../../model/lengths';
import type { FabricId } from '../../model/project';
import type { Inches } from '../../model/units';
import { bestFill, cutCloth } from './cutCloth';
import type { SetNeed, SetNeeds } from './setNeeds';

/** A piece as far as it is not cut yet. */
export interface PieceLeft {
  readonly fabric: FabricId;
  readonly depth: Inches;
  /** Strips of the set's length that one strip from it gives; 0 leaves it out. */
  readonly parts: number;
}

export interface Filling {
  readonly sets: number;
  /** Strips of each width cut side by side from each piece, before they are cut across. */
  readonly cuts: readonly (readonly number[])[];
}

/** Steps of the exact packing: it is asked again and again, so it may take no second. */
const PACKING_WORK = 4_000_000;
/** No more sets than this are planned. */
const MOST_SETS = 400;

/** The most sets, no more than `most`, whose strips could be cut. `neighboursDiffer` false lets a fabric lie beside itself. */
export function fillSets(
  pieces: readonly PieceLeft[],
  needs: SetNeeds,
  most: number,
  neighboursDiffer: boolean,
): Filling {
  const room = roomOf(pieces, needs.widths);
  for (
    let sets = Math.min(most, MOST_SETS, mostByCloth(room, needs, neighboursDiffer));
    sets > 0;
    sets -= 1
  ) {
    const need = needs.of(sets)!;
    if (!fits(room, need, neighboursDiffer)) continue;
    const cuts = cutFor(
      pieces,
      needs.widths,
      need.counts,
      neighboursDiffer ? need.ofOne : Number.POSITIVE_INFINITY,
    );
    if (cuts) return { sets, cuts };
  }
  return { sets: 0, cuts: pieces.map(() => needs.widths.map(() => 0)) };
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

/** A number of sets that the cloth, laid side by side, does not go beyond. */
function mostByCloth(room: Room, needs: SetNeeds, neighboursDiffer: boolean): number {
  const first = needs.of(1);
  if (!first) return 0;
  const { cloth, others } = needs.least(MOST_SETS);
  const most = piecesIn(room.all, cloth);
  return neighboursDiffer ? Math.min(most, piecesIn(room.others, others)) : most;
}

function cutFor(
  pieces: readonly PieceLeft[],
  widths: readonly Inches[],
  needed: readonly number[],
  ofOne: number,
): number[][] | null {
  return (
    dealt(pieces, widths, needed, ofOne, 'evenly') ??
    dealt(pieces, widths, needed, ofOne, 'tightly') ??
    dealt(pieces, widths, needed, ofOne, 'fromTheMost') ??
    packed(pieces, widths, needed, ofOne)
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

// A bound on the wedges that pieces of cloth give, which no cut goes beyond, however strips are cut across. It tells whether a
// plan is proved. All sums are of width times wedges: a set of n wedges takes n times its cloth, side by side.
import { piecesIn } from '../../model/lengths';
import type { WedgePlan } from '../../model/project';
import type { Inches } from '../../model/units';
import { lengthFor, wedgesOnLength } from '../wedges/yield';
import type { Piece } from './clothPieces';
import { fillOf } from './fillSets';
import type { SetNeeds } from './setNeeds';

/** Strips that give more wedges than this are not looked at part by part. */
const MOST_PARTED = 16;

interface Room {
  readonly fabric: string;
  /** What strips can fill of its depth. */
  readonly width: Inches;
  readonly length: Inches;
  /** Wedges of a strip left whole: cut across it gives no more. */
  readonly wedges: number;
}

/**
 * Three bounds, the least of which counts: all the cloth; all but the fabric there is most of, where neighbours `neighboursDiffer`; and
 * whole numbers of long sets. Depths are what is left of each piece.
 */
export function mostWedges(
  pieces: readonly Piece[],
  depths: readonly Inches[],
  needs: SetNeeds,
  wedge: WedgePlan,
  neighboursDiffer: boolean,
): number {
  const first = needs.of(1);
  const rooms = pieces.map(({ fabric, length }, at) => ({
    fabric, length, width: fillOf(depths[at]!, needs.widths), wedges: wedgesOnLength(length, wedge.cutHeight, wedge),
  })); // biome-ignore format: short
  const all = sumOf(rooms);
  if (!first || all <= 0) return 0;
  // No group has more sets than if all were the shortest, of two wedges, and half as thick as one alone.
  const { cloth, others } = needs.least(Math.ceil(all / first.cloth));
  const most = Math.min(all / cloth, withLongSets(rooms, cloth, wedge));
  const fewer = neighboursDiffer ? (all - largest(rooms)) / others : Number.POSITIVE_INFINITY;
  return Math.floor(Math.min(most, fewer) + 1e-9);
}

function sumOf(rooms: readonly Room[]): number {
  return rooms.reduce((sum, room) => sum + room.width * room.wedges, 0);
}

function largest(rooms: readonly Room[]): number {
  const byFabric = new Map<string, number>();
  for (const { fabric, width, wedges } of rooms) {
    byFabric.set(fabric, (byFabric.get(fabric) ?? 0) + width * wedges);
  }
  return Math.max(...byFabric.values());
}

/**
 * Call sets of t wedges or more long, t so large that no strip gives two of them. There is a whole number K of long sets, so
 * at most K·cloth of the width has a long part; the rest gives only what parts shorter than t add up to.
 */
function withLongSets(rooms: readonly Room[], cloth: Inches, wedge: WedgePlan): number {
  const longest = Math.max(...rooms.map((room) => room.length));
  const most = Math.max(...rooms.map((room) => room.wedges));
  if (most > MOST_PARTED) return Number.POSITIVE_INFINITY;
  let bound = Number.POSITIVE_INFINITY;
  for (let long = most; long >= 2; long -= 1) {
    const length = lengthFor(long, wedge.cutHeight, wedge);
    if (2 * length <= longest + 1e-9) break;
    bound = Math.min(bound, boundFor(rooms, long, cloth, wedge));
  }
  return bound;
}

function boundFor(rooms: readonly Room[], long: number, cloth: Inches, wedge: WedgePlan): number {
  const parted = new Map<number, number>();
  const rated = rooms.map((room) => {
    const short = parted.get(room.length) ?? inParts(room.length, long - 1, wedge);
    parted.set(room.length, short);
    return { ...room, short, gain: room.wedges - short };
  });
  const wide = rated.reduce((sum, room) => sum + (room.wedges >= long ? room.width : 0), 0);
  let left = piecesIn(wide, cloth) * cloth;
  let sum = rated.reduce((whole, room) => whole + room.width * room.short, 0);
  for (const { width, gain, wedges } of rated.toSorted((one, other) => other.gain - one.gain)) {
    if (wedges < long) continue;
    const taken = Math.min(width, left);
    sum += taken * gain;
    left -= taken;
  }
  return sum / cloth;
}

/** Most wedges of a strip cut across into parts of at most `most` wedges each, two or more. */
function inParts(length: Inches, most: number, wedge: WedgePlan): number {
  let best = 0;
  for (let part = most; part >= 2; part -= 1) {
    const each = lengthFor(part, wedge.cutHeight, wedge);
    if (each <= length + 1e-9) best = Math.max(best, part + inParts(length - each, part, wedge));
  }
  return best;
}

// How many wedges a strip set gives and where each is cut. Plane geometry: neighbours are cut tip up and tip down in turn
// and share their slanted cut as far as the bases leave room.
import { heightShort, setHeight } from '../../geometry/stripSet';
import { cutWedge, slope } from '../../geometry/wedge';
import { HAIR } from '../../model/lengths';
import type { StripSet, Tip, WedgePlan } from '../../model/project';
import type { Inches } from '../../model/units';

export interface WedgeCount {
  readonly up: number;
  readonly down: number;
}

/** One wedge on its set: where its base starts from the left end, inches, and which way its tip points. */
export interface WedgeCut {
  readonly start: Inches;
  readonly tip: Tip;
}

/**
 * Start of the n-th wedge (from 0), inches. A wedge and the next, turned round, are p = b − Hk apart when they share a cut;
 * but bases on the same edge may not overlap, so each second wedge starts no less than b after the one before the last.
 * On a set twice as high as the wedge the two rows do not meet at all.
 */
export function wedgeStart(index: number, height: Inches, wedge: WedgePlan): Inches {
  const { base } = cutWedge(wedge);
  const apart = height >= 2 * wedge.cutHeight;
  const pitch = apart ? 0 : Math.max(0, base - height * slope(wedge.perBlock));
  return Math.floor(index / 2) * Math.max(base, 2 * pitch) + (index % 2) * pitch;
}

/** Clean length that `count` wedges need, inches; 0 for none. */
export function lengthFor(count: number, height: Inches, wedge: WedgePlan): Inches {
  return count <= 0 ? 0 : wedgeStart(count - 1, height, wedge) + cutWedge(wedge).base;
}

/** How many wedges fit on a length; 0 when not even one does. */
export function wedgesOnLength(length: Inches, height: Inches, wedge: WedgePlan): number {
  // Two wedges fewer than by whole pairs to begin with, so that a long set is not counted from its first wedge.
  const pairs = Math.floor((length - cutWedge(wedge).base) / wedgeStart(2, height, wedge));
  let count = Math.max(0, 2 * (pairs - 1));
  while (lengthFor(count + 1, height, wedge) <= length + HAIR) count += 1;
  return count;
}

/**
 * The least height of a set, inches, on which `count` wedges fit this length: never below the wedge's own; Infinity where no
 * height does. lengthFor solved for the pitch p: bases side by side leave the last, even wedge L − b − ⌊(n−1)/2⌋·b of room,
 * and n − 1 pitches have to fit into L − b.
 */
export function heightFor(count: number, length: Inches, wedge: WedgePlan): Inches {
  const { base } = cutWedge(wedge);
  // Half a hair, so that the count, which lets a whole one pass, finds them on this height.
  const room = length - base + HAIR / 2;
  const pairs = Math.floor((count - 1) / 2);
  if (room < pairs * base) return Number.POSITIVE_INFINITY;
  if (count < 2) return wedge.cutHeight;
  const even = count % 2 === 0 ? room - pairs * base : Number.POSITIVE_INFINITY;
  const pitch = Math.min(even, room / (count - 1));
  const height = (base - pitch) / slope(wedge.perBlock);
  return Math.max(wedge.cutHeight, Math.min(height, 2 * wedge.cutHeight));
}

/** How many wedges fit on a set; none when the set is not as high as the wedge. */
function wedgesOn(set: StripSet, wedge: WedgePlan): number {
  const height = setHeight(set.strips, wedge.seam);
  return heightShort(height, wedge) > 0 ? 0 : wedgesOnLength(set.length, height, wedge);
}

/** All wedges that fit on a set, from its left end; none when the set is not as high as the wedge. */
export function wedgeCuts(set: StripSet, wedge: WedgePlan): WedgeCut[] {
  const height = setHeight(set.strips, wedge.seam);
  return Array.from({ length: wedgesOn(set, wedge) }, (_, index): WedgeCut => {
    const first = index % 2 === 0;
    const tip: Tip = first === (set.firstTip === 'up') ? 'up' : 'down';
    return { start: wedgeStart(index, height, wedge), tip };
  });
}

/** Wedges the geometry gives, up and down. */
export function plannedWedges(set: StripSet, wedge: WedgePlan): WedgeCount {
  // They lie tip up and tip down in turn.
  const all = wedgesOn(set, wedge);
  const first = Math.ceil(all / 2);
  return set.firstTip === 'up' ? { up: first, down: all - first } : { up: all - first, down: first };
}

/** Wedges there are to use: as really cut where that was written down, else as the geometry gives. */
export function availableWedges(set: StripSet, wedge: WedgePlan): WedgeCount {
  return set.cut ?? plannedWedges(set, wedge);
}

/** Wedges of each tip that these sets lack for so many whole blocks, half of each tip up; never below 0. */
export function wedgesNeeded(
  blocks: number,
  sets: readonly StripSet[],
  wedge: WedgePlan,
): Record<Tip, number> {
  const need = { up: (blocks * wedge.perBlock) / 2, down: (blocks * wedge.perBlock) / 2 };
  for (const set of sets) {
    const there = availableWedges(set, wedge);
    need.up -= there.up;
    need.down -= there.down;
  }
  return { up: Math.max(0, need.up), down: Math.max(0, need.down) };
}

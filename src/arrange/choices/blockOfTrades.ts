// Finds how near the figures of one block can come to the average block when its wedges may be traded: a block holds a few whole
// wedges, and no choice of them holds a little of every fabric.

import { type CostTables, FIRST_FABRIC, writeFigures } from '../live/costTables';
import { wedgeFigures } from '../live/tradePrices';
import type { Lengths } from './leastOfTwo';
import { leastRing } from './leastRing';
import { nearestPairs, type Pair } from './nearestPairs';
import { heldIn, summed, sumsOf, type WedgesOfTip } from './wedgeSums';

/** Choices laid between two pauses. */
const PAUSE = 1024;

/** What a block holds besides the wedges that may be traded, less the average block. */
export interface Rest {
  /** Scaled figures from channel `first` on, which add up; 0 before it. */
  readonly figures: Float64Array;
  readonly first: number;
  readonly area: number;
}

/** What the seams round a block cost, and how many times that counts as more of the square. */
export interface Ring {
  readonly seam: (type: number, next: number) => number;
  readonly times: number;
}

/**
 * The choices of wedges for a block that holds the rest besides, `most` of those that bring it nearest to the average: least
 * Σ figure² (scaled, less the average) first, and with `ring` what the seams round the block cost at least as more of that square.
 * Null where there are none or too many to look through. Yields every few milliseconds.
 */
export function* nearestToMean(
  tables: CostTables,
  [up, down]: readonly [WedgesOfTip, WedgesOfTip],
  rest: Rest,
  most: number,
  ring: Ring | null,
): Generator<void, Lengths | null> {
  const width = rest.figures.length;
  const ups = sumsOf(tables, up, rest, rest.figures);
  const downs = sumsOf(tables, down, rest, new Float64Array(width));
  if (!ups || !downs) return null;
  const pairs = yield* nearestPairs(ups.figures, downs.figures, width, most);
  const beyond = pairs.length === most ? pairs.at(-1)!.square : Number.POSITIVE_INFINITY;
  const counted: Pair[] = [];
  for (const [at, { one, other, square }] of pairs.entries()) {
    if (at % PAUSE === PAUSE - 1) yield;
    const enough = 2 * (beyond - square);
    const more = ring
      ? ring.times * leastRing(heldIn(ups, one), heldIn(downs, other), ring.seam, enough / ring.times)
      : 0;
    if (more === 0 || more < enough) counted.push({ one, other, square: square + more });
  }
  counted.sort((one, other) => one.square - other.square);
  return {
    figures: summed(ups, downs, counted, width),
    squares: Float64Array.from(counted, ({ square }) => square),
    beyond,
  };
}

/** A block without the wedges at some of its places. */
export function restOf(tables: CostTables, block: number, free: ReadonlySet<number>, first: number): Rest {
  const { model, channels } = tables;
  const figures = new Float64Array(channels);
  const area = model.area[block]!;
  const areaOf = (fabric: number) => model.fabricArea[block * model.fabricCount + fabric]!;
  writeFigures(tables, model.lightness[block]!, model.a[block]!, model.b[block]!, areaOf, figures, 0);
  if (first === FIRST_FABRIC) figures.fill(0, 0, first);
  for (let place = block * model.perBlock; place < (block + 1) * model.perBlock; place++) {
    const type = model.typeAt[place]!;
    if (type < 0 || !free.has(place)) continue;
    wedgeFigures(tables, type, first, area).forEach((figure, at) => {
      figures[at]! -= figure;
    });
  }
  return { figures, first, area };
}

// Lists choices of wedges for a whole block that bring it near the average and can be laid without contact inside the block. Only
// where wedges enough are left over; a search then gives whole blocks other wedges (search/wholeBlocks.ts).
import type { WallModel } from '../../balance/wall/wallModel';
import type { Decisions } from '../decisions';
import type { CostTables } from '../live/costTables';
import type { LiveWall } from '../live/liveWall';
import { firstAdditive } from '../live/tradePrices';
import { restOf } from './blockOfTrades';
import type { Choices } from './choices';
import { isFreeRing, leastRing } from './leastRing';
import { nearestPairs, type Pair } from './nearestPairs';
import { heldIn, summed, sumsOf, typesThere } from './wedgeSums';

/** So many choices nearest the average are looked at; those that meet inside the block are left out. */
const NEAREST = 30_000;
/** So many of the others, the nearest first, are taken, each with the one that evens it out best. Measured: 1000 of the nearest alone do worse. */
const PAIRS = 100;
/** How much two choices by themselves count beside both together when one is to even the other out. */
const OWN = 0.2;
/** Choices laid between two pauses. */
const PAUSE = 1024;
/** Contact below this is none. */
const FREE = 1e-9;

/** Finds them; null where figures do not add up, where too few wedges are left over or no choice is free of contact. Yields every few milliseconds. */
export function* findingChoices(wall: LiveWall, decisions: Decisions): Generator<void, Choices | null> {
  const { tables } = wall;
  const { model } = tables;
  if (model.ruledCorner.length > 0 || decisions.sets.length > 0 || firstAdditive(tables) !== 0) return null;
  const changing = new Set(decisions.tradable.flatMap((places) => Array.from(places)));
  const blocks = wholeBlocks(model, changing);
  if (blocks.length === 0 || !hasPlenty(decisions)) return null;
  const rest = restOf(tables, blocks[0]!, changing, 0);
  const { spare: stock } = decisions;
  const ofTip = (tip: number, base: Float64Array) =>
    sumsOf(tables, { types: typesThere(stock, tip), stock, places: model.perBlock / 2 }, rest, base);
  const ups = ofTip(0, rest.figures);
  const downs = ofTip(1, new Float64Array(tables.channels));
  if (!ups || !downs) return null;
  yield;
  const pairs = yield* nearestPairs(ups.figures, downs.figures, tables.channels, NEAREST);
  const seam = (type: number, next: number) => wall.contact.seam(type, next);
  const free: Pair[] = [];
  for (const [at, pair] of pairs.entries()) {
    if (at % PAUSE === PAUSE - 1) yield;
    if (leastRing(heldIn(ups, pair.one), heldIn(downs, pair.other), seam, FREE) < FREE) free.push(pair);
  }
  if (free.length === 0) return null;
  const laid = (yield* withOpposites(summed(ups, downs, free, tables.channels), free)).map((at) => free[at]!);
  const types = laid.map(({ one, other }) =>
    Array.from(heldIn(ups, one)).flatMap((type, at) => [type, heldIn(downs, other)[at]!]),
  );
  return {
    blocks,
    count: laid.length,
    types: Int32Array.from(types.flat()),
    figures: summed(ups, downs, laid, tables.channels),
    squares: Float64Array.from(laid, ({ square }) => square),
    ...meansOf(tables, blocks[0]!, types),
  };
}

/** Which of some choices, ascending by their squares, are taken: the first ones, and for each the one that evens it out best. */
function* withOpposites(figures: Float64Array, free: readonly Pair[]): Generator<void, number[]> {
  const width = figures.length / free.length;
  const taken = new Set<number>();
  for (let one = 0; one < Math.min(PAIRS, free.length); one++) {
    if (one % 16 === 0) yield;
    let least = Number.POSITIVE_INFINITY;
    let best = one;
    for (let other = 0; other < free.length; other++) {
      let sum = OWN * free[other]!.square;
      for (let k = 0; k < width && sum < least; k++)
        sum += (figures[one * width + k]! + figures[other * width + k]!) ** 2;
      if (sum >= least) continue;
      least = sum;
      best = other;
    }
    taken.add(one).add(best);
  }
  return [...taken];
}

/** Blocks of which every wedge may be exchanged and whose tips take turns; only those with the corners of the first, so that all are alike without wedges. */
function wholeBlocks(model: WallModel, free: ReadonlySet<number>): Int32Array {
  const placesOf = (block: number) =>
    Array.from({ length: model.perBlock }, (_, at) => block * model.perBlock + at);
  const whole = Int32Array.from(model.blocks.keys()).filter((block) =>
    isFreeRing(model.typeAt, placesOf(block), free),
  );
  return whole.filter((block) => model.corner[block] === model.corner[whole[0]!]);
}

/**
 * Whether as many wedges of each tip are left over as may be exchanged. With fewer few choices can be had, and trades do better (measured
 * at 20 blocks: a quarter more left over 0.13 against 0.20, two thirds as many 0.28 against 0.21).
 */
function hasPlenty({ tradable, spare }: Decisions): boolean {
  return tradable.every((places, tip) => {
    const left = spare.reduce((sum, count, type) => (type % 2 === tip ? sum + count : sum), 0);
    return left >= places.length;
  });
}

/** How far value and warmth of a block with each choice are off the mean. */
function meansOf({ model, scales }: CostTables, block: number, choices: readonly (readonly number[])[]) {
  const { perBlock } = model;
  const now = model.typeAt.subarray(block * perBlock, (block + 1) * perBlock);
  const off = (own: number, mean: Float64Array) => {
    const sum = (types: Iterable<number>) =>
      Array.from(types).reduce((all, type) => all + mean[type]! * model.typeArea[type]!, 0);
    const before = sum(now);
    return Float64Array.from(choices, (types) => own + (sum(types) - before) / model.area[block]!);
  };
  return {
    value: off(model.lightness[block]! - scales.meanLightness, model.typeLightness),
    warmth: off(model.warmth[block]! - scales.meanWarmth, model.typeWarmth),
  };
}

// Finds how near the figures of one block can come to the average block when its wedges may be traded: a block holds a few whole
// wedges, and no choice of them holds a little of every fabric.
import { nearestPairs } from '../choices/nearestPairs';
import { sumsOf, type WedgesOfTip } from '../choices/wedgeSums';
import { type CostTables, FIRST_FABRIC, writeFigures } from '../live/costTables';
import { wedgeFigures } from '../live/tradePrices';

/** What a block holds besides the wedges that may be traded, less the average block. */
export interface Rest {
  /** Scaled figures from channel `first` on, which add up; 0 before it. */
  readonly figures: Float64Array;
  readonly first: number;
  readonly area: number;
}

/**
 * The least Σ figure² (scaled, less the average) over every choice of wedges for a block that holds the rest besides. 0 where there
 * are too many choices to look through. Yields every few milliseconds.
 */
export function* leastFromMean(
  tables: CostTables,
  [up, down]: readonly [WedgesOfTip, WedgesOfTip],
  rest: Rest,
): Generator<void, number> {
  const ups = sumsOf(tables, up, rest, rest.figures);
  const downs = sumsOf(tables, down, rest, new Float64Array(rest.figures.length));
  if (!ups || !downs) return 0;
  const [nearest] = yield* nearestPairs(ups.figures, downs.figures, rest.figures.length, 1);
  return nearest!.square;
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

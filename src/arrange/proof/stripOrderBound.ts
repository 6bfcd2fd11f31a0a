// Bounds the cost of the seams of a set from below over all orders of its strips: it lays every order of the unlocked strips
// against wedges that stay as they are. Seams between two sets that may both change are left out.

import { wedgeTypes } from '../../balance/wall/wallFigures';
import type { Project, Strip } from '../../model/project';
import { sameStrip } from '../../model/strips';
import type { CostTables } from '../live/costTables';
import { seamCost } from '../live/costTables';
import { withRoomForOne } from '../search/stripOrders';

/** Orders tried between two pauses. */
const PAUSE = 64;

/** A wedge type beside a tip of the set, and how often; the set's own other tip is −1. */
export interface Neighbour {
  readonly tip: 0 | 1;
  readonly type: number;
  readonly seams: number;
}

/**
 * The least of Σ seams × cost over all orders of a set (by index), or, `apart`, the sum of the least of each neighbour by
 * itself; rules of thumb on orders are not minded, which only lowers it. The types beside must be of sets that stay.
 * Where more than `most` seams would have to be laid for it, 0.
 */
export function* leastOfOrders(
  project: Project,
  tables: CostTables,
  set: number,
  beside: readonly Neighbour[],
  most: number,
): Generator<void, { together: number; each: Float64Array }> {
  const { strips } = project.stripSets[set]!;
  const nothing = { together: 0, each: new Float64Array(beside.length) };
  if (beside.length === 0 || countOrders(strips) * beside.length > most) return nothing;
  const trial = tables.model.typeRim.length;
  const room = withRoomForOne(tables);
  const bands = room.model.typeBands as ReturnType<typeof wedgeTypes>['typeBands'][number][];
  const each = new Float64Array(beside.length).fill(Number.POSITIVE_INFINITY);
  let together = Number.POSITIVE_INFINITY;
  let looked = 0;
  for (const order of ordersOf(strips)) {
    looked += 1;
    if (looked % PAUSE === 0) yield;
    const laid = wedgeTypes(
      { wedge: project.wedge, stripSets: [{ ...project.stripSets[set]!, strips: [...order] }] },
      tables.model.cloths,
    );
    bands[trial] = laid.typeBands[0]!;
    bands[trial + 1] = laid.typeBands[1]!;
    room.model.radialMemo.clear();
    let sum = 0;
    beside.forEach(({ tip, type, seams }, at) => {
      const cost = seamCost(room, trial + tip, type < 0 ? trial + 1 - tip : type);
      each[at] = Math.min(each[at]!, cost);
      sum += seams * cost;
    });
    together = Math.min(together, sum);
  }
  return { together, each };
}

function countOrders(strips: readonly Strip[]): number {
  const { places, counts } = looseOf(strips);
  const factorial = (count: number) =>
    Array.from({ length: count }, (_, at) => at + 1).reduce((a, b) => a * b, 1);
  return counts.reduce((orders, count) => orders / factorial(count), factorial(places.length));
}

/** Places of the unlocked strips, the different strips among them, and how many there are of each. */
function looseOf(strips: readonly Strip[]) {
  const places = strips.flatMap((strip, place) => (strip.locked ? [] : [place]));
  const sorts: Strip[] = [];
  const counts: number[] = [];
  for (const place of places) {
    const sort = sorts.findIndex((one) => sameStrip(one, strips[place]!));
    if (sort < 0) counts[sorts.push(strips[place]!) - 1] = 1;
    else counts[sort]! += 1;
  }
  return { places, sorts, counts };
}

/** Lists every order of the unlocked strips; equal strips are not told apart. */
function* ordersOf(strips: readonly Strip[]): Generator<readonly Strip[]> {
  const { places, sorts, counts } = looseOf(strips);
  const order = [...strips];
  function* fill(at: number): Generator<readonly Strip[]> {
    if (at === places.length) {
      yield order;
      return;
    }
    for (let sort = 0; sort < sorts.length; sort++) {
      if (counts[sort] === 0) continue;
      counts[sort]! -= 1;
      order[places[at]!] = sorts[sort]!;
      yield* fill(at + 1);
      counts[sort]! += 1;
    }
  }
  yield* fill(0);
}

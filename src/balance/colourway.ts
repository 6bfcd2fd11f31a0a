// Choosing cloth for a colourway by value: each fabric gets one as light as itself, or, turned over, as light as it is dark.
import { meanColour } from '../colour/likeness';
import { value } from '../colour/spaces';
import { printMix } from '../geometry/print/printMix';
import type { Colourway, Fabric } from '../model/project';

/** Values as they are, or lights and darks changed over. */
export type ValueOrder = 'kept' | 'turned over';

/**
 * For every fabric in use one of the palette, so that the sum of the differences in L* from the wanted value is least, and
 * no cloth serves twice while the palette lasts (it has at least as many): then exact, by dynamic programming over both
 * lists in order of value. A smaller palette gives each fabric its nearest, and cloths serve several times. 'turned over'
 * wants of a fabric the value mirrored about the middle of the lightest and darkest in use. Empty palette: no swaps.
 */
export function swapsByValue(
  inUse: readonly Fabric[],
  palette: readonly Fabric[],
  order: ValueOrder,
): Colourway['swaps'] {
  if (inUse.length === 0 || palette.length === 0) return [];
  const values = inUse.map(clothLightness);
  const sum = Math.min(...values) + Math.max(...values);
  const wanted = inUse
    .map((fabric, index) => ({ fabric, want: order === 'kept' ? values[index]! : sum - values[index]! }))
    .sort((one, other) => one.want - other.want);
  const offered = palette
    .map((fabric) => ({ fabric, has: clothLightness(fabric) }))
    .sort((one, other) => one.has - other.has);
  const chosen =
    offered.length < wanted.length
      ? wanted.map(({ want }) => nearest(want, offered))
      : matched(
          wanted.map(({ want }) => want),
          offered.map(({ has }) => has),
        ).map((index) => offered[index]!);
  return wanted.map(({ fabric }, index) => ({ fabric: fabric.id, by: chosen[index]!.fabric.id }));
}

function clothLightness(fabric: Fabric): number {
  return value(meanColour(printMix(fabric)));
}

function nearest<T extends { readonly has: number }>(want: number, offered: readonly T[]): T {
  return offered.reduce((best, one) => (Math.abs(one.has - want) < Math.abs(best.has - want) ? one : best));
}

/**
 * Least-cost matching of sorted wants into sorted offers, one each, cost |want − has|: in order, since crossing never pays
 * on a line. cost[i][j] is the least for the first i wants among the first j offers.
 */
function matched(wants: readonly number[], offers: readonly number[]): number[] {
  const width = offers.length + 1;
  const cost = new Float64Array((wants.length + 1) * width).fill(Number.POSITIVE_INFINITY);
  cost.fill(0, 0, width);
  for (let want = 1; want <= wants.length; want += 1) {
    for (let offer = want; offer <= offers.length; offer += 1) {
      const taken = cost[(want - 1) * width + offer - 1]! + Math.abs(wants[want - 1]! - offers[offer - 1]!);
      cost[want * width + offer] = Math.min(cost[want * width + offer - 1]!, taken);
    }
  }
  const chosen: number[] = [];
  let offer = offers.length;
  for (let want = wants.length; want > 0; want -= 1) {
    while (cost[want * width + offer] === cost[want * width + offer - 1]) offer -= 1;
    chosen.unshift(offer - 1);
    offer -= 1;
  }
  return chosen;
}

// Choosing cloth for a colourway by value: each fabric gets one as light as itself, or, turned over, as light as it is dark.
// Or made-up cloth in turned hues, for trying before there is any.
import { hueTurned } from '../colour/hue';
import { value } from '../colour/spaces';
import { everyCloth, fabricsInUse } from '../model/colourway';
import { freshId } from '../model/find';
import { nameWith } from '../model/name';
import { type Phrase, speak } from '../model/phrase';
import type { Colourway, Fabric, Project } from '../model/project';
import { meanColour } from './likeness';
import { printMix } from './print/printMix';
import { colourName } from './standIns';

/** Values as they are, or lights and darks changed over. */
export type ValueOrder = 'kept' | 'turnedOver';

/**
 * For every fabric in use one of the palette, so that the sum of the differences in L* from the wanted value is least, and
 * no cloth serves twice while the palette lasts (it has at least as many): then exact, by dynamic programming over both
 * lists in order of value. A smaller palette gives each fabric its nearest, and cloths serve several times. 'turnedOver'
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

/**
 * A colourway's swaps and made-up cloth: of every fabric in use but the background one with its hues turned by `degrees`,
 * as light or dark as before. 'kept' puts each in its own fabric's place; 'turnedOver' as `swapsByValue` does. The cloth is
 * named by the colour it has, as `write` says it, and `name`; its ids are new to the project. For photographed fabric it is plain, its mean
 * turned. Nothing but background in use: neither swaps nor cloth.
 */
export function turnedColourway(
  project: Project,
  name: string,
  degrees: number,
  order: ValueOrder,
  write: (words: Phrase) => string = (words) => speak(words),
): Required<Pick<Colourway, 'swaps' | 'cloth'>> {
  const inUse = fabricsInUse(project).filter((fabric) => !fabric.background);
  const taken = everyCloth(project);
  const named = new Map<string, number>();
  const cloth = inUse.map((fabric) => {
    const turned = turnedCloth(fabric, degrees);
    const made: Fabric = {
      ...turned,
      id: freshId('f', taken),
      name: nameWith(colourTitle(turned.colour, named, write), `, ${name}`),
    };
    taken.push(made);
    return made;
  });
  const swaps =
    order === 'kept'
      ? inUse.map((fabric, index) => ({ fabric: fabric.id, by: cloth[index]!.id }))
      : swapsByValue(inUse, cloth, order);
  return { swaps, cloth };
}

/** A colour by its name, with a number where it comes again: Dark teal, Dark teal 2. */
function colourTitle(hex: string, named: Map<string, number>, write: (words: Phrase) => string): string {
  const words = write(colourName(hex));
  const times = (named.get(words) ?? 0) + 1;
  named.set(words, times);
  const title = words.charAt(0).toUpperCase() + words.slice(1);
  return times === 1 ? title : `${title} ${times}`;
}

function turnedCloth(fabric: Fabric, degrees: number): Fabric {
  // A photograph with its hue turned would show fabric that does not exist.
  if (fabric.cloth.kind === 'photo')
    return { ...fabric, colour: hueTurned(meanColour(printMix(fabric)), degrees), cloth: { kind: 'plain' } };
  const colour = hueTurned(fabric.colour, degrees);
  if (fabric.cloth.kind === 'plain') return { ...fabric, colour };
  const { print } = fabric.cloth;
  const inks = print.inks.map((ink) => hueTurned(ink, degrees));
  return { ...fabric, colour, cloth: { kind: 'print', print: { ...print, inks } } };
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

// In which order fabrics are laid out: by value, hue, amount or name; which are found by a name; and how much there is of each.
import { meanColour } from '../cloth/likeness';
import { printMix } from '../cloth/print/printMix';
import { hueOf } from '../colour/hue';
import type { Fabric, FabricId, Project } from '../model/project';
import type { Drawing } from './drawing';
import { clothValue, fabricShares } from './shares';

export type FabricOrder = 'value' | 'hue' | 'amount' | 'name';

export interface FabricAmount {
  /** Share of all cloth in the top, 0 to 1. */
  readonly share: number;
  /** Strips and cloth on hand, square inches. */
  readonly onHand: number;
}

const NONE: FabricAmount = { share: 0, onHand: 0 };

/** How much there is of each fabric, in the top as drawn and on hand; a fabric of which there is nothing has no entry. */
export function fabricAmounts(
  project: Pick<Project, 'stripsOnHand' | 'clothOnHand'>,
  drawing: Drawing,
): ReadonlyMap<FabricId, FabricAmount> {
  const amounts = new Map<FabricId, FabricAmount>();
  const add = (fabric: FabricId, share: number, onHand: number) => {
    const there = amounts.get(fabric) ?? NONE;
    amounts.set(fabric, { share: there.share + share, onHand: there.onHand + onHand });
  };
  for (const { fabric, share } of fabricShares(drawing)) add(fabric.id, share, 0);
  for (const { fabric, width, length, count } of project.stripsOnHand) add(fabric, 0, width * length * count);
  for (const { fabric, depth, stripLength, count } of project.clothOnHand)
    add(fabric, 0, depth * stripLength * count);
  return amounts;
}

/**
 * The fabrics laid out: light to dark; round the colour circle from red, greys last and light to dark; by their share of the
 * top, those not in it by what is on hand; or by name. Fabrics that are equal in this keep their order.
 */
export function inOrder(
  fabrics: readonly Fabric[],
  order: FabricOrder,
  amounts: ReadonlyMap<FabricId, FabricAmount>,
): Fabric[] {
  return fabrics.toSorted((one, other) => {
    switch (order) {
      case 'value':
        return clothValue(other) - clothValue(one);
      case 'hue':
        return byHue(one, other);
      case 'amount': {
        const [here, there] = [amounts.get(one.id) ?? NONE, amounts.get(other.id) ?? NONE];
        return there.share - here.share || there.onHand - here.onHand;
      }
      case 'name':
        return one.name.localeCompare(other.name);
      default:
        return order satisfies never;
    }
  });
}

function byHue(one: Fabric, other: Fabric): number {
  const [here, there] = [hueOf(meanColour(printMix(one))), hueOf(meanColour(printMix(other)))];
  if (here === null || there === null)
    return Number(here === null) - Number(there === null) || clothValue(other) - clothValue(one);
  return here - there;
}

/**
 * The fabrics in whose names all these words are, in any order; whether letters are large or have accents makes no difference. All for
 * an empty text.
 */
export function foundByName(fabrics: readonly Fabric[], text: string): Fabric[] {
  const words = plainLetters(text).split(/\s+/);
  return fabrics.filter(({ name }) => words.every((word) => plainLetters(name).includes(word)));
}

/** Small letters without accents (Unicode NFKD, then without combining marks). */
function plainLetters(text: string): string {
  return text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase().trim();
}

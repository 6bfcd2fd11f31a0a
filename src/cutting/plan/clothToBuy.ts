// What to buy for more blocks: so much of each fabric, as shops sell it. Tried, not estimated: the listed cloth, straightened
// and washed, makes the blocks together with what is on hand.

import type { Buying, SellingUnit } from '../../model/buying';
import { counted, type Phrase, phrase } from '../../model/phrase';
import type { ClothOnHand, Fabric, FabricId } from '../../model/project';
import type { Inches } from '../../model/units';
import { clothText, INCHES_IN, roundedUp, soldStep, toBuy } from '../yardage/clothLength';
import { type ClothBasket, makesBlocks } from './largestTop';
import { setNeeds } from './setNeeds';

/** How cloth is sold and what is lost of it. */
export interface ClothForSale {
  readonly usableWidth: Inches;
  readonly unit: SellingUnit;
  readonly buying: Pick<Buying, 'straighten' | 'shrinkage'>;
}

export interface FabricToBuy {
  readonly fabric: Fabric;
  /** As sold: a whole number of eighths of a yard or of 10 cm, inches. */
  readonly inches: Inches;
}

export interface ClothToBuy {
  readonly blocks: number;
  /** Fabrics to buy; none where there is enough, or no cloth of these fabrics would do. */
  readonly fabrics: readonly FabricToBuy[];
  readonly enough: boolean;
  readonly words: Phrase;
}

/** Nobody buys more yards or metres than this of one fabric for strips; a need beyond it is a slip in the figures. */
const MOST_TO_BUY = 50;

/**
 * The cloth to buy for so many blocks. What there is least of is bought first, up to one level for all; then steps that are
 * not needed are left out again. No step less of any fabric would do, but a different choice of fabrics might be less.
 */
export function clothToBuy(basket: ClothBasket, blocks: number, sale: ClothForSale): ClothToBuy {
  const makes = (amounts: Amounts) => makesBlocks(withBought(basket, amounts, sale), blocks);
  const none: Amounts = new Map();
  if (makes(none)) return answer(blocks, [], true, 'The fabric on hand is enough for {blocks}.');
  if (basket.fabrics.length < 2) {
    return answer(blocks, [], false, 'Neighbours in a set must differ: add a second fabric first.');
  }
  const found = leastLevel(basket, sale, makes);
  if (!found) {
    return answer(
      blocks,
      [],
      false,
      sale.unit === 'yard'
        ? 'Even fifty yards more of each would not make {blocks} from these strips.'
        : 'Even fifty metres more of each would not make {blocks} from these strips.',
    );
  }
  const amounts = thinned(found, sale, makes);
  const fabrics = basket.fabrics.flatMap((fabric) => {
    const inches = amounts.get(fabric.id) ?? 0;
    return inches > 0 ? [{ fabric, inches }] : [];
  });
  return answer(blocks, fabrics, false, 'For {blocks} buy, of fabric {width} wide:', sale.usableWidth);
}

type Amounts = ReadonlyMap<FabricId, Inches>;

function answer(
  blocks: number,
  fabrics: readonly FabricToBuy[],
  enough: boolean,
  say: string,
  width: Inches = 0,
): ClothToBuy {
  return {
    blocks,
    fabrics,
    enough,
    words: phrase(say, { blocks: counted(blocks, '1 block', '{count} blocks'), width: { inches: width } }),
  };
}

/** The basket with what is bought, as far as it can be cut: washed first, then straightened. */
function withBought(basket: ClothBasket, amounts: Amounts, sale: ClothForSale): ClothBasket {
  const { straighten, shrinkage } = sale.buying;
  const bought = [...amounts].flatMap(([fabric, inches]): ClothOnHand[] => {
    const depth = inches * (1 - shrinkage / 100) - straighten;
    if (depth <= 0) return [];
    return [
      { id: `to buy ${fabric}`, fabric, kind: 'yardage', stripLength: sale.usableWidth, depth, count: 1 },
    ];
  });
  return { ...basket, clothOnHand: [...basket.clothOnHand, ...bought] };
}

/** Doubling, then halving the level that every fabric is brought up to; null beyond 50 yards of each. */
function leastLevel(
  basket: ClothBasket,
  sale: ClothForSale,
  makes: (amounts: Amounts) => boolean,
): Amounts | null {
  if (!setNeeds(basket.widths, basket.wedge, basket.wedge.cutHeight).of(1)) return null;
  const step = soldStep(sale.unit);
  const have = clothByFabric(basket, sale.usableWidth);
  const upTo = (steps: number): Amounts => {
    const rows = basket.fabrics.map(({ id }): [FabricId, Inches] => {
      const cut = Math.max(0, steps * step - (have.get(id) ?? 0));
      return [id, toBuy(cut, sale.buying, sale.unit).inches];
    });
    return new Map(rows.filter(([, inches]) => inches > 0));
  };
  let high = 1;
  while (!makes(upTo(high))) {
    high *= 2;
    if (high * step > MOST_TO_BUY * INCHES_IN[sale.unit]) return null;
  }
  let low = Math.floor(high / 2);
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (makes(upTo(middle))) high = middle;
    else low = middle;
  }
  return upTo(high);
}

/** Leaves a step of one fabric after another out as long as the rest still does. */
function thinned(amounts: Amounts, sale: ClothForSale, makes: (amounts: Amounts) => boolean): Amounts {
  const step = soldStep(sale.unit);
  let kept = new Map(amounts);
  for (let changed = true; changed; ) {
    changed = false;
    // The largest purchases first, so that amounts stay alike.
    for (const [fabric, inches] of [...kept].sort((one, other) => other[1] - one[1])) {
      const less = new Map(kept);
      const rest = roundedUp(inches - step, sale.unit);
      if (rest > 1e-9) less.set(fabric, rest);
      else less.delete(fabric);
      if (!makes(less)) continue;
      kept = less;
      changed = true;
    }
  }
  return kept;
}

/** Cloth of each fabric as a length off the bolt of the usable width. */
function clothByFabric(basket: ClothBasket, width: Inches): Map<FabricId, Inches> {
  const there = new Map<FabricId, Inches>();
  const add = (fabric: FabricId, area: number) => there.set(fabric, (there.get(fabric) ?? 0) + area / width);
  for (const { fabric, depth, stripLength, count } of basket.clothOnHand)
    add(fabric, depth * stripLength * count);
  for (const { fabric, width: strip, length, count } of basket.stripsOnHand)
    add(fabric, strip * length * count);
  return there;
}

/** One line of the list: the fabric and how much of it, as sold. */
export function toBuyWords({ fabric, inches }: FabricToBuy, unit: SellingUnit): Phrase {
  return phrase('{fabric}: {cloth}', { fabric: fabric.name, cloth: clothText(inches, unit) });
}

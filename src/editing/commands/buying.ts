// Commands on the buying choices: how cloth is bought and cut, prices, and kits.
import { priceInOther, priceText } from '../../cutting/yardage/money';
import {
  type Buying,
  keepSoldBy,
  MOST_PRICE,
  type SellingUnit,
  sellingUnit,
  soldByLength,
} from '../../model/buying';
import { type Phrase, phrase } from '../../model/phrase';
import type { FabricId, Project } from '../../model/project';
import { type Command, Refusal } from '../apply';
import { changeFabric } from './fabrics';

type Plain = Omit<Buying, 'backing' | 'kits'>;

const WORDS: Readonly<Record<keyof Plain, string>> = {
  soldBy: 'change how fabric is sold',
  shrinkage: 'change the shrinkage',
  straighten: 'change the straightening allowance',
  fatQuarters: 'change the use of fat quarters',
  corners: 'change the corner squares',
  longPieces: 'change how long pieces are cut',
  bindingExtra: 'change the spare length of the binding',
  price: 'change the price of fabric',
  fatQuarterPrice: 'change the price of a fat quarter',
  currency: 'change the currency',
};

/**
 * Changes how cloth is bought; the label names the first entry changed. Prices stay worth the same where cloth is sold by the other
 * unit: refused where one would be too high.
 */
export function changeBuying(to: Partial<Plain>): Command {
  const [first] = Object.keys(to) as (keyof Plain)[];
  const label: Phrase = phrase(first ? WORDS[first] : 'change how fabric is bought');
  return {
    label,
    change: (draft) => {
      if (to.soldBy) matchPrices(draft, to.soldBy);
      Object.assign(draft.buying, to);
      keepSoldBy(draft);
    },
  };
}

/** Makes prices those of the other unit, where cloth is to be sold by it. A fat quarter is half of either: it grows with its price. */
function matchPrices(draft: Project, to: SellingUnit): void {
  const from = sellingUnit(draft);
  if (from === to) return;
  const inOther = (price: number) => {
    const other = priceInOther(price, from);
    if (other <= MOST_PRICE) return other;
    const say =
      from === 'yard'
        ? '{price} a yard would be {other} a metre, and a price is at most {most}. Change that price first.'
        : '{price} a metre would be {other} a yard, and a price is at most {most}. Change that price first.';
    const values = {
      price: priceText(price, draft),
      other: priceText(other, draft),
      most: priceText(MOST_PRICE, draft),
    };
    throw new Refusal('price-too-high', 'buying.price', phrase(say, values));
  };
  for (const one of soldByLength(draft)) if (typeof one.price === 'number') one.price = inOther(one.price);
  const { fatQuarterPrice } = draft.buying;
  if (fatQuarterPrice !== null) draft.buying.fatQuarterPrice = inOther(fatQuarterPrice);
}

/** What becomes of the prices when cloth is sold by this unit, told by one of them; null where none changes. */
export function pricesMatched(project: Project, to: SellingUnit): Phrase | null {
  const from = sellingUnit(project);
  const price = soldByLength(project).find((one) => one.price)?.price;
  const told = price || project.buying.fatQuarterPrice;
  if (from === to || !told) return null;
  const before = priceText(told, project);
  const after = priceText(priceInOther(told, from), project);
  if (!price)
    return phrase('Prices are changed to match: a fat quarter at {before} is now at {after}, rounded.', {
      before,
      after,
    });
  const say =
    to === 'metre'
      ? 'Prices are changed to match: {before} a yard is {after} a metre, rounded.'
      : 'Prices are changed to match: {before} a metre is {after} a yard, rounded.';
  return phrase(say, { before, after });
}

/** Changes the backing: its fabric, overhang, width of cloth, seam, piecing or price. */
export function changeBacking(to: Partial<Buying['backing']>): Command {
  return {
    label: phrase('change the backing'),
    change: (draft) => {
      Object.assign(draft.buying.backing, to);
      keepSoldBy(draft);
    },
  };
}

/** Changes the number of kits and what they contain. */
export function changeKits(to: Partial<Buying['kits']>): Command {
  return {
    label: phrase('change the kits'),
    change: (draft) => {
      Object.assign(draft.buying.kits, to);
    },
  };
}

/** Changes the price of one fabric; null: it has that of all fabrics. */
export function priceFabric(project: Project, id: FabricId, price: number | null): Command {
  const { label, change } = changeFabric(project, id, { price });
  return {
    label,
    change: (draft) => {
      change?.(draft);
      keepSoldBy(draft);
    },
  };
}

// What cloth costs: each line to the cent, each total the sum of its lines as they are printed. The arithmetic is exact, so
// that halves of a cent go up wherever they arise.
import Fraction from 'fraction.js';
import { type SellingUnit, sellingUnit } from '../../model/buying';
import { decimalText, roundedHalfUp } from '../../model/decimals';
import { counted, type Phrase, phrase } from '../../model/phrase';
import type { Project } from '../../model/project';
import type { Inches } from '../../model/units';
import type { Figure } from '../../model/words/figure';
import { clothText } from './clothLength';

/** Nanometres, whole in every unit cloth is measured in: 1/64" is 396 875 (an inch is 25.4 mm exactly, a yard 36 of them). */
const NANOMETRES: Readonly<Record<'inch' | SellingUnit, number>> = {
  inch: 25_400_000,
  yard: 914_400_000,
  metre: 1_000_000_000,
};
/** Decimals of a price that are meant; with the highest price a binary number still holds them. */
const PRICE_DECIMALS = 9;

/** A length of cloth at a price for a yard or a metre, to the cent. */
export function lengthCost(inches: Inches, price: number, unit: SellingUnit): number {
  return toCents(exact(price).mul(Math.round(inches * NANOMETRES.inch), NANOMETRES[unit]));
}

/** So many pieces at a price each, to the cent. */
export function piecesCost(count: number, price: number): number {
  return toCents(exact(price).mul(count));
}

/** A part of a price, to the cent: a fat quarter of a yard. */
export function partOfPrice(price: number, parts: number): number {
  return toCents(exact(price).div(parts));
}

/**
 * The price of a yard as one of a metre, or back, worth the same but for rounding: to as many decimals as it was written with, two at
 * least.
 */
export function priceInOther(price: number, from: SellingUnit): number {
  const to = from === 'yard' ? 'metre' : 'yard';
  const written = /\.(\d*?)0*$/.exec(price.toFixed(PRICE_DECIMALS))?.[1]?.length ?? 0;
  return roundedHalfUp(exact(price).mul(NANOMETRES[to], NANOMETRES[from]).valueOf(), Math.max(2, written));
}

/** The sum of amounts to the cent; null while one is missing. */
export function totalOf(costs: readonly (number | null)[]): number | null {
  let cents = 0;
  for (const cost of costs) {
    if (cost === null) return null;
    cents += Math.round(cost * 100);
  }
  return cents / 100;
}

/** The decimal number that is meant. */
function exact(price: number): Fraction {
  return new Fraction(price.toFixed(PRICE_DECIMALS));
}

function toCents(amount: Fraction): number {
  return amount.mul(100).add(1, 2).floor().valueOf() / 100;
}

/** An amount of money: two decimals; the currency before it where it is a sign (£), after it in letters (EUR). */
export function money(amount: number, project: Pick<Project, 'buying'>): Figure {
  return withCurrency(decimalText(amount, 2), project);
}

/** A price as it was written, with more than two decimals where it has them. */
export function priceText(price: number, project: Pick<Project, 'buying'>): Figure {
  return withCurrency(amountText(price), project);
}

/** An amount as it was written: at least two decimals, at most four. */
export function amountText(amount: number): string {
  const whole = String(roundedHalfUp(amount, 4));
  const [, decimals = ''] = whole.split('.');
  return decimals.length > 2 ? whole : decimalText(amount, 2);
}

function withCurrency(text: string, { buying: { currency } }: Pick<Project, 'buying'>): Figure {
  if (currency === '') return { figure: text };
  return { figure: /\p{L}/u.test(currency) ? `${text} ${currency}` : `${currency}${text}` };
}

/** A line of a list: its cost to the cent, and how that came about; both null without a price. */
export interface Priced {
  readonly cost: number | null;
  readonly costWords: Phrase | null;
}

const UNPRICED: Priced = { cost: null, costWords: null };

/** A length of cloth at a price for a yard or a metre, as the project's cloth is sold; `bought` is the length in words. */
export function pricedLength(
  inches: Inches,
  price: number | null,
  project: Pick<Project, 'buying' | 'preferences'>,
  bought?: Phrase,
): Priced {
  if (price === null) return UNPRICED;
  const unit = sellingUnit(project);
  const cost = lengthCost(inches, price, unit);
  const say =
    unit === 'yard'
      ? '{bought} at {price} a yard: {cost}, rounded to two decimals.'
      : '{bought} at {price} a metre: {cost}, rounded to two decimals.';
  return pricedAs(say, bought ?? clothText(inches, unit), price, cost, project);
}

/** So many fat quarters at a price each. */
export function pricedQuarters(
  count: number,
  price: number | null,
  project: Pick<Project, 'buying'>,
): Priced {
  if (price === null) return UNPRICED;
  const bought = counted(count, '1 fat quarter', '{count} fat quarters');
  const say = '{bought} at {price} each: {cost}, rounded to two decimals.';
  return pricedAs(say, bought, price, piecesCost(count, price), project);
}

function pricedAs(
  say: string,
  bought: Phrase | Figure,
  price: number,
  cost: number,
  project: Pick<Project, 'buying'>,
): Priced {
  const values = {
    bought,
    price: priceText(price, project),
    cost: money(cost, project),
  };
  return { cost, costWords: phrase(say, values) };
}

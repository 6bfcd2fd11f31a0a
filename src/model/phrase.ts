// A sentence for people, kept apart from its numbers, so that unit, language and style of numbers are chosen only when it is shown.
// Rooms below the screen return Phrases; `speak` turns a Phrase into text.
import { decimalText } from './decimals';
import { formatLength, formatLimit, formatSeam, type Inches, type LengthUnit } from './units';
import type { Figure } from './words/figure';
import { ENGLISH_NUMBERS, inStyle, type NumberStyle } from './words/numberStyle';

/**
 * A value in a sentence: text, a number, a figure already in words (1.6 m, £12.50), a length or seam in inches, the least or the
 * most that a length may be, an area in square inches, a list, another Phrase.
 */
export type PhraseValue =
  | string
  | number
  | Figure
  | { readonly inches: Inches }
  | { readonly seam: Inches }
  | { readonly atLeast: Inches }
  | { readonly atMost: Inches }
  | { readonly squareInches: number }
  | { readonly list: readonly (string | number)[] }
  | Phrase;

/** `say` is the English sentence with {names} in braces; it doubles as the key for other languages. */
export interface Phrase {
  readonly say: string;
  readonly with?: Readonly<Record<string, PhraseValue>>;
}

/** A Phrase of a sentence and the values of its {names}. */
export function phrase(say: string, values?: Readonly<Record<string, PhraseValue>>): Phrase {
  return values ? { say, with: values } : { say };
}

/** A Phrase of `one` where the count is exactly 1, else of `many`; its value {count} is the count. */
export function counted(
  count: number,
  one: string,
  many: string,
  values: Readonly<Record<string, PhraseValue>> = {},
): Phrase {
  return phrase(count === 1 ? one : many, { ...values, count });
}

/** Gives a sentence in another language, or the same sentence where there is no translation. */
export type Translate = (say: string) => string;

/** Prepares a name for its place in a sentence: `isolated` on screen; in files names do not change. */
export type Names = (name: string) => string;

const AS_IT_IS: Names = (name) => name;

/** Letters that read from right to left, and the marks that change the direction of text. */
const OTHER_DIRECTION =
  /[\u0590-\u08ff\u200f\u202a-\u202e\u2066-\u2069\ufb1d-\ufdff\ufe70-\ufeff\u{10800}-\u{10fff}\u{1e800}-\u{1efff}]/u;

/**
 * A name that reads from right to left, put between FIRST STRONG ISOLATE and its end (Unicode UAX 9), so that the words and
 * figures round it keep their order. Other names do not change.
 */
export function isolated(name: string): string {
  return OTHER_DIRECTION.test(name) ? `\u2068${name}\u2069` : name;
}

/**
 * Turns a Phrase into text in the given unit and style of numbers. A {name} without a value stays in the text, so that the mistake
 * shows.
 */
export function speak(
  sentence: Phrase,
  unit: LengthUnit = 'in',
  translate?: Translate,
  names: Names = AS_IT_IS,
  numbers: NumberStyle = ENGLISH_NUMBERS,
): string {
  const text = translate ? translate(sentence.say) : sentence.say;
  const valueText = (value: PhraseValue): string => {
    if (typeof value === 'string') return names(value);
    if (typeof value === 'object' && 'say' in value) return speak(value, unit, translate, names, numbers);
    if (typeof value === 'object' && 'list' in value) return joinList(value.list.map(valueText));
    return inStyle(figureText(value, unit), numbers);
  };
  return text.replace(/\{(\w+)\}/g, (whole, name: string) => {
    const value = sentence.with?.[name];
    return value === undefined ? whole : valueText(value);
  });
}

type FigureValue = Exclude<PhraseValue, string | Phrase | { readonly list: unknown }>;

function figureText(value: FigureValue, unit: LengthUnit): string {
  if (typeof value === 'number') return String(value);
  if ('figure' in value) return value.figure;
  if ('inches' in value) return formatLength(value.inches, unit);
  if ('seam' in value) return formatSeam(value.seam, unit);
  if ('atLeast' in value) return formatLimit(value.atLeast, unit, 'least');
  if ('atMost' in value) return formatLimit(value.atMost, unit, 'most');
  return unit === 'in'
    ? `${decimalText(value.squareInches, 1)} sq in`
    : `${decimalText(value.squareInches * 6.4516, 0)} cm²`;
}

function joinList(items: readonly string[]): string {
  if (items.length <= 1) return items[0] ?? '';
  return `${items.slice(0, -1).join(', ')} and ${items[items.length - 1]}`;
}

// A sentence for people, kept apart from its numbers, so that units and languages are chosen only when it is shown.
// Rooms below the screen return Phrases; `speak` in this file turns one into text.
import { decimalText } from './decimals';
import { formatLength, formatSeam, type Inches, type LengthUnit } from './units';

/** A value in a sentence: text and counts as they are; lengths and seams in inches, areas in square inches, in the person's unit. */
export type PhraseValue =
  | string
  | number
  | { readonly inches: Inches }
  | { readonly seam: Inches }
  | { readonly squareInches: number }
  | { readonly list: readonly (string | number)[] }
  | Phrase;

/** `say` is the English sentence with {names} in braces; it doubles as the key for other languages. */
export interface Phrase {
  readonly say: string;
  readonly with?: Readonly<Record<string, PhraseValue>>;
}

/** Makes a Phrase. */
export function phrase(say: string, values?: Readonly<Record<string, PhraseValue>>): Phrase {
  return values ? { say, with: values } : { say };
}

/** Picks the singular for exactly 1, else the plural; `{count}` is filled in. */
export function counted(
  count: number,
  one: string,
  many: string,
  values: Readonly<Record<string, PhraseValue>> = {},
): Phrase {
  return phrase(count === 1 ? one : many, { ...values, count });
}

/** Looks a sentence up in another language; returns it unchanged where there is no translation. */
export type Translate = (say: string) => string;

/** What is done to a name before it stands among other words: `isolated` for text on a screen, nothing for files. */
export type Names = (name: string) => string;

const AS_IT_IS: Names = (name) => name;

/** Letters that read from right to left, and the marks that turn the direction of text. */
const OTHER_DIRECTION =
  /[\u0590-\u08ff\u200f\u202a-\u202e\u2066-\u2069\ufb1d-\ufdff\ufe70-\ufeff\u{10800}-\u{10fff}\u{1e800}-\u{1efff}]/u;

/**
 * A name that may read in another direction, closed off so that the words and figures round it keep their order: between the
 * first strong isolate and its end (Unicode UAX 9). Names of the language's own direction come back as they are.
 */
export function isolated(name: string): string {
  return OTHER_DIRECTION.test(name) ? `\u2068${name}\u2069` : name;
}

/** Turns a Phrase into text in the given unit. A name without a value stays visible as {name}, so that a slip shows. */
export function speak(
  sentence: Phrase,
  unit: LengthUnit = 'in',
  translate?: Translate,
  names: Names = AS_IT_IS,
): string {
  const text = translate ? translate(sentence.say) : sentence.say;
  return text.replace(/\{(\w+)\}/g, (whole, name: string) => {
    const value = sentence.with?.[name];
    return value === undefined ? whole : valueText(value, unit, names, translate);
  });
}

function valueText(value: PhraseValue, unit: LengthUnit, names: Names, translate?: Translate): string {
  if (typeof value === 'string') return names(value);
  if (typeof value === 'number') return String(value);
  if ('inches' in value) return formatLength(value.inches, unit);
  if ('seam' in value) return formatSeam(value.seam, unit);
  if ('squareInches' in value) {
    return unit === 'in'
      ? `${decimalText(value.squareInches, 1)} sq in`
      : `${decimalText(value.squareInches * 6.4516, 0)} cm²`;
  }
  if ('list' in value) return joinList(value.list.map((one) => names(String(one))));
  return speak(value, unit, translate, names);
}

function joinList(items: readonly string[]): string {
  if (items.length <= 1) return items[0] ?? '';
  return `${items.slice(0, -1).join(', ')} and ${items[items.length - 1]}`;
}

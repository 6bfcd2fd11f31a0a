// A sentence for people, kept apart from its numbers, so that units and languages are chosen only when it is shown.
// Rooms below the screen return Phrases; `speak` in this file turns one into text.
import { formatLength, type Inches, type LengthUnit } from './units';

/** A value in a sentence: text and counts as they are; lengths in inches and areas in square inches, shown in the person's unit. */
export type PhraseValue =
  | string
  | number
  | { readonly inches: Inches }
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

/** Turns a Phrase into text in the given unit. A name without a value stays visible as {name}, so that a slip shows. */
export function speak(sentence: Phrase, unit: LengthUnit = 'in', translate?: Translate): string {
  const text = translate ? translate(sentence.say) : sentence.say;
  return text.replace(/\{(\w+)\}/g, (whole, name: string) => {
    const value = sentence.with?.[name];
    return value === undefined ? whole : valueText(value, unit, translate);
  });
}

function valueText(value: PhraseValue, unit: LengthUnit, translate?: Translate): string {
  if (typeof value === 'string') return value;
  if (typeof value === 'number') return String(value);
  if ('inches' in value) return formatLength(value.inches, unit);
  if ('squareInches' in value) {
    return unit === 'in'
      ? `${value.squareInches.toFixed(1)} sq in`
      : `${(value.squareInches * 6.4516).toFixed(0)} cm²`;
  }
  if ('list' in value) return joinList(value.list.map(String));
  return speak(value, unit, translate);
}

function joinList(items: readonly string[]): string {
  if (items.length <= 1) return items[0] ?? '';
  return `${items.slice(0, -1).join(', ')} and ${items[items.length - 1]}`;
}

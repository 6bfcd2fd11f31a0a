// How figures are written where the person lives: 1,234.5 or 1.234,5. It changes figures that are already in words; rounding and
// units are decided elsewhere (model/decimals.ts, model/units.ts).

/** The decimal mark, the mark between thousands, and the least whole number that has one. */
export interface NumberStyle {
  readonly decimal: string;
  readonly thousands: string;
  readonly markedFrom: number;
}

export const ENGLISH_NUMBERS: NumberStyle = { decimal: '.', thousands: ',', markedFrom: 1000 };

/**
 * The style of a language tag such as de-CH, by the Unicode CLDR data of the machine; figures stay 0 to 9. A space between
 * thousands is a plain no-break space, which every typeface has. English for what is no language tag.
 */
export function numberStyleOf(language: string): NumberStyle {
  const parts = (amount: number) =>
    new Intl.NumberFormat(language, { numberingSystem: 'latn' }).formatToParts(amount);
  try {
    const mark = (type: 'decimal' | 'group', amount: number) =>
      parts(amount)
        .find((part) => part.type === type)
        ?.value.replace(/\s/u, '\u00a0');
    const markedFrom = mark('group', 1000) === undefined ? 10_000 : 1000;
    return {
      decimal: mark('decimal', 1.5) ?? '.',
      thousands: mark('group', 10_000) ?? '',
      markedFrom,
    };
  } catch {
    return ENGLISH_NUMBERS;
  }
}

/** The figures of a text written as 1234.5, in a style; fractions (14 1/4) and all other letters stay. */
export function inStyle(text: string, { decimal, thousands, markedFrom }: NumberStyle): string {
  return text.replace(/(\d+)(?:\.(\d+))?/g, (_, whole: string, decimals?: string) => {
    const marked = Number(whole) >= markedFrom ? whole.replace(/\B(?=(\d{3})+$)/g, thousands) : whole;
    return decimals === undefined ? marked : `${marked}${decimal}${decimals}`;
  });
}

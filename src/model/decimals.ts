// Decimal numbers as people round them: halves up, of the decimal that is meant rather than of the binary number held for it.

/** Decimals beyond the step that are still meant: finer than any ruler or price, coarser than what binary sums leave over. */
const MEANT = 7;

/**
 * Rounded to so many decimals, halves up: 6.35 gives 6.4 though a binary number holds a little less. Not-a-number stays so.
 */
export function roundedHalfUp(amount: number, places: number): number {
  const scale = 10 ** places;
  return Math.round(Number((amount * scale).toFixed(MEANT))) / scale;
}

/** The same as text with all its decimals: 6.40; a nought has no sign. */
export function decimalText(amount: number, places: number): string {
  return roundedHalfUp(amount, places).toFixed(places);
}

/**
 * A number as people write it, with a decimal point: 14,5 gives 14.5, and of two kinds of marks the last is the decimal one (1,234.5
 * and 1.234,5 give 1234.5).
 */
export function withDecimalPoint(text: string): string {
  const grouped = /^\d{1,3}(?:(?:,\d{3})+\.|(?:\.\d{3})+,)\d*$/.test(text);
  const decimal = Math.max(text.lastIndexOf(','), text.lastIndexOf('.'));
  return grouped
    ? `${text.slice(0, decimal).replace(/[.,]/g, '')}.${text.slice(decimal + 1)}`
    : text.replace(',', '.');
}

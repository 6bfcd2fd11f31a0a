// Contrast of text and marks against their ground, as WCAG 2.2 defines it: for the tool's own screens, not for cloth.
import { linearOfHex } from '../../src/colour/spaces';

/** WCAG 2.2 relative luminance, 0–1, with its rounded weights (so it differs from Y in the fifth decimal). */
export function relativeLuminance(hex: string): number {
  const [red, green, blue] = linearOfHex(hex);
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** WCAG 2.2 contrast ratio of two colours in either order, 1–21. Text needs 4.5, large text and marks 3, never rounded up. */
export function contrastRatio(hex1: string, hex2: string): number {
  const one = relativeLuminance(hex1) + 0.05;
  const other = relativeLuminance(hex2) + 0.05;
  return Math.max(one, other) / Math.min(one, other);
}

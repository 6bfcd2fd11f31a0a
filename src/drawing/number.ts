// Writes numbers, points and outlines as SVG text: inches to a millionth, without trailing zeros.
import type { Outline, Point } from '../geometry/point';

/** A number to six decimals; −0 is written 0. Throws on not-a-number and infinity, so that no broken file is written. */
export function inchText(inches: number): string {
  if (!Number.isFinite(inches)) throw new RangeError(`inchText: ${inches} is not a length`);
  const text = inches.toFixed(6);
  const short = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return short === '-0' ? '0' : short;
}

/** A length of a print as text, to a ten-thousandth of an inch. */
export function short(inches: number): string {
  return String(Math.round(inches * 1e4) / 1e4 + 0);
}

/** A point as "x,y", for path data and lists of points. */
export function pointText(point: Point): string {
  return `${inchText(point.x)},${inchText(point.y)}`;
}

/** A closed outline as path data. */
export function outlinePath(outline: Outline): string {
  return `M${outline.map(pointText).join('L')}Z`;
}

/** Text escaped for an element or attribute; leaves out characters that XML does not allow. */
export function escaped(text: string): string {
  return text
    .replace(/[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu, '')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll("'", '&#39;');
}

/** An outline as the points of a polygon on the screen, as exact as it is. */
export function outlinePoints(outline: readonly Point[]): string {
  return outline.map(({ x, y }) => `${x},${y}`).join(' ');
}

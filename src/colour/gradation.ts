// A gradation: a series of colours from one to another in even steps of value, as gradated cloth is dyed and sold.
import chroma from 'chroma-js';
import { srgbOf } from './parse';

/**
 * `count` (at least 2) colours #rrggbb, from `from` to `to`, both included unchanged. They are interpolated in OKLab; where
 * the ends differ in value, L* changes in even steps. Throws on a bad colour or count.
 */
export function gradation(from: string, to: string, count: number): readonly string[] {
  if (!(Number.isInteger(count) && count >= 2))
    throw new RangeError(`gradation: ${count} is not 2 or more colours`);
  srgbOf(from);
  srgbOf(to);
  return chroma.scale([from, to]).mode('oklab').correctLightness().colors(count);
}

// A gradation: a run of colours from one cloth to another, even in value, as gradated cloth is dyed and sold.
import chroma from 'chroma-js';
import { srgbOf } from './parse';

/**
 * `count` colours (#rrggbb, at least 2) from one to the other, the ends included as given, through OKLab and with L* rising or
 * falling in even steps where the ends differ in value. Throws on a bad colour or count.
 */
export function gradation(from: string, to: string, count: number): readonly string[] {
  if (!(Number.isInteger(count) && count >= 2))
    throw new RangeError(`gradation: ${count} is not 2 or more colours`);
  srgbOf(from);
  srgbOf(to);
  return chroma.scale([from, to]).mode('oklab').correctLightness().colors(count);
}

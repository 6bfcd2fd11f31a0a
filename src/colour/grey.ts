// Greys by their value, as on a value scale.
import { formatHex } from './parse';
import { encodedOf, luminanceOfValue } from './spaces';

/** The neutral grey of a value (L* 0–100), as #rrggbb; a value beyond that is clipped to black or white. */
export function greyOfValue(value: number): string {
  const light = luminanceOfValue(value);
  return formatHex(encodedOf([light, light, light]));
}

// The grey of a value, as in the grey picture.
import { formatHex } from '../../../colour/parse';
import { encodedOf, luminanceOfValue } from '../../../colour/spaces';

/** A neutral #rrggbb of the given L*, 0 to 100. */
export function greyOf(value: number): string {
  const light = luminanceOfValue(value);
  return formatHex(encodedOf([light, light, light]));
}

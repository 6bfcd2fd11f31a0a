// Gives a colour another hue at the same lightness: colours of made-up cloth, to try a quilt in other cloth.
import { formatHex, inGamut } from './parse';
import { encodedOf, linearOfHex, linearOfOklab, oklabOf } from './spaces';

/**
 * The colour with its OKLab hue turned by `degrees` and its OKLab lightness kept. Its chroma is reduced as far as needed to
 * stay in the sRGB gamut. A grey does not change. Throws on anything but a hex colour.
 */
export function hueTurned(hex: string, degrees: number): string {
  const [lightness, a, b] = oklabOf(linearOfHex(hex));
  const chroma = Math.hypot(a, b);
  const angle = Math.atan2(b, a) + (degrees * Math.PI) / 180;
  const at = (part: number) =>
    encodedOf(linearOfOklab([lightness, part * chroma * Math.cos(angle), part * chroma * Math.sin(angle)]));
  let inside = 1;
  if (!inGamut(at(1))) {
    let outside = 1;
    inside = 0;
    for (let halving = 0; halving < 24; halving += 1) {
      const middle = (inside + outside) / 2;
      if (inGamut(at(middle))) inside = middle;
      else outside = middle;
    }
  }
  return formatHex(at(inside));
}

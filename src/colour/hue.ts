// The hue of a colour, and a colour in another hue at the same lightness (for made-up cloth, to try a quilt in other cloth).
import { formatHex, inGamut } from './parse';
import { encodedOf, linearOfHex, linearOfOklab, oklabOf } from './spaces';

/** The OKLCh chroma below which a colour is a grey or an off-white to the eye; our own choice, no source. */
const GREY_BELOW = 0.025;

/** The OKLCh hue of a hex colour, 0 to 360 degrees; null for greys and off-whites. Throws on anything but a hex colour. */
export function hueOf(hex: string): number | null {
  const [, a, b] = oklabOf(linearOfHex(hex));
  if (Math.hypot(a, b) < GREY_BELOW) return null;
  return ((Math.atan2(b, a) * 180) / Math.PI + 360) % 360;
}

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

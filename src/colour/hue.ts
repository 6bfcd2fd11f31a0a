// A colour in another hue, as light or dark as it was. For trying a quilt in other cloth before there is any.
import { formatHex, inGamut } from './parse';
import { encodedOf, linearOfHex, linearOfOklab, oklabOf } from './spaces';

/**
 * The colour with its OKLab hue turned by `degrees`, its OKLab lightness kept, and as much of its chroma as sRGB has room
 * for there. A grey stays as it is. Throws on what is no hex colour.
 */
export function hueTurned(hex: string, degrees: number): string {
  const [lightness, a, b] = oklabOf(linearOfHex(hex));
  const chroma = Math.hypot(a, b);
  const angle = Math.atan2(b, a) + (degrees * Math.PI) / 180;
  const at = (part: number) =>
    encodedOf(linearOfOklab([lightness, part * chroma * Math.cos(angle), part * chroma * Math.sin(angle)]));
  let room = 1;
  if (!inGamut(at(1))) {
    let out = 1;
    room = 0;
    for (let halving = 0; halving < 24; halving += 1) {
      const middle = (room + out) / 2;
      if (inGamut(at(middle))) room = middle;
      else out = middle;
    }
  }
  return formatHex(at(room));
}

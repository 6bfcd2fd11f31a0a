// The light of a sitting: what white looks like in its pictures. From a neutral patch to the light, and from the light to colours
// as they are by daylight (D65). One value serves every picture taken in the same light.
import { transform } from '../../colour/matrix';
import { formatHex } from '../../colour/parse';
import { encodedOf, type LinearRgb, luminanceOfValue, ofLinear, WHITE_D65, xyzOf } from '../../colour/spaces';
import { phrase } from '../../model/phrase';
import { failed, ok, type Result } from '../../model/result';
import { blankPlane, type Plane } from '../pixels/pixels';
import { adaptation, nearestLamp } from './adaptation';

export interface Light {
  /** Linear light, as photographed, of a surface that sends back all light. */
  readonly white: LinearRgb;
}

/** The light of a picture whose colours are right as they are. */
export const DAYLIGHT: Light = { white: [1, 1, 1] };

/** The value L* of white paper, card and cotton (95: unprinted paper of ISO 12647-2 is L* 93 to 95; from memory). */
export const WHITE_PAPER = 95;
/** The value L* of a photographer's grey card, which sends back 18 % of the light. */
export const GREY_CARD = 49.5;

/** Below this, noise and rounding have more to say about the cast than the light. */
const TOO_DARK = 0.01;
/** From this on a channel of the picture has run out, and the patch was lighter than it shows. */
const TOO_BRIGHT = 0.985;

/**
 * The light in which a patch that is neutral in truth (white, grey) looks like `patch`, linear light. `value` is its true
 * L*, which gives the exposure with the cast; null: a grey of no known value, and the picture stays as bright as it is.
 */
export function lightOf(patch: LinearRgb, value: number | null): Result<Light> {
  if (value !== null && !(value >= 10 && value <= 100))
    return failed('neutral-value', 'value', phrase('The value of a neutral patch is 10 to 100.'));
  if (Math.max(...patch) >= TOO_BRIGHT)
    return failed('neutral-bright', 'patch', phrase('This spot is overexposed, so its colour is lost. Tap a spot that is less bright, or take the picture darker.')); // biome-ignore format: one sentence
  if (Math.min(...patch) < TOO_DARK || xyzOf(patch).some((part) => !(part > 0)))
    return failed('neutral-dark', 'patch', phrase('This spot is too dark to show the colour of the light. Tap something lighter.')); // biome-ignore format: one sentence
  const bright = value === null ? xyzOf(patch)[1] : luminanceOfValue(value);
  return ok({ white: [patch[0] / bright, patch[1] / bright, patch[2] / bright] });
}

/** Colours by daylight of linear light as photographed; a function for many pixels. */
export function byDaylight(light: Light): (photographed: LinearRgb) => LinearRgb {
  const matrix = ofLinear(adaptation(xyzOf(light.white), WHITE_D65));
  return (photographed) => transform(matrix, photographed);
}

/** A plane of linear light with the cast and the exposure taken out. Colours outside sRGB keep what sticks out. */
export function planeByDaylight(plane: Plane, light: Light): Plane {
  const [red, green, blue] = ofLinear(adaptation(xyzOf(light.white), WHITE_D65));
  const into = blankPlane(plane.width, plane.height, 3);
  const { data } = plane;
  for (let at = 0; at < data.length; at += 3) {
    const [r, g, b] = [data[at]!, data[at + 1]!, data[at + 2]!];
    into.data[at] = red[0] * r + red[1] * g + red[2] * b;
    into.data[at + 1] = green[0] * r + green[1] * g + green[2] * b;
    into.data[at + 2] = blue[0] * r + blue[1] * g + blue[2] * b;
  }
  return into;
}

/** What a light does to white: its colour at full strength (#rrggbb), its temperature, and the exposure in stops. */
export interface Cast {
  readonly colour: string;
  /** Correlated colour temperature, 2000 to 12 000 K; null where no lamp has such a light. */
  readonly kelvin: number | null;
  /** How much brighter (above 0) or darker the picture is than true, stops. */
  readonly stops: number;
}

/** Farther from the colours of hot bodies than this in u, v, no temperature describes a light (CIE 15). */
const MOST_OFF = 0.05;

export function castOf({ white }: Light): Cast {
  const most = Math.max(...white);
  const { kelvin, off } = nearestLamp(xyzOf(white));
  return {
    colour: formatHex(encodedOf([white[0] / most, white[1] / most, white[2] / most])),
    kelvin: off <= MOST_OFF ? Math.round(kelvin) : null,
    stops: Math.log2(xyzOf(white)[1]),
  };
}

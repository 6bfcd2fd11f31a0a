// What kind of figures a cloth has: none, tone on tone, stripes, checks or a print; and a plain name by colour and figures.
import { colourName } from '../../cloth/standIns';
import { type Phrase, phrase } from '../../model/phrase';
import type { Inches } from '../../model/units';
import type { Plane } from '../pixels/pixels';

export type Figures = 'plain' | 'tonal' | 'stripe' | 'check' | 'print';

/** Standard deviations of L* below which cloth looks plain, and tone on tone (by eye, no source). */
const PLAIN_BELOW = 2.5;
const TONAL_BELOW = 6;
/** How far edges run one way (1: all of them), or two ways across each other. */
const ONE_WAY = 0.75;
const TWO_WAYS = 0.5;

/** The figures of a cloth by its plane of L*, the spread of it, and how many main colours it has. */
export function figuresOf(value: Plane, spread: number, colours: number): Figures {
  if (spread < PLAIN_BELOW && colours === 1) return 'plain';
  const { once, twice } = edgeWays(value);
  if (once > ONE_WAY) return 'stripe';
  if (twice > TWO_WAYS) return 'check';
  return spread < TONAL_BELOW && colours === 1 ? 'tonal' : 'print';
}

/**
 * How much edges keep to one direction, and to two at right angles: lengths of the second and fourth circular moment of
 * gradient directions, weighted by their strength, 0 to 1.
 */
function edgeWays({ width, height, data }: Plane): { once: number; twice: number } {
  const sums = [0, 0, 0, 0];
  let weight = 0;
  for (let row = 1; row < height - 1; row += 1) {
    for (let column = 1; column < width - 1; column += 1) {
      const at = row * width + column;
      const x = data[at + 1]! - data[at - 1]!;
      const y = data[at + width]! - data[at - width]!;
      const strength = x * x + y * y;
      if (strength < 4) continue;
      const angle = Math.atan2(y, x);
      sums[0]! += strength * Math.cos(2 * angle);
      sums[1]! += strength * Math.sin(2 * angle);
      sums[2]! += strength * Math.cos(4 * angle);
      sums[3]! += strength * Math.sin(4 * angle);
      weight += strength;
    }
  }
  if (weight === 0) return { once: 0, twice: 0 };
  return { once: Math.hypot(sums[0]!, sums[1]!) / weight, twice: Math.hypot(sums[2]!, sums[3]!) / weight };
}

/** Prints smaller and larger than this are called so, inches from figure to figure (common practice, no source). */
const SMALL = 1;
const LARGE = 3;

/** A proposal for the name, in lower case: 'dark teal stripe'. `scale` in inches, or null. */
export function nameFor(figures: Figures, colour: string, scale: Inches | null): Phrase {
  return phrase(nameOf(figures, scale), { colour: colourName(colour) });
}

function nameOf(figures: Figures, scale: Inches | null): string {
  if (figures === 'plain') return '{colour}';
  if (figures === 'tonal') return '{colour} tone on tone';
  if (figures === 'stripe') return '{colour} stripe';
  if (figures === 'check') return '{colour} check';
  if (scale !== null && scale < SMALL) return '{colour} small print';
  return scale !== null && scale > LARGE ? '{colour} large print' : '{colour} print';
}

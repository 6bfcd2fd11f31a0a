// Tones: values sorted into dark, medium and light by two limits; and neutral greys of a value. Where the limits of a quilt lie is left
// to cloth/tones.ts.
import { formatHex } from './parse';
import { encodedOf, luminanceOfValue } from './spaces';

/** From dark to light. */
export const TONES = ['dark', 'medium', 'light'] as const;
export type Tone = (typeof TONES)[number];

/** The values L* from which a colour is medium, and from which it is light; −Infinity or Infinity where nothing is dark, or light. */
export interface ToneLimits {
  readonly medium: number;
  readonly light: number;
}

/** The tone of a value L*. */
export function toneOf(lightness: number, { medium, light }: ToneLimits): Tone {
  if (lightness < medium) return 'dark';
  return lightness < light ? 'medium' : 'light';
}

/** The neutral grey #rrggbb of a value L*, 0 to 100. */
export function greyOf(lightness: number): string {
  const light = luminanceOfValue(lightness);
  return formatHex(encodedOf([light, light, light]));
}

/** The greys in which the tones are shown: far enough apart to be told on any wall. */
export const TONE_GREYS: Readonly<Record<Tone, string>> = {
  dark: greyOf(20),
  medium: greyOf(56),
  light: greyOf(92),
};

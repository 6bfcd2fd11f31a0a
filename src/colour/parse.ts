// Converts colours between their written form (#rgb, #rrggbb) and gamma-encoded sRGB channels. spaces.ts owns other spaces.
import { rgb } from 'd3-color';

/** Gamma-encoded sRGB: red, green, blue, each 0–1 inside the gamut. The `space` tag exists for the compiler only. */
export type Srgb = readonly [number, number, number] & { readonly space?: 'srgb' };

const HEX = /^#(?:[0-9a-f]{3}|[0-9a-f]{6})$/i;

/** Whether a text is a colour written #rgb or #rrggbb, in either case. False for names, alpha and stray spaces. */
export function isHex(text: string): boolean {
  return HEX.test(text);
}

/** Reads #rgb or #rrggbb into sRGB 0–1; null for anything else, so that the caller can say so to the person. */
export function parseHex(text: string): Srgb | null {
  if (!isHex(text)) return null;
  const { r, g, b } = rgb(text);
  return [r / 255, g / 255, b / 255];
}

/** Like parseHex, for colours checked before: throws a RangeError on anything else. */
export function srgbOf(hex: string): Srgb {
  const read = parseHex(hex);
  if (read === null) throw new RangeError(`srgbOf: ${JSON.stringify(hex)} is not a colour written #rrggbb`);
  return read;
}

/** Whether a colour can be shown on an sRGB screen, allowing a millionth for rounding. */
export function inGamut(colour: Srgb): boolean {
  return colour.every((channel) => channel >= -1e-6 && channel <= 1 + 1e-6);
}

/**
 * Writes sRGB 0–1 as lower-case #rrggbb, each channel rounded to the nearest of 256. A colour outside the gamut is clipped
 * channel by channel, as on a screen; ask inGamut first where that matters. Throws on not-a-number.
 */
export function formatHex([red, green, blue]: Srgb): string {
  if (!Number.isFinite(red + green + blue)) {
    throw new RangeError(`formatHex: channels must be numbers, got ${red}, ${green}, ${blue}`);
  }
  return rgb(red * 255, green * 255, blue * 255).formatHex();
}

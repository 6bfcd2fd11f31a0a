// What an SVG filter makes of one colour, step by step as the Filter Effects Module (W3C) says, without a screen: feColorMatrix in linear
// light, feComponentTransfer of type discrete on encoded sRGB.
import { formatHex, srgbOf } from '../../src/colour/parse';
import { type Eyes, type FilterStep, filterSteps, type Way } from '../../src/colour/seen';
import { encodedOf, linearOf } from '../../src/colour/spaces';

const EYES: Eyes = { distance: 120, severity: 1, tones: { medium: 40, light: 70 } };

/** A colour #rrggbb as a way of seeing shows it. */
export function seenAs(way: Way, hex: string, eyes: Partial<Eyes> = {}): string {
  return filterSteps(way, { ...EYES, ...eyes }).reduce(through, hex);
}

function through(hex: string, step: FilterStep): string {
  switch (step.kind) {
    case 'matrix': {
      const light = [...linearOf(srgbOf(hex)), 1, 1];
      const row = (at: number) =>
        light.reduce((sum, channel, index) => sum + channel * step.values[at * 5 + index]!, 0);
      return formatHex(encodedOf([row(0), row(1), row(2)]));
    }
    case 'levels': {
      const { table } = step;
      const [red, green, blue] = srgbOf(hex).map(
        (channel) => table[Math.min(table.length - 1, Math.floor(channel * table.length))]!,
      ) as [number, number, number];
      return formatHex([red, green, blue]);
    }
    case 'blur':
      return hex;
    default:
      return step satisfies never;
  }
}

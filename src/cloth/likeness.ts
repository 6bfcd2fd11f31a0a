// Decides how far two fabrics read as one: the colours of a print with their shares, its mean, the distance between two prints,
// and a likeness from 0 to 1. balance decides which pairs on the wall matter.
import { ciede2000 } from '../colour/difference';
import { formatHex } from '../colour/parse';
import { encodedOf, type LabD65, type LinearRgb, labD65Of, linearOfHex } from '../colour/spaces';
import { leastTransport } from '../colour/transport';

/** One colour of a cloth (#rrggbb) and the share of its surface, 0–1. */
interface ColourShare {
  readonly hex: string;
  readonly share: number;
}
/** The colours of a cloth; the shares sum to 1. A plain cloth has one. */
export type ColourMix = readonly ColourShare[];

/**
 * ΔE00 from which two cloths no longer read as one, unless the person sets another: one full step of the ten-step value
 * scale makers judge by. ΔE00 of two greys a step (10 L*) apart about middle grey is exactly 10, since its lightness
 * weight is 1 at L* 50; cloths a step apart in value are told apart at the wall (common practice, no source).
 */
export const LOOKALIKE_THRESHOLD = 10;

/** What is worked out of a mix once, however many others it is compared with. */
interface Measured {
  readonly light: LinearRgb;
  readonly lab: LabD65;
  /** Each of its colours. */
  readonly labs: readonly LabD65[];
}

const known = new WeakMap<ColourMix, Measured>();

function measured(caller: string, mix: ColourMix): Measured {
  let found = known.get(mix);
  if (!found) {
    checkMix(caller, mix);
    const light = sumOfLight(mix);
    found = { light, lab: labD65Of(light), labs: mix.map(({ hex }) => labD65Of(linearOfHex(hex))) };
    known.set(mix, found);
  }
  return found;
}

function sumOfLight(mix: ColourMix): LinearRgb {
  let red = 0;
  let green = 0;
  let blue = 0;
  for (const { hex, share } of mix) {
    const light = linearOfHex(hex);
    red += share * light[0];
    green += share * light[1];
    blue += share * light[2];
  }
  return [red, green, blue];
}

function checkMix(caller: string, mix: ColourMix): void {
  let total = 0;
  for (const { share } of mix) {
    if (!(share >= 0)) throw new RangeError(`${caller}: ${share} is not a share of a cloth`);
    total += share;
  }
  if (!(Math.abs(total - 1) <= 1e-6)) {
    throw new RangeError(`${caller}: the shares of a cloth's colours sum to 1, these to ${total}`);
  }
}

/**
 * The colour a print melts into seen from across the room, as light: the area-weighted mean in LINEAR light. Figures too
 * small to tell apart send their light to the same receptor, where amounts of light add; averaging encoded sRGB or L*
 * would come out too dark (half black, half white is L* 76, not 50). Throws unless the shares sum to 1.
 */
export function meanLight(mix: ColourMix): LinearRgb {
  return measured('meanLight', mix).light;
}

/** meanLight written #rrggbb, for showing. */
export function meanColour(mix: ColourMix): string {
  return formatHex(encodedOf(meanLight(mix)));
}

/** ΔE00 between the means of two cloths: how far apart they look from across the room. */
export function meanDistance(mixA: ColourMix, mixB: ColourMix): number {
  return ciede2000(measured('meanDistance', mixA).lab, measured('meanDistance', mixB).lab);
}

/**
 * How far apart two cloths look close by, where the colours of a print are told apart: the earth mover's distance of
 * their mixes (Rubner, Tomasi and Guibas, 'The Earth Mover's Distance as a Metric for Image Retrieval', 2000) with ΔE00
 * between colours as the cost, solved exactly. In ΔE00: 0 for the same mix, ΔE00 itself for two plain cloths, never more
 * than their most different pair of colours. Throws unless the shares sum to 1.
 */
export function mixDistance(mixA: ColourMix, mixB: ColourMix): number {
  const { labs } = measured('mixDistance', mixA);
  const others = measured('mixDistance', mixB).labs;
  const costs = labs.map((lab) => others.map((other) => ciede2000(lab, other)));
  return leastTransport(
    mixA.map(({ share }) => share),
    mixB.map(({ share }) => share),
    costs,
  );
}

/**
 * The difference of two cloths as the wall is looked at, in ΔE00: half meanDistance (stepped back, or squinting, a print is
 * its mean), half mixDistance (close by its colours are told apart). Neither will do alone: a red and white check has the
 * mean of a plain pink but is not taken for it, and a dark print sprinkled with white shares most of its surface with
 * the plain dark but is steps lighter from the door. For two plain cloths it is their ΔE00.
 */
export function clothDistance(mixA: ColourMix, mixB: ColourMix): number {
  return (meanDistance(mixA, mixB) + mixDistance(mixA, mixB)) / 2;
}

/**
 * The grade of a difference in ΔE00: 1 at 0, ½ at half the threshold, 0 from the threshold on, without a kink (1 − 3t² +
 * 2t³), so that a hair's breadth never turns a finding on or off. Throws unless the threshold is above 0.
 */
export function likenessAt(distance: number, threshold: number): number {
  if (!(threshold > 0)) throw new RangeError(`likenessAt: the threshold must be above 0, got ${threshold}`);
  const part = distance / threshold;
  return part >= 1 ? 0 : 1 - part * part * (3 - 2 * part);
}

/**
 * How far two cloths read as one, 0 (told apart) to 1 (the same to the eye): the grade of their clothDistance. The
 * threshold, in ΔE00, is the person's to set; below 0 throws, at 0 nothing reads as one. Symmetric; exactly 1 for a mix and
 * itself. Far means settle a pair without looking at the prints: clothDistance is at least half their distance.
 */
export function likeness(mixA: ColourMix, mixB: ColourMix, threshold: number = LOOKALIKE_THRESHOLD): number {
  if (threshold >= 0 && meanDistance(mixA, mixB) >= 2 * threshold) return 0;
  return likenessAt(clothDistance(mixA, mixB), threshold);
}

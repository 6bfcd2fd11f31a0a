// Finds the light of a block, the bands of its wedges, and how far fabrics are off in this picture, each from the others in a few
// rounds: the better the light is known, the finer fabrics are told apart.
import { type LinearRgb, oklabOf } from '../../colour/spaces';
import type { InParts } from '../../model/work/parts';
import { type BandReading, bandsOf, type CutWedge, type SeenBand, type WedgeBands } from './bands';
import type { BlockLook, Patch } from './look';
import { differences, type NeutralWedge, neutralWedge } from './neutral';
import type { Noise } from './runCost';
import { inNeutral, type Light, lightOf, type Pairing } from './sunlight';
import { apart, type Swatch, told } from './swatches';
import { readTogether } from './together';

/** A block in its light. */
export interface Settled {
  readonly light: Light;
  readonly found: readonly WedgeBands[];
  readonly cost: number;
  readonly noise: Noise;
}

const ROUNDS = 3;
/** While the light is not known well. */
const FIRST: Noise = { ring: 0.014, band: 0.014 };
/** What is usual, and how many bands or rings it counts for. */
export const USUAL: Noise = { ring: 0.011, band: 0.009 };
const BANDS_WORTH = 6;
const RINGS_WORTH = 60;
/** Colours of a fabric without a print differ by no more. */
const PLAIN = 0.01;
/** Noise is never less or more. */
const RING_LIMITS = [0.007, 0.02] as const;
const BAND_LIMITS = [0.004, 0.018] as const;

/** Settles a block that lies in about this light; `near` is the light of the whole picture where that is known from other blocks. */
export function* settled(
  look: BlockLook,
  start: Light,
  swatches: readonly Swatch[],
  cuts: readonly CutWedge[],
  near?: Light,
): InParts<Settled> {
  let [light, noise] = [start, FIRST];
  for (let round = 1; ; round += 1) {
    const now = light;
    const wedges = look.wedges.map((_, at) => neutralWedge(look, at, now));
    const reading: BandReading = { swatches, noise, pitch: look.pitch };
    const free: WedgeBands[] = [];
    for (const wedge of wedges) {
      yield null;
      free.push(bandsOf(wedge, reading, cuts));
    }
    if (round === ROUNDS) {
      const found = readTogether(wedges, readTogether(wedges, free, reading), reading);
      return { light, found, cost: free.reduce((sum, { cost }) => sum + cost, 0), noise };
    }
    const pairings = free.map(({ bands }, at) => pairingsOf(look, at, bands, swatches));
    light = lightOf(pairings.flat(), near);
    noise = noiseIn(light, wedges, free, pairings, swatches);
  }
}

/** Whether fabrics fit so badly that another light may be the true one. */
export function isDoubtful({ noise }: Settled): boolean {
  return noise.band > 0.011;
}

/** The bands of known fabrics with what is seen of them. */
function pairingsOf(
  look: BlockLook,
  wedge: number,
  bands: readonly SeenBand[],
  swatches: readonly Swatch[],
): Pairing[] {
  return bands.flatMap((band) => {
    const swatch = swatches[band.swatch];
    return swatch ? [{ ...patchOf(look, wedge, band), swatch }] : [];
  });
}

function patchOf(look: BlockLook, wedge: number, band: SeenBand): Pick<Pairing, 'patch' | 'weight'> {
  const trim = band.to - band.from > 6 ? 1 : 0;
  const light: [number, number, number] = [0, 0, 0];
  let mass = 0;
  for (let ring = band.from + trim; ring < band.to - trim; ring += 1) {
    mass += look.weights[ring]!;
    for (let channel = 0; channel < 3; channel += 1)
      light[channel]! += look.weights[ring]! * look.wedges[wedge]![ring * 3 + channel]!;
  }
  const middle = (band.from + band.to) >> 1;
  const patch: Patch = {
    light: light.map((one) => one / mass) as [number, number, number],
    x: look.places[wedge]![middle * 2]!,
    y: look.places[wedge]![middle * 2 + 1]!,
  };
  return { patch, weight: Math.min(6, mass / 4) * band.sure };
}

/** How far bands are off from their fabrics in a light, and how much the rings of plain ones differ. */
function noiseIn(
  light: Light,
  wedges: readonly NeutralWedge[],
  found: readonly WedgeBands[],
  pairings: readonly (readonly Pairing[])[],
  swatches: readonly Swatch[],
): Noise {
  let [square, bands] = [BANDS_WORTH * USUAL.band ** 2, BANDS_WORTH];
  for (const { patch, swatch, weight } of pairings.flat()) {
    if (weight < 0.5) continue;
    const seen = told(oklabOf(inNeutral(light, patch) as unknown as LinearRgb));
    square += Math.min(apart(seen, swatch.told), 2.7e-3) / 3;
    bands += 1;
  }
  let [sum, rings] = [RINGS_WORTH * USUAL.ring ** 2, RINGS_WORTH];
  const products = new Float64Array(6);
  found.forEach((wedge, at) => {
    for (const { from, to, swatch } of wedge.bands) {
      const print = swatches[swatch]?.along ?? 1;
      if (print > PLAIN || to - from < 6) continue;
      rings += differences(wedges[at]!, from, to, products);
      sum += (products[0]! + products[1]! + products[2]!) / 3;
    }
  });
  return {
    ring: within(Math.sqrt(sum / rings), RING_LIMITS),
    band: within(Math.sqrt(square / bands), BAND_LIMITS),
  };
}

function within(value: number, [least, most]: readonly [number, number]): number {
  return Math.max(least, Math.min(most, value));
}

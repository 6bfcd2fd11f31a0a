// Reads a look at a block: the light it lies in, the bands of its wedges by fabrics of the list, and which block of the project it is.
import type { FabricId, Project } from '../../model/project';
import type { Inches } from '../../model/units';
import { bandsOf, type CutWedge, meanLight, type NeutralWedge, type Noise, neutralWedge, type SeenBand, unevennessWithin, type WedgeBands } from './bands';
import { type LinearRgb, oklabOf } from '../../colour/spaces';
import { bestMatch, cutWedges, type KnownLook, knownLooks, type Match } from './known';
import type { BlockLook, Patch } from './look';
import { type Light, lightOf, likelyLights, type Pairing } from './sunlight';
import { apart, type Swatch, swatchesOf, told } from './swatches';

/** A band of a wedge, from the rim in. */
export interface ReadBand {
  /** Null where it is of no fabric of the list. */
  readonly fabric: FabricId | null;
  /** Finished, inches. */
  readonly width: Inches;
  /** How sure the reading is, 0 to 1; under SURE a person should look. */
  readonly sure: number;
  /** Its mean colour in even, neutral light: linear sRGB. */
  readonly light: readonly [number, number, number];
}

export interface ReadBlock {
  /** Clockwise from the top side as photographed; each from the rim in. */
  readonly wedges: readonly (readonly ReadBand[])[];
  /** The block of the project that it is; null for another one. */
  readonly known: { readonly number: number; readonly quarters: number; readonly sure: number } | null;
}

/** From here on a reading counts as sure. */
export const SURE = 0.9;

/** What a project knows that a reading needs; made once for many blocks. */
export interface Knowledge {
  readonly project: Project;
  readonly swatches: readonly Swatch[];
}

/** What is known of the fabrics and blocks of a project. */
export function knowledgeOf(project: Project): Knowledge {
  return { project, swatches: swatchesOf(project.fabrics) };
}

interface Reading {
  readonly light: Light;
  readonly wedges: readonly NeutralWedge[];
  readonly cost: number;
}

/** Reads one look; `light` is that of the whole picture where it is known from other blocks. */
export function readLook(look: BlockLook, knowledge: Knowledge, light?: Light): ReadBlock {
  const { project, swatches } = knowledge;
  const lights = light ? [{ light, cost: 0 }] : lightsOf([look], swatches);
  if ((globalThis as any).ORACLE) lights.unshift({ light: (globalThis as any).ORACLE(look, swatches), cost: 0 });
  const known = knownLooks(project, look, swatches);
  const cuts = cutWedges(project, look, swatches);
  const readings = lights.map(({ light, cost }): Reading & { match: Match | null } => {
    const wedges = look.wedges.map((_, at) => neutralWedge(look, at, light));
    return { light, cost, wedges, match: bestMatch(known, wedges, look, swatches) };
  });
  const matched = readings
    .filter(({ match }) => match)
    .sort((one, other) => one.match!.misfit - other.match!.misfit)[0];
  const match =
    matched && isSame(matched.match!) ? surely(look, matched.match!, known, swatches, light) : null;
  let wedges: readonly (readonly SeenBand[])[];
  if (match) wedges = match.wedges.map((wedge) => bandsOf(wedge, swatches, look.pitch, cuts, USUAL).bands);
  else {
    const all = readings.slice(0, Number(process.env.LIGHTS ?? 3)).map((one) => settled(look, one.light, swatches, cuts, light)).sort((a, b) => a.cost - b.cost);
    (globalThis as any).SETTLED?.(all);
    wedges = all[0]!.bands;
  }
  return {
    wedges: wedges.map((bands) => bands.map((band) => readBand(band, look, swatches))),
    known: match ? { number: match.match.number, quarters: match.match.quarters, sure: match.sure } : null,
  };
}

/** The likeliest lights for blocks in one picture, best first. */
export function lightsOf(
  looks: readonly BlockLook[],
  swatches: readonly Swatch[],
): { light: Light; cost: number }[] {
  const all = looks.map(patchesOf);
  const corners = looks.flatMap((look) => look.corners);
  const patches = all.flatMap((one) => one.patches);
  const weights = all.flatMap((one) => one.weights);
  return likelyLights(corners, patches, weights, swatches, 3);
}

/** Runs of rings, as patches to find the light by. */
function patchesOf(look: BlockLook): { patches: Patch[]; weights: number[] } {
  const run = Math.max(1, Math.round(look.rings / 32));
  const patches: Patch[] = [...look.corners];
  const weights: number[] = look.corners.map(() => 3);
  look.wedges.forEach((wedge, at) => {
    for (let ring = 0; ring + run <= look.rings; ring += run) {
      const light: [number, number, number] = [0, 0, 0];
      for (let step = 0; step < run; step += 1)
        for (let channel = 0; channel < 3; channel += 1)
          light[channel]! += wedge[(ring + step) * 3 + channel]! / run;
      const middle = ring + (run >> 1);
      patches.push({ light, x: look.places[at]![middle * 2]!, y: look.places[at]![middle * 2 + 1]! });
      weights.push(look.weights[middle]! * (look.radii[middle]! / look.radii[0]!) + 0.05);
    }
  });
  return { patches, weights };
}

const SAME = 2.2;

function isSame({ misfit: fit, next }: Match): boolean {
  return fit < SAME && fit < 0.75 * next;
}

interface MatchedReading extends Reading {
  readonly match: Match;
  readonly sure: number;
}

/** The light found anew from a block that is known; null where the block does not fit any more. */
function surely(
  look: BlockLook,
  match: Match,
  known: readonly KnownLook[],
  swatches: readonly Swatch[],
  near?: Light,
): MatchedReading | null {
  const pairings: Pairing[] = [];
  match.look.wedges.forEach((fabrics, at) => {
    for (let ring = 2; ring < look.rings - 2; ring += 2) {
      const kind = fabrics[ring]!;
      if (kind < 0 || fabrics[ring - 2] !== kind || fabrics[ring + 2] !== kind) continue;
      const seen = look.wedges[at]!;
      const light = [seen[ring * 3]!, seen[ring * 3 + 1]!, seen[ring * 3 + 2]!] as const;
      pairings.push({
        patch: { light, x: look.places[at]![ring * 2]!, y: look.places[at]![ring * 2 + 1]! },
        swatch: swatches[kind]!,
        weight: look.weights[ring]!,
      });
    }
  });
  const light = lightOf(pairings, near);
  const wedges = look.wedges.map((_, at) => neutralWedge(look, at, light));
  const again = bestMatch(known, wedges, look, swatches);
  if (!again || !isSame(again)) return null;
  return {
    light,
    wedges,
    cost: again.misfit,
    match: again,
    sure: Math.min(0.999, 1 - (again.misfit / again.next) ** 2),
  };
}

/** What is expected of noise before anything is seen, and of how many bands or rings that is worth. */
const USUAL: Noise = { ring: 0.011, band: 0.009 };
const WORTH = 6;

/** The deviations of rings and of bands from the fabrics they were read as. */
function noiseOf(
  wedges: readonly NeutralWedge[],
  found: readonly WedgeBands[],
  swatches: readonly Swatch[],
): Noise {
  const products = new Float64Array(6);
  let [square, bands] = [WORTH * USUAL.band ** 2, WORTH];
  let [within, rings] = [WORTH * 10 * USUAL.ring ** 2, WORTH * 10];
  found.forEach((wedge, at) => {
    for (const band of wedge.bands) {
      if (band.swatch < 0 || band.to - band.from < 6) continue;
      const swatch = swatches[band.swatch]!;
      const off = apart(told(oklabOf(band.light as unknown as LinearRgb)), swatch.told) / 3;
      square += Math.min(off, 0.03 ** 2);
      bands += 1;
      if (swatch.along > 0.01) continue;
      rings += unevennessWithin(wedges[at]!, band.from, band.to, products);
      within += (products[0]! + products[1]! + products[2]!) / 3;
    }
  });
  const kept = (of: number, [least, most]: readonly [number, number]) =>
    Math.max(least, Math.min(most, Math.sqrt(of)));
  return { ring: kept(within / rings, [0.007, 0.02]), band: kept(square / bands, [0.004, 0.018]) };
}

/** Noise while the light is not known well, in rounds. */
const FIRST: Noise = { ring: 0.014, band: 0.014 };

/** The bands of all wedges, with the light found anew from whole bands, and from that the bands again. */
function settled(
  look: BlockLook,
  start: Light,
  swatches: readonly Swatch[],
  cuts: readonly CutWedge[],
  near?: Light,
): Settled {
  let [light, noise] = [start, FIRST];
  let result: Settled | null = null;
  for (let round = 0; round < ROUNDS; round += 1) {
    const now = light;
    const wedges = look.wedges.map((_, at) => neutralWedge(look, at, now));
    const found = wedges.map((wedge) => bandsOf(wedge, swatches, look.pitch, cuts, noise));
    result = { light, bands: found.map(({ bands }) => bands), cost: found.reduce((sum, { cost }) => sum + cost, 0), noise };
    const pairings = found.flatMap(({ bands }, at) =>
      bands.flatMap((band) => (band.swatch < 0 ? [] : [bandPairing(look, at, band, swatches)])),
    );
    light = lightOf(pairings, near);
    const next = light;
    noise = noiseOf(look.wedges.map((_, at) => neutralWedge(look, at, next)), found.map((f, at) => relit(f, look, at, next)), swatches);
  }
  return result!;
}
function relit(found: WedgeBands, look: BlockLook, at: number, light: Light): WedgeBands {
  const wedge = neutralWedge(look, at, light);
  return { ...found, bands: found.bands.map((band) => ({ ...band, light: meanLight(wedge, band.from, band.to) })) };
}
const ROUNDS = Number(process.env.ROUNDS ?? 4);
interface Settled { readonly light: Light; readonly bands: readonly (readonly SeenBand[])[]; readonly cost: number; readonly noise: Noise }

function bandPairing(look: BlockLook, wedge: number, band: SeenBand, swatches: readonly Swatch[]): Pairing {
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
  return { patch, swatch: swatches[band.swatch]!, weight: Math.min(6, mass / 4) * band.sure };
}

function readBand(band: SeenBand, look: BlockLook, swatches: readonly Swatch[]): ReadBand {
  return {
    fabric: band.swatch < 0 ? null : swatches[band.swatch]!.fabric,
    width: (band.to - band.from) * look.pitch,
    sure: band.sure,
    light: band.light,
  };
}

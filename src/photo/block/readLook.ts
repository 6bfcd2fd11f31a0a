// Reads a look at a block: the light it lies in, the bands of its wedges by fabrics of the list, and which block of the project it is.
import type { FabricId, Project } from '../../model/project';
import type { Inches } from '../../model/units';
import type { InParts } from '../../model/work/parts';
import { bandsOf, type CutWedge, type WedgeBands } from './bands';
import { bestMatch, cutWedges, type KnownLook, knownLooks, type Match } from './known';
import type { BlockLook, Patch } from './look';
import { type NeutralWedge, neutralWedge } from './neutral';
import { isDoubtful, type Settled, settled, USUAL } from './settled';
import { type Light, lightOf, likelyLights, type Pairing } from './sunlight';
import { type Swatch, swatchesOf } from './swatches';

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

/** A block as it was read from its look, with the light it was seen in. */
export interface LitReading extends ReadBlock {
  readonly light: Light;
}

/** From here on a reading counts as sure. */
export const SURE = 0.9;

/** What is read is never as sure as what a person says, which is 1. */
const MOST_SURE = 0.999;

/** What a project knows that a reading needs; made once for many blocks. */
export interface Knowledge {
  readonly project: Project;
  readonly swatches: readonly Swatch[];
}

/** What is known of the fabrics and blocks of a project. */
export function knowledgeOf(project: Project): Knowledge {
  return { project, swatches: swatchesOf(project.fabrics) };
}

/** Reads one look; `light` is that of the whole picture where it is known from other blocks. Goes on in parts. */
export function* readLook(look: BlockLook, knowledge: Knowledge, light?: Light): InParts<LitReading> {
  const { project, swatches } = knowledge;
  const lights = light ? [light] : yield* lightsOf([look], swatches);
  const known = knownLooks(project, look, swatches);
  const cuts = cutWedges(project, look, swatches);
  const match = matched(look, lights, known, swatches, light);
  if (match) {
    const reading = { swatches, noise: USUAL, pitch: look.pitch };
    const found: WedgeBands[] = [];
    for (const wedge of match.wedges) {
      yield null;
      found.push(bandsOf(wedge, reading, cuts));
    }
    const { number, quarters } = match.match;
    const same = { number, quarters, sure: match.sure };
    return { wedges: readBands(found, look, swatches), known: same, light: match.light };
  }
  const likely = yield* likeliest(look, lights, swatches, cuts, light);
  return { wedges: readBands(likely.found, look, swatches), known: null, light: likely.light };
}

/** The block in the first of these lights; where its fabrics fit badly, in the one in which it fits best. */
function* likeliest(
  look: BlockLook,
  lights: readonly Light[],
  swatches: readonly Swatch[],
  cuts: readonly CutWedge[],
  near?: Light,
): InParts<Settled> {
  let best = yield* settled(look, lights[0]!, swatches, cuts, near);
  if (!isDoubtful(best)) return best;
  for (const light of lights.slice(1)) {
    const other = yield* settled(look, light, swatches, cuts, near);
    if (other.noise.band < best.noise.band) best = other;
  }
  return best;
}

/** The likeliest lights for blocks in one picture, best first. */
export function* lightsOf(looks: readonly BlockLook[], swatches: readonly Swatch[]): InParts<Light[]> {
  const all = looks.map(patchesOf);
  const corners = looks.flatMap((look) => look.corners);
  const patches = all.flatMap((one) => one.patches);
  const weights = all.flatMap((one) => one.weights);
  return yield* likelyLights(corners, patches, weights, swatches, 3);
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

/** A block of the project that fits what is seen. */
interface MatchedReading {
  readonly light: Light;
  readonly wedges: readonly NeutralWedge[];
  readonly match: Match;
  readonly sure: number;
}

/** The block of the project that fits best in any of these lights; null where none fits. */
function matched(
  look: BlockLook,
  lights: readonly Light[],
  known: readonly KnownLook[],
  swatches: readonly Swatch[],
  near?: Light,
): MatchedReading | null {
  const best = lights
    .map((light) => bestMatch(known, inLight(look, light), look, swatches))
    .filter((match) => match !== null)
    .sort((one, other) => one.misfit - other.misfit)[0];
  return best && isSame(best) ? surely(look, best, known, swatches, near) : null;
}

function inLight(look: BlockLook, light: Light): NeutralWedge[] {
  return look.wedges.map((_, at) => neutralWedge(look, at, light));
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
  const wedges = inLight(look, light);
  const again = bestMatch(known, wedges, look, swatches);
  if (!again || !isSame(again)) return null;
  return { light, wedges, match: again, sure: Math.min(MOST_SURE, 1 - (again.misfit / again.next) ** 2) };
}

/** Bands as they are told: fabrics by name, widths in inches. */
function readBands(
  found: readonly WedgeBands[],
  { pitch }: BlockLook,
  swatches: readonly Swatch[],
): ReadBand[][] {
  return found.map(({ bands }) =>
    bands.map(({ from, to, swatch, sure, light }) => ({
      fabric: swatches[swatch]?.fabric ?? null,
      width: (to - from) * pitch,
      sure: Math.min(MOST_SURE, sure),
      light,
    })),
  );
}

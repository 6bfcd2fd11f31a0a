// Reads a block from pixels when its corners are known: the light it lies in, the bands of its wedges by fabrics of the list, and which
// block of the project it is. corners.ts finds the corners.
import type { Point } from '../../geometry/point';
import type { FabricId, Project, WedgePlan } from '../../model/project';
import type { Inches } from '../../model/units';
import { straightened, type Lens, lensOf } from '../plane/lens';
import type { Pixels, Plane } from '../pixels/pixels';
import { shrunk } from '../pixels/resize';
import { bandsOf, type NeutralWedge, neutralWedge, type SeenBand } from './bands';
import { shapeTo } from './corners';
import { bestMatch, type KnownLook, knownLooks, type Match } from './known';
import { type BlockLook, cornerStep, lookAt, type Patch } from './look';
import { type BlockShape, shapeOf } from './shape';
import { type Light, lightOf, likelyLights, misfit, type Pairing } from './sunlight';
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

/** From here on a reading counts as sure. */
export const SURE = 0.9;

/** Pixels to the side of a block for its reading, and rings to the wedge. */
const READ_SIDE = 420;
const RINGS = 128;

/** What a project knows that a reading needs; made once for many blocks. */
export interface Knowledge {
  readonly project: Project;
  readonly swatches: readonly Swatch[];
}

/** What is known of the fabrics and blocks of a project. */
export function knowledgeOf(project: Project): Knowledge {
  return { project, swatches: swatchesOf(project.fabrics) };
}

/** Reads the block between four corners (top left, top right, bottom right, bottom left, in pixels as photographed). */
export function readBlock(pixels: Pixels, corners: readonly Point[], knowledge: Knowledge, bend = 0): ReadBlock {
  const { plane, scale, left, top } = cutOut(pixels, corners, READ_SIDE);
  const lens: Lens = lensWithin(pixels, bend, scale, left, top);
  const inPlane = corners.map(({ x, y }) => straightened(lens, { x: (x - left) * scale, y: (y - top) * scale }));
  const { wedge } = knowledge.project;
  const allowance = allowanceSeen(plane, inPlane, lens, wedge);
  return readLook(lookThrough(plane, inPlane, lens, shapeOf(wedge, allowance), RINGS), knowledge);
}

/** Steps in which the allowance is tried, and how far beyond the seam of the plan. */
const ALLOWANCES = [0, 0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875, 1, 1.125, 1.25, 1.375, 1.5];

/** How much cloth lies round the finished block: with it the seams of the corner triangles are where colours change most. */
export function allowanceSeen(plane: Plane, corners: readonly Point[], lens: Lens, wedge: WedgePlan): Inches {
  const clear = ALLOWANCES.map((share) => {
    const allowance = share * wedge.outerSeam;
    const shape = shapeOf(wedge, allowance);
    const usual = share === 0 || share === 1 ? 1.06 : 1;
    return { allowance, worth: usual * cornerStep(plane, shapeTo(shape, corners), lens, shape) };
  });
  return clear.reduce((best, one) => (one.worth > best.worth ? one : best)).allowance;
}

/** A look at the block that fills four corners of a plane, straightened already. */
export function lookThrough(plane: Plane, corners: readonly Point[], lens: Lens, shape: BlockShape, rings: number): BlockLook {
  return lookAt(plane, shapeTo(shape, corners), lens, shape, rings);
}

/** The part of a picture round some points, made smaller so that it is about `side` pixels to a side of their quadrilateral. */
export function cutOut(pixels: Pixels, corners: readonly Point[], side: number): { plane: Plane; scale: number; left: number; top: number } {
  const xs = corners.map(({ x }) => x);
  const ys = corners.map(({ y }) => y);
  const margin = 0.06 * Math.max(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)) + 4;
  const within = (at: number, most: number) => Math.max(0, Math.min(most, Math.round(at)));
  const left = within(Math.min(...xs) - margin, pixels.width - 2);
  const top = within(Math.min(...ys) - margin, pixels.height - 2);
  const width = Math.max(2, within(Math.max(...xs) + margin, pixels.width) - left);
  const height = Math.max(2, within(Math.max(...ys) + margin, pixels.height) - top);
  const long = Math.max(...corners.map((one, at) => Math.hypot(one.x - corners[(at + 1) % 4]!.x, one.y - corners[(at + 1) % 4]!.y)));
  const scale = Math.min(1, side / long);
  const [w, h] = [Math.max(2, Math.round(width * scale)), Math.max(2, Math.round(height * scale))];
  return { plane: shrunk(pixels, { x: left, y: top, width, height }, w, h), scale: w / width, left, top };
}

function lensWithin(pixels: Pixels, bend: number, scale: number, left: number, top: number): Lens {
  const whole = lensOf(pixels, bend);
  return { middle: { x: (whole.middle.x - left) * scale, y: (whole.middle.y - top) * scale }, half: whole.half * scale, bend };
}

interface Reading {
  readonly light: Light;
  readonly wedges: readonly NeutralWedge[];
  readonly cost: number;
}

/** Reads one look. */
export function readLook(look: BlockLook, knowledge: Knowledge): ReadBlock {
  const { project, swatches } = knowledge;
  const { patches, weights } = patchesOf(look);
  const lights = likelyLights(look.corners, patches, weights, swatches, 3);
  const known = knownLooks(project, look, swatches);
  const readings = lights.map(({ light, cost }): Reading & { match: Match | null } => {
    const wedges = look.wedges.map((_, at) => neutralWedge(look, at, light));
    return { light, cost, wedges, match: bestMatch(known, wedges, look, swatches) };
  });
  const matched = readings.filter(({ match }) => match).sort((one, other) => one.match!.misfit - other.match!.misfit)[0];
  const match = matched && isSame(matched.match!) ? surely(look, matched.match!, known, swatches) : null;
  (globalThis as any).DBG?.push(lights.map((l) => Array.from(l.light, (x) => x.toFixed(2)).join(' ') + ' cost ' + l.cost.toFixed(5)), match ? 'M ' + Array.from(match.light, (x) => x.toFixed(2)).join(' ') + ' misfit ' + match.match.misfit.toFixed(2) + ' cost ' + misfit(match.light, patches, weights, swatches).cost.toFixed(5) : 'none');
  const chosen = match ?? settledLight(look, readings[0]!, swatches);
  const wedges = chosen.wedges.map((wedge) => bandsOf(wedge, swatches, look.pitch));
  return {
    wedges: wedges.map((bands) => bands.map((band) => readBand(band, look, swatches))),
    known: match ? { number: match.match.number, quarters: match.match.quarters, sure: match.sure } : null,
  };
}

/** Runs of rings, as patches to find the light by. */
function patchesOf(look: BlockLook): { patches: Patch[]; weights: number[] } {
  const run = Math.max(1, Math.round(look.rings / 32));
  const patches: Patch[] = [...look.corners];
  const weights: number[] = look.corners.map(() => 3);
  look.wedges.forEach((wedge, at) => {
    for (let ring = 0; ring + run <= look.rings; ring += run) {
      const light: [number, number, number] = [0, 0, 0];
      for (let step = 0; step < run; step += 1) for (let channel = 0; channel < 3; channel += 1) light[channel]! += wedge[(ring + step) * 3 + channel]! / run;
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
function surely(look: BlockLook, match: Match, known: readonly KnownLook[], swatches: readonly Swatch[]): MatchedReading | null {
  const pairings: Pairing[] = [];
  match.look.wedges.forEach((fabrics, at) => {
    for (let ring = 2; ring < look.rings - 2; ring += 2) {
      const kind = fabrics[ring]!;
      if (kind < 0 || fabrics[ring - 2] !== kind || fabrics[ring + 2] !== kind) continue;
      const seen = look.wedges[at]!;
      const light = [seen[ring * 3]!, seen[ring * 3 + 1]!, seen[ring * 3 + 2]!] as const;
      pairings.push({ patch: { light, x: look.places[at]![ring * 2]!, y: look.places[at]![ring * 2 + 1]! }, swatch: swatches[kind]!, weight: look.weights[ring]! });
    }
  });
  const light = lightOf(pairings);
  const wedges = look.wedges.map((_, at) => neutralWedge(look, at, light));
  const again = bestMatch(known, wedges, look, swatches);
  if (!again || !isSame(again)) return null;
  return { light, wedges, cost: again.misfit, match: again, sure: Math.min(0.999, 1 - (again.misfit / again.next) ** 2) };
}

/** Finds the light anew from whole bands, twice. */
function settledLight(look: BlockLook, reading: Reading, swatches: readonly Swatch[]): Reading {
  let { light, wedges } = reading;
  for (let round = 0; round < 2; round += 1) {
    const pairings = wedges.flatMap((wedge, at) =>
      bandsOf(wedge, swatches, look.pitch).flatMap((band) => (band.swatch < 0 ? [] : [bandPairing(look, at, band, swatches)])),
    );
    light = lightOf(pairings);
    const again = light;
    wedges = look.wedges.map((_, at) => neutralWedge(look, at, again));
  }
  return { ...reading, light, wedges };
}

function bandPairing(look: BlockLook, wedge: number, band: SeenBand, swatches: readonly Swatch[]): Pairing {
  const trim = band.to - band.from > 6 ? 1 : 0;
  const light: [number, number, number] = [0, 0, 0];
  let mass = 0;
  for (let ring = band.from + trim; ring < band.to - trim; ring += 1) {
    mass += look.weights[ring]!;
    for (let channel = 0; channel < 3; channel += 1) light[channel]! += look.weights[ring]! * look.wedges[wedge]![ring * 3 + channel]!;
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

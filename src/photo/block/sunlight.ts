// The light a block lies in, found from the fabrics of the list: a gain for each channel (von Kries, in linear light) and a smooth
// fall-off across the picture, such that what is seen becomes fabrics of the list as nearly as it can.
import type { LinearRgb } from '../../colour/spaces';
import { oklabOf } from '../../colour/spaces';
import type { InParts } from '../../model/work/parts';
import { solved } from '../plane/solve';
import type { Patch } from './look';
import { apart, type Swatch } from './swatches';

/** Logarithms: gains of red, green and blue, then the fall-off by x, y, x², xy, y², the same for all channels. */
export type Light = Float64Array;

const TERMS = 8;

/** The logarithm of how much brighter it is at a place than in the middle. */
export function fallOff(light: Light, x: number, y: number): number {
  return light[3]! * x + light[4]! * y + light[5]! * x * x + light[6]! * x * y + light[7]! * y * y;
}

/** What a patch would be in even, neutral light: linear light. */
export function inNeutral(light: Light, patch: Patch): [number, number, number] {
  const off = fallOff(light, patch.x, patch.y);
  return [0, 1, 2].map((channel) => patch.light[channel]! * Math.exp(-light[channel]! - off)) as [
    number,
    number,
    number,
  ];
}

/** OKLab of what a patch would be in even, neutral light. */
function neutralOklab(light: Light, patch: Patch): readonly [number, number, number] {
  return oklabOf(inNeutral(light, patch) as unknown as LinearRgb) as unknown as [number, number, number];
}

/** A patch said to be of a fabric, and how much that counts. */
export interface Pairing {
  readonly patch: Patch;
  readonly swatch: Swatch;
  readonly weight: number;
}

/** Deviations of the terms before anything is seen: what lights there are. Gains of red and blue are told against green. */
const USUAL = { gain: -0.3, gainSpread: 0.5, cast: 0.5, slope: 0.45, bow: 0.25 } as const;

/** The light of least squares for these pairings, within what is usual; or near to a light that is known already. */
export function lightOf(pairings: readonly Pairing[], near?: Light): Light {
  const normal = new Float64Array(TERMS * TERMS);
  const right = new Float64Array(TERMS);
  const row = new Float64Array(TERMS);
  const add = (value: number, weight: number) => {
    for (let i = 0; i < TERMS; i += 1) {
      const by = weight * row[i]!;
      if (by === 0) continue;
      right[i]! += by * value;
      for (let j = 0; j < TERMS; j += 1) normal[i * TERMS + j]! += by * row[j]!;
    }
  };
  const expect = (terms: Readonly<Record<number, number>>, value: number, spread: number) => {
    row.fill(0);
    for (const [term, by] of Object.entries(terms)) row[Number(term)] = by;
    add(value, 1 / spread ** 2);
  };
  expect({ 1: 1 }, USUAL.gain, USUAL.gainSpread);
  expect({ 0: 1, 1: -1 }, 0, USUAL.cast);
  expect({ 2: 1, 1: -1 }, 0, USUAL.cast);
  for (const term of [3, 4]) expect({ [term]: 1 }, 0, USUAL.slope);
  for (const term of [5, 6, 7]) expect({ [term]: 1 }, 0, USUAL.bow);
  for (const [term, value] of (near ?? []).entries()) expect({ [term]: 1 }, value, term < 3 ? 0.07 : 0.1);
  for (const { patch, swatch, weight } of pairings) {
    const { x, y } = patch;
    row.set([0, 0, 0, x, y, x * x, x * y, y * y]);
    for (let channel = 0; channel < 3; channel += 1) {
      const seen = patch.light[channel]!;
      const true_ = swatch.light[channel]!;
      // Dark channels say little: noise and stray light weigh more there. Nor do those the camera has cut off.
      const trust = seen > 0.96 ? 0 : true_ / (true_ + 0.02);
      if (trust === 0) continue;
      row[channel] = 1;
      add(Math.log((seen + 0.003) / (true_ + 0.003)), (weight * trust) / NOISE ** 2);
      row[channel] = 0;
    }
  }
  return solved(normal, right);
}

/** Deviation of the logarithm of one patch's light. */
const NOISE = 0.08;

/** Squared distance, in OKLab, beyond which a patch is of no fabric of the list. */
const STRANGE = 0.09 ** 2;

/** How badly patches fit the list in a light: mean of the capped squared distances to the nearest fabric, and which that is. */
function misfit(
  light: Light,
  patches: readonly Patch[],
  weights: readonly number[],
  swatches: readonly Swatch[],
): { cost: number; nearest: number[] } {
  let [cost, mass] = [0, 0];
  const nearest = patches.map((patch, at) => {
    const seen = neutralOklab(light, patch);
    let [best, least] = [-1, Number.POSITIVE_INFINITY];
    swatches.forEach((swatch, index) => {
      const square = apart(seen, swatch.oklab);
      if (square < least) [best, least] = [index, square];
    });
    cost += weights[at]! * Math.min(least, STRANGE);
    mass += weights[at]!;
    return least < STRANGE ? best : -1;
  });
  return { cost: cost / mass, nearest };
}

/** How unusual a light is, in the measure of `misfit`, so that a bright room is not taken for pale cloth. */
function unusual(light: Light): number {
  const gain = ((light[1]! - USUAL.gain) / USUAL.gainSpread) ** 2;
  const cast = ((light[0]! - light[1]!) / USUAL.cast) ** 2 + ((light[2]! - light[1]!) / USUAL.cast) ** 2;
  // Lamps and daylight differ along red against blue; green or magenta light is rare.
  const tint = ((light[0]! + light[2]!) / 2 - light[1]!) / 0.25;
  return 6e-5 * (gain + cast + tint * tint);
}

/**
 * The likeliest lights for what is seen, best first. `firm` are patches of one unknown fabric each (the corners all of the same):
 * each fabric of the list is tried for them; then lights of all colours and strengths. Goes on in parts.
 */
export function* likelyLights(
  firm: readonly Patch[],
  patches: readonly Patch[],
  weights: readonly number[],
  swatches: readonly Swatch[],
  most: number,
): InParts<Light[]> {
  const starts = [
    ...swatches.map((swatch) => lightOf(firm.map((patch) => ({ patch, swatch, weight: 4 })))),
    ...plainLights(),
  ];
  const tried: Tried[] = [];
  for (const light of starts) {
    yield null;
    tried.push({ light, cost: misfit(light, patches, weights, swatches).cost + unusual(light) });
  }
  const best: Tried[] = [];
  for (const { light } of tried.sort(byCost).slice(0, Math.max(most, 6))) {
    yield null;
    best.push(grown(light, patches, weights, swatches));
  }
  return best
    .sort(byCost)
    .slice(0, most)
    .map(({ light }) => light);
}

interface Tried {
  readonly light: Light;
  readonly cost: number;
}

function byCost(one: Tried, other: Tried): number {
  return one.cost - other.cost;
}

/** Lights from lamplight to shade, strong and weak. */
function plainLights(): Light[] {
  return [-0.9, -0.6, -0.3, 0].flatMap((gain) =>
    [-0.15, 0, 0.2, 0.4, 0.6].map((warm) =>
      Float64Array.from([gain + warm * 0.6, gain, gain - warm, 0, 0, 0, 0, 0]),
    ),
  );
}

/** Pairs patches with the nearest fabrics and finds the light anew, a few times. */
function grown(
  start: Light,
  patches: readonly Patch[],
  weights: readonly number[],
  swatches: readonly Swatch[],
): Tried {
  let light = start;
  let best = { light, cost: Number.POSITIVE_INFINITY };
  for (let round = 0; round < 7; round += 1) {
    const { cost, nearest } = misfit(light, patches, weights, swatches);
    const now = cost + unusual(light);
    if (now < best.cost) best = { light, cost: now };
    else if (round > 2) break;
    const pairings = nearest.flatMap((index, at) =>
      index < 0 ? [] : [{ patch: patches[at]!, swatch: swatches[index]!, weight: weights[at]! }],
    );
    light = lightOf(pairings);
  }
  return best;
}

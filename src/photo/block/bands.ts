// Splits a wedge into bands: the cut into pieces, each of one fabric of the list, that explains its rings best. All cuts are
// weighed by dynamic programming; a band costs something, so that noise makes none.
import { type LinearRgb, oklabOf } from '../../colour/spaces';
import type { BlockLook } from './look';
import { inNeutral, type Light } from './sunlight';
import { apart, type Swatch } from './swatches';

/** A band as it was read: rings from `from` to under `to`, the rim first. */
export interface SeenBand {
  readonly from: number;
  readonly to: number;
  /** Index in the list; −1 for a fabric that is not in it. */
  readonly swatch: number;
  /** How likely it is that fabric, 0 to 1, by colour alone. */
  readonly sure: number;
  /** Mean linear light in even, neutral light. */
  readonly light: readonly [number, number, number];
}

/** A wedge in even, neutral light, with the sums that give the mean of any run of rings at once. */
export interface NeutralWedge {
  readonly rings: number;
  readonly oklab: Float32Array;
  /** Running sums of weight, of weighted light, of weighted OKLab and of its square. */
  readonly mass: Float64Array;
  readonly light: Float64Array;
  readonly colour: Float64Array;
  readonly square: Float64Array;
}

/** A wedge of a look, the light taken out. */
export function neutralWedge(look: BlockLook, wedge: number, light: Light): NeutralWedge {
  const { rings } = look;
  const oklab = new Float32Array(rings * 3);
  const [mass, square] = [new Float64Array(rings + 1), new Float64Array(rings + 1)];
  const [lights, colour] = [new Float64Array(3 * rings + 3), new Float64Array(3 * rings + 3)];
  for (let ring = 0; ring < rings; ring += 1) {
    const seen = look.wedges[wedge]!;
    const patch = {
      light: [seen[ring * 3]!, seen[ring * 3 + 1]!, seen[ring * 3 + 2]!] as const,
      x: look.places[wedge]![ring * 2]!,
      y: look.places[wedge]![ring * 2 + 1]!,
    };
    const neutral = inNeutral(light, patch);
    const lab = oklabOf(neutral as unknown as LinearRgb);
    const weight = look.weights[ring]!;
    mass[ring + 1] = mass[ring]! + weight;
    let squares = 0;
    for (let channel = 0; channel < 3; channel += 1) {
      const one = lab[channel]!;
      oklab[ring * 3 + channel] = one;
      squares += one * one;
      lights[(ring + 1) * 3 + channel] = lights[ring * 3 + channel]! + weight * neutral[channel]!;
      colour[(ring + 1) * 3 + channel] = colour[ring * 3 + channel]! + weight * one;
    }
    square[ring + 1] = square[ring]! + weight * squares;
  }
  return { rings, oklab, mass, light: lights, colour, square };
}

/** Deviation of a ring from its fabric without a print, of a whole band's mean, and what a new band costs. */
const RING = 0.022;
const BAND = 0.02;
const NEW_BAND = 7;
/** The colour of an unknown fabric may be any; its share of what is expected. */
const STRANGE_COST = 9;
/** The narrowest band, inches finished. */
const NARROWEST = 0.2;
/** Rings of a print differ by this share of the differences of its colours. */
const PRINT = 0.15;
/** Share of a ring that is independent of its neighbours. */
const RINGS_APART = 0.4;

/** The mean light of rings from `from` to under `to`; of longer runs without the rings at the seams. */
function meanLight({ mass, light }: NeutralWedge, from: number, to: number): [number, number, number] {
  const trim = to - from >= 8 ? 2 : to - from >= 4 ? 1 : 0;
  const [first, last] = [from + trim, to - trim];
  const weight = mass[last]! - mass[first]!;
  return [0, 1, 2].map((channel) => (light[last * 3 + channel]! - light[first * 3 + channel]!) / weight) as [
    number,
    number,
    number,
  ];
}

/** What a run of rings costs as each fabric. */
function costsOf(
  wedge: NeutralWedge,
  from: number,
  to: number,
  swatches: readonly Swatch[],
  into: Float64Array,
): void {
  const mean = oklabOf(meanLight(wedge, from, to) as unknown as LinearRgb);
  const { mass, colour, square } = wedge;
  const trim = to - from >= 4 ? 1 : 0;
  const [first, last] = [from + trim, to - trim];
  const weight = mass[last]! - mass[first]!;
  let within = square[last]! - square[first]!;
  for (let channel = 0; channel < 3; channel += 1)
    within -= (colour[last * 3 + channel]! - colour[first * 3 + channel]!) ** 2 / weight;
  const scale = (mass[to]! - mass[from]!) / weight;
  within = Math.max(0, within * scale);
  // Blur makes neighbouring rings alike: they count for less than one each.
  const count = Math.max(1, weight * scale * RINGS_APART);
  within *= RINGS_APART;
  for (let index = 0; index < swatches.length; index += 1) {
    const swatch = swatches[index]!;
    const print = (PRINT * swatch.spread) ** 2;
    const band = BAND * BAND + print / count;
    into[index] =
      unevenness(within, count, RING * RING + print) +
      apart(mean, swatch.oklab) / (2 * band) +
      1.5 * Math.log(band / (BAND * BAND));
  }
  into[swatches.length] =
    Math.min(unevenness(within, count, RING * RING), unevenness(within, count, 4 * RING * RING)) +
    STRANGE_COST;
}

/** What it costs that rings differ, where they are expected to differ by `variance`. */
function unevenness(within: number, count: number, variance: number): number {
  return within / (2 * variance) + 0.75 * count * Math.log(variance / (RING * RING));
}

interface CostedBands {
  readonly bands: readonly SeenBand[];
  readonly cost: number;
}

/** The likeliest bands of a wedge and what they cost, from the rim in. `pitch` is inches to the ring. */
function freeBands(wedge: NeutralWedge, swatches: readonly Swatch[], pitch: number): CostedBands {
  const { rings } = wedge;
  const least = Math.max(2, Math.round(NARROWEST / pitch));
  const kinds = swatches.length + 1;
  const costs = new Float64Array(kinds);
  // For each end the cheapest way there, and the cheapest that does not end in the same fabric.
  const best = new Float64Array((rings + 1) * kinds).fill(Number.POSITIVE_INFINITY);
  const start = new Int32Array((rings + 1) * kinds).fill(-1);
  const before = new Int32Array((rings + 1) * kinds).fill(-1);
  const [first, second] = [new Int32Array(rings + 1).fill(-1), new Int32Array(rings + 1).fill(-1)];
  for (let to = least; to <= rings; to += 1) {
    for (let from = 0; from <= to - least; from += 1) {
      if (from > 0 && from < least) continue;
      costsOf(wedge, from, to, swatches, costs);
      for (let kind = 0; kind < kinds; kind += 1) {
        const last = from === 0 ? -1 : first[from] === kind ? second[from]! : first[from]!;
        if (from > 0 && last < 0) continue;
        const cost = costs[kind]! + NEW_BAND + (from === 0 ? 0 : best[from * kinds + last]!);
        if (cost < best[to * kinds + kind]!) {
          best[to * kinds + kind] = cost;
          start[to * kinds + kind] = from;
          before[to * kinds + kind] = last;
        }
      }
    }
    rank(best, to, kinds, first, second);
  }
  const found: SeenBand[] = [];
  for (let to = rings, kind = first[rings]!; to > 0; ) {
    const from = start[to * kinds + kind]!;
    found.unshift(seenBand(wedge, from, to, kind, swatches, costs));
    [to, kind] = [from, before[to * kinds + kind]!];
  }
  return { bands: found, cost: best[rings * kinds + first[rings]!]! };
}

function rank(best: Float64Array, to: number, kinds: number, first: Int32Array, second: Int32Array): void {
  for (let kind = 0; kind < kinds; kind += 1) {
    const cost = best[to * kinds + kind]!;
    if (cost === Number.POSITIVE_INFINITY) continue;
    if (first[to]! < 0 || cost < best[to * kinds + first[to]!]!) {
      second[to] = first[to]!;
      first[to] = kind;
    } else if (second[to]! < 0 || cost < best[to * kinds + second[to]!]!) second[to] = kind;
  }
}

function seenBand(
  wedge: NeutralWedge,
  from: number,
  to: number,
  kind: number,
  swatches: readonly Swatch[],
  costs: Float64Array,
): SeenBand {
  costsOf(wedge, from, to, swatches, costs);
  let sum = 0;
  for (const cost of costs) sum += Math.exp(TEMPER * (costs[kind]! - cost));
  return {
    from,
    to,
    swatch: kind === swatches.length ? -1 : kind,
    sure: 1 / sum,
    light: meanLight(wedge, from, to),
  };
}

/** A wedge as it can be cut from a set of the project: runs of rings and their fabrics. */
export interface CutWedge {
  readonly runs: readonly { readonly from: number; readonly to: number; readonly swatch: number }[];
}

/** By how much a wedge of the project may fit worse than free bands and still be what is there: seams are sewn as they are sewn. */
const SEWN = 14;
/** Errors of neighbouring rings go together, so differences of cost say less than they seem to. */
const TEMPER = 0.4;

/** The bands of a wedge: those of a wedge that can be cut from the project's sets where one fits, else whatever fits best. */
export function bandsOf(
  wedge: NeutralWedge,
  swatches: readonly Swatch[],
  pitch: number,
  cuts: readonly CutWedge[],
): readonly SeenBand[] {
  const free = freeBands(wedge, swatches, pitch);
  const costs = new Float64Array(swatches.length + 1);
  const fits = cuts.map(({ runs }) => {
    let cost = 0;
    for (const { from, to, swatch } of runs) {
      costsOf(wedge, from, to, swatches, costs);
      cost += costs[swatch]! + NEW_BAND;
    }
    return { runs, cost };
  });
  const best = fits.reduce<(typeof fits)[number] | null>(
    (least, one) => (least && least.cost <= one.cost ? least : one),
    null,
  );
  if (!best || best.cost > free.cost + SEWN) return free.bands;
  return best.runs.map(({ from, to, swatch }, at) => {
    let [same, all] = [0, 0];
    const count = (cost: number, agrees: boolean) => {
      const likely = Math.exp(TEMPER * (best.cost - cost));
      all += likely;
      if (agrees) same += likely;
    };
    for (const { runs, cost } of fits) count(cost, runs[at]?.swatch === swatch);
    count(free.cost + SEWN / 2, free.bands[at]?.swatch === swatch);
    return { from, to, swatch, sure: same / all, light: meanLight(wedge, from, to) };
  });
}

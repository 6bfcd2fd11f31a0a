// Splits a wedge into bands: the cut into pieces, each of one fabric of the list, that explains its rings best. All cuts are
// weighed by dynamic programming; a band costs something, so that noise makes none.
import { type LinearRgb, oklabOf } from '../../colour/spaces';
import type { BlockLook } from './look';
import { inNeutral, type Light } from './sunlight';
import { type Swatch, told } from './swatches';

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
  /** Running sums of the products of each two channels: PRODUCTS to a ring. */
  readonly products: Float64Array;
}

/** The channels that each product is of. */
const PRODUCTS = [[0, 0], [1, 1], [2, 2], [0, 1], [0, 2], [1, 2]] as const; // biome-ignore format: pairs

/** A wedge of a look, the light taken out. */
export function neutralWedge(look: BlockLook, wedge: number, light: Light): NeutralWedge {
  const { rings } = look;
  const oklab = new Float32Array(rings * 3);
  const [mass, products] = [new Float64Array(rings + 1), new Float64Array(6 * rings + 6)];
  const [lights, colour] = [new Float64Array(3 * rings + 3), new Float64Array(3 * rings + 3)];
  for (let ring = 0; ring < rings; ring += 1) {
    const seen = look.wedges[wedge]!;
    const patch = {
      light: [seen[ring * 3]!, seen[ring * 3 + 1]!, seen[ring * 3 + 2]!] as const,
      x: look.places[wedge]![ring * 2]!,
      y: look.places[wedge]![ring * 2 + 1]!,
    };
    const neutral = inNeutral(light, patch);
    const lab = told(oklabOf(neutral as unknown as LinearRgb));
    const weight = look.weights[ring]!;
    mass[ring + 1] = mass[ring]! + weight;
    for (let channel = 0; channel < 3; channel += 1) {
      const one = lab[channel]!;
      oklab[ring * 3 + channel] = one;
      lights[(ring + 1) * 3 + channel] = lights[ring * 3 + channel]! + weight * neutral[channel]!;
      colour[(ring + 1) * 3 + channel] = colour[ring * 3 + channel]! + weight * one;
    }
    PRODUCTS.forEach(([one, other], at) => {
      products[(ring + 1) * 6 + at] = products[ring * 6 + at]! + weight * lab[one]! * lab[other]!;
    });
  }
  return { rings, oklab, mass, light: lights, colour, products };
}

/** Deviations, as colours are told apart (swatches.ts): of a ring from its fabric without a print, and of a whole band's mean. */
export interface Noise {
  readonly ring: number;
  readonly band: number;
}

/** What a new band costs. */
const NEW_BAND = 7;
/** What a band of an unknown fabric costs more, whose colour may be any: as much as its colours are many, in deviations. */
function strangeCost({ band }: Noise): number {
  return 9 + 3 * Math.log(0.02 / band);
}
/** The narrowest band, inches finished. */
const NARROWEST = 0.2;
/** Rings of a print differ by this share of the differences of its colours. */
const BLEEDING = Number(process.env.BLEED ?? 5);
const PRINT = 0.1;
/** Rings differ at most by this share. */
const BUSIEST = 0.4;
/** Share of a ring that is independent of its neighbours. */
const RINGS_APART = 0.4;

/** The mean light of rings from `from` to under `to`; of longer runs without the rings at the seams. */
export function meanLight({ mass, light }: NeutralWedge, from: number, to: number): [number, number, number] {
  const trim = to - from >= 8 ? 2 : to - from >= 4 ? 1 : 0;
  const [first, last] = [from + trim, to - trim];
  const weight = mass[last]! - mass[first]!;
  return [0, 1, 2].map((channel) => (light[last * 3 + channel]! - light[first * 3 + channel]!) / weight) as [
    number,
    number,
    number,
  ];
}

/** How much the rings of a run differ, the ones at its seams left out: sums of products (PRODUCTS), and about how many rings. */
export function unevennessWithin(
  { mass, colour, products }: NeutralWedge,
  from: number,
  to: number,
  into: Float64Array,
): number {
  const trim = to - from >= 4 ? 1 : 0;
  const [first, last] = [from + trim, to - trim];
  const weight = mass[last]! - mass[first]!;
  for (let at = 0; at < 6; at += 1) {
    const [one, other] = PRODUCTS[at]!;
    const sums = (colour[last * 3 + one]! - colour[first * 3 + one]!) * (colour[last * 3 + other]! - colour[first * 3 + other]!);
    into[at] = products[last * 6 + at]! - products[first * 6 + at]! - sums / weight;
  }
  return weight;
}

/** Scratch for `costsOf`, which is called some hundred thousand times. */
const inner = new Float64Array(6);

/** What a run of rings costs as each fabric. */
function costsOf(
  wedge: NeutralWedge,
  from: number,
  to: number,
  swatches: readonly Swatch[],
  noise: Noise,
  into: Float64Array,
): void {
  const mean = told(oklabOf(meanLight(wedge, from, to) as unknown as LinearRgb));
  const seen = unevennessWithin(wedge, from, to, inner);
  const weight = wedge.mass[to]! - wedge.mass[from]!;
  // Blur makes neighbouring rings alike: they count for less than one each.
  const count = Math.max(1, weight * RINGS_APART);
  const by = (weight * RINGS_APART) / seen;
  const [ll, aa, bb, la, lb, ab] = inner as unknown as [number, number, number, number, number, number];
  const all = Math.max(0, ll + aa + bb) * by;
  const ring = noise.ring ** 2;
  const known = noise.band ** 2;
  // Into few pixels, as near the middle of a block, the neighbours bleed.
  const still = known * (1 + BLEEDING / (0.1 + seen)) ** 2;
  for (let index = 0; index < swatches.length; index += 1) {
    const { told: own, axis, along, off } = swatches[index]!;
    const [x, y, z] = axis;
    const onAxis = Math.max(0, Math.min(all, by * (x * x * ll + y * y * aa + z * z * bb + 2 * (x * y * la + x * z * lb + y * z * ab))));
    const [dx, dy, dz] = [mean[0] - own[0], mean[1] - own[1], mean[2] - own[2]];
    const away = (x * dx + y * dy + z * dz) ** 2;
    const [alongAxis, offAxis] = [still + (PRINT * along) ** 2 / count, still + (PRINT * off) ** 2 / count];
    into[index] =
      unevenness(onAxis, count, 0.5, ring, ring + (BUSIEST * along) ** 2) +
      unevenness(all - onAxis, count, 1, ring, ring + (BUSIEST * off) ** 2) +
      away / (2 * alongAxis) + (dx * dx + dy * dy + dz * dz - away) / (2 * offAxis) +
      0.5 * Math.log(alongAxis / known) + Math.log(offAxis / known);
  }
  into[swatches.length] = unevenness(all, count, 1.5, ring, 4 * ring) + strangeCost(noise);
}

/**
 * What it costs that rings differ, in so many half channels: by `least` anyhow, and by as much as `most` where the fabric has a
 * print, whose figures may be as small as a ring or as large as a band.
 */
function unevenness(within: number, count: number, halves: number, least: number, most: number): number {
  const freedom = halves * count;
  const variance = Math.max(least, Math.min(most, within / (2 * freedom)));
  return within / (2 * variance) + freedom * Math.log(variance / least);
}

export interface WedgeBands {
  readonly bands: readonly SeenBand[];
  readonly cost: number;
}

/** The likeliest bands of a wedge and what they cost, from the rim in. `pitch` is inches to the ring. */
function freeBands(
  wedge: NeutralWedge,
  swatches: readonly Swatch[],
  pitch: number,
  noise: Noise,
): WedgeBands {
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
      costsOf(wedge, from, to, swatches, noise, costs);
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
    found.unshift(seenBand(wedge, from, to, kind, swatches, noise, costs));
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
  noise: Noise,
  costs: Float64Array,
): SeenBand {
  costsOf(wedge, from, to, swatches, noise, costs);
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
  noise: Noise,
): WedgeBands {
  const free = freeBands(wedge, swatches, pitch, noise);
  const costs = new Float64Array(swatches.length + 1);
  const fits = cuts.map(({ runs }) => {
    let cost = 0;
    for (const { from, to, swatch } of runs) {
      costsOf(wedge, from, to, swatches, noise, costs);
      cost += costs[swatch]! + NEW_BAND;
    }
    return { runs, cost };
  });
  const best = fits.reduce<(typeof fits)[number] | null>(
    (least, one) => (least && least.cost <= one.cost ? least : one),
    null,
  );
  if (!best || best.cost > free.cost + SEWN) return free;
  const bands = best.runs.map(({ from, to, swatch }, at) => {
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
  return { bands, cost: best.cost };
}

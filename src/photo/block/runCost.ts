// What a run of rings costs as each fabric of the list: how far its mean lies from the fabric's, and how much its rings differ beside
// how much they may, in the measure of −log likelihood.
import { type LinearRgb, oklabOf } from '../../colour/spaces';
import { differences, meanLight, type NeutralWedge } from './neutral';
import { type Swatch, told } from './swatches';

/** Deviations, as colours are told apart: of a ring from its fabric without a print, and of a whole band's mean. */
export interface Noise {
  readonly ring: number;
  readonly band: number;
}

/** Share of a ring that is independent of its neighbours: blur makes them alike. */
const RINGS_APART = 0.4;
/** The mean of a print differs by this share of how its colours differ, in one ring. */
const PRINT = 0.1;
/** Its rings differ by so large a share of it at most. */
const BUSIEST = 0.4;
/** In a run of so many rings the neighbours that bleed into it do as much as all else. */
const BLEEDING = 4;

const products = new Float64Array(6);

/** Writes the cost of rings `from` to under `to` as each swatch, and last as a fabric that is not in the list, to `into`. */
export function costsOf(
  wedge: NeutralWedge,
  from: number,
  to: number,
  swatches: readonly Swatch[],
  noise: Noise,
  into: Float64Array,
): void {
  const [l, a, b] = told(oklabOf(meanLight(wedge, from, to) as unknown as LinearRgb));
  const inner = differences(wedge, from, to, products);
  const weight = (wedge.mass[to]! - wedge.mass[from]!) * RINGS_APART;
  const count = Math.max(1, weight);
  const by = weight / inner;
  const all = by * Math.max(0, products[0]! + products[1]! + products[2]!);
  const ring = noise.ring ** 2;
  const known = noise.band ** 2;
  const still = known * (1 + BLEEDING / (0.1 + inner)) ** 2;
  for (let index = 0; index < swatches.length; index += 1) {
    const { told: own, axis, along, off } = swatches[index]!;
    const onAxis = Math.max(0, Math.min(all, by * alongLine(axis)));
    const [dl, da, db] = [l - own[0], a - own[1], b - own[2]];
    const away = (axis[0] * dl + axis[1] * da + axis[2] * db) ** 2;
    const [usual, beside] = [still + (PRINT * along) ** 2 / count, still + (PRINT * off) ** 2 / count];
    into[index] =
      unlikely(onAxis, 0.5 * count, ring, ring + (BUSIEST * along) ** 2) +
      unlikely(all - onAxis, count, ring, ring + (BUSIEST * off) ** 2) +
      away / (2 * usual) +
      (dl * dl + da * da + db * db - away) / (2 * beside) +
      0.5 * Math.log(usual / known) +
      Math.log(beside / known);
  }
  into[swatches.length] = unlikely(all, 1.5 * count, ring, 4 * ring) + strangeCost(noise);
}

/** How much of what rings differ by, as `products` has it, lies along a line. */
function alongLine([x, y, z]: readonly [number, number, number]): number {
  const squares = x * x * products[0]! + y * y * products[1]! + z * z * products[2]!;
  return squares + 2 * (x * y * products[3]! + x * z * products[4]! + y * z * products[5]!);
}

/**
 * What differences of this sum cost, of so many halves of degrees of freedom: by `least` rings differ anyhow, and by as much as `most`
 * where the fabric has a print, whose figures may be as small as a ring or as large as a band.
 */
function unlikely(sum: number, halves: number, least: number, most: number): number {
  const variance = Math.max(least, Math.min(most, sum / (2 * halves)));
  return sum / (2 * variance) + halves * Math.log(variance / least);
}

/** An unknown fabric may have any colour: it costs as much as there are colours, in deviations. */
function strangeCost({ band }: Noise): number {
  return 9 + 3 * Math.log(0.02 / band);
}

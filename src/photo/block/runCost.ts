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

/** What runs of one wedge cost as each fabric of a list; a run is looked at first, then asked about. */
export interface RunCosts {
  /** Looks at rings `from` to under `to`. */
  readonly look: (from: number, to: number) => void;
  /** No more than the cost as a swatch, quickly; the last kind is a fabric that is not in the list. */
  readonly atLeast: (kind: number) => number;
  /** The cost as a swatch; never under 0. */
  readonly of: (kind: number) => number;
}

/** Numbers to a swatch: its colour, its axis, the squares of how far its print differs along that and off it, the larger of these. */
const EACH = 9;

function tableOf(swatches: readonly Swatch[]): Float64Array {
  return Float64Array.from(
    swatches.flatMap(({ told: own, axis, along, off }) => {
      const [onAxis, beside] = [along ** 2, off ** 2];
      return [...own, ...axis, onAxis, beside, Math.max(onAxis, beside)];
    }),
  );
}

/** What runs of a wedge cost. One run is looked at after another; nothing is allocated for a run but its mean. */
export function runCosts(wedge: NeutralWedge, swatches: readonly Swatch[], noise: Noise): RunCosts {
  const table = tableOf(swatches);
  const strange = swatches.length;
  const products = new Float64Array(6);
  const mean = new Float64Array(3);
  /** Independent rings, what they differ by in the same measure, and how far the mean may be off without a print. */
  const seen = { count: 1, by: 0, all: 0, still: 0 };
  const ring = noise.ring ** 2;
  const known = noise.band ** 2;

  function look(from: number, to: number): void {
    mean.set(told(oklabOf(meanLight(wedge, from, to) as unknown as LinearRgb)));
    const inner = differences(wedge, from, to, products);
    const weight = (wedge.mass[to]! - wedge.mass[from]!) * RINGS_APART;
    seen.count = Math.max(1, weight);
    seen.by = weight / inner;
    seen.all = seen.by * Math.max(0, products[0]! + products[1]! + products[2]!);
    seen.still = known * (1 + BLEEDING / (0.1 + inner)) ** 2;
  }

  function atLeast(kind: number): number {
    if (kind === strange) return 0;
    const at = kind * EACH;
    const dl = mean[0]! - table[at]!;
    const da = mean[1]! - table[at + 1]!;
    const db = mean[2]! - table[at + 2]!;
    const most = seen.still + (PRINT * PRINT * table[at + 8]!) / seen.count;
    return (dl * dl + da * da + db * db) / (2 * most);
  }

  function of(kind: number): number {
    const { count, by, all, still } = seen;
    if (kind === strange) return unlikely(all, 1.5 * count, ring, 4 * ring) + strangeCost(noise);
    const at = kind * EACH;
    const dl = mean[0]! - table[at]!;
    const da = mean[1]! - table[at + 1]!;
    const db = mean[2]! - table[at + 2]!;
    const x = table[at + 3]!;
    const y = table[at + 4]!;
    const z = table[at + 5]!;
    const along = table[at + 6]!;
    const off = table[at + 7]!;
    const onAxis = Math.max(0, Math.min(all, by * alongLine(products, x, y, z)));
    const away = (x * dl + y * da + z * db) ** 2;
    const usual = still + (PRINT * PRINT * along) / count;
    const beside = still + (PRINT * PRINT * off) / count;
    return (
      unlikely(onAxis, 0.5 * count, ring, ring + BUSIEST * BUSIEST * along) +
      unlikely(all - onAxis, count, ring, ring + BUSIEST * BUSIEST * off) +
      away / (2 * usual) +
      (dl * dl + da * da + db * db - away) / (2 * beside) +
      0.5 * Math.log(usual / known) +
      Math.log(beside / known)
    );
  }

  return { look, atLeast, of };
}

/** How much of what rings differ by, as `products` has it, lies along a line. */
function alongLine(products: Float64Array, x: number, y: number, z: number): number {
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

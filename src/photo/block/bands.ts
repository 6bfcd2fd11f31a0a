// Splits a wedge into bands: the cut into pieces, each of one fabric of the list, that explains its rings best. All cuts are
// weighed by dynamic programming; a band costs something, so that noise makes none. runCost.ts says how well a piece fits a fabric.
import type { Inches } from '../../model/units';
import { meanLight, type NeutralWedge } from './neutral';
import { costsOf, type Noise } from './runCost';
import type { Swatch } from './swatches';

/** Rings from `from` to under `to`, the rim first, of one fabric. */
export interface Run {
  readonly from: number;
  readonly to: number;
  /** Index in the list; −1 for a fabric that is not in it. */
  readonly swatch: number;
}

/** A band as it was read. */
export interface SeenBand extends Run {
  /** How likely it is that fabric, 0 to 1, by colour alone. */
  readonly sure: number;
  /** Mean linear light in even, neutral light. */
  readonly light: readonly [number, number, number];
}

/** The bands of a wedge from the rim in, and what they cost. */
export interface WedgeBands {
  readonly bands: readonly SeenBand[];
  readonly cost: number;
}

/** What bands are read by: the list, how far its fabrics may be off, and inches to the ring. */
export interface BandReading {
  readonly swatches: readonly Swatch[];
  readonly noise: Noise;
  readonly pitch: Inches;
}

/** What a new band costs. */
const NEW_BAND = 7;
/** The narrowest band, inches finished: whole, and cut off by the middle of the block. */
const NARROWEST: Inches = 0.35;
const NARROWEST_CUT: Inches = 0.2;

/** A rim so narrow may be what lies beside the cloth: it is never sure. */
const NARROW_RIM: Inches = 0.6;

/** The likeliest bands of a wedge, whatever they are, and what they cost. */
function freeBands(wedge: NeutralWedge, reading: BandReading): WedgeBands {
  const { swatches, noise, pitch } = reading;
  const { rings } = wedge;
  const least = Math.max(2, Math.round(NARROWEST / pitch));
  const leastCut = Math.max(2, Math.round(NARROWEST_CUT / pitch));
  const kinds = swatches.length + 1;
  const costs = new Float64Array(kinds);
  // For each end the cheapest way there, and the cheapest that does not end in the same fabric.
  const best = new Float64Array((rings + 1) * kinds).fill(Number.POSITIVE_INFINITY);
  const start = new Int32Array((rings + 1) * kinds).fill(-1);
  const before = new Int32Array((rings + 1) * kinds).fill(-1);
  const [first, second] = [new Int32Array(rings + 1).fill(-1), new Int32Array(rings + 1).fill(-1)];
  for (let to = least; to <= rings; to += 1) {
    for (let from = 0; from <= to - (to === rings ? leastCut : least); from += 1) {
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
  const runs: Run[] = [];
  for (let to = rings, kind = first[rings]!; to > 0; ) {
    const from = start[to * kinds + kind]!;
    runs.unshift({ from, to, swatch: kind === swatches.length ? -1 : kind });
    [to, kind] = [from, before[to * kinds + kind]!];
  }
  return asBands(wedge, runs, reading);
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

/** A wedge read as these runs: how sure each is, and what all cost. */
export function asBands(
  wedge: NeutralWedge,
  runs: readonly Run[],
  { swatches, noise, pitch }: BandReading,
): WedgeBands {
  const costs = new Float64Array(swatches.length + 1);
  let all = 0;
  const bands = runs.map(({ from, to, swatch }): SeenBand => {
    costsOf(wedge, from, to, swatches, noise, costs);
    const own = costs[swatch < 0 ? swatches.length : swatch]!;
    all += own + NEW_BAND;
    const sum = costs.reduce((total, cost) => total + Math.exp(TEMPER * (own - cost)), 0);
    const edge = from === 0 && to * pitch < NARROW_RIM ? 0.5 : 1;
    return { from, to, swatch, sure: edge / sum, light: meanLight(wedge, from, to) };
  });
  return { bands, cost: all };
}

/** A wedge as it can be cut from a set of strips. */
export interface CutWedge {
  readonly runs: readonly Run[];
}

/** By how much a wedge that a set gives may fit worse than free bands and still be what is there: seams are sewn as they are sewn. */
export const SEWN = 14;
/** Errors of neighbouring rings go together, so differences of cost say less than they seem to. */
const TEMPER = 0.4;

/** The bands of a wedge: those of a wedge that can be cut from the project's sets where one fits, else whatever fits best. */
export function bandsOf(wedge: NeutralWedge, reading: BandReading, cuts: readonly CutWedge[]): WedgeBands {
  const free = freeBands(wedge, reading);
  const fits = cuts.map(({ runs }) => asBands(wedge, runs, reading));
  const best = fits.reduce<WedgeBands | null>(
    (least, one) => (least && least.cost <= one.cost ? least : one),
    null,
  );
  if (!best || best.cost > free.cost + SEWN) return free;
  return { ...best, bands: best.bands.map((band, at) => ({ ...band, sure: agreed(best, fits, free, at) })) };
}

/** How sure a band is of the wedges that could be cut: by how many of them, as likely as they are, agree in it. */
function agreed(best: WedgeBands, fits: readonly WedgeBands[], free: WedgeBands, at: number): number {
  const { swatch } = best.bands[at]!;
  let [same, all] = [0, 0];
  const count = ({ bands }: WedgeBands, cost: number) => {
    const likely = Math.exp(TEMPER * (best.cost - cost));
    all += likely;
    if (bands[at]?.swatch === swatch) same += likely;
  };
  for (const fit of fits) count(fit, fit.cost);
  count(free, free.cost + SEWN / 2);
  return same / all;
}

// Splits a wedge into bands: the cut into pieces, each of one fabric of the list, that explains its rings best. All cuts are
// weighed by dynamic programming; a band costs something, so that noise makes none. runCost.ts says how well a piece fits a fabric.
import type { Inches } from '../../model/units';
import { meanLight, type NeutralWedge } from './neutral';
import { type Noise, type RunCosts, runCosts } from './runCost';
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

/** The two cheapest ways to each ring that end in different fabrics: two numbers of each kind to a ring, the cheapest first. */
interface Ways {
  readonly cost: Float64Array;
  readonly kind: Int32Array;
  readonly start: Int32Array;
  /** Which of the two ways to the start it goes on from. */
  readonly from: Int32Array;
}

function noWays(rings: number): Ways {
  const none = () => new Int32Array(2 * (rings + 1)).fill(-1);
  const cost = new Float64Array(2 * (rings + 1)).fill(Number.POSITIVE_INFINITY);
  return { cost, kind: none(), start: none(), from: none() };
}

/** The likeliest bands of a wedge, whatever they are: every cut is weighed, but those that cannot be the best are left early. */
function freeBands(wedge: NeutralWedge, reading: BandReading): WedgeBands {
  const { swatches, noise, pitch } = reading;
  const { rings } = wedge;
  const least = Math.max(2, Math.round(NARROWEST / pitch));
  const leastCut = Math.max(2, Math.round(NARROWEST_CUT / pitch));
  const costs = runCosts(wedge, swatches, noise);
  const ways = noWays(rings);
  ways.cost[0] = 0;
  for (let to = least; to <= rings; to += 1) {
    // Short runs first: what they cost lets longer ones be left unseen.
    for (let from = to - (to === rings ? leastCut : least); from >= 0; from -= 1) {
      if (from > 0 && from < least) continue;
      if (ways.cost[2 * from]! + NEW_BAND < ways.cost[2 * to + 1]!)
        goOn(ways, from, to, costs, swatches.length + 1);
    }
  }
  return asBands(wedge, runsOf(ways, rings, swatches.length), reading);
}

/** Tries one run as each kind. */
function goOn(ways: Ways, from: number, to: number, costs: RunCosts, kinds: number): void {
  costs.look(from, to);
  for (let kind = 0; kind < kinds; kind += 1) {
    const before = 2 * from + (ways.kind[2 * from] === kind ? 1 : 0);
    const dear = ways.cost[2 * to + 1]! - ways.cost[before]! - NEW_BAND;
    if (!(costs.atLeast(kind) < dear)) continue;
    const cost = costs.of(kind);
    if (cost < dear) take(ways, to, kind, ways.cost[before]! + NEW_BAND + cost, before);
  }
}

/** Notes a way that is cheaper than the second of the two to its end. */
function take({ cost, kind, start, from }: Ways, to: number, own: number, now: number, before: number): void {
  const first = 2 * to;
  const same = kind[first] === own;
  const isBest = now < cost[first]!;
  if (same && !isBest) return;
  if (isBest && !same) for (const list of [cost, kind, start, from]) list[first + 1] = list[first]!;
  const at = isBest ? first : first + 1;
  cost[at] = now;
  kind[at] = own;
  start[at] = before >> 1;
  from[at] = before;
}

function runsOf({ kind, start, from }: Ways, rings: number, strange: number): Run[] {
  const runs: Run[] = [];
  for (let at = 2 * rings; at >= 2; at = from[at]!) {
    const swatch = kind[at] === strange ? -1 : kind[at]!;
    runs.unshift({ from: start[at]!, to: at >> 1, swatch });
  }
  return runs;
}

/** What a wedge costs if it is read as these runs. */
function costAs(runs: readonly Run[], costs: RunCosts, strange: number): number {
  let all = 0;
  for (const { from, to, swatch } of runs) {
    costs.look(from, to);
    all += NEW_BAND + costs.of(swatch < 0 ? strange : swatch);
  }
  return all;
}

/** What a wedge costs as each of these lists of runs. */
export function costsAs(
  wedge: NeutralWedge,
  lists: readonly CutWedge[],
  { swatches, noise }: BandReading,
): number[] {
  const costs = runCosts(wedge, swatches, noise);
  return lists.map(({ runs }) => costAs(runs, costs, swatches.length));
}

/** A wedge read as these runs: how sure each is, and what all cost. */
export function asBands(
  wedge: NeutralWedge,
  runs: readonly Run[],
  { swatches, noise, pitch }: BandReading,
): WedgeBands {
  const costs = runCosts(wedge, swatches, noise);
  const strange = swatches.length;
  const bands = runs.map(({ from, to, swatch }): SeenBand => {
    costs.look(from, to);
    const own = costs.of(swatch < 0 ? strange : swatch);
    let sum = 0;
    for (let kind = 0; kind <= strange; kind += 1) sum += Math.exp(TEMPER * (own - costs.of(kind)));
    const edge = from === 0 && to * pitch < NARROW_RIM ? 0.5 : 1;
    return { from, to, swatch, sure: edge / sum, light: meanLight(wedge, from, to) };
  });
  return { bands, cost: costAs(runs, costs, strange) };
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
  const costs = costsAs(wedge, cuts, reading);
  const cost = Math.min(...costs);
  const cut = cuts[costs.indexOf(cost)];
  if (!cut || cost > free.cost + SEWN) return free;
  const { bands } = asBands(wedge, cut.runs, reading);
  const fits = [
    ...cuts.map(({ runs }, at) => ({ runs, likely: Math.exp(TEMPER * (cost - costs[at]!)) })),
    { runs: free.bands, likely: Math.exp(TEMPER * (cost - free.cost - SEWN / 2)) },
  ];
  return { cost, bands: bands.map((band, at) => ({ ...band, sure: agreed(fits, at, band.swatch) })) };
}

/** How sure a band is of the wedges that could be cut: by how many of them, as likely as they are, agree in it. */
function agreed(
  fits: readonly { readonly runs: readonly Run[]; readonly likely: number }[],
  at: number,
  swatch: number,
): number {
  let [same, all] = [0, 0];
  for (const { runs, likely } of fits) {
    all += likely;
    if (runs[at]?.swatch === swatch) same += likely;
  }
  return same / all;
}

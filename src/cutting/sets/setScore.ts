// What makes a strip set good, as a score: the makers' rules of thumb with their weights. Lower is better. The search that
// uses it is in setSearch.ts; which cloths read as one is cloth's.
import type { ClothTable } from '../../cloth/cloths';
import { setHeight } from '../../geometry/stripSet';
import type { Strip, WedgePlan } from '../../model/project';
import type { Inches } from '../../model/units';

/**
 * Weights of the rules of thumb (common practice, no source, except that a set must be as high as the wedge). One unit is
 * about what one repeated width is worth; a set that is too short outweighs everything else.
 */
export const SET_WEIGHTS = {
  /** For a set too short for the wedge, and for each inch it is short. */
  short: 10_000,
  shortInch: 1_000,
  /** For each inch the height is off the aim, after the first quarter inch. */
  height: 6,
  /** Two strips of one fabric side by side; times likeness (0–1) for two that look alike. */
  sameNeighbours: 60,
  alikeNeighbours: 20,
  /** A fabric that comes again two strips on; a fabric that comes again at all. */
  soonAgain: 3,
  again: 1.5,
  /** The narrowest strip on an outside edge, where most of it vanishes in the seam. */
  narrowRim: 12,
  /** First and last strip of one set of the same fabric. */
  sameRims: 8,
  /** Two neighbours of the same width; the distance of a set's widths from the proportion aimed at. */
  sameWidth: 0.6,
  proportion: 1.5,
  /** For each pair of rims among all sets of the same fabric; times likeness for look-alikes. */
  rimPair: 2,
  alikeRimPair: 1,
  /** Square of the strips by which a fabric is used above or below its share. */
  unevenUse: 0.5,
  /** A single strip left over of a row on hand. */
  straggler: 0.15,
} as const;

/** How much more than the cut height a set should have: about half an inch (common practice, no source). */
export const HEIGHT_TO_SPARE: Inches = 0.5;

/** Tables the score reads: fabrics as indices, their likeness, and what widths are aimed at. */
export interface SetScoring {
  readonly wedge: WedgePlan;
  readonly fabricIndex: ReadonlyMap<string, number>;
  /** How many fabrics there are. */
  readonly fabrics: number;
  /** Likeness as the list of clashes has it (ClothTable): fabric × fabric, row by row; background is like nothing. */
  readonly alike: Float64Array;
  /** The narrowest width there is, or 0 where all strips are of one width. */
  readonly narrowest: Inches;
  /** Share aimed at for each cut width. */
  readonly proportion: readonly { readonly width: Inches; readonly share: number }[];
}

/** A strip as the score reads it: its fabric as an index into the scoring's fabrics. */
export interface RatedStrip {
  readonly fabricAt: number;
  readonly width: Inches;
}

/** Builds the tables for these cloths and the strips that may be used. */
export function setScoring(
  cloths: ClothTable,
  strips: readonly (Strip & { readonly count: number })[],
  wedge: WedgePlan,
): SetScoring {
  const widths = [...new Set(strips.map((strip) => strip.width))].sort((one, other) => one - other);
  return {
    wedge,
    fabricIndex: cloths.index,
    fabrics: cloths.fabrics.length,
    alike: cloths.likeness,
    narrowest: widths.length > 1 ? widths[0]! : 0,
    proportion: widthsAimedAt(widths, strips),
  };
}

/** Of three widths 2 : 2 : 1, narrow to wide (common practice, no source); of fewer or more, as they are on hand. */
function widthsAimedAt(
  widths: readonly Inches[],
  strips: readonly (Strip & { readonly count: number })[],
): SetScoring['proportion'] {
  const usual = [2, 2, 1];
  const parts = widths.map((width, index) =>
    widths.length === 3
      ? usual[index]!
      : strips.reduce((sum, strip) => sum + (strip.width === width ? strip.count : 0), 0),
  );
  const whole = parts.reduce((sum, part) => sum + part, 0);
  return widths.map((width, index) => ({ width, share: parts[index]! / whole }));
}

/** The cost of one set by itself, which has to be `least` high; an empty set counts as short. */
export function setCost(
  strips: readonly RatedStrip[],
  scoring: SetScoring,
  least: Inches = scoring.wedge.cutHeight,
): number {
  const weights = SET_WEIGHTS;
  const { wedge } = scoring;
  const height = setHeight(strips, wedge.seam);
  const short = least - height;
  const aim = Math.max(least, wedge.cutHeight + HEIGHT_TO_SPARE);
  let cost =
    short > 1e-9
      ? weights.short + weights.shortInch * short
      : weights.height * Math.max(0, Math.abs(height - aim) - 0.25);
  if (strips.length === 0) return cost;
  cost += neighbourCost(strips, scoring);
  const first = strips[0]!;
  const last = strips.at(-1)!;
  if (first.width <= scoring.narrowest) cost += weights.narrowRim;
  if (last.width <= scoring.narrowest) cost += weights.narrowRim;
  if (strips.length > 1 && first.fabricAt === last.fabricAt) {
    cost += weights.sameRims * likenessAt(scoring, first.fabricAt, last.fabricAt);
  }
  for (const { width, share } of scoring.proportion) {
    let found = 0;
    for (const strip of strips) if (strip.width === width) found += 1;
    cost += weights.proportion * Math.abs(found / strips.length - share);
  }
  return cost;
}

function neighbourCost(strips: readonly RatedStrip[], scoring: SetScoring): number {
  const weights = SET_WEIGHTS;
  let cost = 0;
  for (let at = 1; at < strips.length; at += 1) {
    const { fabricAt, width } = strips[at]!;
    const before = strips[at - 1]!;
    if (before.width === width) cost += weights.sameWidth;
    // A fabric sewn to itself is a seam for nothing, background or not.
    if (before.fabricAt === fabricAt) cost += weights.sameNeighbours;
    else cost += weights.alikeNeighbours * likenessAt(scoring, before.fabricAt, fabricAt);
    let back = at - 2;
    while (back >= 0 && strips[back]!.fabricAt !== fabricAt) back -= 1;
    if (back >= 0) cost += at - back === 2 ? weights.soonAgain : weights.again;
  }
  return cost;
}

/** What a pair of rims costs, wherever in the quilt they are; fabrics as indices. Background never clashes. */
export function rimPairCost(scoring: SetScoring, one: number, other: number): number {
  const weight = one === other ? SET_WEIGHTS.rimPair : SET_WEIGHTS.alikeRimPair;
  return weight * likenessAt(scoring, one, other);
}

function likenessAt({ alike, fabrics }: SetScoring, one: number, other: number): number {
  return alike[one * fabrics + other]!;
}

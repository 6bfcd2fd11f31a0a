// Figures of many coloured pieces together: value (mean, spread, histogram, quantiles); and the warmth of a colour.
// Pieces are colours with areas; where they lie on the wall is left to balance.
import { labD65Of, linearOfHex, value } from '../colour/spaces';

/** A piece, or all pieces, of one colour (#rrggbb) with its area in any one unit. */
export interface ColouredArea {
  readonly hex: string;
  readonly area: number;
}

/** Area-weighted figures of value, all L* 0–100 except `area`. */
export interface ValueStatistics {
  readonly area: number;
  readonly mean: number;
  /** Standard deviation over the surface (of the population, not of a sample). */
  readonly deviation: number;
  readonly darkest: number;
  readonly lightest: number;
}

/** Pieces with some area, and their total. Throws on an area that is negative or not a number. */
export function weighed(areas: readonly ColouredArea[]): { pieces: readonly ColouredArea[]; total: number } {
  let total = 0;
  for (const { area } of areas) {
    if (!(area >= 0 && Number.isFinite(area))) throw new RangeError(`mixture: ${area} is not an area`);
    total += area;
  }
  return { pieces: areas.filter(({ area }) => area > 0), total };
}

/** Mean, spread and ends of value over the surface; null when there is no surface. */
export function valueStatistics(areas: readonly ColouredArea[]): ValueStatistics | null {
  const { pieces, total } = weighed(areas);
  if (total === 0) return null;
  const values = pieces.map(({ hex }) => value(hex));
  const mean = pieces.reduce((sum, { area }, index) => sum + (area / total) * values[index]!, 0);
  const variance = pieces.reduce(
    (sum, { area }, index) => sum + (area / total) * (values[index]! - mean) ** 2,
    0,
  );
  return {
    area: total,
    mean,
    deviation: Math.sqrt(variance),
    darkest: Math.min(...values),
    lightest: Math.max(...values),
  };
}

/**
 * Share of the surface in each of `steps` equal steps of value, dark to light; sums to 1. Ten steps are the maker's value
 * scale. A value on a boundary belongs to the lighter step, white to the last. Null when there is no surface.
 */
export function valueHistogram(areas: readonly ColouredArea[], steps = 10): readonly number[] | null {
  if (!(Number.isInteger(steps) && steps > 0))
    throw new RangeError(`valueHistogram: ${steps} is not a count of steps`);
  const { pieces, total } = weighed(areas);
  if (total === 0) return null;
  const shares = Array.from({ length: steps }, () => 0);
  for (const { hex, area } of pieces) {
    // White can come out a rounding error above or below 100.
    const step = Math.max(0, Math.min(steps - 1, Math.floor((value(hex) / 100) * steps)));
    shares[step]! += area / total;
  }
  return shares;
}

/**
 * The value L* that `portion` (0–1) of the surface does not exceed: ½ is the median, 0 the darkest, 1 the lightest. Always
 * the value of a piece, never between two. Null when there is no surface.
 */
export function valueQuantile(areas: readonly ColouredArea[], portion: number): number | null {
  if (!(portion >= 0 && portion <= 1))
    throw new RangeError(`valueQuantile: ${portion} is not between 0 and 1`);
  const { pieces, total } = weighed(areas);
  const ranked = pieces
    .map(({ hex, area }) => ({ light: value(hex), area }))
    .sort((one, other) => one.light - other.light);
  let covered = 0;
  for (const { light, area } of ranked) {
    covered += area;
    // Shares like 1/3 + 1/3 + 1/3 must reach 1.
    if (covered >= portion * total - 1e-12 * total) return light;
  }
  return null;
}

const WARMEST_HUE = (50 * Math.PI) / 180;

/**
 * How warm (above 0) or cool (below 0) a colour is: the warm–cool scale that Ou, Luo, Woodcock and Wright fitted to
 * observers ('A study of colour emotion and colour preference, part I', Color Research and Application 29, 2004),
 * 0.02 · C*^1.07 · cos(h − 50°) in CIELAB, without its constant −0.5, so that greys are 0 and a piece of grey weighs
 * nothing. Warmest at h = 50° (orange), coolest at 230° (blue-green); within sRGB about −1.2 to +2.9.
 */
export function warmth(hex: string): number {
  const [, a, b] = labD65Of(linearOfHex(hex));
  return 0.02 * Math.hypot(a, b) ** 1.07 * Math.cos(Math.atan2(b, a) - WARMEST_HUE);
}

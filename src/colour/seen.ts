// Ways of seeing: in colour, in grey, in three tones, squinting, with another colour vision; each as the steps of a filter, which the
// screen turns into an SVG filter. Nothing here knows the screen.
import type { Matrix } from './matrix';
import { srgbOf } from './parse';
import { LUMINANCE, value } from './spaces';
import { TONE_GREYS, type ToneLimits, toneOf } from './tone';
import { visionMatrix } from './vision';

export const WAYS = ['colour', 'grey', 'tones', 'squint', 'protan', 'deutan', 'tritan'] as const;
export type Way = (typeof WAYS)[number];

/** One step of a filter. */
export type FilterStep =
  /** Linear light through a matrix, row by row, as in feColorMatrix: red, green, blue, alpha, constant. */
  | { readonly kind: 'matrix'; readonly values: readonly number[] }
  /** Linear light through a Gaussian blur of this standard deviation, inches. */
  | { readonly kind: 'blur'; readonly deviation: number }
  /** Encoded sRGB through a table with one entry, 0 to 1, for each of the 256 levels. */
  | { readonly kind: 'levels'; readonly table: readonly number[] };

/** What the ways of seeing depend on. */
export interface Eyes {
  /** Inches from the eye to the wall. */
  readonly distance: number;
  /** How strong a deficiency of colour vision is: 0 none, 1 cones missing. */
  readonly severity: number;
  /** Where the tones of the quilt lie; null where there is no fabric yet. */
  readonly tones: ToneLimits | null;
}

/** What an eye with normal sight just tells apart: one minute of arc (decimal acuity 1.0 of ISO 8596; Snellen 20/20). */
const ONE_MINUTE = Math.PI / (180 * 60);
/** How many times coarser a half-closed eye sees. Our own, no source: seams and figures melt, wedges stay. */
const SQUINT = 10;

/**
 * Standard deviation, inches on the wall, of the blur of a person who squints at so many inches. The smallest detail that is told
 * apart is s = distance × tan(SQUINT × 1′). Two points blurred by σ become one when they are 2σ apart (Sparrow, 'On spectroscopic
 * resolving power', Astrophysical Journal 44, 1916: the dip between two equal Gaussians is gone), so σ = s / 2. Throws unless the
 * distance is above 0.
 */
export function squintBlur(distance: number): number {
  if (!(distance > 0 && Number.isFinite(distance)))
    throw new RangeError(`squintBlur: ${distance} is no distance`);
  return (distance * Math.tan(SQUINT * ONE_MINUTE)) / 2;
}

/** The luminance of linear light, so that the grey has the L* of the fabric. */
const GREY: FilterStep = { kind: 'matrix', values: asFilter([LUMINANCE, LUMINANCE, LUMINANCE]) };

/** The steps of the filter for a way of seeing, one after the other; none for colour. Throws on a severity outside 0–1. */
export function filterSteps(way: Way, eyes: Eyes): readonly FilterStep[] {
  switch (way) {
    case 'colour':
      return [];
    case 'grey':
      return [GREY];
    case 'tones':
      return [GREY, { kind: 'levels', table: toneTable(eyes.tones) }];
    case 'squint':
      return [{ kind: 'blur', deviation: squintBlur(eyes.distance) }];
    case 'protan':
    case 'deutan':
    case 'tritan':
      return [{ kind: 'matrix', values: asFilter(visionMatrix(way, eyes.severity)) }];
    default:
      return way satisfies never;
  }
}

/** For each level of grey the tone in which it is shown; medium where there are no limits. */
function toneTable(limits: ToneLimits | null): readonly number[] {
  return Array.from({ length: 256 }, (_, level) => {
    const lightness = value(`#${level.toString(16).padStart(2, '0').repeat(3)}`);
    return srgbOf(TONE_GREYS[limits ? toneOf(lightness, limits) : 'medium'])[0];
  });
}

/** Rows of red, green and blue as the twenty values of feColorMatrix: alpha is left alone. */
function asFilter(rows: Matrix): readonly number[] {
  return [...rows.flatMap((row) => [...row, 0, 0]), 0, 0, 0, 1, 0];
}

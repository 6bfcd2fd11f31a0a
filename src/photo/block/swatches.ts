// The fabrics of a list as a camera would see them from some way off: the mean of their light, and how much a small patch may differ.
import { printMix } from '../../cloth/print/printMix';
import { type LinearRgb, linearOfHex, oklabOf } from '../../colour/spaces';
import type { Fabric, FabricId } from '../../model/project';

export interface Swatch {
  readonly fabric: FabricId;
  /** Mean linear light. */
  readonly light: readonly [number, number, number];
  readonly oklab: readonly [number, number, number];
  /** The same as colours are told apart. */
  readonly told: readonly [number, number, number];
  /** Deviation of its colours from their mean, as colours are told apart: along the line on which they lie most, and off it. */
  readonly axis: readonly [number, number, number];
  readonly along: number;
  readonly off: number;
}

/** The swatches of fabrics, in their order. */
export function swatchesOf(fabrics: readonly Fabric[]): Swatch[] {
  return fabrics.map((fabric) => {
    const mix = printMix(fabric).map(({ hex, share }) => ({ light: linearOfHex(hex), share }));
    const light = [0, 1, 2].map((channel) =>
      mix.reduce((sum, part) => sum + part.share * part.light[channel]!, 0),
    );
    const oklab = oklabOf(light as unknown as LinearRgb);
    return {
      fabric: fabric.id,
      light: [light[0]!, light[1]!, light[2]!],
      oklab: [oklab[0], oklab[1], oklab[2]],
      told: told(oklab),
      ...spreadOf(
        mix.map((part) => ({ share: part.share, off: minus(told(oklabOf(part.light)), told(oklab)) })),
      ),
    };
  });
}

type Three = readonly [number, number, number];

function minus(one: Three, other: Three): Three {
  return [one[0] - other[0], one[1] - other[1], one[2] - other[2]];
}

/** The main line of some deviations, by the power method, and how far they lie along it and off it. */
function spreadOf(
  parts: readonly { readonly share: number; readonly off: Three }[],
): Pick<Swatch, 'axis' | 'along' | 'off'> {
  const longest = parts.reduce((best, one) => (weight(one) > weight(best) ? one : best)).off;
  let axis = unit(longest);
  for (let round = 0; round < 12; round += 1) {
    const next: [number, number, number] = [0, 0, 0];
    for (const { share, off } of parts) {
      const by = share * dot(off, axis);
      for (const at of [0, 1, 2] as const) next[at] += by * off[at];
    }
    if (Math.hypot(...next) < 1e-12) break;
    axis = unit(next);
  }
  const mean = (of: (off: Three) => number) =>
    parts.reduce((sum, { share, off }) => sum + share * of(off), 0);
  const along = mean((off) => dot(off, axis) ** 2);
  return {
    axis,
    along: Math.sqrt(along),
    off: Math.sqrt(Math.max(0, mean((off) => dot(off, off)) - along) / 2),
  };
}

function weight({ share, off }: { readonly share: number; readonly off: Three }): number {
  return share * dot(off, off);
}

function unit(of: Three): Three {
  const long = Math.hypot(...of);
  return long > 1e-9 ? [of[0] / long, of[1] / long, of[2] / long] : [1, 0, 0];
}

function dot(one: Three, other: Three): number {
  return one[0] * other[0] + one[1] * other[1] + one[2] * other[2];
}

/** Squared distance of two colours. */
export function apart(one: ArrayLike<number>, other: ArrayLike<number>): number {
  return (one[0]! - other[0]!) ** 2 + (one[1]! - other[1]!) ** 2 + (one[2]! - other[2]!) ** 2;
}

/** How much a difference of lightness counts beside one of colour. */
const LIGHTNESS = 0.45;

/** OKLab as colours of cloth are told apart: shade, folds and ridges change its lightness far more than its colour. */
export function told([l, a, b]: readonly number[]): [number, number, number] {
  return [LIGHTNESS * l!, a!, b!];
}

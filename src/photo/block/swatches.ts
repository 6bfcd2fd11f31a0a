// The fabrics of a list as a camera would see them from some way off: the mean of their light, and how much a small patch may differ.
import { printMix } from '../../cloth/print/printMix';
import { type LinearRgb, linearOfHex, oklabOf } from '../../colour/spaces';
import type { Fabric, FabricId } from '../../model/project';

export interface Swatch {
  readonly fabric: FabricId;
  /** Mean linear light. */
  readonly light: readonly [number, number, number];
  readonly oklab: readonly [number, number, number];
  /** Deviation of its colours from their mean, in OKLab. */
  readonly spread: number;
}

/** The swatches of fabrics, in their order. */
export function swatchesOf(fabrics: readonly Fabric[]): Swatch[] {
  return fabrics.map((fabric) => {
    const mix = printMix(fabric).map(({ hex, share }) => ({ light: linearOfHex(hex), share }));
    const light = [0, 1, 2].map((channel) =>
      mix.reduce((sum, part) => sum + part.share * part.light[channel]!, 0),
    );
    const oklab = oklabOf(light as unknown as LinearRgb);
    const square = mix.reduce((sum, part) => sum + part.share * apart(oklabOf(part.light), oklab), 0);
    return {
      fabric: fabric.id,
      light: [light[0]!, light[1]!, light[2]!],
      oklab: [oklab[0], oklab[1], oklab[2]],
      spread: Math.sqrt(square),
    };
  });
}

/** Squared distance of two colours. */
export function apart(one: readonly number[], other: readonly number[]): number {
  return (one[0]! - other[0]!) ** 2 + (one[1]! - other[1]!) ** 2 + (one[2]! - other[2]!) ** 2;
}

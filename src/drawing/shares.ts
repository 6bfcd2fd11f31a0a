// Computes the share of the top that each fabric covers, and its value, for the strip of values at the foot of the screen.
import { meanColour } from '../cloth/likeness';
import { printMix } from '../cloth/print/printMix';
import { value } from '../colour/spaces';
import { area } from '../geometry/point';
import type { Fabric, FabricId } from '../model/project';
import type { Drawing } from './drawing';

export interface FabricShare {
  readonly fabric: Fabric;
  /** Finished area in the top, square inches; and its share of all cloth in the top, 0 to 1. */
  readonly area: number;
  readonly share: number;
  /** L* of its mean colour, 0 to 100. */
  readonly value: number;
}

/** The shares of all fabrics in the top, from light to dark; empty for an empty wall. */
export function fabricShares(drawing: Drawing): FabricShare[] {
  const areas = new Map<FabricId, number>();
  const pieces = [...drawing.setting, ...drawing.blocks.flatMap((block) => block.pieces)];
  for (const piece of pieces) {
    if (piece.fabric === null) continue;
    areas.set(piece.fabric, (areas.get(piece.fabric) ?? 0) + area(piece.outline));
  }
  const all = Array.from(areas.values()).reduce((sum, one) => sum + one, 0);
  return drawing.fabrics
    .flatMap((fabric) => {
      const covered = areas.get(fabric.id);
      if (covered === undefined) return [];
      return [{ fabric, area: covered, share: covered / all, value: clothValue(fabric) }];
    })
    .sort((one, other) => other.value - one.value);
}

/** L* of a fabric's mean colour, print included, 0 to 100. */
export function clothValue(fabric: Fabric): number {
  return value(meanColour(printMix(fabric)));
}

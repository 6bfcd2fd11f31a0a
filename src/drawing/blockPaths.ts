// A block for the screen: one path for each cloth and lie of its print instead of a polygon for each piece, and one path
// for its seams. 400 blocks of single pieces would be too many nodes to drag smoothly.
import type { Fabric, FabricId } from '../model/project';
import type { Degrees } from '../model/units';
import type { Piece } from './drawing';
import { outlinePath } from './number';
import { clothFill, type Pattern, patternFor } from './prints';

export interface ClothPath {
  /** Null for what has no cloth yet. */
  readonly fabric: FabricId | null;
  /** A colour or url(#…); empty where there is no cloth or the fabric is unknown. */
  readonly fill: string;
  readonly d: string;
}

/**
 * Pieces of one fabric and one lie of the print merged into one path each, in the order they first come. Draw them in a
 * group turned and moved to where the block hangs: the print turns with it. Define patternsIn for the same pieces once.
 */
export function mergedPaths(pieces: readonly Piece[], fabrics: readonly Fabric[]): ClothPath[] {
  const known = new Map(fabrics.map((fabric) => [fabric.id, fabric]));
  const merged = new Map<string, { fabric: FabricId | null; fill: string; parts: string[] }>();
  for (const piece of pieces) {
    const fabric = piece.fabric === null ? undefined : known.get(piece.fabric);
    const fill = fabric ? clothFill(fabric, piece.grain).fill : '';
    const key = `${piece.fabric ?? ''} ${fill}`;
    const group = merged.get(key) ?? { fabric: piece.fabric, fill, parts: [] };
    group.parts.push(outlinePath(piece.outline));
    merged.set(key, group);
  }
  return [...merged.values()].map(({ fabric, fill, parts }) => ({ fabric, fill, d: parts.join('') }));
}

/** The outlines of all pieces as one path, for the seam lines over the cloth. */
export function seamPath(pieces: readonly Piece[]): string {
  return pieces.map((piece) => outlinePath(piece.outline)).join('');
}

/**
 * Every pattern that printed fabrics need for strips lying at the given angles (degrees clockwise, see grainsOf): each
 * fabric's own first, then one small pattern for each direction that looks different.
 */
export function patternsFor(fabrics: readonly Fabric[], grains: readonly Degrees[]): Pattern[] {
  const found = new Map<string, Pattern>();
  for (const fabric of fabrics) {
    const own = patternFor(fabric);
    if (!own) continue;
    found.set(own.id, own);
    for (const grain of grains) {
      const { turned } = clothFill(fabric, grain);
      if (turned) found.set(turned.id, turned);
    }
  }
  return [...found.values()];
}

/** Every way a strip can lie in a block of N wedges before it is turned, or round the blocks, straight and on point. */
export function grainsOf(perBlock: number): Degrees[] {
  return [...Array.from({ length: perBlock }, (_, steps) => (steps * 360) / perBlock), 90, 45, 135];
}

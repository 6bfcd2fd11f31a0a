// Merges the pieces of a block for the screen: one path for each cloth and direction of its print, and one path for the seams.
// A polygon for each piece would make 400 blocks too many nodes to drag smoothly.
import type { Box } from '../geometry/point';
import type { PictureId } from '../model/picture/picture';
import type { Fabric, FabricId } from '../model/project';
import type { Degrees } from '../model/units';
import type { Piece } from './drawing';
import { outlinePath } from './number';
import type { HrefOf } from './photos';
import { clothFill, type Pattern, patternFor } from './prints';

export interface ClothPath {
  /** Null for pieces without cloth. */
  readonly fabric: FabricId | null;
  /** A colour or url(#…); empty without cloth or for an unknown fabric. */
  readonly fill: string;
  readonly d: string;
}

/**
 * One path for each fabric and direction of its print, in the order of the pieces. Draw the paths in a group that is turned and
 * moved to where the block hangs, so that prints turn with it. The page must define the patterns of patternsFor.
 */
export function mergedPaths(pieces: readonly Piece[], fabrics: readonly Fabric[]): ClothPath[] {
  const known = new Map(fabrics.map((fabric) => [fabric.id, fabric]));
  const merged = new Map<string, { fabric: FabricId | null; fill: string; parts: string[] }>();
  for (const piece of pieces) {
    if (piece.picture !== undefined) continue;
    const fabric = piece.fabric === null ? undefined : known.get(piece.fabric);
    const fill = fabric ? clothFill(fabric, piece.grain).fill : '';
    const key = `${piece.fabric ?? ''} ${fill}`;
    const group = merged.get(key) ?? { fabric: piece.fabric, fill, parts: [] };
    group.parts.push(outlinePath(piece.outline));
    merged.set(key, group);
  }
  return [...merged.values()].map(({ fabric, fill, parts }) => ({ fabric, fill, d: parts.join('') }));
}

/** The outlines of all pieces as one path: the seam lines over the cloth. A picture has none. */
export function seamPath(pieces: readonly Piece[]): string {
  return pieces.flatMap((piece) => (piece.picture === undefined ? outlinePath(piece.outline) : [])).join('');
}

/** The picture that lies over the pieces of a block, and its box from the block's middle; null for a block without one. */
export function pictureOver(
  pieces: readonly Piece[],
): { readonly picture: PictureId; readonly box: Box } | null {
  // It is the last of them.
  const piece = pieces.at(-1);
  const [corner, , far] = piece?.outline ?? [];
  if (piece?.picture === undefined || !corner || !far) return null;
  const box = { x: corner.x, y: corner.y, width: far.x - corner.x, height: far.y - corner.y };
  return { picture: piece.picture, box };
}

/**
 * The patterns of printed and photographed fabrics for strips in these directions (degrees clockwise, see grainsOf): for each fabric its own
 * pattern, then one small pattern for each direction that looks different.
 */
export function patternsFor(
  fabrics: readonly Fabric[],
  grains: readonly Degrees[],
  hrefOf: HrefOf,
): Pattern[] {
  const found = new Map<string, Pattern>();
  for (const fabric of fabrics) {
    const own = patternFor(fabric, hrefOf);
    if (!own) continue;
    found.set(own.id, own);
    for (const grain of grains) {
      const { turned } = clothFill(fabric, grain);
      if (turned) found.set(turned.id, turned);
    }
  }
  return [...found.values()];
}

/** All directions of strips, degrees clockwise: in a block of N wedges before it is turned, and round the blocks. */
export function grainsOf(perBlock: number): Degrees[] {
  return [...Array.from({ length: perBlock }, (_, steps) => (steps * 360) / perBlock), 90, 45, 135];
}

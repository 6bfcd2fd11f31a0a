// What the setting is made of besides blocks: the pieces of sashing, borders, setting triangles and plain squares, each an
// outline on the top in inches from its upper left corner.

import type { FabricId } from '../model/project';
import type { Degrees, Inches } from '../model/units';
import type { Side } from './contact';
import { type Box, boxOutline, type Outline } from './point';

export type SettingPart = 'sashing' | 'cornerstone' | 'side' | 'setting-corner' | 'plain' | 'border';

export interface SettingPiece {
  readonly part: SettingPart;
  readonly fabric: FabricId;
  readonly outline: Outline;
  /** Direction of the cloth's length: degrees clockwise from the right. */
  readonly grain: Degrees;
  /** Finished length along the grain and width across it: of a mitred strip its longer edge, of a triangle its box. */
  readonly length: Inches;
  readonly width: Inches;
  /** Index of the border, 0 for the innermost; null for other pieces. */
  readonly border: number | null;
  /** The side of the top; given for strips and pieces of borders. */
  readonly side?: Side;
  /** Where it lies inside the borders. */
  readonly place?: HalfPlace;
}

/**
 * A half-grid place (model/wallCells), sashing half or a quarter of the way between: straight, cells have even places and
 * sashing odd ones, from −1 at the edge; on point, squares lie where down + across is even and crossings where it is odd, a
 * piece of sashing half-way between two crossings. A whole strip has the place it begins at.
 */
export interface HalfPlace {
  readonly down: number;
  readonly across: number;
}

/** An upright piece; strips are cut with their length along the cloth's, whichever way they hang. */
export function boxPiece(
  part: SettingPart,
  fabric: FabricId,
  box: Box,
  border: number | null = null,
): SettingPiece {
  const upright = box.height > box.width;
  return {
    part,
    fabric,
    outline: boxOutline(box),
    grain: upright ? 90 : 0,
    length: upright ? box.height : box.width,
    width: upright ? box.width : box.height,
    border,
  };
}

// The drawing: a plain tree of pieces with fabrics, places and outlines in inches. Screen, SVG, PNG and PDF are made from it.
import type { Box, Outline, Point } from '../geometry/point';
import type { SettingPart } from '../geometry/settingPiece';
import type { PictureId } from '../model/picture/picture';
import type { BlockId, Fabric, FabricId } from '../model/project';
import type { Degrees, Inches } from '../model/units';

/**
 * `bare`: a place without a wedge, or the middle that a set leaves open because it is too low. `picture`: the picture of a whole
 * block, over what is known of its pieces.
 */
export type Part = 'band' | 'corner' | 'bare' | SettingPart | 'binding' | 'picture';

export interface Piece {
  readonly part: Part;
  /** Null for a piece without cloth. */
  readonly fabric: FabricId | null;
  readonly outline: Outline;
  /** Place in the block, and band from the rim, both from 1. A bare piece has a place but no band; others have neither. */
  readonly place: number | null;
  readonly band: number | null;
  /** Direction of the strip it was cut from, and of its print: degrees clockwise from the right. */
  readonly grain: Degrees;
  /** The picture that fills the box of the block, its upper side up as long as the block is not turned; only on a `picture`. */
  readonly picture?: PictureId;
}

/** A block that hangs in a cell. Coordinates of its pieces are from its own middle, before it is turned. */
export interface HungBlock {
  readonly block: BlockId;
  readonly number: number;
  readonly cell: number;
  readonly centre: Point;
  /** Quarter turns clockwise, 0 to 3. */
  readonly quarters: number;
  /** Degrees clockwise by which the setting turns every block: 45 on point, else 0. */
  readonly tilt: 0 | 45;
  readonly pinned: boolean;
  readonly pieces: readonly Piece[];
}

export interface Drawing {
  /** Finished size of the top, inches; the origin is its top left corner. */
  readonly width: Inches;
  readonly height: Inches;
  readonly fabrics: readonly Fabric[];
  /** The tilt of every HungBlock. */
  readonly tilt: 0 | 45;
  /** Finished size of a block, inches. */
  readonly block: { readonly width: Inches; readonly height: Inches };
  readonly blocks: readonly HungBlock[];
  /** Cells without a block that are no plain squares. The box is not tilted yet: turn it by the tilt about its middle. */
  readonly emptyCells: readonly { readonly cell: number; readonly box: Box }[];
  /** Sashing, borders, setting triangles and plain squares, in quilt inches. */
  readonly setting: readonly Piece[];
  /** The visible edge of the binding, outside the finished top and `edge` inches wide. Empty and 0 without a binding. */
  readonly binding: readonly Piece[];
  readonly edge: Inches;
}

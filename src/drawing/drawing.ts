// The drawing: a plain tree of pieces with fabrics, places and outlines in inches. Screen, SVG, PNG and PDF all use it.
import type { Box, Outline, Point } from '../geometry/point';
import type { SettingPart } from '../geometry/settingPiece';
import type { BlockId, Fabric, FabricId } from '../model/project';
import type { Degrees, Inches } from '../model/units';

/** `bare`: a place without a wedge, or the middle a too short set leaves open. */
export type Part = 'band' | 'corner' | 'bare' | SettingPart | 'binding';

export interface Piece {
  readonly part: Part;
  /** Null for what has no cloth yet. */
  readonly fabric: FabricId | null;
  readonly outline: Outline;
  /** Place in the block and band from the rim, both from 1. A bare place has its place; everything else has null. */
  readonly place: number | null;
  readonly band: number | null;
  /** How the strip it was cut from lies: degrees clockwise from the right. A print follows it. */
  readonly grain: Degrees;
}

/** A block hung in a cell. Its pieces are about its own middle, before it is turned. */
export interface HungBlock {
  readonly block: BlockId;
  readonly number: number;
  readonly cell: number;
  readonly centre: Point;
  /** Quarter turns clockwise, 0 to 3. */
  readonly quarters: number;
  /** Degrees clockwise the setting turns every block by: 45 on point. */
  readonly tilt: 0 | 45;
  readonly pinned: boolean;
  readonly pieces: readonly Piece[];
}

export interface Drawing {
  /** Finished size of the top, inches; the origin is its top left corner. */
  readonly width: Inches;
  readonly height: Inches;
  readonly fabrics: readonly Fabric[];
  /** As in every HungBlock. */
  readonly tilt: 0 | 45;
  /** Finished block. */
  readonly block: { readonly width: Inches; readonly height: Inches };
  readonly blocks: readonly HungBlock[];
  /** Cells no block hangs in and no plain square lies in. The box is upright; it hangs turned by the tilt about its middle. */
  readonly emptyCells: readonly { readonly cell: number; readonly box: Box }[];
  /** Sashing, borders, setting triangles and plain squares, in quilt inches. */
  readonly surround: readonly Piece[];
  /** The edge of the binding that shows: outside the finished top, `edge` wide. Empty and 0 where none is chosen. */
  readonly binding: readonly Piece[];
  readonly edge: Inches;
}

// The jobs of the worker that reads photographs which are about blocks and walls.
import type { Point } from '../../geometry/point';
import type { StoredPicture } from '../../model/picture/picture';
import type { PicturedWedge, Project, WedgePlan } from '../../model/project';
import type { Inches } from '../../model/units';
import type { LightThere } from '../../photo/block/daylight';
import type { ReadBlock } from '../../photo/block/readLook';
import type { GridLaid } from '../../photo/wall/grid';
import type { Job } from './sentPhoto';

/** Where a block lies: its corners from top left clockwise, in pixels of the photograph, and the bend of the lens. */
export interface BlockLaid {
  readonly corners: readonly Point[];
  readonly bend: number;
}

/** A block as it was read: its picture squared up, what was seen, and the same as the document holds it. */
export interface BlockFound extends ReadBlock {
  readonly picture: StoredPicture;
  readonly shown: readonly PicturedWedge[];
  /** Cloth round the finished block, inside its corners. */
  readonly allowance: Inches;
  /** The light that is taken out of its picture; null where it is not known, and the colours are as photographed. */
  readonly light: LightThere | null;
  /** Whether its own fabrics told the light. */
  readonly ownLight: boolean;
}

export interface BlockJobs {
  /** Looks for the corners of a block; null where none is seen. */
  readonly corners: Job<{ readonly wedge: WedgePlan }, BlockLaid | null>;
  /** Reads a block, by the light of another photograph of the sitting where its own fabrics do not tell it. */
  readonly block: Job<
    { readonly laid: BlockLaid; readonly project: Project; readonly sitting: LightThere | null },
    BlockFound
  >;
  /** Looks for the grid of a wall; null where none is seen. */
  readonly grid: Job<{ readonly wedge: WedgePlan }, GridLaid | null>;
  /** By rows: how much each cell of a grid looks like a block, 0 to 1. */
  readonly likeness: Job<{ readonly grid: GridLaid; readonly wedge: WedgePlan }, readonly number[]>;
  /** Reads the cells of a grid by rows; those that are empty are left out and null. */
  readonly wall: Job<
    { readonly grid: GridLaid; readonly empty: readonly boolean[]; readonly project: Project },
    readonly (BlockFound | null)[]
  >;
}

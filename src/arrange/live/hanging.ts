// Says as numbers where everything hangs while a wall is arranged. liveWall.ts changes it; the files that compute costs read it.

/** A place without a block, or a wedge type beyond those of the blocks: nothing. */
export const NONE = -1;

/** On the conventions of balance/wall/wallModel; changed in place. */
export interface Hanging {
  /** Wedge type in each place, block × N + place. */
  readonly typeAt: Int32Array;
  readonly orientationOf: Int32Array;
  /** Block in each cell, and cell of each block; −1 for none. */
  readonly blockIn: Int32Array;
  readonly cellOf: Int32Array;
}

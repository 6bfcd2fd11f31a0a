// What a hand is doing on the wall just now: a small record, never in the history. A gesture ends in one command or none.
import type { Point } from '../../geometry/point';
import type { BlockId } from '../../model/project';

export type Gesture =
  /** Panning or pinching; the view itself is kept by the wall. */
  | { readonly kind: 'view' }
  /** Carrying a block; `from` is its cell, or null from the side table. */
  | {
      readonly kind: 'carry';
      readonly block: BlockId;
      readonly from: number | null;
      readonly at: Point;
      /** From the middle of the block to where it was taken hold of. */
      readonly hold: Point;
      readonly over: number | null;
      readonly overTable: boolean;
    }
  /** Turning a block by its handle or two fingers; degrees clockwise from where it hung. */
  | { readonly kind: 'twist'; readonly block: BlockId; readonly degrees: number };

/** Whole turns nearest to an angle: quarters, or halves for blocks that are not square. */
export function turnsIn(degrees: number, turns: 2 | 4): number {
  return Math.round(degrees / (360 / turns));
}

/** Angle of a point about a middle, degrees clockwise from up. */
export function bearing(middle: Point, point: Point): number {
  return (Math.atan2(point.x - middle.x, middle.y - point.y) * 180) / Math.PI;
}

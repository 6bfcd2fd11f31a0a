// The shape that a photographed block must have: its wedges, its rim, and how far the corners of the square lie out. Inches from the
// middle of the block.
import type { Point } from '../../geometry/point';
import { apothem, finishedBlock } from '../../geometry/wedge';
import type { WedgePlan } from '../../model/project';
import type { Inches } from '../../model/units';

export interface BlockShape {
  /** Wedges to the block. */
  readonly perBlock: number;
  /** From the middle to the finished rim. */
  readonly rim: Inches;
  /** Half the finished block. */
  readonly halfWidth: Inches;
  readonly halfHeight: Inches;
  /** How far the cloth goes on round the finished block: the seam allowance that still lies open, or 0. */
  readonly allowance: Inches;
}

/** The shape of a block of this plan with `allowance` inches of cloth round it. */
export function shapeOf(wedge: WedgePlan, allowance: Inches): BlockShape {
  const { width, height } = finishedBlock(wedge);
  return {
    perBlock: wedge.perBlock,
    rim: apothem(wedge),
    halfWidth: width / 2,
    halfHeight: height / 2,
    allowance,
  };
}

/** The corners of the cloth: top left, top right, bottom right, bottom left. */
export function shapeCorners({ halfWidth, halfHeight, allowance }: BlockShape): Point[] {
  const [x, y] = [halfWidth + allowance, halfHeight + allowance];
  return [{ x: -x, y: -y }, { x, y: -y }, { x, y }, { x: -x, y }]; // biome-ignore format: corners
}

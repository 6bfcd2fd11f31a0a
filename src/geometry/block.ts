// Outlines of the finished block, inches from its own middle: the bands of each place and the corner pieces that make the
// N-gon a square (N divisible by 4) or a rectangle. Directions are wedge steps clockwise from the top.
import type { WedgePlan } from '../model/project';
import type { Inches } from '../model/units';
import type { Outline, Point } from './point';
import { apothem, finishedBlock, slope } from './wedge';

/** Unit vector `steps` wedge steps (halves allowed) clockwise from straight up. */
export function direction(steps: number, perBlock: number): Point {
  const angle = (2 * Math.PI * steps) / perBlock;
  return { x: Math.sin(angle), y: -Math.cos(angle) };
}

/** The corner between directions `between` and `between` + 1 of the N-gon with this apothem. */
function ringCorner(between: number, radius: Inches, perBlock: number): Point {
  const reach = radius / Math.cos(Math.PI / perBlock);
  const unit = direction(between + 0.5, perBlock);
  return { x: unit.x * reach, y: unit.y * reach };
}

/** A band of the wedge in direction `toward`: a trapezoid, or a triangle where `inner` is 0. Radii in inches. */
export function bandOutline(toward: number, outer: Inches, inner: Inches, perBlock: number): Outline {
  const rim = [ringCorner(toward - 1, outer, perBlock), ringCorner(toward, outer, perBlock)];
  if (inner <= 0) return [...rim, { x: 0, y: 0 }];
  return [...rim, ringCorner(toward, inner, perBlock), ringCorner(toward - 1, inner, perBlock)];
}

/** The finished leg of the corner triangle of the square block, A(1 − k), inches. For N = 8. */
export function cornerLeg(wedge: WedgePlan): Inches {
  return apothem(wedge) * (1 - slope(wedge.perBlock));
}

/**
 * The four corner pieces, clockwise from the top right; each fills one corner of the block's square or rectangle. They are
 * right triangles for N = 6 and 8 and have more sides for 10 and 12.
 */
export function cornerOutlines(wedge: WedgePlan): Outline[] {
  const { perBlock } = wedge;
  const rim = apothem(wedge);
  const { width, height } = finishedBlock(wedge);
  // Ring corners of the top right quarter, from the end of the top rim to the right-most point.
  const last = perBlock % 4 === 0 ? perBlock / 4 - 1 : Math.floor(perBlock / 4);
  const quarter = Array.from({ length: last + 1 }, (_, between) => ringCorner(between, rim, perBlock));
  const topRight: Outline = [{ x: width / 2, y: -height / 2 }, ...quarter.toReversed()];
  const mirrored = (signX: number, signY: number, turnRound: boolean): Outline => {
    const flipped = topRight.map((point) => ({ x: point.x * signX, y: point.y * signY }));
    return turnRound ? [flipped[0]!, ...flipped.slice(1).toReversed()] : flipped;
  };
  return [topRight, mirrored(1, -1, true), mirrored(-1, -1, false), mirrored(-1, 1, true)];
}

/** Where an outline bends inwards, which has to be set in: places in the outline, none for a triangle. */
export function inwardCorners(outline: Outline): number[] {
  const turns = outline.map((point, at) => {
    const before = outline.at(at - 1)!;
    const after = outline[(at + 1) % outline.length]!;
    return (point.x - before.x) * (after.y - point.y) - (point.y - before.y) * (after.x - point.x);
  });
  const way = Math.sign(turns.reduce((sum, turn) => sum + turn, 0));
  return turns.flatMap((turn, at) => (turn * way < -1e-9 ? [at] : []));
}

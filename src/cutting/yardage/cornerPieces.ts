// Squares and rectangles for the corners that make each block square, by fabric. Which fabric a corner has is the
// setting's affair; its finished outline is geometry's.
import { cornerOutlines } from '../../geometry/block';
import { cornerSquare } from '../../geometry/cornerSquare';
import type { Outline, Point } from '../../geometry/point';
import { findBlock } from '../../model/find';
import { cornersOn } from '../../model/freedom';
import { counted, type Phrase, phrase } from '../../model/phrase';
import type { FabricId, Project } from '../../model/project';
import type { Inches } from '../../model/units';
import { cornerFabricOf } from '../../model/wallCells';
import { type NeededPiece, squareOnRuler } from './neededPiece';
import type { CuttingScope } from './setStrips';

const CORNERS = 4;

/** One row for each fabric with corners: of the blocks on the wall, less those that have them on when only the rest is asked. */
export function cornerPieces(project: Project, scope: CuttingScope): NeededPiece[] {
  const blocks = new Map<FabricId, number>();
  project.wall.cells.forEach((cell, index) => {
    const block = cell && findBlock(project, cell.block);
    if (!block || (scope === 'left' && cornersOn(block))) return;
    const fabric = cornerFabricOf(project, block, index);
    blocks.set(fabric, (blocks.get(fabric) ?? 0) + 1);
  });
  return Array.from(blocks, ([fabric, count]) =>
    project.wedge.perBlock === 8
      ? cornerSquares(project, fabric, count * CORNERS)
      : cornerRectangles(project, fabric, count * CORNERS),
  );
}

function cornerSquares(project: Project, fabric: FabricId, triangles: number): NeededPiece {
  const { exact, comfortable } = cornerSquare(project.wedge);
  const { unit } = project.preferences;
  const fits = squareOnRuler(exact, unit);
  const roomy = squareOnRuler(comfortable, unit);
  const side = project.buying.corners === 'fits' ? fits : roomy;
  const count = Math.ceil(triangles / 2);
  const leg = exact - project.wedge.outerSeam * (2 + Math.SQRT2);
  return {
    step: 'corners',
    fabric,
    what: phrase('Squares for corner triangles, halved'),
    shape: 'halved',
    width: side,
    height: side,
    count,
    onHand: 0,
    upright: false,
    why: [
      trianglesFrom(triangles, count),
      phrase('A finished leg of {leg} and the seams just fit a square of {fits}.', {
        leg: { inches: leg },
        fits: { inches: fits },
      }),
      ...(side > fits
        ? [phrase('{roomy} is cut instead, to be trimmed after sewing.', { roomy: { inches: roomy } })]
        : []),
    ],
  };
}

function trianglesFrom(triangles: number, squares: number): Phrase {
  return counted(
    squares,
    '{triangles} triangles, two from the square.',
    '{triangles} triangles, two from each of {count}.',
    {
      triangles,
    },
  );
}

/** Setting pieces of blocks that are no octagons: right triangles from halved rectangles (N = 6), else one from each. */
function cornerRectangles(project: Project, fabric: FabricId, pieces: number): NeededPiece {
  const { unit } = project.preferences;
  const outline = cornerOutlines(project.wedge)[0]!;
  const { width, height } = cutBox(outline, project.wedge.outerSeam);
  const room = project.buying.corners === 'fits' ? 0 : 0.5;
  const halved = outline.length === 3;
  const size = { width: squareOnRuler(width + room, unit), height: squareOnRuler(height + room, unit) };
  const count = halved ? Math.ceil(pieces / 2) : pieces;
  const why = [phrase('{pieces} corner pieces, four to each block.', { pieces })];
  if (halved) why.push(phrase('Halve half of them on the one diagonal and half on the other.'));
  why.push(
    phrase('The finished piece and its seams just fit {width} × {height}.', {
      width: { inches: width },
      height: { inches: height },
    }),
  );
  if (room > 0) why.push(phrase('They are cut {room} larger, to be trimmed.', { room: { inches: room } }));
  return {
    step: 'corners',
    fabric,
    what: halved ? phrase('Rectangles for corner pieces, halved') : phrase('Rectangles for corner pieces'),
    shape: halved ? 'halved' : 'rectangle',
    ...size,
    count,
    onHand: 0,
    upright: false,
    why,
  };
}

/**
 * The least rectangle a corner piece is cut from: on each side its finished length, a seam beyond the square corner, and
 * s·cot(θ/2) beyond the sharp end, θ the angle there (plane geometry of a parallel offset).
 */
function cutBox(outline: Outline, seam: Inches): { width: Inches; height: Inches } {
  const corner = outline[0]!;
  const reach = (tip: Point, next: Point) => {
    const along = Math.hypot(tip.x - corner.x, tip.y - corner.y);
    return along + seam + seam / Math.tan(angleAt(tip, corner, next) / 2);
  };
  // The outline starts at the square corner; its two neighbours are the sharp ends.
  const [first, last] = [outline[1]!, outline.at(-1)!];
  const one = reach(first, outline[2]!);
  const other = reach(last, outline.at(-2)!);
  const firstIsAcross = Math.abs(first.x - corner.x) > Math.abs(first.y - corner.y);
  return firstIsAcross ? { width: one, height: other } : { width: other, height: one };
}

function angleAt(tip: Point, one: Point, other: Point): number {
  const [ax, ay] = [one.x - tip.x, one.y - tip.y];
  const [bx, by] = [other.x - tip.x, other.y - tip.y];
  return Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by));
}

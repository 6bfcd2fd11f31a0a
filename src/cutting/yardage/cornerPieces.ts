// Squares and rectangles for the corners that make each block square, by fabric. Which fabric a corner has is the
// setting's affair; its finished outline is geometry's.
import { cornerOutlines } from '../../geometry/block';
import { findBlock } from '../../model/find';
import { cornersOn } from '../../model/freedom';
import { USUAL } from '../../model/lengths';
import { counted, type Phrase, phrase } from '../../model/phrase';
import type { FabricId, Project } from '../../model/project';
import { cornerFabricOf } from '../../model/wallCells';
import { type NeededPiece, squareOnRuler } from './neededPiece';
import type { CuttingScope } from './setStrips';
import { cornerSquare, withSeams } from './triangleSquares';

const CORNERS = 4;

/**
 * One row for each fabric with corners: of the blocks on the wall, less those that have them on when only the rest is asked. Blocks in
 * pictures were sewn from other fabric.
 */
export function cornerPieces(project: Project, scope: CuttingScope): NeededPiece[] {
  const blocks = new Map<FabricId, number>();
  project.wall.cells.forEach((cell, index) => {
    const block = cell && findBlock(project, cell.block);
    if (block?.kind !== 'pieced' || (scope === 'left' && cornersOn(block))) return;
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
  const { leg, fits, comfortable } = cornerSquare(project.wedge, project.preferences.unit);
  const side = project.buying.corners === 'fits' ? fits : comfortable;
  const count = Math.ceil(triangles / 2);
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
        ? [phrase('{roomy} is cut instead, to be trimmed after sewing.', { roomy: { inches: comfortable } })]
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
  // As it stands in the block, upright.
  const { length: width, width: height } = withSeams({ outline, grain: 0 }, project.wedge.outerSeam);
  const room = project.buying.corners === 'fits' ? 0 : USUAL[unit].comfort.room;
  const halved = outline.length === 3;
  const size = { width: squareOnRuler(width + room, unit), height: squareOnRuler(height + room, unit) };
  const count = halved ? Math.ceil(pieces / 2) : pieces;
  const why = [phrase('{pieces} corner pieces, four to each block.', { pieces })];
  if (halved) why.push(phrase('Cut half of them along one diagonal and half along the other.'));
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
    what: phrase(whatOf(halved, size)),
    shape: halved ? 'halved' : 'rectangle',
    ...size,
    count,
    onHand: 0,
    upright: false,
    why,
  };
}

/** What they are cut from: the dodecagon's corner is as broad as it is high. */
function whatOf(halved: boolean, { width, height }: { width: number; height: number }): string {
  if (halved) return 'Rectangles for corner pieces, halved';
  return width === height ? 'Squares for corner pieces' : 'Rectangles for corner pieces';
}

// Draws pieces of the drawing on the page, scaled, turned and moved: one shape for each cloth and direction, and the seams over
// them as one shape of hairlines.
import { type Outline, type Point, placed } from '../../geometry/point';
import type { FabricId } from '../../model/project';
import type { Inches } from '../../model/units';
import { pictureOver } from '../blockPaths';
import type { Drawing, HungBlock, Piece } from '../drawing';
import { ink, SEAM } from './look';
import type { Figure, Mark, Stroke } from './page';
import { clothOf, type Writing } from './writing';

/** Where pieces lie: they are turned about their own origin, then moved (in quilt inches), then scaled. */
export interface Placement {
  readonly quarters: number;
  readonly tilt: 0 | 45;
  readonly centre: Point;
}

const FLAT: Placement = { quarters: 0, tilt: 0, centre: { x: 0, y: 0 } };

/** Marks of pieces at `scale` page inches to the inch. */
export function clothMarks(
  pieces: readonly Piece[],
  scale: number,
  writing: Pick<Writing, 'fabrics'>,
  placement: Placement = FLAT,
  seam: Stroke | null = SEAM,
): Mark[] {
  const groups = new Map<string, { fabric: FabricId | null; turn: number; outlines: Outline[] }>();
  const all: Outline[] = [];
  const cloth = pieces.filter((piece) => piece.picture === undefined);
  for (const piece of cloth) {
    const outline = placed(piece.outline, placement.quarters, placement.centre, placement.tilt).map(
      ({ x, y }) => {
        return { x: x * scale, y: y * scale };
      },
    );
    const turn = (piece.grain + placement.quarters * 90 + placement.tilt) % 360;
    const key = `${piece.fabric ?? ''} ${turn.toFixed(3)}`;
    const group = groups.get(key) ?? { fabric: piece.fabric, turn, outlines: [] };
    group.outlines.push(outline);
    groups.set(key, group);
    all.push(outline);
  }
  const marks = Array.from(groups.values(), ({ fabric, turn, outlines }): Mark => {
    return { kind: 'shape', outlines, fill: clothOf(writing, fabric, scale, turn), stroke: null };
  });
  if (seam) marks.push({ kind: 'shape', outlines: all, fill: null, stroke: seam });
  const over = pictureOver(pieces);
  return over ? [...marks, pictureMark(over, scale, placement)] : marks;
}

function pictureMark(
  { picture, box }: NonNullable<ReturnType<typeof pictureOver>>,
  scale: number,
  { quarters, tilt, centre }: Placement,
): Mark {
  return {
    kind: 'picture',
    picture,
    centre: { x: centre.x * scale, y: centre.y * scale },
    width: box.width * scale,
    height: box.height * scale,
    turn: (quarters * 90 + tilt) % 360,
  };
}

/** The whole top, binding included, at `scale` page inches to the inch. */
export function topFigure(drawing: Drawing, scale: number, writing: Pick<Writing, 'fabrics'>): Figure {
  const { edge } = drawing;
  const seam: Stroke = { ...SEAM, width: Math.min(SEAM.width, scale * 0.03) };
  const around = { ...FLAT, centre: { x: edge, y: edge } };
  const cells = drawing.emptyCells.map(({ box }): Piece => emptyPiece(box, drawing.tilt));
  return {
    width: (drawing.width + 2 * edge) * scale,
    height: (drawing.height + 2 * edge) * scale,
    marks: [
      under(drawing, scale),
      ...clothMarks([...drawing.setting, ...cells], scale, writing, around, seam),
      ...drawing.blocks.flatMap((hung) =>
        clothMarks(hung.pieces, scale, writing, placementOf(hung, edge), seam),
      ),
      ...clothMarks(drawing.binding, scale, writing, around, seam),
    ],
  };
}

function emptyPiece(
  box: { readonly x: Inches; readonly y: Inches; readonly width: Inches; readonly height: Inches },
  tilt: 0 | 45,
): Piece {
  const [w, h] = [box.width / 2, box.height / 2];
  const corners = [{ x: -w, y: -h }, { x: w, y: -h }, { x: w, y: h }, { x: -w, y: h }]; // biome-ignore format: a box
  const outline = placed(corners, 0, { x: box.x + w, y: box.y + h }, tilt);
  return { part: 'bare', fabric: null, outline, place: null, band: null, grain: 0 };
}

function placementOf(hung: HungBlock, edge: Inches): Placement {
  const { x, y } = hung.centre;
  return { quarters: hung.quarters, tilt: hung.tilt, centre: { x: x + edge, y: y + edge } };
}

/** The ground under the cloth, so that hairlines between pieces look like seams. */
function under(drawing: Drawing, scale: number): Mark {
  const [x, y] = [drawing.width * scale, drawing.height * scale];
  const edge = drawing.edge * scale;
  const outline = [{ x: edge, y: edge }, { x: x + edge, y: edge }, { x: x + edge, y: y + edge }, { x: edge, y: y + edge }]; // biome-ignore format: a box
  return { kind: 'shape', outlines: [outline], fill: ink('#5f5b55'), stroke: null };
}

/** A sample of cloth with a thin edge. */
export function swatch(
  fabric: FabricId | null,
  width: Inches,
  height: Inches,
  writing: Pick<Writing, 'fabrics'>,
): Figure {
  const outline = [{ x: 0, y: 0 }, { x: width, y: 0 }, { x: width, y: height }, { x: 0, y: height }]; // biome-ignore format: a box
  const fill = clothOf(writing, fabric, 0.3, 0);
  return { width, height, marks: [{ kind: 'shape', outlines: [outline], fill, stroke: SEAM }] };
}

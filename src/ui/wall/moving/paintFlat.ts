// Paints the top on a canvas in flat colours, without prints and seams: a picture that any browser moves and scales at once.
import { meanColour } from '../../../cloth/likeness';
import { printMix } from '../../../cloth/print/printMix';
import { mergedPaths } from '../../../drawing/blockPaths';
import type { Drawing, Piece } from '../../../drawing/drawing';
import type { Fabric } from '../../../model/project';
import { lieOf } from '../flights';
import { type Size, type View, viewBox } from '../view';

export interface Top {
  readonly drawing: Drawing;
  readonly fabrics: readonly Fabric[];
  readonly sheet: View;
  readonly window: Size;
}

/** Paints the top as it lies on its sheet; the canvas gets the size of the sheet in CSS pixels. */
export function paintFlat(canvas: HTMLCanvasElement, { drawing, fabrics, sheet, window }: Top): void {
  const [left, top, width, height] = viewBox(sheet, window).split(' ').map(Number) as [
    number,
    number,
    number,
    number,
  ];
  canvas.width = Math.round(width * sheet.scale);
  canvas.height = Math.round(height * sheet.scale);
  const context = canvas.getContext('2d');
  if (!context) return;
  const colours = new Map(fabrics.map((fabric) => [fabric.id, meanColour(printMix(fabric))]));
  const paint = (pieces: readonly Piece[]) => {
    for (const { fabric, d } of mergedPaths(pieces, fabrics)) {
      const colour = fabric === null ? undefined : colours.get(fabric);
      if (colour === undefined) continue;
      context.fillStyle = colour;
      context.fill(new Path2D(d));
    }
  };
  const { scale } = sheet;
  context.setTransform(scale, 0, 0, scale, -left * scale, -top * scale);
  paint(flatly([...drawing.setting, ...drawing.binding]));
  for (const hung of drawing.blocks) {
    const { at, degrees } = lieOf(hung);
    context.save();
    context.translate(at.x, at.y);
    context.rotate((degrees * Math.PI) / 180);
    paint(flatly(hung.pieces));
    context.restore();
  }
}

/** Without the direction of prints all pieces of a fabric are one path. */
function flatly(pieces: readonly Piece[]): readonly Piece[] {
  return pieces.map((piece) => ({ ...piece, grain: 0 }));
}

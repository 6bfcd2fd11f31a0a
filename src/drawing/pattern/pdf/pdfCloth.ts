// Fills printed and photographed cloth in a PDF. The file contains the figures of one repeat once for each print, and each picture once;
// a small tiling pattern for each scale and direction refers to them.
import type { jsPDF } from 'jspdf';
import { meanColour } from '../../../cloth/likeness';
import { curveThrough } from '../../../cloth/print/curve';
import { clothAngle, printTile } from '../../../cloth/print/printTile';
import type { PrintShape, PrintTile } from '../../../cloth/print/shape';
import type { Point } from '../../../geometry/point';
import type { Pictures, StoredPicture } from '../../../model/picture/picture';
import type { Fabric, Photo } from '../../../model/project';
import type { Inches } from '../../../model/units';
import { PHOTO_SPARE, type TileSize } from '../../photos';
import type { Fill, Mark } from '../page';

const POINTS = 72;
/** Overlap of tiles as a part of their size, so that no gaps show between them. */
const SPARE = 0.01;

type ClothFill = Extract<Fill, { kind: 'cloth' }>;

export class PdfCloth {
  private readonly doc: jsPDF;
  private readonly pageHeight: Inches;
  private readonly pictures: Pictures;
  private readonly known = new Set<string>();

  constructor(doc: jsPDF, pageHeight: Inches, pictures: Pictures) {
    this.doc = doc;
    this.pageHeight = pageHeight;
    this.pictures = pictures;
  }

  /** The colour under the figures. The pattern has no ground of its own, because some viewers would show the edges of its tiles. */
  groundOf({ fabric }: ClothFill): string {
    return printTile(fabric)?.ground ?? fabric.colour;
  }

  /** The key of the pattern of a fill, made at its first use; null for plain cloth and where the picture is missing. */
  keyFor({ fabric, scale, turn }: ClothFill): string | null {
    const tile = this.tileOf(fabric);
    if (!tile) return null;
    const degrees = clothAngle(fabric, turn) % 360;
    const key = `${fabric.id} ${scale.toFixed(4)} ${degrees.toFixed(2)}`;
    if (!this.known.has(key)) {
      this.known.add(key);
      this.make(key, this.repeat(fabric.id, tile), tile.size, scale * POINTS, (degrees * Math.PI) / 180);
    }
    return key;
  }

  /** A picture at its place on the page, turned about its middle; nothing where it is missing. The file contains it once. */
  drawPicture({ picture: id, centre, width, height, turn }: Extract<Mark, { kind: 'picture' }>): void {
    const picture = this.pictures.get(id);
    if (!picture) return;
    // jspdf turns counter-clockwise about the lower left corner, which must lie so that the middle comes out where it should.
    const angle = (-turn * Math.PI) / 180;
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    const left = centre.x - (cos * width - sin * height) / 2;
    const foot = centre.y + (sin * width + cos * height) / 2;
    const { type, bytes } = picture;
    this.doc.addImage(bytes, FORMATS[type], left, foot - height, width, height, id, 'FAST', -turn);
  }

  private tileOf(fabric: Fabric): Tile | null {
    const { cloth } = fabric;
    if (cloth.kind === 'photo') {
      const picture = this.pictures.get(cloth.photo.picture);
      return picture ? { size: cloth.photo, draw: () => drawPhoto(this.doc, cloth.photo, picture) } : null;
    }
    const print = printTile(fabric);
    return print ? { size: print, draw: () => drawFigures(this.doc, print) } : null;
  }

  /** The key of the figures of one repeat, drawn at their first use. */
  private repeat(fabric: string, { size: tile, draw }: Tile): string {
    const key = `repeat ${fabric}`;
    if (this.known.has(key)) return key;
    this.known.add(key);
    const { doc } = this;
    doc.advancedAPI(() => {
      const [spareX, spareY] = [tile.width * SPARE, tile.height * SPARE];
      doc.beginFormObject(
        -spareX,
        -spareY,
        tile.width + 2 * spareX,
        tile.height + 2 * spareY,
        doc.unitMatrix,
      );
      draw();
      doc.endFormObject(key);
    });
    return key;
  }

  private make(key: string, repeat: string, tile: TileSize, scale: number, angle: number): void {
    const { doc } = this;
    const [cos, sin] = [Math.cos(angle) * scale, Math.sin(angle) * scale];
    // From the tile, y down, to the page's points, y up.
    const matrix = doc.Matrix(cos, -sin, -sin, -cos, 0, this.pageHeight * POINTS);
    const [spareX, spareY] = [tile.width * SPARE, tile.height * SPARE];
    const box = [-spareX, -spareY, tile.width + spareX, tile.height + spareY];
    doc.advancedAPI(() => {
      const pattern = doc.TilingPattern(box, tile.width, tile.height, undefined, matrix);
      doc.beginTilingPattern(pattern);
      doc.doFormObject(repeat, doc.unitMatrix);
      doc.endTilingPattern(key, pattern);
    });
  }
}

interface Tile {
  readonly size: TileSize;
  /** Draws one repeat in inches, y down. */
  readonly draw: () => void;
}

function drawFigures(doc: jsPDF, { shapes }: PrintTile): void {
  doc.setLineCap('round');
  doc.setLineJoin('round');
  for (const shape of shapes) drawShape(doc, shape);
}

const FORMATS: Readonly<Record<StoredPicture['type'], string>> = {
  'image/jpeg': 'JPEG',
  'image/png': 'PNG',
  'image/webp': 'WEBP',
};

/** The picture a little larger than its tile; under its id the file contains it once. jspdf turns it to y down by itself here. */
function drawPhoto(doc: jsPDF, { picture: id, width, height }: Photo, { type, bytes }: StoredPicture): void {
  const [spareX, spareY] = [width * PHOTO_SPARE, height * PHOTO_SPARE];
  doc.addImage(bytes, FORMATS[type], -spareX, -spareY, width + 2 * spareX, height + 2 * spareY, id, 'FAST');
}

function drawShape(doc: jsPDF, shape: PrintShape): void {
  const colour = shape.tone.length === 1 ? shape.tone[0]!.hex : meanColour(shape.tone);
  if (shape.kind === 'line') {
    doc.setDrawColor(colour);
    doc.setLineWidth(shape.width);
    curve(doc, shape.points, false, shape.soft);
    doc.stroke();
    return;
  }
  doc.setFillColor(colour);
  if (shape.kind === 'area') curve(doc, shape.outline, true, shape.soft);
  else ellipse(doc, shape);
  doc.fill();
}

function curve(doc: jsPDF, points: readonly Point[], closed: boolean, soft: boolean): void {
  const { start, steps } = curveThrough(points, closed, soft);
  doc.moveTo(start.x, start.y);
  let from = start;
  for (const { control, to } of steps) {
    if (control) {
      const near = (end: Point): Point => ({
        x: end.x + (2 / 3) * (control.x - end.x),
        y: end.y + (2 / 3) * (control.y - end.y),
      });
      const [one, other] = [near(from), near(to)];
      doc.curveTo(one.x, one.y, other.x, other.y, to.x, to.y);
    } else doc.lineTo(to.x, to.y);
    from = to;
  }
  if (closed) doc.close();
}

/** Length of the Bézier handles of a quarter circle, in radii: 4/3 (√2 − 1). */
const HANDLE = (4 / 3) * (Math.SQRT2 - 1);

function ellipse(doc: jsPDF, dot: Extract<PrintShape, { kind: 'dot' }>): void {
  const angle = (dot.turn * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const at = (x: number, y: number): [number, number] => [
    dot.at.x + x * dot.across * cos - y * dot.along * sin,
    dot.at.y + x * dot.across * sin + y * dot.along * cos,
  ];
  const h = HANDLE;
  doc.moveTo(...at(1, 0));
  doc.curveTo(...at(1, h), ...at(h, 1), ...at(0, 1));
  doc.curveTo(...at(-h, 1), ...at(-1, h), ...at(-1, 0));
  doc.curveTo(...at(-1, -h), ...at(-h, -1), ...at(0, -1));
  doc.curveTo(...at(h, -1), ...at(1, -h), ...at(1, 0));
  doc.close();
}

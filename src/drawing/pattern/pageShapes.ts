// A page of marks as what SVG draws, in points (1/72 inch), to be looked at before it is printed. pdf/pdfSheets.ts paints the same
// marks into a file; ui/stage/finishing/PageSheet.tsx puts the shapes on the screen.
import { clothAngle } from '../../cloth/print/printTile';
import type { Outline, Point } from '../../geometry/point';
import type { PictureId } from '../../model/picture/picture';
import { inchText } from '../number';
import { patternFor } from '../prints';
import type { Face, Fill, Mark, Page, Paper, Stroke } from './page';

const POINTS = 72;

/** Values of SVG attributes; without a stroke no line is drawn. */
interface Look {
  readonly fill: string;
  readonly stroke?: string;
  readonly strokeWidth?: string;
  readonly strokeDasharray?: string;
}

export type PageShape =
  | { readonly kind: 'text'; readonly x: string; readonly y: string; readonly face: Face; readonly size: string; readonly ink: string; readonly text: string }
  | { readonly kind: 'path'; readonly d: string; readonly look: Look }
  | { readonly kind: 'circle'; readonly cx: string; readonly cy: string; readonly r: string; readonly look: Look }
  | { readonly kind: 'image'; readonly x: string; readonly y: string; readonly width: string; readonly height: string; readonly transform: string; readonly picture: PictureId }; // biome-ignore format: a table

/** A print at the scale and in the direction of some pieces: an empty <pattern> that refers to the one of patternFor. */
export interface TurnedPrint {
  readonly id: string;
  /** Id of the pattern of patternFor, which the document must define. */
  readonly of: string;
  readonly transform: string;
}

export interface PageShapes {
  /** Points. */
  readonly width: number;
  readonly height: number;
  readonly prints: readonly TurnedPrint[];
  /** In the order in which they are painted. */
  readonly shapes: readonly PageShape[];
}

/** The shapes of a page. Every id on it begins with `key`, which no other page of the document may have. */
export function pageShapes(page: Page, paper: Paper, key: string): PageShapes {
  const prints = new Prints(key);
  const shapes = page.marks.map((mark) => shapeOf(mark, prints));
  return { width: paper.width * POINTS, height: paper.height * POINTS, prints: prints.all(), shapes };
}

function shapeOf(mark: Mark, prints: Prints): PageShape {
  switch (mark.kind) {
    case 'text': {
      const { at, face, size, ink, text } = mark;
      return { kind: 'text', x: points(at.x), y: points(at.y), face, size: points(size), ink, text };
    }
    case 'line':
      return {
        kind: 'path',
        d: `M${mark.points.map(pair).join('L')}`,
        look: { fill: 'none', ...lineOf(mark.stroke) },
      };
    case 'shape':
      return {
        kind: 'path',
        d: mark.outlines.map((outline: Outline) => `M${outline.map(pair).join('L')}Z`).join(''),
        look: { fill: prints.fill(mark.fill), ...lineOf(mark.stroke) },
      };
    case 'disc': {
      const { centre, radius, fill, stroke } = mark;
      const look = { fill: prints.fill(fill), ...lineOf(stroke) };
      return { kind: 'circle', cx: points(centre.x), cy: points(centre.y), r: points(radius), look };
    }
    case 'picture': {
      const { picture, centre, width, height, turn } = mark;
      return {
        kind: 'image',
        x: points(-width / 2),
        y: points(-height / 2),
        width: points(width),
        height: points(height),
        transform: `translate(${points(centre.x)} ${points(centre.y)}) rotate(${turn})`,
        picture,
      };
    }
    default:
      return mark satisfies never;
  }
}

function lineOf(stroke: Stroke | null): Omit<Look, 'fill'> {
  if (!stroke) return {};
  return {
    stroke: stroke.ink,
    strokeWidth: points(stroke.width),
    ...(stroke.dash ? { strokeDasharray: stroke.dash.map(points).join(' ') } : {}),
  };
}

/** The prints of one page, each scale and direction once. */
class Prints {
  private readonly found = new Map<string, TurnedPrint>();

  constructor(private readonly key: string) {}

  /** The value of the attribute `fill`. */
  fill(fill: Fill | null): string {
    if (!fill) return 'none';
    if (fill.kind === 'ink') return fill.colour;
    const { fabric, scale, turn } = fill;
    const base = patternFor(fabric);
    if (!base) return fabric.colour;
    const degrees = clothAngle(fabric, turn) % 360;
    const transform = `scale(${inchText(scale * POINTS)}) rotate(${inchText(degrees)})`;
    const known = this.found.get(`${base.id} ${transform}`);
    const print = known ?? { id: `${this.key}-${this.found.size + 1}`, of: base.id, transform };
    if (!known) this.found.set(`${base.id} ${transform}`, print);
    return `url(#${print.id})`;
  }

  all(): TurnedPrint[] {
    return [...this.found.values()];
  }
}

/** A length in points, to a thousandth. */
function points(inches: number): string {
  return inchText(Math.round(inches * POINTS * 1000) / 1000);
}

function pair({ x, y }: Point): string {
  return `${points(x)},${points(y)}`;
}

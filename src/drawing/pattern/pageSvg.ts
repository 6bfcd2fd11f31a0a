// Writes a page of marks as SVG, one unit to the point (1/72 inch), to be looked at before it is printed. pdf/pdfSheets.ts paints
// the same marks into a file.
import { printTurn } from '../../cloth/print/printTile';
import type { Outline, Point } from '../../geometry/point';
import { escaped, inchText, outlinePath } from '../number';
import { patternFor } from '../prints';
import type { Face, Fill, Mark, Page, Paper, Stroke } from './page';

const POINTS = 72;

export interface PageSvgOptions {
  /** Begins every id on the page: several pages in one document have different keys. */
  readonly key: string;
  /** Whether the figures of prints are written too; false where the document has those of patternFor already. */
  readonly prints: boolean;
}

/** Figures are spaced as in the PDF, which neither kerns nor joins letters. */
const LETTERS = 'white-space:pre;font-kerning:none;font-variant-ligatures:none;font-variant-numeric:normal';
const FACES: Readonly<Record<Face, string>> = {
  display: `font-family="'Young Serif', Georgia, serif" font-weight="400"`,
  text: `font-family="'Figtree Variable', Figtree, sans-serif" font-weight="400"`,
  strong: `font-family="'Figtree Variable', Figtree, sans-serif" font-weight="600"`,
};

/** The text of an SVG of the page: white paper with its marks in their order. The same page gives the same text. */
export function pageSvg(page: Page, paper: Paper, { key, prints }: PageSvgOptions): string {
  const cloth = new ClothPatterns(key);
  const marks = page.marks.map((mark) => markText(mark, cloth));
  const size = `${points(paper.width)} ${points(paper.height)}`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${size}" style="${LETTERS}" stroke-linejoin="round">`,
    `<defs>${cloth.markup(prints)}</defs>`,
    `<rect width="${points(paper.width)}" height="${points(paper.height)}" fill="#ffffff"/>`,
    ...marks,
    '</svg>',
  ].join('\n');
}

function markText(mark: Mark, cloth: ClothPatterns): string {
  switch (mark.kind) {
    case 'text':
      return `<text x="${points(mark.at.x)}" y="${points(mark.at.y)}" ${FACES[mark.face]} font-size="${points(mark.size)}" fill="${mark.ink}">${escaped(mark.text)}</text>`;
    case 'line':
      return `<path d="M${mark.points.map(pair).join('L')}" fill="none"${strokeText(mark.stroke)}/>`;
    case 'shape': {
      const d = mark.outlines.map((outline) => outlinePath(inPoints(outline))).join('');
      return `<path d="${d}" fill="${cloth.fill(mark.fill)}"${strokeText(mark.stroke)}/>`;
    }
    case 'disc': {
      const { centre, radius, fill, stroke } = mark;
      return `<circle cx="${points(centre.x)}" cy="${points(centre.y)}" r="${points(radius)}" fill="${cloth.fill(fill)}"${strokeText(stroke)}/>`;
    }
    default:
      return mark satisfies never;
  }
}

function strokeText(stroke: Stroke | null): string {
  if (!stroke) return '';
  const dash = stroke.dash ? ` stroke-dasharray="${stroke.dash.map(points).join(' ')}"` : '';
  return ` stroke="${stroke.ink}" stroke-width="${points(stroke.width)}"${dash}`;
}

/** The prints of one page: for each scale and direction an empty pattern that refers to the figures of the fabric's own. */
class ClothPatterns {
  private readonly ids = new Map<string, { readonly id: string; readonly markup: string }>();
  private readonly own = new Map<string, string>();

  constructor(private readonly key: string) {}

  /** The value of the attribute `fill`. */
  fill(fill: Fill | null): string {
    if (!fill) return 'none';
    if (fill.kind === 'ink') return fill.colour;
    const { fabric, scale, turn } = fill;
    const base = patternFor(fabric);
    if (!base || fabric.cloth.kind !== 'print') return fabric.colour;
    this.own.set(base.id, base.markup);
    const degrees = (fabric.cloth.print.angle + printTurn(fabric, turn)) % 360;
    const transform = `scale(${points(scale)}) rotate(${inchText(degrees)})`;
    const known = this.ids.get(`${base.id} ${transform}`);
    const id = known?.id ?? `${this.key}-${this.ids.size + 1}`;
    if (!known) {
      const markup = `<pattern id="${id}" href="#${base.id}" patternTransform="${transform}"/>`;
      this.ids.set(`${base.id} ${transform}`, { id, markup });
    }
    return `url(#${id})`;
  }

  markup(prints: boolean): string {
    const own = prints ? [...this.own.values()] : [];
    return [...own, ...Array.from(this.ids.values(), ({ markup }) => markup)].join('');
  }
}

function points(inches: number): string {
  return inchText(inches * POINTS);
}

function pair({ x, y }: Point): string {
  return `${points(x)},${points(y)}`;
}

function inPoints(outline: Outline): Point[] {
  return outline.map(({ x, y }) => {
    return { x: x * POINTS, y: y * POINTS };
  });
}

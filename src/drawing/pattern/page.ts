// The written pattern as a plain tree: pages of marks in inches from the upper left corner of the page. What paints them
// into a file: pdf/pdfSheets.ts. Letters are set one run at a time; breaking lines is lettering's.
import type { Outline, Point } from '../../geometry/point';
import type { PictureId } from '../../model/picture/picture';
import type { Fabric } from '../../model/project';
import type { Degrees, Inches } from '../../model/units';

/** The typefaces of the pattern: for headings, running text and emphasis. */
export type Face = 'display' | 'text' | 'strong';

export type Fill =
  | { readonly kind: 'ink'; readonly colour: string }
  /** Cloth at `scale` page inches to the inch; its strip lies `turn` degrees clockwise from the right. */
  | { readonly kind: 'cloth'; readonly fabric: Fabric; readonly scale: number; readonly turn: Degrees };

export interface Stroke {
  readonly ink: string;
  readonly width: Inches;
  /** Dash and gap, inches; solid unless given. */
  readonly dash?: readonly [Inches, Inches];
}

export type Mark =
  | {
      readonly kind: 'text';
      /** Left end of the baseline. */
      readonly at: Point;
      readonly text: string;
      readonly face: Face;
      /** Height of the letters' body, inches. */
      readonly size: Inches;
      readonly ink: string;
    }
  | {
      readonly kind: 'shape';
      /** Closed outlines that are filled as one shape. */
      readonly outlines: readonly Outline[];
      readonly fill: Fill | null;
      readonly stroke: Stroke | null;
    }
  | { readonly kind: 'line'; readonly points: readonly Point[]; readonly stroke: Stroke }
  | {
      readonly kind: 'disc';
      readonly centre: Point;
      readonly radius: Inches;
      readonly fill: Fill | null;
      readonly stroke: Stroke | null;
    }
  | {
      readonly kind: 'picture';
      readonly picture: PictureId;
      readonly centre: Point;
      /** Before it is turned. */
      readonly width: Inches;
      readonly height: Inches;
      /** Clockwise about its middle. */
      readonly turn: Degrees;
    };

/** A group of marks with its size; coordinates are from its upper left corner. Pages are composed of figures. */
export interface Figure {
  readonly width: Inches;
  readonly height: Inches;
  readonly marks: readonly Mark[];
}

/** A template to print: its name, words on its use, and its lines in true inches. */
export interface Template {
  readonly title: string;
  readonly words: string;
  readonly figure: Figure;
}

export interface Page {
  /** The parts of the pattern on this page, in order; a part may go on over several pages. */
  readonly parts: readonly string[];
  readonly marks: readonly Mark[];
}

export interface Paper {
  readonly width: Inches;
  readonly height: Inches;
}

/** A4 by ISO 216: 210 × 297 mm. Letter by ANSI/ASME Y14.1 size A: 8 1/2 × 11 in. */
export const PAPERS = {
  a4: { width: 210 / 25.4, height: 297 / 25.4 },
  letter: { width: 8.5, height: 11 },
} as const satisfies Record<string, Paper>;
export type PaperName = keyof typeof PAPERS;

export interface Pattern {
  readonly title: string;
  readonly paper: Paper;
  readonly pages: readonly Page[];
}

/** The marks, moved right and down by inches. */
export function shifted(marks: readonly Mark[], right: Inches, down: Inches): Mark[] {
  if (right === 0 && down === 0) return [...marks];
  const move = (point: Point): Point => ({ x: point.x + right, y: point.y + down });
  return marks.map((mark): Mark => {
    switch (mark.kind) {
      case 'text':
        return { ...mark, at: move(mark.at) };
      case 'shape':
        return { ...mark, outlines: mark.outlines.map((outline) => outline.map(move)) };
      case 'line':
        return { ...mark, points: mark.points.map(move) };
      case 'disc':
      case 'picture':
        return { ...mark, centre: move(mark.centre) };
      default:
        return mark satisfies never;
    }
  });
}

/** A figure of figures one below the other, `gap` apart. */
export function stacked(figures: readonly Figure[], gap: Inches): Figure {
  let down = 0;
  const marks: Mark[] = [];
  for (const figure of figures) {
    marks.push(...shifted(figure.marks, 0, down));
    down += figure.height + gap;
  }
  const width = Math.max(0, ...figures.map((figure) => figure.width));
  return { width, height: Math.max(0, down - gap), marks };
}

/** A figure of figures side by side with their tops level; their left edges are `step` apart. */
export function sideBySide(figures: readonly Figure[], step: Inches): Figure {
  return {
    width: Math.max(0, ...figures.map((figure, index) => index * step + figure.width)),
    height: Math.max(0, ...figures.map((figure) => figure.height)),
    marks: figures.flatMap((figure, index) => shifted(figure.marks, index * step, 0)),
  };
}

// The look of the pattern: letter sizes, inks and lines. All inks are neutral, so that only the cloth has strong colours.
import type { Inches } from '../../model/units';
import type { Face, Fill, Stroke } from './page';

export interface Style {
  readonly face: Face;
  readonly size: Inches;
  readonly ink: string;
  /** Distance from one baseline to the next. */
  readonly leading: Inches;
}

export const INK = '#1b1b1b';
const INK_SOFT = '#4c4c4b';
const INK_FAINT = '#6b6b69';
export const HAIRLINE = '#c4c4c2';
export const WASH = '#f0f0ee';
/** Colour of a place without cloth. */
export const BARE = '#d2d0cc';
export const WHITE = '#ffffff';

const POINT: Inches = 1 / 72;

function style(face: Face, points: number, leading: number, ink = INK): Style {
  return { face, size: points * POINT, leading: points * POINT * leading, ink };
}

export const STYLES = {
  title: style('display', 30, 1.16),
  longTitle: style('display', 19, 1.2),
  longestTitle: style('display', 13, 1.25),
  lead: style('text', 12, 1.4, INK_SOFT),
  part: style('display', 21, 1.2),
  heading: style('display', 13, 1.25),
  card: style('display', 11.5, 1.25),
  body: style('text', 9.5, 1.42),
  strong: style('strong', 9.5, 1.42),
  small: style('text', 8, 1.36, INK_SOFT),
  smallStrong: style('strong', 8, 1.36),
  label: style('text', 7.25, 1.3, INK_SOFT),
  labelStrong: style('strong', 7.25, 1.3),
  column: style('strong', 7.25, 1.3, INK_FAINT),
} as const satisfies Record<string, Style>;

export const HAIR: Stroke = { ink: HAIRLINE, width: 0.006 };
export const SEAM: Stroke = { ink: '#3a3835', width: 0.004 };
export const EDGE: Stroke = { ink: INK, width: 0.009 };
export const FIRM: Stroke = { ink: INK, width: 0.014 };
export const DASHED: Stroke = { ink: INK, width: 0.009, dash: [0.07, 0.045] };

export const MARGIN: Inches = 0.65;

/** A plain fill of this colour. */
export function ink(colour: string): Fill {
  return { kind: 'ink', colour };
}

// Sets text: measures runs, breaks lines to a width, and sets fractions as fractions. The caller's Type knows the widths of
// letters, so that this file needs neither a page nor a font file.
import type { Inches } from '../../model/units';
import type { Style } from './look';
import { type Face, type Figure, type Mark, shifted } from './page';

/** Measures letters of the typefaces. */
export interface Type {
  /** Width of a run of letters, inches. For letters that the typeface lacks it measures their substitutes. */
  width(text: string, face: Face, size: Inches): Inches;
}

export type Align = 'left' | 'right' | 'middle';

/** Distance from the top of the letters to the baseline, as a part of their size. */
const ASCENT = 0.76;
/** Size of a fraction's figures, and the rise of the upper ones, as parts of the letters' size. */
const FRACTION_SIZE = 0.64;
const FRACTION_RISE = 0.3;
/** Size of the space between a whole number and its fraction, as a part of the letters' size. */
const THIN = 0.45;

interface Run {
  readonly text: string;
  readonly size: Inches;
  readonly rise: Inches;
}

/** Splits 14 1/4 into its whole number, a thin space and the three parts of the fraction. */
function runsOf(text: string, size: Inches): Run[] {
  if (!text.includes('/'))
    return text === '' ? [] : [{ text: text.replaceAll('\u00a0', ' '), size, rise: 0 }];
  return text.split(/(\u00a0?(?<![\d./])\d{1,3}\/\d{1,3}(?![\d/]))/u).flatMap((part, index): Run[] => {
    if (part === '') return [];
    if (index % 2 === 0) return [{ text: part.replaceAll('\u00a0', ' '), size, rise: 0 }];
    const [over, under] = part.trim().split('/') as [string, string];
    const thin = part.startsWith('\u00a0') ? [{ text: ' ', size: size * THIN, rise: 0 }] : [];
    const small = size * FRACTION_SIZE;
    return [
      ...thin,
      { text: over, size: small, rise: size * FRACTION_RISE },
      { text: '\u2044', size, rise: 0 },
      { text: under, size: small, rise: 0 },
    ];
  });
}

/** The text with non-breaking spaces between a whole number, its fraction and the unit. */
function glued(text: string): string {
  return text.replace(/(\d) (?=\d+\/\d|(?:cm|yd|m)\b)/g, '$1\u00a0');
}

/** Width of a line of text, inches. */
export function textWidth(text: string, style: Style, type: Type): Inches {
  return gluedWidth(glued(text), style, type);
}

function gluedWidth(text: string, style: Style, type: Type): Inches {
  let sum = 0;
  for (const run of runsOf(text, style.size)) sum += type.width(run.text, style.face, run.size);
  return sum;
}

/** The style, its letters as much smaller as the text needs to take no more than so many lines; never below half. */
export function shrunkTo(lines: number, text: string, style: Style, width: Inches, type: Type): Style {
  let small = style;
  while (small.size > style.size / 2 && linesOf(text, small, width, type).length > lines) {
    small = { ...small, size: small.size * 0.95, leading: small.leading * 0.95 };
  }
  return small;
}

/** The text broken into lines no wider than `width`, at least one. Breaks words longer than a line; keeps line ends. */
export function linesOf(text: string, style: Style, width: Inches, type: Type): string[] {
  return glued(text)
    .split('\n')
    .flatMap((paragraph) => {
      const words = paragraph.replace(/^[ \t]+/, '').split(/[ \t]+/);
      // Most of what is set is shorter than its line, and then no part of it needs to be measured.
      const whole = words.join(' ');
      if (gluedWidth(whole, style, type) <= width) return [whole];
      const lines: string[] = [];
      let line = '';
      for (const word of words.flatMap((one) => brokenWord(one, style, width, type))) {
        const longer = line === '' ? word : `${line} ${word}`;
        if (line !== '' && gluedWidth(longer, style, type) > width) {
          lines.push(line);
          line = word;
        } else line = longer;
      }
      return [...lines, line];
    });
}

function brokenWord(word: string, style: Style, width: Inches, type: Type): string[] {
  if (gluedWidth(word, style, type) <= width) return [word];
  const parts: string[] = [];
  let part = '';
  for (const letter of word) {
    if (part !== '' && gluedWidth(part + letter, style, type) > width) {
      parts.push(part);
      part = '';
    }
    part += letter;
  }
  return [...parts, part];
}

/** One unbroken line with its baseline at `y`; `x` is its left end, right end or middle, by `align`. */
export function line(
  text: string,
  style: Style,
  x: Inches,
  y: Inches,
  type: Type,
  align: Align = 'left',
): Mark[] {
  const marks: Mark[] = [];
  const runs = runsOf(glued(text), style.size);
  const width = align === 'left' ? 0 : textWidth(text, style, type);
  let at = x - (align === 'right' ? width : align === 'middle' ? width / 2 : 0);
  for (const run of runs) {
    marks.push({
      kind: 'text',
      at: { x: at, y: y - run.rise },
      text: run.text,
      face: style.face,
      size: run.size,
      ink: style.ink,
    });
    at += type.width(run.text, style.face, run.size);
  }
  return marks;
}

/** From the top of a line to its baseline. */
export function baselineOf({ leading, size }: Style): Inches {
  return (leading - size) / 2 + size * ASCENT;
}

/** Text broken into lines, as a figure of this width. */
export function textFigure(
  text: string,
  style: Style,
  width: Inches,
  type: Type,
  align: Align = 'left',
): Figure {
  const lines = linesOf(text, style, width, type);
  const x = align === 'left' ? 0 : align === 'right' ? width : width / 2;
  const first = baselineOf(style);
  const marks = lines.flatMap((one, index) =>
    line(one, style, x, first + index * style.leading, type, align),
  );
  return { width, height: lines.length * style.leading, marks };
}

/** Figures in a row, each at its x, such as cells of a table or a legend; their tops or middles are level. */
export function inRow(
  cells: readonly { readonly x: Inches; readonly figure: Figure }[],
  align: 'top' | 'middle' = 'top',
): Figure {
  const height = Math.max(0, ...cells.map(({ figure }) => figure.height));
  return {
    width: Math.max(0, ...cells.map(({ x, figure }) => x + figure.width)),
    height,
    marks: cells.flatMap(({ x, figure }) =>
      shifted(figure.marks, x, align === 'middle' ? (height - figure.height) / 2 : 0),
    ),
  };
}

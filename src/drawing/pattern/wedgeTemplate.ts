// The wedge at true size: cut line with its trimmed tip, seam lines, notches, lines to lay along the strips, grain.
import type { Point } from '../../geometry/point';
import { wedgeOnSet } from '../../geometry/stripSet';
import { apothem, cutWedge, slope } from '../../geometry/wedge';
import { CENTIMETRES_PER_INCH, type Inches } from '../../model/units';
import { line } from './lettering';
import { DASHED, FIRM, HAIR, INK, STYLES } from './look';
import type { Mark } from './page';
import { grainArrow } from './signs';
import type { Template } from './templatePages';
import type { Writing } from './writing';

export function wedgeTemplate(writing: Writing): Template {
  const { project, say, type } = writing;
  const { wedge } = project;
  const { base } = cutWedge(wedge);
  const high = wedge.cutHeight;
  const middle = base / 2;
  const outline = wedgeOnSet(0, 'up', high, wedge);
  const words = (text: string, y: Inches, style: typeof STYLES.body | typeof STYLES.card = STYLES.label) =>
    line(text, style, middle, y, type, 'middle');
  return {
    title: say('Wedge'),
    words: say('{count} to the block. Base {base}, height {height}, seams included. Cut tip up and tip down in turn.', {
      count: wedge.perBlock,
      base: { inches: base },
      height: { inches: high },
    }), // biome-ignore format: one sentence
    figure: {
      width: base,
      height: high + 0.02,
      marks: [
        ...stripLines(writing, base),
        { kind: 'line', points: seamLine(writing, base), stroke: DASHED },
        ...notches(writing, outline),
        { kind: 'line', points: [...outline, outline[0]!], stroke: FIRM },
        ...grainArrow({ x: middle, y: high * 0.86 }, Math.min(1.1, base * 0.17)),
        ...words(say('along the strips'), high * 0.86 + 0.14),
        ...words(say('Wedge'), high * 0.67, STYLES.card),
        ...words(say('rim'), high - wedge.outerSeam * 0.36),
      ],
    },
  };
}

/** The finished wedge inside: where the two side seams meet, and the rim's seam. */
function seamLine({ project }: Writing, base: Inches): Point[] {
  const { wedge } = project;
  const foot = wedge.cutHeight - wedge.outerSeam;
  const half = apothem(wedge) * slope(wedge.perBlock);
  const top = { x: base / 2, y: foot - apothem(wedge) };
  return [top, { x: base / 2 + half, y: foot }, { x: base / 2 - half, y: foot }, top];
}

/** Level lines at every inch (or every two centimetres) from the rim, with their distance. */
function stripLines({ project, say, type }: Writing, base: Inches): Mark[] {
  const { wedge } = project;
  const step = project.preferences.unit === 'in' ? 1 : 2 / CENTIMETRES_PER_INCH;
  const marks: Mark[] = [];
  for (let from = step; from < wedge.cutHeight - 0.4; from += step) {
    const y = wedge.cutHeight - from;
    const half = base / 2 - from * slope(wedge.perBlock);
    marks.push({ kind: 'line', points: [{ x: base / 2 - half, y }, { x: base / 2 + half, y }], stroke: HAIR });
    const label = say('{distance}', { distance: { inches: from } });
    if (half > 0.55) marks.push(...line(label, STYLES.label, base / 2 - half + wedge.assemblySeam + 0.12, y - 0.03, type)); // biome-ignore format: one line
  }
  return marks;
}

/** Marks in the seam allowance: the middle of the rim, and a third and two thirds up both long sides. */
function notches({ project }: Writing, outline: readonly Point[]): Mark[] {
  const { wedge } = project;
  const [left, right, tipRight, tipLeft] = outline as [Point, Point, Point, Point];
  const notch = (from: Point, to: Point, part: number, deep: Inches): Mark => {
    const at = { x: from.x + (to.x - from.x) * part, y: from.y + (to.y - from.y) * part };
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    const inward = { x: (to.y - from.y) / length, y: -(to.x - from.x) / length };
    const end = { x: at.x + inward.x * deep, y: at.y + inward.y * deep };
    return { kind: 'line', points: [at, end], stroke: { ink: INK, width: 0.02 } };
  };
  const side = wedge.assemblySeam * 0.6;
  return [
    notch(left, right, 0.5, wedge.outerSeam * 0.6),
    ...[1 / 3, 2 / 3].flatMap((part) => [
      notch(right, tipRight, part, side),
      notch(tipLeft, left, 1 - part, side),
    ]),
  ];
}

// The template of the wedge: cut line with its trimmed tip, seam lines, notches, lines to lay along the strips, and grain.
import type { Point } from '../../../geometry/point';
import { wedgeOnSet } from '../../../geometry/stripSet';
import { apothem, cutWedge, slope } from '../../../geometry/wedge';
import { CENTIMETRES_PER_INCH, type Inches } from '../../../model/units';
import { line } from '../lettering';
import { DASHED, FIRM, HAIR, INK, STYLES, type Style } from '../look';
import type { Mark, Template } from '../page';
import { grainArrow } from '../signs';
import type { Writing } from '../writing';

/** The template of the wedge, with words on its use. */
export function wedgeTemplate(writing: Writing): Template {
  const { project, say, type } = writing;
  const { wedge } = project;
  const { base, tip } = cutWedge(wedge);
  const high = wedge.cutHeight;
  const middle = base / 2;
  const step = stepOf(writing);
  const grainAt = high - 1.5 * step - 0.04;
  const outline = wedgeOnSet(0, 'up', high, wedge);
  const words = (text: string, y: Inches, style: Style = STYLES.label) =>
    line(text, style, middle, y, type, 'middle');
  return {
    title: say('Wedge'),
    words: say('{count} to the block. Base {base}, height {height}, trimmed tip {tip} wide, seams included; the dashed line is the seam, {seam} on the long sides. Cut tip up and tip down in turn.', {
      seam: { seam: wedge.assemblySeam },
      count: wedge.perBlock,
      base: { inches: base },
      tip: { inches: tip },
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
        ...grainArrow({ x: middle, y: grainAt }, Math.min(1.1, base * 0.17)),
        ...words(say('along the strips'), grainAt + 0.14),
        ...words(say('Wedge'), high - 2.5 * step + 0.05, STYLES.card),
        ...line(say('rim'), STYLES.label, base * 0.3, high - wedge.outerSeam * 0.36, type, 'middle'),
      ],
    },
  };
}

/** The finished wedge inside the cut line: its tip, where the two side seams meet, and its rim. */
function seamLine({ project }: Writing, base: Inches): Point[] {
  const { wedge } = project;
  const foot = wedge.cutHeight - wedge.outerSeam;
  const half = apothem(wedge) * slope(wedge.perBlock);
  const top = { x: base / 2, y: foot - apothem(wedge) };
  return [top, { x: base / 2 + half, y: foot }, { x: base / 2 - half, y: foot }, top];
}

/** Distance from one strip line to the next, inches. */
function stepOf({ project }: Pick<Writing, 'project'>): Inches {
  return project.preferences.unit === 'in' ? 1 : 2 / CENTIMETRES_PER_INCH;
}

/** Level lines at every inch (or every two centimetres) from the rim, with their distance. */
function stripLines({ project, say, type }: Writing, base: Inches): Mark[] {
  const { wedge } = project;
  const step = stepOf({ project });
  // The labels keep clear of the slanted seam line.
  const inside =
    wedge.assemblySeam / Math.cos(Math.PI / wedge.perBlock) + 0.12 * slope(wedge.perBlock) + 0.05;
  const marks: Mark[] = [];
  for (let from = step; from < wedge.cutHeight - 0.4; from += step) {
    const y = wedge.cutHeight - from;
    const half = base / 2 - from * slope(wedge.perBlock);
    marks.push({
      kind: 'line',
      points: [
        { x: base / 2 - half, y },
        { x: base / 2 + half, y },
      ],
      stroke: HAIR,
    });
    const label = say('{distance}', { distance: { inches: from } });
    if (half > 0.55) marks.push(...line(label, STYLES.label, base / 2 - half + inside, y - 0.03, type)); // biome-ignore format: one line
  }
  return marks;
}

/** Notches in the seam allowance: at the middle of the rim, and at a third and two thirds of both long sides. */
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

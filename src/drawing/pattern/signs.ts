// Draws the small signs of the pattern: arrows, tips up and down, numbers on discs, measures with ticks.
import type { Point } from '../../geometry/point';
import type { Degrees, Inches } from '../../model/units';
import { line, type Type, textWidth } from './lettering';
import { EDGE, HAIRLINE, INK, ink, type Style, WHITE } from './look';
import type { Mark } from './page';

/** An arrow with a pale edge, so that it shows on any cloth. */
export function arrow(from: Point, to: Point, head: Inches = 0.07): Mark[] {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length < 1e-9) return [];
  const [ux, uy] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const neck = { x: to.x - ux * head, y: to.y - uy * head };
  const wing = (side: number): Point => ({
    x: neck.x - uy * head * 0.5 * side,
    y: neck.y + ux * head * 0.5 * side,
  });
  const outline = [to, wing(1), wing(-1)];
  return [
    { kind: 'line', points: [from, neck], stroke: { ink: WHITE, width: 0.045 } },
    { kind: 'shape', outlines: [outline], fill: ink(WHITE), stroke: { ink: WHITE, width: 0.03 } },
    { kind: 'line', points: [from, neck], stroke: { ink: INK, width: 0.018 } },
    { kind: 'shape', outlines: [outline], fill: ink(INK), stroke: null },
  ];
}

/** A small wedge that stands on its rim (tip up) or on its tip, in a box `height` inches high with its upper left corner at `at`. */
export function tipSign(tip: 'up' | 'down', height: Inches, at: Point): Mark {
  const width = height * 0.95;
  const [base, point] = tip === 'up' ? [at.y + height, at.y] : [at.y, at.y + height];
  const nib = width * 0.09;
  const middle = at.x + width / 2;
  const outline = [
    { x: at.x, y: base },
    { x: at.x + width, y: base },
    { x: middle + nib, y: point },
    { x: middle - nib, y: point },
  ];
  const filled = tip === 'up';
  return {
    kind: 'shape',
    outlines: [outline],
    fill: ink(filled ? INK : WHITE),
    stroke: { ink: INK, width: 0.01 },
  };
}

/** Words on a disc that grows with them: pale, or dark where the words are white. */
export function numberDisc(text: string, centre: Point, style: Style, type: Type, least: Inches = 0): Mark[] {
  const radius = Math.max(least, textWidth(text, style, type) / 2 + style.size * 0.22, style.size * 0.68);
  return [
    {
      kind: 'disc',
      centre,
      radius,
      fill: ink(style.ink === WHITE ? INK : WHITE),
      stroke: { ink: INK, width: 0.006 },
    },
    ...line(text, style, centre.x, centre.y + style.size * 0.345, type, 'middle'),
  ];
}

/** A pointer on the edge of a disc, `toward` degrees clockwise from straight up. */
export function pointer(centre: Point, radius: Inches, toward: Degrees): Mark {
  const angle = (toward * Math.PI) / 180;
  const [ux, uy] = [Math.sin(angle), -Math.cos(angle)];
  const reach = radius * 1.62;
  const wide = radius * 0.46;
  const foot = radius * 1.02;
  const outline = [
    { x: centre.x + ux * reach, y: centre.y + uy * reach },
    { x: centre.x + ux * foot - uy * wide, y: centre.y + uy * foot + ux * wide },
    { x: centre.x + ux * foot + uy * wide, y: centre.y + uy * foot - ux * wide },
  ];
  return { kind: 'shape', outlines: [outline], fill: ink(INK), stroke: { ink: WHITE, width: 0.008 } };
}

/** A dimension line with ticks at its ends and words in its middle on white. */
export function measure(from: Point, to: Point, words: string, style: Style, type: Type): Mark[] {
  const level = Math.abs(to.y - from.y) < Math.abs(to.x - from.x);
  const tick = (at: Point): Mark => {
    const [dx, dy] = level ? [0, 0.04] : [0.04, 0];
    return {
      kind: 'line',
      points: [
        { x: at.x - dx, y: at.y - dy },
        { x: at.x + dx, y: at.y + dy },
      ],
      stroke: EDGE,
    };
  };
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  const half = textWidth(words, style, type) / 2 + 0.04;
  const high = style.size * 0.62;
  const box = [
    { x: middle.x - half, y: middle.y - high },
    { x: middle.x + half, y: middle.y - high },
    { x: middle.x + half, y: middle.y + high },
    { x: middle.x - half, y: middle.y + high },
  ];
  return [
    { kind: 'line', points: [from, to], stroke: { ink: HAIRLINE, width: 0.008 } },
    tick(from),
    tick(to),
    { kind: 'shape', outlines: [box], fill: ink(WHITE), stroke: null },
    ...line(words, style, middle.x, middle.y + style.size * 0.34, type, 'middle'),
  ];
}

/** A level double arrow for the grain; it reaches `reach` inches to both sides of its middle. */
export function grainArrow(middle: Point, reach: Inches): Mark[] {
  const ends = [middle.x - reach, middle.x + reach];
  const heads = ends.map((x, index): Mark => {
    const back = index === 0 ? 0.08 : -0.08;
    const outline = [{ x, y: middle.y }, { x: x + back, y: middle.y - 0.035 }, { x: x + back, y: middle.y + 0.035 }]; // biome-ignore format: a head
    return { kind: 'shape', outlines: [outline], fill: ink(INK), stroke: null };
  });
  const points = ends.map((x) => ({ x, y: middle.y }));
  return [{ kind: 'line', points, stroke: EDGE }, ...heads];
}

// Writes marks of findings as SVG. A clash is a line along its seam, dark with a light core so that it shows on any cloth; a pool
// is a chalk outline; centreMark.ts draws a centre of weight.
import type { Mark } from '../balance/finding';
import { type Outline, type Point, placed } from '../geometry/point';
import type { Inches } from '../model/units';
import { centrePaths, centreReach } from './centreMark';
import type { Drawing } from './drawing';
import { inchText, outlinePath, pointText } from './number';

/** The ends of a seam in quilt inches; null for a seam of a block that does not hang. */
export function seamOnTop(drawing: Drawing, mark: Extract<Mark, { kind: 'seam' }>): Outline | null {
  const ends: [Point, Point] = [mark.from, mark.to];
  if (mark.block === null) return ends;
  const hung = drawing.blocks.find((one) => one.block === mark.block);
  return hung ? placed(ends, hung.quarters, hung.centre, hung.tilt) : null;
}

/** All marks in one group; an empty text without marks. The line of a clash is the wider the longer the clash. */
export function marksLayer(drawing: Drawing, marks: readonly Mark[]): string {
  const drawn = marks.flatMap((mark) => {
    if (mark.kind === 'pool') return [poolMark(mark.outline)];
    if (mark.kind === 'centre') return [centreMark(mark, centreReach(drawing))];
    if (mark.kind === 'light') return [];
    const ends = seamOnTop(drawing, mark);
    return ends ? [seamMark(ends, mark.inches)] : [];
  });
  if (drawn.length === 0) return '';
  const look = 'fill="none" stroke-linecap="round" stroke-linejoin="round"';
  return `<g data-layer="marks" ${look}>\n${drawn.join('\n')}\n</g>`;
}

const DARK = '#1f1d1a';
const LIGHT = '#fffdf6';

function seamMark(ends: Outline, inches: number): string {
  const width = 0.16 + 0.025 * Math.min(8, inches);
  const d = `M${ends.map(pointText).join('L')}`;
  return `<path data-mark="seam" stroke="${DARK}" stroke-width="${inchText(width)}" d="${d}"/><path stroke="${LIGHT}" stroke-width="${inchText(width * 0.45)}" d="${d}"/>`;
}

function centreMark(mark: Extract<Mark, { kind: 'centre' }>, reach: Inches): string {
  return centrePaths(mark, reach)
    .map(({ d, fill, stroke, width }, at) => {
      const named = at === 0 ? ` data-mark="centre-${mark.of}"` : '';
      const line = stroke === 'none' ? '' : ` stroke="${stroke}" stroke-width="${inchText(width)}"`;
      return `<path${named} fill="${fill}"${line} d="${d}"/>`;
    })
    .join('');
}

function poolMark(outline: Outline): string {
  const d = outlinePath(outline);
  const dashes = 'stroke-dasharray="0.6 0.5"';
  return `<path data-mark="pool" stroke="${DARK}" stroke-opacity="0.8" stroke-width="0.3" ${dashes} d="${d}"/><path stroke="${LIGHT}" stroke-width="0.16" ${dashes} d="${d}"/>`;
}

// Draws the mark of a centre of weight: a plus at the middle of the blocks that hang, a line to the centre, and there a form:
// a half-filled circle for lightness, a lozenge for warmth, a square for a fabric.
import type { CentreOf, Mark } from '../balance/finding';
import type { Point } from '../geometry/point';
import type { Inches } from '../model/units';
import { inchText, pointText } from './number';

const DARK = '#1f1d1a';
const LIGHT = '#fffdf6';

/** One path of the mark, in quilt inches. */
interface MarkPath {
  readonly d: string;
  readonly fill: string;
  readonly stroke: string;
  readonly width: Inches;
}

/** Half the size of the mark, inches: large enough to be seen on a large top. */
export function centreReach(top: { readonly width: Inches; readonly height: Inches }): Inches {
  return Math.max(0.7, Math.max(top.width, top.height) / 60);
}

/** The paths from back to front; each line is dark with a light core, so that it shows on any cloth. */
export function centrePaths(mark: Extract<Mark, { kind: 'centre' }>, reach: Inches): MarkPath[] {
  const { at, middle } = mark;
  const plus = `${stroke(middle, reach * 0.6, 0)}${stroke(middle, 0, reach * 0.6)}`;
  const lines = `${plus}M${pointText(middle)}L${pointText(at)}`;
  const thin = reach * 0.18;
  return [
    { d: lines, fill: 'none', stroke: DARK, width: thin * 2.2 },
    { d: lines, fill: 'none', stroke: LIGHT, width: thin },
    { d: form(mark.of, at, reach), fill: LIGHT, stroke: DARK, width: thin * 1.4 },
    { d: core(mark.of, at, reach), fill: DARK, stroke: 'none', width: 0 },
  ];
}

function stroke({ x, y }: Point, across: Inches, down: Inches): string {
  return `M${pointText({ x: x - across, y: y - down })}L${pointText({ x: x + across, y: y + down })}`;
}

function form(of: CentreOf, at: Point, reach: Inches): string {
  if (of === 'light') return circle(at, reach);
  return of === 'warmth' ? corners(at, reach * 1.15, 0) : corners(at, reach * 1.2, 45);
}

function core(of: CentreOf, at: Point, reach: Inches): string {
  if (of === 'light') {
    const radius = inchText(reach);
    const top = pointText({ x: at.x, y: at.y - reach });
    return `M${top}A${radius} ${radius} 0 0 0 ${pointText({ x: at.x, y: at.y + reach })}Z`;
  }
  return of === 'warmth' ? corners(at, reach * 0.45, 0) : corners(at, reach * 0.5, 45);
}

function circle({ x, y }: Point, radius: Inches): string {
  const size = inchText(radius);
  const left = pointText({ x: x - radius, y });
  return `M${left}A${size} ${size} 0 1 1 ${pointText({ x: x + radius, y })}A${size} ${size} 0 1 1 ${left}Z`;
}

/** A square whose first corner lies `degrees` clockwise from straight up. */
function corners(at: Point, reach: Inches, degrees: number): string {
  const points = [0, 90, 180, 270].map((quarter) => {
    const angle = ((quarter + degrees) * Math.PI) / 180;
    return pointText({ x: at.x + reach * Math.sin(angle), y: at.y - reach * Math.cos(angle) });
  });
  return `M${points.join('L')}Z`;
}

// Points, outlines and boxes in inches: x to the right, y down, as on paper and screen.
import type { Degrees, Inches } from '../model/units';

export interface Point {
  readonly x: Inches;
  readonly y: Inches;
}

/** The corners of a closed polygon; the first is not repeated. Outlines run clockwise on screen. */
export type Outline = readonly Point[];

/** A rectangle with level and upright sides; x and y are its upper left corner. */
export interface Box {
  readonly x: Inches;
  readonly y: Inches;
  readonly width: Inches;
  readonly height: Inches;
}

/** Area by the shoelace formula, square inches, never negative; 0 for fewer than three points. */
export function area(outline: Outline): number {
  let twice = 0;
  outline.forEach((point, index) => {
    const next = outline[(index + 1) % outline.length]!;
    twice += point.x * next.y - next.x * point.y;
  });
  return Math.abs(twice) / 2;
}

/** The size of the smallest rectangle round an outline with its length along `grain` (degrees clockwise from the right). */
export function extentAlong(outline: Outline, grain: Degrees): { length: Inches; width: Inches } {
  const cos = Math.cos((grain * Math.PI) / 180);
  const sin = Math.sin((grain * Math.PI) / 180);
  const along = outline.map(({ x, y }) => x * cos + y * sin);
  const crosswise = outline.map(({ x, y }) => y * cos - x * sin);
  return {
    length: Math.max(...along) - Math.min(...along),
    width: Math.max(...crosswise) - Math.min(...crosswise),
  };
}

/** The outline of a box, clockwise from its upper left corner. */
export function boxOutline(box: Box): Outline {
  const right = box.x + box.width;
  const bottom = box.y + box.height;
  return [
    { x: box.x, y: box.y },
    { x: right, y: box.y },
    { x: right, y: bottom },
    { x: box.x, y: bottom },
  ];
}

/** Turns a point about the origin by whole quarter turns clockwise, without rounding. */
export function quarterTurned(point: Point, quarters: number): Point {
  switch (((quarters % 4) + 4) % 4) {
    case 0:
      return point;
    case 1:
      return { x: -point.y, y: point.x };
    case 2:
      return { x: -point.x, y: -point.y };
    default:
      return { x: point.y, y: -point.x };
  }
}

/** Turns a point about the origin by the tilt of a setting, degrees clockwise; a tilt of 0 changes nothing, not even by rounding. */
export function tilted(point: Point, tilt: 0 | 45): Point {
  if (tilt === 0) return point;
  return { x: (point.x - point.y) * Math.SQRT1_2, y: (point.x + point.y) * Math.SQRT1_2 };
}

/** The outline turned about the origin by quarter turns clockwise and the tilt of the setting, then moved by `to`. */
export function placed(outline: Outline, quarters: number, to: Point, tilt: 0 | 45 = 0): Outline {
  return outline.map((point) => {
    const turned = tilted(quarterTurned(point, quarters), tilt);
    return { x: turned.x + to.x, y: turned.y + to.y };
  });
}

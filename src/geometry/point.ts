// Points and outlines in inches: x to the right, y down, as on paper and screen.
import type { Inches } from '../model/units';

export interface Point {
  readonly x: Inches;
  readonly y: Inches;
}

/** A closed polygon, without repeating its first point. Outlines here run clockwise on screen. */
export type Outline = readonly Point[];

/** An upright rectangle by its top left corner. */
export interface Box {
  readonly x: Inches;
  readonly y: Inches;
  readonly width: Inches;
  readonly height: Inches;
}

/** Area by the shoelace formula, always positive; 0 for fewer than three points. */
export function area(outline: Outline): number {
  let twice = 0;
  outline.forEach((point, index) => {
    const next = outline[(index + 1) % outline.length]!;
    twice += point.x * next.y - next.x * point.y;
  });
  return Math.abs(twice) / 2;
}

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

/** The outline turned by quarter turns about the origin and then moved. */
export function placed(outline: Outline, quarters: number, to: Point): Outline {
  return outline.map((point) => {
    const turned = quarterTurned(point, quarters);
    return { x: turned.x + to.x, y: turned.y + to.y };
  });
}

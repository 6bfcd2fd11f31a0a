// The figures a print is made of, in inches on one tile, in painting order. What is drawn (drawing/prints) and what is
// measured (printMix) are the same list.

import type { Box, Point } from '../../geometry/point';
import type { Inches } from '../../model/units';

/** A colour mixed by area, as threads or dots too fine to tell apart: parts sum to 1. A plain ink has one part. */
export type Tone = readonly { readonly hex: string; readonly share: number }[];

export type PrintShape =
  /** An ellipse, its first radius turned `turn` degrees clockwise from the right. */
  | {
      readonly kind: 'dot';
      readonly tone: Tone;
      readonly at: Point;
      readonly across: Inches;
      readonly along: Inches;
      readonly turn: number;
    }
  /** A filled outline; `soft` rounds it off: the curve runs through the middles of its sides. */
  | {
      readonly kind: 'area';
      readonly tone: Tone;
      readonly outline: readonly Point[];
      readonly soft: boolean;
    }
  /** A drawn line with round ends; `soft` rounds off its bends. */
  | {
      readonly kind: 'line';
      readonly tone: Tone;
      readonly points: readonly Point[];
      readonly width: Inches;
      readonly soft: boolean;
    };

/** One repeat: everything outside [0, width] × [0, height] belongs to the neighbouring tiles. */
export interface PrintTile {
  readonly width: Inches;
  readonly height: Inches;
  readonly ground: string;
  readonly shapes: readonly PrintShape[];
}

/** A box that holds the shape, inches. */
export function shapeBox(shape: PrintShape): Box {
  if (shape.kind === 'dot') {
    const reach = Math.max(shape.across, shape.along);
    return { x: shape.at.x - reach, y: shape.at.y - reach, width: 2 * reach, height: 2 * reach };
  }
  const points = shape.kind === 'area' ? shape.outline : shape.points;
  const spare = shape.kind === 'line' ? shape.width / 2 : 0;
  const left = Math.min(...points.map((point) => point.x)) - spare;
  const top = Math.min(...points.map((point) => point.y)) - spare;
  return {
    x: left,
    y: top,
    width: Math.max(...points.map((point) => point.x)) + spare - left,
    height: Math.max(...points.map((point) => point.y)) + spare - top,
  };
}

function moved(shape: PrintShape, by: Point): PrintShape {
  const shift = (point: Point): Point => ({ x: point.x + by.x, y: point.y + by.y });
  if (shape.kind === 'dot') return { ...shape, at: shift(shape.at) };
  if (shape.kind === 'area') return { ...shape, outline: shape.outline.map(shift) };
  return { ...shape, points: shape.points.map(shift) };
}

/** Repeats every shape that crosses an edge of the tile on the other side, in its own place of the painting order. */
export function wrapped(shapes: readonly PrintShape[], width: Inches, height: Inches): PrintShape[] {
  return shapes.flatMap((shape) => {
    const box = shapeBox(shape);
    const copies: PrintShape[] = [];
    for (const down of [-1, 0, 1]) {
      for (const right of [-1, 0, 1]) {
        const x = box.x + right * width;
        const y = box.y + down * height;
        const inside = x < width - 1e-9 && x + box.width > 1e-9 && y < height - 1e-9 && y + box.height > 1e-9;
        if (inside) copies.push(moved(shape, { x: right * width, y: down * height }));
      }
    }
    return copies;
  });
}

/** Brings shapes of one look together, so that they share a path; only for shapes whose order does not show. */
export function byTone(shapes: readonly PrintShape[]): PrintShape[] {
  const groups = new Map<string, PrintShape[]>();
  for (const shape of shapes) {
    const width = shape.kind === 'line' ? shape.width : 0;
    const look = `${width} ${shape.tone.map((part) => `${part.hex} ${part.share}`).join()}`;
    const group = groups.get(look);
    if (group) group.push(shape);
    else groups.set(look, [shape]);
  }
  return [...groups.values()].flat();
}

// What every motif is given (its inks, its chance) and the few figures several motifs share. Motifs are made on a tile one
// unit wide; printShapes scales them to inches.
import type { Point } from '../../geometry/point';
import type { Generator } from './scatter';
import type { PrintShape, Tone } from './shape';

export interface Inks {
  readonly ground: Tone;
  /** The n-th ink from 0; where the print has fewer, a paler tone of the strongest. */
  tone(index: number): Tone;
  /** Two tones mixed by area; `share` of the first, 0 to 1. */
  mixed(first: Tone, second: Tone, share: number): Tone;
}

/** A motif on the unit tile: its height for a width of 1, and its figures in painting order. */
export interface Motif {
  readonly height: number;
  readonly shapes: readonly PrintShape[];
}

export type MotifMaker = (inks: Inks, generator: Generator) => Motif;

export function inksOf(ground: string, inks: readonly string[]): Inks {
  const plain = (hex: string): Tone => [{ hex, share: 1 }];
  const mixed = (first: Tone, second: Tone, share: number): Tone => [
    ...first.map((part) => ({ hex: part.hex, share: part.share * share })),
    ...second.map((part) => ({ hex: part.hex, share: part.share * (1 - share) })),
  ];
  return {
    ground: plain(ground),
    tone: (index) =>
      index < inks.length
        ? plain(inks[index]!)
        : mixed(plain(inks[0]!), plain(ground), index === inks.length ? 0.5 : 0.3),
    mixed,
  };
}

export function dot(tone: Tone, at: Point, across: number, along = across, turn = 0): PrintShape {
  return { kind: 'dot', tone, at, across, along, turn };
}

/** The point `reach` away from another, `turn` degrees clockwise from the right. */
export function away(from: Point, turn: number, reach: number): Point {
  const angle = (turn * Math.PI) / 180;
  return { x: from.x + reach * Math.cos(angle), y: from.y + reach * Math.sin(angle) };
}

/** A leaf from its foot in direction `turn`: rounded sides, a soft point. */
export function leaf(tone: Tone, foot: Point, turn: number, length: number, breadth: number): PrintShape {
  const side = (along: number, across: number) => away(away(foot, turn, along), turn + 90, across);
  return {
    kind: 'area',
    tone,
    soft: true,
    outline: [
      side(-0.06 * length, 0),
      side(0.2 * length, 0.42 * breadth),
      side(0.5 * length, 0.62 * breadth),
      side(0.8 * length, 0.3 * breadth),
      side(1.06 * length, 0),
      side(0.8 * length, -0.3 * breadth),
      side(0.5 * length, -0.62 * breadth),
      side(0.2 * length, -0.42 * breadth),
    ],
  };
}

export function line(tone: Tone, points: readonly Point[], width: number, soft = true): PrintShape {
  return { kind: 'line', tone, points, width, soft };
}

/** An upright rectangle. */
export function bar(tone: Tone, x: number, y: number, width: number, height: number): PrintShape {
  const right = x + width;
  const bottom = y + height;
  return {
    kind: 'area',
    tone,
    soft: false,
    outline: [
      { x, y },
      { x: right, y },
      { x: right, y: bottom },
      { x, y: bottom },
    ],
  };
}

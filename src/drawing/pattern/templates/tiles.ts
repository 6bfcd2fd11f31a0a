// Cuts a figure larger than a page into sheets that overlap. Lines are clipped; words stay whole on one sheet; crosses in the
// overlaps are laid on each other to join the sheets.

import type { Point } from '../../../geometry/point';
import { setLetter } from '../../../model/find';
import { joinedPieces } from '../../../model/lengths';
import type { Inches } from '../../../model/units';
import { line, type Type } from '../lettering';
import { HAIR, INK, STYLES } from '../look';
import { type Figure, type Mark, shifted } from '../page';

export interface Tile extends Figure {
  /** Number of the sheet from 1, row by row. */
  readonly number: number;
}

const OVERLAP: Inches = 0.6;
const ARM: Inches = 0.14;
/** Places of the crosses along an overlap, as parts of its length. */
const CROSSES_AT = [0.22, 0.78] as const;

interface Box {
  readonly left: Inches;
  readonly top: Inches;
  readonly right: Inches;
  readonly bottom: Inches;
}

export interface Tiles {
  readonly tiles: readonly Tile[];
  /** How many crosses join them. */
  readonly crosses: number;
}

/**
 * The fewest sheets of this area for the figure, without empty ones. Marks are from each sheet's upper left corner. The letters
 * of the crosses go on after those of so many crosses `before`.
 */
export function tilesOf(
  figure: Figure,
  area: { readonly width: Inches; readonly height: Inches },
  type: Type,
  before: number,
): Tiles {
  const columns = tilesAlong(figure.width, area.width);
  const rows = tilesAlong(figure.height, area.height);
  if (columns * rows === 1) return { tiles: [{ ...figure, number: 1 }], crosses: 0 };
  // All sheets have the same size, so that the last one is no sliver.
  const sheet = {
    width: (figure.width + (columns - 1) * OVERLAP) / columns,
    height: (figure.height + (rows - 1) * OVERLAP) / rows,
  };
  const lefts = Array.from({ length: columns }, (_, at) => at * (sheet.width - OVERLAP));
  const tops = Array.from({ length: rows }, (_, at) => at * (sheet.height - OVERLAP));
  const boxes = tops.flatMap((top) =>
    lefts.map((left): Box => ({ left, top, right: left + sheet.width, bottom: top + sheet.height })),
  );
  const used = new Set<Mark>();
  const sheets = boxes
    .map((box) => ({ box, inside: figure.marks.flatMap((mark) => onTile(mark, box, used, type)) }))
    // Leaves out sheets without a mark.
    .filter(({ inside }) => inside.length > 0);
  const crosses = crossPoints(lefts, tops, sheet)
    .map((at) => ({ at, on: sheets.filter(({ box }) => holds(box, at, ARM + 0.02)) }))
    .filter(({ on }) => on.length > 1);
  const tiles = sheets.map((one, index): Tile => {
    const joins = crosses.flatMap(({ at, on }, name) =>
      on.includes(one) ? crossMarks(at, setLetter(before + name), type) : [],
    );
    const marks = shifted([...one.inside, ...joins], -one.box.left, -one.box.top);
    return { number: index + 1, ...sheet, marks };
  });
  return { tiles, crosses: crosses.length };
}

function tilesAlong(length: Inches, sheet: Inches): number {
  return joinedPieces(length, sheet, OVERLAP);
}

function holds(box: Box, at: Point, spare: Inches): boolean {
  return at.x - spare >= box.left && at.x + spare <= box.right && at.y - spare >= box.top && at.y + spare <= box.bottom;
} // biome-ignore format: one test

/** The middles of the crosses: two in every overlap of two neighbours. */
function crossPoints(
  lefts: readonly Inches[],
  tops: readonly Inches[],
  sheet: { readonly width: Inches; readonly height: Inches },
): Point[] {
  const points: Point[] = [];
  const middleOfOverlap = (starts: readonly Inches[], length: Inches, at: number) =>
    (starts[at]! + starts[at - 1]! + length) / 2;
  tops.forEach((top) => {
    for (let at = 1; at < lefts.length; at += 1) {
      const x = middleOfOverlap(lefts, sheet.width, at);
      for (const part of CROSSES_AT) points.push({ x, y: top + sheet.height * part });
    }
  });
  lefts.forEach((left) => {
    for (let at = 1; at < tops.length; at += 1) {
      const y = middleOfOverlap(tops, sheet.height, at);
      for (const part of CROSSES_AT) points.push({ x: left + sheet.width * part, y });
    }
  });
  return points;
}

function crossMarks(at: Point, name: string, type: Type): Mark[] {
  const stroke = { ink: INK, width: 0.008 };
  return [
    { kind: 'line', points: [{ x: at.x - ARM, y: at.y }, { x: at.x + ARM, y: at.y }], stroke },
    { kind: 'line', points: [{ x: at.x, y: at.y - ARM }, { x: at.x, y: at.y + ARM }], stroke },
    { kind: 'disc', centre: at, radius: 0.07, fill: null, stroke: HAIR },
    ...line(name, STYLES.labelStrong, at.x + 0.05, at.y - 0.06, type),
  ]; // biome-ignore format: four marks
}

function onTile(mark: Mark, box: Box, used: Set<Mark>, type: Type): Mark[] {
  switch (mark.kind) {
    case 'line':
      return clipped(mark.points, box).map((points) => ({ ...mark, points }));
    case 'text': {
      if (used.has(mark) || !holds(box, mark.at, 0)) return [];
      const wide = type.width(mark.text, mark.face, mark.size);
      const inside = box.right - wide;
      // Words that reach over the edge stand on the next sheet if they fit in the overlap; wider ones are moved inwards.
      if (mark.at.x > inside && wide <= OVERLAP) return [];
      used.add(mark);
      return [{ ...mark, at: { ...mark.at, x: Math.min(mark.at.x, inside) } }];
    }
    case 'shape':
      return mark.outlines.every((outline) => outline.every((point) => holds(box, point, 0))) ? [mark] : [];
    case 'disc':
      return holds(box, mark.centre, mark.radius) ? [mark] : [];
    case 'picture':
      return holds(box, mark.centre, Math.hypot(mark.width, mark.height) / 2) ? [mark] : [];
    default:
      return mark satisfies never;
  }
}

/** The parts of a line inside a box (Liang and Barsky, 'A new concept and method for line clipping', 1984). */
function clipped(points: readonly Point[], box: Box): Point[][] {
  const runs: Point[][] = [];
  let run: Point[] = [];
  for (let at = 1; at < points.length; at += 1) {
    const part = clippedSegment(points[at - 1]!, points[at]!, box);
    if (!part) continue;
    const last = run.at(-1);
    if (last && Math.hypot(last.x - part[0].x, last.y - part[0].y) < 1e-9) run.push(part[1]);
    else {
      if (run.length > 1) runs.push(run);
      run = [...part];
    }
  }
  if (run.length > 1) runs.push(run);
  return runs;
}

function clippedSegment(from: Point, to: Point, box: Box): [Point, Point] | null {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  let [enter, leave] = [0, 1];
  const sides: [number, number][] = [
    [-dx, from.x - box.left],
    [dx, box.right - from.x],
    [-dy, from.y - box.top],
    [dy, box.bottom - from.y],
  ];
  for (const [speed, room] of sides) {
    if (Math.abs(speed) < 1e-12) {
      if (room < 0) return null;
      continue;
    }
    const at = room / speed;
    if (speed < 0) enter = Math.max(enter, at);
    else leave = Math.min(leave, at);
  }
  if (enter > leave) return null;
  const point = (part: number): Point => ({ x: from.x + dx * part, y: from.y + dy * part });
  return [point(enter), point(leave)];
}

// Light that is brighter on one side of the picture than on the other: a smooth field of brightness, from areas of which each is the
// same cloth or card all over. Where the areas cannot tell, the field stays even.
import { type LinearRgb, xyzOf } from '../../colour/spaces';
import type { Point } from '../../geometry/point';
import { coloursIn } from '../fabric/mainColours';
import { cutOut, type Frame, inFrame } from '../pixels/frame';
import { linearAt, oklabPlane } from '../pixels/linear';
import { blankPlane, type Pixels, type Plane } from '../pixels/pixels';

/** Brightness as e to a polynomial in (x − this.x) / scale and (y − this.y) / scale: x, y, x², xy, y². Plain data. */
export interface Brightness {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
  readonly slopes: readonly number[];
}

/** A place and the luminance seen there, 0–1. */
export interface Seen {
  readonly x: number;
  readonly y: number;
  readonly light: number;
}

/** Terms of the polynomial, and how large each may be expected: light twice as bright on one side is 0.35 each way. */
const TERMS = 5;
const EXPECTED = [0.35, 0.35, 0.06, 0.06, 0.06] as const;
/** Places on cloth are not independent of each other: all together count as so many that are. */
const INDEPENDENT = 60;
/** Places that lie farther off than so many times the middle of all do not count: edges of the print, specks. */
const FAR_OFF = 3;

function terms(x: number, y: number): number[] {
  return [x, y, x * x, x * y, y * y];
}

/**
 * The brightness of the light over the picture, from areas that are each of one reflectance all over (one fabric; all pieces
 * of one white card). Least squares on the logarithm, one unknown level to an area, and terms held to what light is
 * usually like (a Bayesian ridge, its noise estimated from what the first fit leaves), so that areas that tell nothing leave it even.
 */
export function brightnessFrom(areas: readonly (readonly Seen[])[]): Brightness {
  const usable = areas
    .map((area) => area.filter(({ light }) => light > 1e-4))
    .filter((area) => area.length > 1);
  const all = usable.flat();
  const [left, right] = ends(all.map(({ x }) => x));
  const [top, bottom] = ends(all.map(({ y }) => y));
  const around = {
    x: (left + right) / 2,
    y: (top + bottom) / 2,
    scale: Math.max(1, right - left, bottom - top) / 2,
  };
  // Each area without its mean: what is left depends on the terms alone.
  const rows = usable.flatMap((area) => centred(area, around));
  let slopes = solved(rows, 0.02 ** 2);
  for (let round = 0; round < 3; round += 1) {
    const off = rows.map((row) => Math.abs(row.level - product(row.terms, slopes)));
    const near = FAR_OFF * Math.max(0.005, off.toSorted((one, other) => one - other)[off.length >> 1] ?? 0);
    const trusted = rows.filter((_, at) => off[at]! <= near);
    slopes = solved(trusted, leftOver(trusted, slopes));
  }
  return { ...around, slopes };
}

interface Row {
  readonly terms: readonly number[];
  readonly level: number;
}

function ends(values: readonly number[]): [number, number] {
  return values.length === 0 ? [0, 0] : [Math.min(...values), Math.max(...values)];
}

function centred(area: readonly Seen[], around: { x: number; y: number; scale: number }): Row[] {
  const rows = area.map(({ x, y, light }) => ({
    terms: terms((x - around.x) / around.scale, (y - around.y) / around.scale),
    level: Math.log(light),
  }));
  const mean = (of: (row: Row) => number) => rows.reduce((sum, row) => sum + of(row), 0) / rows.length;
  const level = mean((row) => row.level);
  const middle = Array.from({ length: TERMS }, (_, term) => mean((row) => row.terms[term]!));
  return rows.map((row) => ({
    terms: row.terms.map((one, term) => one - middle[term]!),
    level: row.level - level,
  }));
}

/** Variance left of a row; never less than that of a byte's rounding. */
function leftOver(rows: readonly Row[], slopes: readonly number[]): number {
  const squares = rows.reduce((sum, row) => sum + (row.level - product(row.terms, slopes)) ** 2, 0);
  return Math.max(0.005 ** 2, squares / Math.max(1, rows.length - TERMS));
}

function product(one: readonly number[], other: readonly number[]): number {
  let sum = 0;
  for (let at = 0; at < one.length; at += 1) sum += one[at]! * other[at]!;
  return sum;
}

/** The ridge: normal equations with the expected size of each term on the diagonal, by elimination. */
function solved(rows: readonly Row[], variance: number): number[] {
  const weight = Math.min(1, INDEPENDENT / rows.length) / variance;
  const table = Array.from({ length: TERMS }, (_, term) =>
    Array.from({ length: TERMS + 1 }, (_none, other) => (term === other ? EXPECTED[term]! ** -2 : 0)),
  );
  for (const row of rows)
    for (let term = 0; term < TERMS; term += 1) {
      const by = weight * row.terms[term]!;
      const line = table[term]!;
      for (let other = 0; other < TERMS; other += 1) line[other]! += by * row.terms[other]!;
      line[TERMS]! += by * row.level;
    }
  return eliminated(table);
}

/** Solves a positive definite table of n rows and n + 1 columns. */
function eliminated(table: readonly number[][]): number[] {
  const size = table.length;
  for (let pivot = 0; pivot < size; pivot += 1) {
    for (let row = 0; row < size; row += 1) {
      if (row === pivot) continue;
      const factor = table[row]![pivot]! / table[pivot]![pivot]!;
      for (let column = pivot; column <= size; column += 1)
        table[row]![column]! -= factor * table[pivot]![column]!;
    }
  }
  return table.map((row, at) => row[size]! / row[at]!);
}

/** How bright the light is at one place, against another where it is 1. */
export function brightnessAt(field: Brightness, x: number, y: number): number {
  return Math.exp(product(terms((x - field.x) / field.scale, (y - field.y) / field.scale), field.slopes));
}

/** A fabric is looked at with so many places to a side, a card with fewer. */
const FABRIC_SIDE = 64;
const CARD_SIDE = 12;
/** The light is found, the fabric's colours told apart in that light, and the light found anew: so often. */
const ROUNDS = 3;

/**
 * The brightness of the light over a fabric (what is inside `frame`) and over pieces of one and the same white card, if there
 * are any. Each main colour of the fabric is an area of its own, so that a print is not taken for light. Seeded.
 */
export function brightnessOver(
  pixels: Pixels,
  frame: Frame,
  cards: readonly Frame[],
  seed: number,
): Brightness {
  const plane = cutOut(pixels, frame, FABRIC_SIDE, FABRIC_SIDE);
  const seen = seenOn(plane, frame);
  const card = cards.flatMap((piece) => seenOn(cutOut(pixels, piece, CARD_SIDE, CARD_SIDE), piece));
  let field = brightnessFrom([seen, card]);
  for (let round = 0; round < ROUNDS; round += 1) {
    const { colours, of } = coloursIn(oklabPlane(evenlyLit(plane, frame, field, frame)), seed);
    const areas = colours.map((_, colour) => seen.filter((_place, pixel) => of[pixel] === colour));
    field = brightnessFrom([...areas, card]);
  }
  return field;
}

/** What `readFabric` is to know of light that is uneven, by the white spot that was pointed at; null where none was. Seeded. */
export function unevenOver(
  pixels: Pixels,
  frame: Frame,
  white: Frame | null,
  seed: number,
): { readonly field: Brightness; readonly measuredAt: Point } | null {
  return white && { field: brightnessOver(pixels, frame, [white], seed), measuredAt: white };
}

function seenOn(plane: Plane, frame: Frame): Seen[] {
  const at = inFrame(frame);
  return Array.from({ length: plane.width * plane.height }, (_, place) => ({
    ...at(
      ((place % plane.width) + 0.5) / plane.width,
      (Math.floor(place / plane.width) + 0.5) / plane.height,
    ),
    light: xyzOf(linearAt(plane, place))[1],
  }));
}

/** A plane cut out of `frame`, lit evenly: as it would look in the light that falls on the point `as`. */
export function evenlyLit(
  plane: Plane,
  frame: Frame,
  field: Brightness,
  as: { x: number; y: number },
): Plane {
  const at = inFrame(frame);
  const wanted = brightnessAt(field, as.x, as.y);
  const into = blankPlane(plane.width, plane.height, 3);
  for (let row = 0; row < plane.height; row += 1) {
    for (let column = 0; column < plane.width; column += 1) {
      const { x, y } = at((column + 0.5) / plane.width, (row + 0.5) / plane.height);
      const gain = wanted / brightnessAt(field, x, y);
      const pixel = row * plane.width + column;
      const light: LinearRgb = linearAt(plane, pixel);
      into.data.set([light[0] * gain, light[1] * gain, light[2] * gain], pixel * 3);
    }
  }
  return into;
}

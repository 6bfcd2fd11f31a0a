// How much the cells of a picture look like blocks of wedges where a lattice is laid on it. Tens of thousands of lattices are tried on
// a wall, so nothing is allocated for a sample.
import type { Plane } from '../pixels/pixels';
import { bent, lensOf } from '../plane/lens';
import { ACROSS, type CellShape, RADII } from './cellShape';
import { type Lattice, latticeTo } from './lattice';

/** From this likeness on a cell holds a block. */
export const BLOCK = 0.5;

/**
 * What is seen of a cell, variances in OKLab: across the wedges, which is within bands, and from rim to middle. In a block the
 * second is far greater; in anything else, however large or small, they are much the same.
 */
export interface CellLook {
  readonly within: number;
  readonly along: number;
  /** How clear the seams of the corners are, 0 to 1. */
  readonly seams: number;
  /** Whether all of it lies in the picture. */
  readonly inside: boolean;
}

const STEPS = 160;
/** The farthest that is looked at, half diagonals squared. */
const FARTHEST = 2.6;

/** The last table, since most lattices that are tried differ in other things than the lens. */
let last: { readonly bend: number; readonly table: Float64Array } | null = null;

/** By how much a point is bent, by its squared distance from the middle in half diagonals. */
function bendTable(bend: number): Float64Array {
  if (last?.bend === bend) return last.table;
  const lens = { middle: { x: 0, y: 0 }, half: 1, bend };
  const table = Float64Array.from({ length: STEPS + 2 }, (_, step) => {
    const far = Math.sqrt((FARTHEST * step) / STEPS);
    return step === 0 ? 1 : bent(lens, { x: far, y: 0 }).x / far;
  });
  last = { bend, table };
  return table;
}

/** The colours of one cell's samples, three numbers to a sample. */
let colours = new Float64Array(0);

/** A reader of cells of one lattice in one picture (OKLab). */
export function cellReader(
  plane: Plane,
  lattice: Lattice,
  cell: CellShape,
): (row: number, column: number) => CellLook {
  const sampled = sampler(plane, lattice, cell);
  const { samples, banded, grouped } = cell;
  return (row, column) => {
    const inside = sampled(row, column);
    const along = varianceAlong(banded);
    return {
      within: varianceAcross(grouped),
      along: Math.max(0, along),
      seams: clearness(grouped, samples.length / 2),
      inside,
    };
  };
}

/** Writes the colours of a cell's samples to `colours`; says whether all of them lie in the picture. */
function sampler(plane: Plane, lattice: Lattice, cell: CellShape): (row: number, column: number) => boolean {
  const { samples, tall } = cell;
  const { width, height, data } = plane;
  const count = samples.length / 2;
  if (colours.length < count * 3) colours = new Float64Array(count * 3);
  const into = colours;
  const lens = lensOf(plane, lattice.bend);
  const [middleX, middleY] = [lens.middle.x, lens.middle.y];
  const table = lattice.bend === 0 ? null : bendTable(lattice.bend);
  const perStep = STEPS / FARTHEST / (lens.half * lens.half);
  const [a, b, c, d, e, f, g, h, i] = latticeTo(lattice, tall) as [number, number, number, number, number, number, number, number, number]; // biome-ignore format: nine
  const [right, bottom] = [width - 1.001, height - 1.001];
  const next = width * 3;
  return (row, column) => {
    const left = column * (1 + lattice.gap);
    const top = row * (tall + lattice.gap);
    let inside = true;
    for (let at = 0, to = 0; at < count; at += 1, to += 3) {
      const x = left + samples[at * 2]!;
      const y = top + samples[at * 2 + 1]!;
      const depth = 1 / (g * x + h * y + i);
      let u = (a * x + b * y + c) * depth;
      let v = (d * x + e * y + f) * depth;
      if (table) {
        const dx = u - middleX;
        const dy = v - middleY;
        const step = Math.min(STEPS, (dx * dx + dy * dy) * perStep);
        const whole = step | 0;
        const by = table[whole]! + (step - whole) * (table[whole + 1]! - table[whole]!);
        u = middleX + dx * by;
        v = middleY + dy * by;
      }
      u -= 0.5;
      v -= 0.5;
      if (!(u > 0 && v > 0 && u < right - 0.009 && v < bottom - 0.009)) {
        inside = false;
        u = Math.max(0, Math.min(right, u));
        v = Math.max(0, Math.min(bottom, v));
      }
      const across = u | 0;
      const down = v | 0;
      const p = u - across;
      const q = v - down;
      const one = (1 - p) * (1 - q);
      const two = p * (1 - q);
      const three = (1 - p) * q;
      const four = p * q;
      const from = (down * width + across) * 3;
      const below = from + next;
      into[to] = one * data[from]! + two * data[from + 3]! + three * data[below]! + four * data[below + 3]!;
      into[to + 1] =
        one * data[from + 1]! + two * data[from + 4]! + three * data[below + 1]! + four * data[below + 4]!;
      into[to + 2] =
        one * data[from + 2]! + two * data[from + 5]! + three * data[below + 2]! + four * data[below + 5]!;
    }
    return inside;
  };
}

/** The mean variance of the groups side by side, all channels summed. */
function varianceAcross(grouped: number): number {
  let sum = 0;
  for (let from = 0; from < grouped * 3; from += ACROSS * 3) sum += variance(colours, from, 3, ACROSS);
  return sum / (grouped / ACROSS);
}

/** The mean over all lines from rim to middle of their variance. */
function varianceAlong(banded: number): number {
  let sum = 0;
  for (let wedge = 0; wedge < banded * 3; wedge += ACROSS * RADII * 3)
    for (let line = 0; line < ACROSS * 3; line += 3)
      sum += variance(colours, wedge + line, ACROSS * 3, RADII);
  return sum / (banded / RADII);
}

/** The variance of `count` colours that lie `step` numbers apart. */
function variance(all: Float64Array, from: number, step: number, count: number): number {
  let l = 0;
  let a = 0;
  let b = 0;
  let squares = 0;
  for (let at = 0, place = from; at < count; at += 1, place += step) {
    const one = all[place]!;
    const two = all[place + 1]!;
    const three = all[place + 2]!;
    l += one;
    a += two;
    b += three;
    squares += one * one + two * two + three * three;
  }
  return (squares - (l * l + a * a + b * b) / count) / count;
}

/** How clearly the colours of pairs differ, 0 to 1. */
function clearness(first: number, end: number): number {
  const all = colours;
  let sum = 0;
  for (let at = first * 3; at < end * 3; at += 6) {
    const l = all[at + 3]! - all[at]!;
    const a = all[at + 4]! - all[at + 1]!;
    const b = all[at + 5]! - all[at + 2]!;
    const apart = l * l + a * a + b * b;
    sum += apart / (apart + SEEN * SEEN);
  }
  return sum / ((end - first) / 2);
}

/** A difference of colour at which a seam counts half, OKLab; and how much seams count beside bands. */
const SEEN = 0.06;
const SEAMS = 0.6;

/** Variance of noise and of cloth that is even: no block is as even. */
const EVEN = 5e-4;

/** How much a cell looks like a block of wedges, 0 to 1; an even cell does not. */
export function blockLikeness({ within, along }: CellLook): number {
  return Math.max(0, 1 - within / (along + EVEN)) * (along / (along + EVEN));
}

/** How much of the variance in the cells of a lattice lies between bands, 0 to 1; at most `most` cells are looked at. */
export function latticeLikeness(plane: Plane, lattice: Lattice, cell: CellShape, most: number): number {
  const look = cellReader(plane, lattice, cell);
  const count = lattice.rows * lattice.columns;
  const step = Math.max(1, count / most);
  let [within, along, seams, seen] = [0, 0, 0, 0];
  for (let at = 0; at < count; at += step) {
    const index = Math.floor(at);
    const one = look(Math.floor(index / lattice.columns), index % lattice.columns);
    within += one.within;
    along += one.along;
    seams += one.seams;
    seen += 1;
  }
  return (1 - within / (along + EVEN * seen * 2) + SEAMS * (seams / seen)) / (1 + SEAMS);
}

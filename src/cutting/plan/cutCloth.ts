// Cloth cut into strips side by side: do these pieces give so many strips of each width, and how? The cutting-stock problem
// in one dimension; exact by dynamic programming up to three widths, a stated heuristic beyond.
import { piecesIn } from '../../model/lengths';
import type { Inches } from '../../model/units';

export interface ClothPiece {
  /** What strips are cut from, side by side. */
  readonly depth: Inches;
}

export interface ClothCut {
  /** Strips of each width cut from each piece, in the order of the pieces; never more than fit, never more than needed. */
  readonly cuts: readonly (readonly number[])[];
  readonly enough: boolean;
  /** True where the answer is proved. A found cut is its own proof; 'not enough' is proved by the exact search only. */
  readonly proved: boolean;
}

/** Elementary steps the exact search may take; beyond it the heuristic answers. */
const MOST_WORK = 60_000_000;

/** Cuts `needed` strips of each width. Widths above 0; pieces in any order. `mostWork` bounds the exact search. */
export function cutCloth(
  pieces: readonly ClothPiece[],
  widths: readonly Inches[],
  needed: readonly number[],
  mostWork = MOST_WORK,
): ClothCut {
  const quick = widestFirst(pieces, widths, needed);
  if (quick.enough) return { ...quick, proved: true };
  const cloth = pieces.reduce((sum, piece) => sum + bestFill(piece.depth, widths), 0);
  const wanted = needed.reduce((sum, count, at) => sum + count * widths[at]!, 0);
  if (cloth < wanted - 1e-9) return { ...quick, proved: true };
  if (widths.length > 3 || work(pieces, widths, needed) > mostWork) return { ...quick, proved: false };
  return exactCut(pieces, widths, needed) ?? { ...quick, proved: true };
}

/** The most of a depth that strips of these widths can fill: a bound no cut beats. In steps of a 64th of an inch. */
export function bestFill(depth: Inches, widths: readonly Inches[]): Inches {
  const step = 1 / 64;
  const size = Math.floor(depth / step + 1e-6);
  const sizes = widths.map((width) => Math.round(width / step));
  // A deep piece can be filled to within the narrowest strip; the whole depth is bound enough.
  if (size > 20_000 || sizes.some((one, at) => Math.abs(one * step - widths[at]!) > 1e-9)) return depth;
  const reached = new Uint8Array(size + 1);
  reached[0] = 1;
  let best = 0;
  for (let at = 1; at <= size; at += 1) {
    if (sizes.some((one) => at >= one && reached[at - one] === 1)) {
      reached[at] = 1;
      best = at;
    }
  }
  return best * step;
}

/** Widest strips first, each from the piece it leaves least of. */
function widestFirst(
  pieces: readonly ClothPiece[],
  widths: readonly Inches[],
  needed: readonly number[],
): { cuts: number[][]; enough: boolean } {
  const left = pieces.map((piece) => piece.depth);
  const cuts = pieces.map(() => widths.map(() => 0));
  const order = widths.map((_, at) => at).toSorted((one, other) => widths[other]! - widths[one]!);
  let enough = true;
  for (const at of order) {
    for (let strip = 0; strip < needed[at]!; strip += 1) {
      let best = -1;
      left.forEach((depth, piece) => {
        if (depth >= widths[at]! - 1e-9 && (best < 0 || depth < left[best]!)) best = piece;
      });
      if (best < 0) {
        enough = false;
        break;
      }
      left[best]! -= widths[at]!;
      cuts[best]![at]! += 1;
    }
  }
  return { cuts, enough };
}

/** Widths in three columns: missing ones can never be cut and are never needed. */
function threeColumns(widths: readonly Inches[], needed: readonly number[]) {
  // The most needed width is the one the table keeps a maximum of: it costs no states.
  const order = widths.map((_, at) => at).toSorted((one, other) => needed[one]! - needed[other]!);
  const padded = [...Array.from({ length: 3 - order.length }, () => -1), ...order];
  return {
    columns: padded,
    width: padded.map((at) => (at < 0 ? Number.POSITIVE_INFINITY : widths[at]!)),
    need: padded.map((at) => (at < 0 ? 0 : needed[at]!)),
  };
}

function work(pieces: readonly ClothPiece[], widths: readonly Inches[], needed: readonly number[]): number {
  const { width, need } = threeColumns(widths, needed);
  const states = (need[0]! + 1) * (need[1]! + 1);
  return pieces.reduce(
    (sum, { depth }) =>
      sum +
      states *
        (Math.min(need[0]!, Math.floor(depth / width[0]!)) + 1) *
        (Math.min(need[1]!, Math.floor(depth / width[1]!)) + 1),
    0,
  );
}

/**
 * Table after each piece: for so many strips of the first and second width, the most of the third. Null when the pieces
 * do not give what is needed, which is then proved.
 */
function exactCut(
  pieces: readonly ClothPiece[],
  widths: readonly Inches[],
  needed: readonly number[],
): ClothCut | null {
  const { columns, width, need } = threeColumns(widths, needed);
  const [first, second, third] = need as [number, number, number];
  const across = second + 1;
  let table = new Int32Array((first + 1) * across).fill(-1);
  table[0] = 0;
  const tables = [table];
  for (const { depth } of pieces) {
    const next = new Int32Array(table.length).fill(-1);
    for (const [a, b, c] of patternsOf(depth, width, need)) {
      for (let x = 0; x <= first; x += 1) {
        for (let y = 0; y <= second; y += 1) {
          const had = table[x * across + y]!;
          if (had < 0) continue;
          const to = Math.min(first, x + a) * across + Math.min(second, y + b);
          const most = Math.min(third, had + c);
          if (most > next[to]!) next[to] = most;
        }
      }
    }
    table = next;
    tables.push(table);
  }
  if (table.at(-1)! < third) return null;
  return { cuts: traced(pieces, tables, width, need, columns, widths.length), enough: true, proved: true };
}

function patternsOf(
  depth: Inches,
  width: readonly number[],
  need: readonly number[],
): [a: number, b: number, c: number][] {
  const patterns: [number, number, number][] = [];
  const fits = (left: number, at: number) => (left < 0 ? 0 : piecesIn(left, width[at]!));
  for (let a = 0; a <= Math.min(need[0]!, fits(depth, 0)); a += 1) {
    const rest = a === 0 ? depth : depth - a * width[0]!;
    for (let b = 0; b <= Math.min(need[1]!, fits(rest, 1)); b += 1) {
      patterns.push([a, b, Math.min(need[2]!, fits(b === 0 ? rest : rest - b * width[1]!, 2))]);
    }
  }
  return patterns;
}

/** Walks the tables back and writes down what each piece gave; strips beyond the need are not cut. */
function traced(
  pieces: readonly ClothPiece[],
  tables: readonly Int32Array[],
  width: readonly number[],
  need: readonly number[],
  columns: readonly number[],
  count: number,
): number[][] {
  const [first, second, third] = need as [number, number, number];
  const across = second + 1;
  const cuts = pieces.map(() => Array.from({ length: count }, () => 0));
  let at: State = [first, second, third];
  for (let piece = pieces.length - 1; piece >= 0; piece -= 1) {
    const patterns = patternsOf(pieces[piece]!.depth, width, need);
    const from = stateBefore(at, need, patterns, (x, y) => tables[piece]![x * across + y]!);
    at.forEach((strips, column) => {
      const place = columns[column]!;
      if (place >= 0) cuts[piece]![place] = strips - from[column]!;
    });
    at = from;
  }
  return cuts;
}

type State = readonly [x: number, y: number, z: number];

/** A state from which one piece leads to this one. Where the need was capped, any count from x − a on may have led here. */
function stateBefore(
  [x, y, z]: State,
  need: readonly number[],
  patterns: readonly State[],
  most: (x: number, y: number) => number,
): State {
  for (const [a, b, c] of patterns) {
    for (const fromX of x === need[0] ? range(Math.max(0, x - a), x) : [x - a]) {
      for (const fromY of y === need[1] ? range(Math.max(0, y - b), y) : [y - b]) {
        if (fromX < 0 || fromY < 0) continue;
        const had = most(fromX, fromY);
        if (had >= 0 && had + c >= z) return [fromX, fromY, Math.max(0, z - c)];
      }
    }
  }
  throw new Error('cutCloth: the tables do not lead back');
}

function range(from: number, to: number): number[] {
  return Array.from({ length: Math.max(0, to - from + 1) }, (_, at) => from + at);
}

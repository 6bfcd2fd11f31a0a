// Measures whether the top is heavy on one side: its centres of lightness and warmth against its middle, how far the halves
// differ, and what chance would give.
import type { Point } from '../../geometry/point';
import type { Inches } from '../../model/units';
import type { Mark } from '../finding';
import { middleOfFilled } from '../wall/fabricPlaces';
import { filled, type WallModel } from '../wall/wallModel';

export interface Lean {
  /** Centre of the figure less the middle of the filled wall, inches; x to the right, y down. */
  readonly offset: { readonly x: Inches; readonly y: Inches };
  /** Unit vector towards the high side (light, warm); 0, 0 where nothing leans. */
  readonly toward: Point;
  /** Mean of the half on the high side less the mean of the other half. */
  readonly difference: number;
  /** Chance of so strong a lean in any direction when the blocks are dealt to the cells at random. */
  readonly p: number;
}

export interface WholeTop {
  /** Middle of the box round what hangs, quilt inches; null for an empty wall. */
  readonly middle: Point | null;
  readonly light: Lean;
  readonly warmth: Lean;
}

/** The two leans of a top; for fewer than two blocks nothing leans. */
export function wholeTop(model: WallModel): WholeTop {
  const cells = Array.from(model.blockIn.keys()).filter((cell) => filled(model, cell));
  return {
    middle: cells.length === 0 ? null : middleOfFilled(model),
    light: lean(model, cells, model.lightness),
    warmth: lean(model, cells, model.warmth),
  };
}

/** Its centre of lightness or warmth as a mark; null where nothing hangs. */
export function leanMark(top: WholeTop, of: 'light' | 'warmth'): Mark | null {
  const { middle } = top;
  if (!middle) return null;
  const { offset } = top[of];
  return { kind: 'centre', of, at: { x: middle.x + offset.x, y: middle.y + offset.y }, middle };
}

/**
 * The first moment M = Σ z (x, y) of the deviations about the middle of the cells. Dealt at random, its parts have variance
 * Σz²/(n − 1) · Σx² and are close to normal, so p = exp(−½ (M_x²/V_x + M_y²/V_y)).
 */
function lean(model: WallModel, cells: readonly number[], figures: Float64Array): Lean {
  const n = cells.length;
  const none: Lean = { offset: { x: 0, y: 0 }, toward: { x: 0, y: 0 }, difference: 0, p: 1 };
  if (n < 2) return none;
  const values = cells.map((cell) => figures[model.blockIn[cell]!]!);
  const mean = values.reduce((sum, value) => sum + value, 0) / n;
  const power = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  if (power < 1e-12) return none;
  const x = offsets(cells.map((cell) => model.cellX[cell]!));
  const y = offsets(cells.map((cell) => model.cellY[cell]!));
  const moment = (along: readonly number[]) =>
    values.reduce((sum, value, at) => sum + (value - mean) * along[at]!, 0);
  const momentX = moment(x);
  const momentY = moment(y);
  const squares = (along: readonly number[]) => along.reduce((sum, one) => sum + one * one, 0);
  const part = (one: number, square: number) => (square > 0 ? (one * one * (n - 1)) / (power * square) : 0);
  const reach = Math.hypot(momentX, momentY);
  const toward = reach > 1e-9 ? { x: momentX / reach, y: momentY / reach } : { x: 0, y: 0 };
  return {
    offset: centre(model, cells, values),
    toward,
    difference: halves(
      values,
      cells.map((_, at) => x[at]! * toward.x + y[at]! * toward.y),
    ),
    p: Math.exp(-(part(momentX, squares(x)) + part(momentY, squares(y))) / 2),
  };
}

function offsets(places: readonly number[]): number[] {
  const mean = places.reduce((sum, place) => sum + place, 0) / places.length;
  return places.map((place) => place - mean);
}

/** Weighted centre of the cells less the middle. Weights are the figure above its least value, as warmth has no natural 0. */
function centre(model: WallModel, cells: readonly number[], values: readonly number[]): Point {
  const middle = middleOfFilled(model);
  const least = Math.min(...values);
  let total = 0;
  let x = 0;
  let y = 0;
  cells.forEach((cell, at) => {
    const weight = values[at]! - least;
    total += weight;
    x += weight * (model.cellX[cell]! - middle.x);
    y += weight * (model.cellY[cell]! - middle.y);
  });
  return { x: x / total, y: y / total };
}

/** Cells on the dividing line count for neither half. */
function halves(values: readonly number[], along: readonly number[]): number {
  const meanWhere = (side: number) => {
    const chosen = values.filter((_, at) => along[at]! * side > 1e-6);
    return chosen.length === 0 ? 0 : chosen.reduce((sum, value) => sum + value, 0) / chosen.length;
  };
  return meanWhere(1) - meanWhere(-1);
}

// What the person wants of the whole: lights and darks scattered, or in an order; colour families scattered or together.
// An order is a target of value for each cell, made of the very blocks at hand, so that it can be met exactly.

import type { Preferences } from '../../model/project';

export type Intent = Readonly<Preferences['intent']>;

export const SCATTERED: Intent = { value: 'scattered', colour: 'scattered' };

/**
 * Target of each cell as a deviation of value from the mean: all 0 for scattered; else the deviations of the blocks at hand
 * dealt out in the wanted order, cells of equal standing sharing their mean. Cells not filled get 0.
 */
export function valueTarget(
  intent: Intent,
  cells: { readonly x: ArrayLike<number>; readonly y: ArrayLike<number>; readonly filled: ArrayLike<number> },
  deviations: readonly number[],
): Float64Array {
  const target = new Float64Array(cells.x.length);
  if (intent.value === 'scattered') return target;
  const filled = Array.from(target, (_, cell) => cell).filter((cell) => cells.filled[cell]);
  const lightness = lightnessOrder(intent.value, cells.x, cells.y, filled);
  const ordered = filled.toSorted((one, other) => lightness(other) - lightness(one));
  const sorted = deviations.toSorted((one, other) => other - one);
  for (let from = 0; from < ordered.length; ) {
    let to = from + 1;
    while (to < ordered.length && lightness(ordered[from]!) - lightness(ordered[to]!) < 1e-9) to += 1;
    const mean = sorted.slice(from, to).reduce((sum, value) => sum + value, 0) / (to - from);
    for (let at = from; at < to; at++) target[ordered[at]!] = mean;
    from = to;
  }
  return target;
}

/** How light each filled cell should be beside the others: only the order counts, and cells of equal standing have one number. */
export function lightnessOrder(
  wanted: Exclude<Intent['value'], 'scattered'>,
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  filled: readonly number[],
): (cell: number) => number {
  if (wanted === 'light to dark') return (cell) => -x[cell]!;
  const middle = (values: ArrayLike<number>) => {
    const list = filled.map((cell) => values[cell]!);
    const low = Math.min(...list);
    const high = Math.max(...list);
    return { at: (low + high) / 2, half: Math.max(1e-9, (high - low) / 2) };
  };
  const across = middle(x);
  const down = middle(y);
  const sign = wanted === 'light middle' ? -1 : 1;
  return (cell) =>
    sign * (((x[cell]! - across.at) / across.half) ** 2 + ((y[cell]! - down.at) / down.half) ** 2);
}

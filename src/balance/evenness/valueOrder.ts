// Whether an order of values that is wanted (light in the middle, dark in the middle, light to dark) can be seen in grey: the mean L*
// of the third of the blocks that should be lightest, or darkest, against the rest, and what chance gives.
import { counted, type Phrase, phrase } from '../../model/phrase';
import { type Intent, lightnessOrder } from '../score/intent';
import { filled, type WallModel } from '../wall/wallModel';

export interface ValueOrder {
  readonly wanted: Exclude<Intent['value'], 'scattered'>;
  /** Mean L* of the middle third, or of the left one for light to dark; and of the other blocks. */
  readonly third: number;
  readonly rest: number;
  /** By how much the third is lighter (darker, for a dark middle), L*; below 0 where it is the other way round. */
  readonly more: number;
  /** 19 of 20 random layouts have less than this, L*. */
  readonly chance: number;
}

/** One in twenty of a normal spread lies beyond so many standard deviations, on one side. */
const ONE_IN_TWENTY = 1.645;

/**
 * The order of values of what hangs; null where none is wanted, and where no third of the cells stands apart, as on 2 × 2. Dealt at
 * random, the difference of two means of k and n − k of n values with Σz² has the variance Σz² · n / ((n − 1) k (n − k)): sampling
 * without replacement (Cochran, 'Sampling Techniques', 1977, theorem 2.2).
 */
export function valueOrder(model: WallModel, intent: Intent): ValueOrder | null {
  if (intent.value === 'scattered') return null;
  const cells = Array.from(model.blockIn.keys()).filter((cell) => filled(model, cell));
  const order = lightnessOrder(intent.value, model.cellX, model.cellY, cells);
  // The middle comes first in both orders of a middle; from the left in light to dark.
  const sign = intent.value === 'dark middle' ? -1 : 1;
  const sorted = cells.toSorted((one, other) => sign * (order(other) - order(one)));
  const size = thirdOf(sorted.map(order));
  if (size === null) return null;
  const values = sorted.map((cell) => model.lightness[model.blockIn[cell]!]!);
  const mean = (list: readonly number[]) => list.reduce((sum, one) => sum + one, 0) / list.length;
  const [third, rest] = [mean(values.slice(0, size)), mean(values.slice(size))];
  const all = mean(values);
  const power = values.reduce((sum, value) => sum + (value - all) ** 2, 0);
  const n = values.length;
  return {
    wanted: intent.value,
    third,
    rest,
    more: sign * (third - rest),
    chance: ONE_IN_TWENTY * Math.sqrt((power * n) / ((n - 1) * size * (n - size))),
  };
}

/** How many of the cells, in their order, are nearest to a third of them without parting cells of equal standing. */
function thirdOf(standings: readonly number[]): number | null {
  const n = standings.length;
  let best: number | null = null;
  for (let size = 1; size < n; size += 1) {
    if (Math.abs(standings[size]! - standings[size - 1]!) < 1e-9) continue;
    if (best === null || Math.abs(size - n / 3) < Math.abs(best - n / 3)) best = size;
  }
  return best;
}

/** Whether the order can be seen: by more than nearly all random layouts have. */
export function isSeen({ more, chance }: ValueOrder): boolean {
  return more > chance;
}

/** The same in words, with what chance gives. The difference is that of the two figures said. */
export function valueOrderWords(order: ValueOrder): readonly Phrase[] {
  const { wanted, third, rest, more, chance } = order;
  const figures = { third: Math.round(third), rest: Math.round(rest) };
  const where =
    wanted === 'light to dark'
      ? phrase('In grey (0 black, 100 white) the left third has {third}, the rest {rest}', figures)
      : phrase('In grey (0 black, 100 white) the middle third has {third}, the rest {rest}', figures);
  const by = Math.abs(figures.third - figures.rest);
  const lighter = wanted === 'dark middle' ? more < 0 : more >= 0;
  const difference = counted(
    by,
    lighter ? '{where}, {count} lighter.' : '{where}, {count} darker.',
    lighter ? '{where}, {count} lighter.' : '{where}, {count} darker.',
    { where },
  );
  const most = { most: Math.round(chance) };
  return [
    difference,
    isSeen(order)
      ? phrase('It shows: 19 of 20 random layouts differ by less than {most}.', most)
      : phrase('It does not show yet: random layouts differ by up to {most}.', most),
  ];
}

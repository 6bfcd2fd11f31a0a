// Seeded chance for pictures that are rendered: the same seed gives the same picture.
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

export interface Dice {
  /** From 0 to under 1. */
  readonly next: () => number;
  readonly between: (least: number, most: number) => number;
  /** A whole number from 0 to under `count`. */
  readonly below: (count: number) => number;
  readonly pick: <T>(list: readonly T[]) => T;
  readonly chance: (of: number) => boolean;
  /** From the normal distribution of mean 0 and deviation 1. */
  readonly normal: () => number;
}

export function dice(seed: number): Dice {
  // Small seeds lie close together; their first numbers would too.
  const generator = xoroshiro128plus(Math.imul(seed + 1, 0x9e3779b1));
  for (let skipped = 0; skipped < 20; skipped += 1) uniformFloat64(generator);
  const next = () => uniformFloat64(generator);
  const below = (count: number) => Math.floor(next() * count);
  return {
    next,
    between: (least, most) => least + (most - least) * next(),
    below,
    pick: (list) => list[below(list.length)]!,
    chance: (of) => next() < of,
    normal: () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
  };
}

// How long a shuffle looks, in steps, so that a seed repeats on any machine; the clock is only a cap.
import type { Preferences } from '../../model/project';

export type Effort = NonNullable<Preferences['shuffle']>['effort'];
export const EFFORT_NAMES: readonly Effort[] = ['short', 'longer', 'long'];

/** What is asked of a shuffle where the person has asked nothing. */
const FIRST_ASKED: NonNullable<Preferences['shuffle']> = {
  seed: 1,
  effort: 'short',
  scopes: { swap: true, turn: true, shiftCorners: true, trade: false, strips: false },
};

/** What is asked of a shuffle of this quilt. */
export function askedOf({ shuffle }: Preferences): NonNullable<Preferences['shuffle']> {
  return shuffle ?? FIRST_ASKED;
}

/** Steps at the shortest: this many, and more for each block up to so many; larger walls take longer at each step anyway. */
const STEPS = { least: 1_000_000, aBlock: 60_000, mostBlocks: 100 } as const;
/** How many times the shortest, and the cap in milliseconds. Short is some 1 to 6 s on two cores with nothing else to do (measured). */
const EFFORTS: Readonly<Record<Effort, { readonly times: number; readonly cap: number }>> = {
  short: { times: 1, cap: 60_000 },
  longer: { times: 4, cap: 180_000 },
  long: { times: 16, cap: 600_000 },
};

/** The budget of a shuffle of `blocks` hung blocks: what ends it is the steps, unless the machine is very slow. */
export function budgetFor(effort: Effort, blocks: number): { steps: number; milliseconds: number } {
  const { times, cap } = EFFORTS[effort];
  const shortest = STEPS.least + STEPS.aBlock * Math.min(blocks, STEPS.mostBlocks);
  return { steps: times * shortest, milliseconds: cap };
}

/** Seconds after which it stops in any case. */
export function capSeconds(effort: Effort): number {
  return EFFORTS[effort].cap / 1000;
}

// Sets how long a shuffle searches, in steps, so that a seed repeats on any machine. The clock is only a cap.
import type { Preferences } from '../../model/project';

export type Effort = NonNullable<Preferences['shuffle']>['effort'];
export const EFFORT_NAMES: readonly Effort[] = ['short', 'longer', 'long'];

/** What a shuffle is asked where the person has chosen nothing. */
const FIRST_ASKED: NonNullable<Preferences['shuffle']> = {
  seed: 1,
  effort: 'short',
  scopes: { swap: true, turn: true, shiftCorners: true, trade: false, strips: false },
};

/** What the person asks of a shuffle, with the usual choices where there are none. */
export function askedOf({ shuffle }: Preferences): NonNullable<Preferences['shuffle']> {
  return shuffle ?? FIRST_ASKED;
}

/** The shortest search: `least` steps and `aBlock` more for each block up to `mostBlocks`, as steps on larger walls take longer. */
const STEPS = { least: 1_000_000, aBlock: 60_000, mostBlocks: 100 } as const;
/** Each effort: a multiple of the shortest search, and the cap in milliseconds. Short takes 1 to 6 s on two idle cores (measured). */
const EFFORTS: Readonly<Record<Effort, { readonly times: number; readonly cap: number }>> = {
  short: { times: 1, cap: 60_000 },
  longer: { times: 4, cap: 180_000 },
  long: { times: 16, cap: 600_000 },
};

/** The budget for `blocks` hung blocks. The steps end the search, unless the machine is very slow. */
export function budgetFor(effort: Effort, blocks: number): { steps: number; milliseconds: number } {
  const { times, cap } = EFFORTS[effort];
  const shortest = STEPS.least + STEPS.aBlock * Math.min(blocks, STEPS.mostBlocks);
  return { steps: times * shortest, milliseconds: cap };
}

/** Seconds after which the search stops in any case. */
export function capSeconds(effort: Effort): number {
  return EFFORTS[effort].cap / 1000;
}

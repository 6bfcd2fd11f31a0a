// Strips on hand sorted by length: strips of about one length are sewn into a set.
import { HAIR } from '../../model/lengths';
import type { StripOnHand, WedgePlan } from '../../model/project';
import type { Inches } from '../../model/units';
import { leastLength } from '../wedges/setKinds';

/** Strips whose lengths differ by no more than this are sewn together as a rule; others where they give more wedges. */
export const SAME_LENGTH: Inches = 2;

/** Rows of about one length; `length` is the shortest of them, which is as long as a set of them can be. */
export interface LengthClass {
  readonly rows: readonly StripOnHand[];
  readonly length: Inches;
}

/**
 * Classes from the longest strips to the shortest; strips too short for two wedges are left out. Lengths in one class differ
 * by no more than `within`.
 */
export function lengthClasses(
  rows: readonly StripOnHand[],
  wedge: WedgePlan,
  within: Inches = SAME_LENGTH,
): LengthClass[] {
  const least = leastLength(wedge);
  const sorted = rows
    .filter((row) => row.length >= least - HAIR && row.count > 0)
    .sort((one, other) => other.length - one.length);
  const groups: StripOnHand[][] = [];
  for (const row of sorted) {
    const group = groups.at(-1);
    if (group && group[0]!.length - row.length <= within + HAIR) group.push(row);
    else groups.push([row]);
  }
  return groups.map((group) => ({
    rows: group,
    length: group.at(-1)!.length,
  }));
}

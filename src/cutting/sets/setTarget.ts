// A set to be made, as a plan hands it to the search: how high, of strips of which length, and the widths it begins with.
import type { Inches } from '../../model/units';

export interface SetTarget {
  readonly lengthClass: number;
  /** A lower set gives fewer wedges than were counted. */
  readonly least: Inches;
  /** Cut widths to begin with, beside locked strips; null where strips are taken as they come. */
  readonly start: readonly Inches[] | null;
}

/** Sets made in one go. */
export const MOST_SETS = 400;

// Decides what counts as a clash, for the list of clashes, their sums, the random layout and the offers alike. A contact is two
// pieces side by side along a seam; a clash is a contact that counts.
import type { ClothTable } from '../../cloth/cloths';
import type { Inches } from '../../model/units';

/** The cloths by which contacts are judged; fabrics are indices of the table. */
export interface Judged {
  readonly cloths: ClothTable;
  readonly fabricCount: number;
}

/** How far a contact of two fabrics counts, 0–1: their likeness; 0 where either is background or there is none (−1). */
export function countsAs({ cloths, fabricCount }: Judged, one: number, other: number): number {
  return one < 0 || other < 0 ? 0 : cloths.likeness[one * fabricCount + other]!;
}

/** Contacts that count less are not listed, told or offered as a clash: the score, which has no steps, counts them still. */
const LEAST_LIKENESS = 0.25;

/** Whether a contact that counts so far is a clash to list, tell and warn of. */
export function isClash(likeness: number): boolean {
  return likeness >= LEAST_LIKENESS;
}

/** Inches of one fabric against itself, and of look-alikes, each counted by its likeness (and less across sashing). */
export interface ClashSums {
  same: Inches;
  alike: Inches;
}

/** Adds inches of a contact, counted already, to the sum they belong to. */
export function addCounted(sums: ClashSums, one: number, other: number, counted: Inches): void {
  if (one === other) sums.same += counted;
  else sums.alike += counted;
}

// Sets of which nothing is on record but their sewn wedges.
import type { StripSet } from '../../model/project';

/** Whether nothing is known of a set but its sewn wedges, so that every wedge entered shows that it gave one more. */
export function growsWithUse({ progress, length }: StripSet): boolean {
  return progress === 'cut' && length === 0;
}

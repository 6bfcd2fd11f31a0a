// The places that carry the corner pieces, as block cards and the workshop name them: “2, 4, 6 and 8”, or “2 + 3” where a piece
// lies on two places. Which places these are: geometry/contact.ts.
import { cornerPlaces } from '../geometry/contact';
import type { Block, WedgePlan } from '../model/project';

/** Numbers of the places (from 1) under each corner piece, lowest first, as a list for a sentence. */
export function cornerPlaceWords(
  block: Pick<Block, 'cornerShift'>,
  { perBlock }: WedgePlan,
): { list: string[] } {
  const groups = cornerPlaces(block.cornerShift, perBlock);
  const ordered = groups.toSorted(([one], [other]) => one! - other!);
  return { list: ordered.map((places) => places.map((place) => place + 1).join(' + ')) };
}

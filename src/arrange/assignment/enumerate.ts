// Owns the proof for a handful of free items: every arrangement is looked at, one swap apart from the one before
// (B. R. Heap, 'Permutations by interchanges', The Computer Journal 6 (1963) 293–298).
import { assignmentCost, type ReducedProblem, swapDelta } from './problem';

/** Up to so many free items, going through all arrangements takes some hundredths of a second. */
export const MOST_ENUMERATED = 8;

/** The best arrangement of all, of those that cost the same the first met. */
export function bestOfAll(reduced: ReducedProblem): { places: Int32Array; cost: number; looked: number } {
  const { size, grain } = reduced;
  const places = Int32Array.from({ length: size }, (_, item) => item);
  let cost = assignmentCost(reduced, places);
  const best = { places: places.slice(), cost, looked: 1 };
  const counters = new Int32Array(size);
  for (let at = 1; at < size; ) {
    if (counters[at]! >= at) {
      counters[at++] = 0;
      continue;
    }
    const other = at % 2 === 0 ? 0 : counters[at]!;
    cost += swapDelta(reduced, places, at, other);
    const kept = places[at]!;
    places[at] = places[other]!;
    places[other] = kept;
    best.looked++;
    if (cost < best.cost - grain) {
      best.cost = cost;
      best.places.set(places);
    }
    counters[at]!++;
    at = 1;
  }
  return best;
}

// Fabrics that read as one, in pairs, the nearest first; in parts, since 400 fabrics make 79 800 pairs.
import type { Fabric } from '../model/project';
import type { InParts } from '../model/work/parts';
import { clothDistance, likenessAt, meanDistance } from './likeness';
import { printMix } from './print/printMix';

export interface LookalikePair {
  readonly one: Fabric;
  readonly other: Fabric;
  /** ΔE00 of the two, below the threshold; and their likeness, above 0 to 1. */
  readonly distance: number;
  readonly likeness: number;
}

/** Comparisons between two pauses; they take a few milliseconds. */
const PART = 1500;

/**
 * All pairs whose likeness is above 0, as likeness.ts grades it, the nearest first; equally near ones in the order of the list. A
 * background may lie beside anything, so it is in no pair, as in the table of likeness. None below a threshold above 0.
 */
export function* lookalikePairs(fabrics: readonly Fabric[], threshold: number): InParts<LookalikePair[]> {
  if (!(threshold > 0)) return [];
  const cloths = fabrics.flatMap((fabric) => (fabric.background ? [] : [{ fabric, mix: printMix(fabric) }]));
  const pairs: LookalikePair[] = [];
  let compared = 0;
  for (const [at, one] of cloths.entries()) {
    for (let next = at + 1; next < cloths.length; next++) {
      if (++compared % PART === 0) yield null;
      const other = cloths[next]!;
      // Far means settle a pair without looking at the prints: the distance is at least half theirs.
      if (meanDistance(one.mix, other.mix) >= 2 * threshold) continue;
      const distance = clothDistance(one.mix, other.mix);
      const likeness = likenessAt(distance, threshold);
      if (likeness > 0) pairs.push({ one: one.fabric, other: other.fabric, distance, likeness });
    }
  }
  return pairs.sort((one, other) => one.distance - other.distance);
}

// A random order, the same for the same state of the generator.
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator';

/** 0 to size − 1 in random order (Fisher and Yates). */
export function shuffled(size: number, random: RandomGenerator): Int32Array {
  const order = Int32Array.from({ length: size }, (_, at) => at);
  for (let at = size - 1; at > 0; at--) {
    const other = uniformInt(random, 0, at);
    const kept = order[at]!;
    order[at] = order[other]!;
    order[other] = kept;
  }
  return order;
}

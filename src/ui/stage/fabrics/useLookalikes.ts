// Finds the look-alikes of the list in slices beside all else, since 400 fabrics make 79 800 pairs.
import { useEffect, useState } from 'react';
import { type LookalikePair, lookalikePairs } from '../../../cloth/lookalikes';
import type { Fabric } from '../../../model/project';

/** The pairs, the nearest first; while others are being found, those before; null while none are known. */
export function useLookalikes(
  fabrics: readonly Fabric[],
  threshold: number,
): readonly LookalikePair[] | null {
  const [pairs, setPairs] = useState<readonly LookalikePair[] | null>(null);
  useEffect(() => {
    const finding = lookalikePairs(fabrics, threshold);
    const goOn = () => {
      const part = finding.next();
      if (part.done) setPairs(part.value);
      else timer = setTimeout(goOn);
    };
    let timer = setTimeout(goOn);
    return () => clearTimeout(timer);
  }, [fabrics, threshold]);
  return pairs;
}

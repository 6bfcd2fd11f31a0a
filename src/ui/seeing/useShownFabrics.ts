// The fabrics as the chosen way of seeing draws them.
import { useMemo } from 'react';
import { meanColour } from '../../cloth/likeness';
import { printMix } from '../../cloth/print/printMix';
import type { Fabric } from '../../model/project';
import { useApp } from '../app';

/** In three tones each fabric as its mean, so that a print has the one tone that it has in the list; else as they are. */
export function useShownFabrics(fabrics: readonly Fabric[]): readonly Fabric[] {
  const flat = useApp((app) => app.look.way === 'tones');
  return useMemo(
    () =>
      flat
        ? fabrics.map((fabric) => ({
            ...fabric,
            colour: meanColour(printMix(fabric)),
            cloth: { kind: 'plain' as const },
          }))
        : fabrics,
    [fabrics, flat],
  );
}

// Light, medium and dark relative to the quilt at hand: which limits the thirds of its top give.
import { meanColour } from '../cloth/likeness';
import { printMix } from '../cloth/print/printMix';
import { toneLimits } from '../cloth/tones';
import type { ToneLimits } from '../colour/tone';
import type { Fabric, FabricId } from '../model/project';
import type { FabricAmount } from './fabricOrder';

/** Limits of the tones, and what they were taken from: the top, else what is on hand, else the list with each fabric counted once. */
export interface QuiltTones {
  readonly limits: ToneLimits;
  readonly of: 'top' | 'onHand' | 'list';
}

/** The tones of a quilt by how much there is of each fabric; null without fabrics. */
export function quiltTones(
  fabrics: readonly Fabric[],
  amounts: ReadonlyMap<FabricId, FabricAmount>,
): QuiltTones | null {
  const ways = [
    { of: 'top', areaOf: (id: FabricId) => amounts.get(id)?.share ?? 0 },
    { of: 'onHand', areaOf: (id: FabricId) => amounts.get(id)?.onHand ?? 0 },
    { of: 'list', areaOf: () => 1 },
  ] as const;
  for (const { of, areaOf } of ways) {
    const limits = toneLimits(
      fabrics.map((fabric) => ({ hex: meanColour(printMix(fabric)), area: areaOf(fabric.id) })),
    );
    if (limits) return { limits, of };
  }
  return null;
}

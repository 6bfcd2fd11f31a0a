// Brings the picture of a fabric's cloth on the large area into sight.
import type { FabricId } from '../../../../model/project';

/** The id of the picture. */
export function clothPlace(fabric: FabricId): string {
  return `cloth-of-${fabric}`;
}

/** Scrolls to the picture, where there is one. */
export function showCloth(fabric: FabricId): void {
  document.getElementById(clothPlace(fabric))?.scrollIntoView({ block: 'nearest' });
}

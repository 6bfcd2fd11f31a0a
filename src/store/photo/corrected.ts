// What a person has said of bands that were read from a photograph, and the bands with it: what is said is sure.
import type { FabricId, PicturedWedge } from '../../model/project';
import { SURE } from '../../photo/block/readLook';

/** By place and band, both from 0: the fabric, or null where it is not to be known. */
export type Corrected = Readonly<Record<string, FabricId | null>>;

export function bandKey(place: number, band: number): string {
  return `${place} ${band}`;
}

/** The bands as read, with what was said of them. */
export function withCorrected(shown: readonly PicturedWedge[], corrected: Corrected): PicturedWedge[] {
  return shown.map(({ bands }, place) => ({
    bands: bands.map((band, at) => {
      const key = bandKey(place, at);
      return key in corrected ? { ...band, fabric: corrected[key] ?? null, sure: 1 } : band;
    }),
  }));
}

/** Whether a person should look at a band. */
export function isDoubtful({ fabric, sure }: PicturedWedge['bands'][number]): boolean {
  return (fabric === null && sure < 1) || sure < SURE;
}

/** How many rims are doubtful. */
export function doubtfulRims(shown: readonly PicturedWedge[]): number {
  return shown.filter(({ bands }) => !bands[0] || isDoubtful(bands[0])).length;
}

// The strip of a block as it was read, as the job that makes a fabric of it asks for it: in a photograph, and in the picture as which a block
// hangs, which is the block alone, squared up, its light taken out.
import { apothem } from '../../geometry/wedge';
import type { StoredPicture } from '../../model/picture/picture';
import type { PicturedBlock, WedgePlan } from '../../model/project';
import type { Inches } from '../../model/units';
import type { LightThere } from '../../photo/block/daylight';
import type { StripThere } from '../../photo/block/strip';
import type { BlockLaid } from './blockJobs';
import { createPhotoReader } from './photoReader';

/** What is known of a block in a picture: the bands of its wedges, the cloth that lies round it, and its light. */
interface SeenThere {
  readonly wedges: readonly (readonly { readonly width: Inches }[])[];
  readonly allowance: Inches;
  readonly light: LightThere | null;
}

/** The strip `band` (from 0, the rim) in a place (from 0), as read. */
export function stripThere(
  { wedges, allowance, light }: SeenThere,
  { corners, bend }: BlockLaid,
  wedge: WedgePlan,
  place: number,
  band: number,
): StripThere {
  const bands = wedges[place]!;
  const outer = bands.slice(0, band).reduce((radius, { width }) => radius - width, apothem(wedge));
  const inner = Math.max(0, outer - bands[band]!.width);
  return { corners, bend, allowance, place, outer, inner, light };
}

/** The strip `band` (from 0, the rim) in a place (from 0) of the picture of a block. */
export function stripInPicture(
  { wedges }: Pick<PicturedBlock, 'wedges'>,
  { width, height }: Pick<StoredPicture, 'width' | 'height'>,
  wedge: WedgePlan,
  place: number,
  band: number,
): StripThere {
  const corners = [{ x: 0, y: 0 }, { x: width, y: 0 }, { x: width, y: height }, { x: 0, y: height }]; // biome-ignore format: corners
  const seen = { wedges: wedges.map(({ bands }) => bands), allowance: 0, light: null };
  return stripThere(seen, { corners, bend: 0 }, wedge, place, band);
}

/** Reads the fabric of a strip in a worker of its own. */
export async function readStrip(picture: StoredPicture, strip: StripThere, wedge: WedgePlan) {
  const reader = createPhotoReader();
  try {
    return await reader.ask('strip', { key: 1, bytes: Uint8Array.from(picture.bytes) }, { strip, wedge });
  } finally {
    reader.close();
  }
}

// The strip of a block as it was read, as the job that makes a fabric of it asks for it.
import { apothem } from '../../geometry/wedge';
import type { WedgePlan } from '../../model/project';
import type { StripThere } from '../../photo/block/strip';
import type { BlockFound, BlockLaid } from './blockJobs';

/** The strip `band` (from 0, the rim) in a place (from 0), as read. */
export function stripThere(
  { wedges, allowance, light }: BlockFound,
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

// The whole N-gon of the block, from the rim corners of its wedges.
import { bandOutline } from '../../src/geometry/block';
import type { Outline } from '../../src/geometry/point';
import { apothem } from '../../src/geometry/wedge';
import type { WedgePlan } from '../../src/model/project';

export function blockOutline(wedge: WedgePlan): Outline {
  return Array.from(
    { length: wedge.perBlock },
    (_, toward) => bandOutline(toward, apothem(wedge), 0, wedge.perBlock)[0]!,
  );
}

// A whole picture as linear light, for cloth that is drawn and measured by the tests; the product makes it smaller in the same walk.
import { LINEAR_OF_BYTE } from '../../../src/photo/pixels/linear';
import { blankPlane, type Pixels, type Plane } from '../../../src/photo/pixels/pixels';

/** A picture as linear light: three channels, 0–1. */
export function linearPlane({ width, height, data }: Pixels): Plane {
  const plane = blankPlane(width, height, 3);
  for (let from = 0, to = 0; from < data.length; from += 4, to += 3) {
    plane.data[to] = LINEAR_OF_BYTE[data[from]!]!;
    plane.data[to + 1] = LINEAR_OF_BYTE[data[from + 1]!]!;
    plane.data[to + 2] = LINEAR_OF_BYTE[data[from + 2]!]!;
  }
  return plane;
}

// Closes a picture into a tile: what sticks out beyond the tile on the right and below is laid over its left and its top, each
// along the cut on which the two differ least. So the tile runs on over its edges as the cloth does.
import { blankPlane, type Plane } from '../pixels/pixels';
import { type Band, leastClosedCut, leastCut } from './boundaryCut';

/** A tile and the mean error along its cuts, in squares of differences of the guide. */
export interface Wrapped {
  readonly plane: Plane;
  readonly error: number;
  /** For each pixel whether a cut runs along its left (1) or its top (2). */
  readonly cuts: Uint8Array;
}

/**
 * A tile of `width` × `height` out of a plane that is larger by the bands that overlap. `guide` is the same picture in OKLab,
 * in which differences are judged. Throws where there is nothing to overlap.
 */
export function wrapped(plane: Plane, guide: Plane, width: number, height: number): Wrapped {
  const [overX, overY] = [plane.width - width, plane.height - height];
  if (!(overX > 0 && overY > 0 && overX <= width && overY <= height))
    throw new RangeError(`wrapped: ${plane.width} × ${plane.height} does not close to ${width} × ${height}`);
  const upright = leastCut(
    bandOf(guide, overX, plane.height, (place, row) => [row * plane.width + place, width]),
  );
  const narrow = (of: Plane) => closedAcross(of, width, upright.path);
  const [tall, tallGuide] = [narrow(plane), narrow(guide)];
  const level = leastClosedCut(
    bandOf(tallGuide, overY, width, (place, row) => [place * width + row, height * width]),
  );
  const cuts = new Uint8Array(width * height);
  for (let column = 0; column < width; column += 1) {
    const at = level.path[column]!;
    cuts[at * width + column]! |= 2;
  }
  for (let row = 0; row < height; row += 1) {
    const from = row < overY && row < level.path[upright.path[row]!]! ? row + height : row;
    cuts[row * width + upright.path[from]!]! |= 1;
  }
  return {
    plane: closedDown(tall, height, level.path),
    error: (upright.error + level.error) / (plane.height + width),
    cuts,
  };
}

/**
 * How much a guide differs from itself across a band. `pixels` gives for a place and a row the pixel near the beginning, and
 * how many pixels on the one lies that is to meet it. The error of a cut before a place counts both its sides.
 */
function bandOf(
  guide: Plane,
  across: number,
  along: number,
  pixels: (place: number, row: number) => readonly [pixel: number, on: number],
): Band {
  const errors = new Float64Array(across * along);
  const { data } = guide;
  const differ = (place: number, row: number) => {
    const [pixel, on] = pixels(place, row);
    let square = 0;
    for (let channel = 0; channel < 3; channel += 1)
      square += (data[pixel * 3 + channel]! - data[(pixel + on) * 3 + channel]!) ** 2;
    return square;
  };
  for (let row = 0; row < along; row += 1) {
    let before = differ(0, row);
    for (let place = 0; place < across; place += 1) {
      const here = differ(place, row);
      errors[row * across + place] = (before + here) / 2;
      before = here;
    }
  }
  return { across, along, errors };
}

/** Left of the cut what lies `width` farther right, else what is there. */
function closedAcross(plane: Plane, width: number, path: Int32Array): Plane {
  const into = blankPlane(width, plane.height, 3);
  for (let row = 0; row < plane.height; row += 1) {
    const from = row * plane.width * 3;
    const cut = path[row]! * 3;
    const to = row * width * 3;
    into.data.set(plane.data.subarray(from + width * 3, from + width * 3 + cut), to);
    into.data.set(plane.data.subarray(from + cut, from + width * 3), to + cut);
  }
  return into;
}

/** Above the cut what lies `height` farther down, else what is there. */
function closedDown(plane: Plane, height: number, path: Int32Array): Plane {
  const { width } = plane;
  const into = blankPlane(width, height, 3);
  for (let row = 0; row < height; row += 1) {
    for (let column = 0; column < width; column += 1) {
      const from = (row < path[column]! ? row + height : row) * width + column;
      into.data.set(plane.data.subarray(from * 3, from * 3 + 3), (row * width + column) * 3);
    }
  }
  return into;
}

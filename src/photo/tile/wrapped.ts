// Closes a picture into a tile: what sticks out beyond the tile on the right and below is laid over its left and its top, each
// along the cut on which the two differ least. So the tile runs on over its edges as the cloth does.
import { blankPlane, type Plane } from '../pixels/pixels';
import { type Band, type Cut, leastClosedCut, leastCut } from './boundaryCut';

/** A picture and the same in OKLab, in which differences are judged. */
export interface Guided {
  readonly plane: Plane;
  readonly guide: Plane;
}

/** Closed in one direction: where the cut runs, and its mean error in squares of differences. */
interface Closed extends Guided {
  readonly cut: Cut;
  readonly error: number;
}

/** What is narrower by `plane.width − width`: its right end is laid over its left. Throws where there is nothing to overlap. */
export function closedAcross({ plane, guide }: Guided, width: number): Closed {
  const over = plane.width - width;
  checkOverlap(over, width);
  const cut = leastCut(bandOf(guide, over, plane.height, (place, row) => [row * plane.width + place, width]));
  const narrow = (of: Plane) => overLeft(of, width, cut.path);
  return { plane: narrow(plane), guide: narrow(guide), cut, error: cut.error / plane.height };
}

/** The same from below to above, for a picture that is closed across already: the cut meets itself. */
export function closedDown({ plane, guide }: Guided, height: number): Closed {
  const over = plane.height - height;
  checkOverlap(over, height);
  const { width } = plane;
  const cut = leastClosedCut(
    bandOf(guide, over, width, (place, row) => [place * width + row, height * width]),
  );
  const low = (of: Plane) => overTop(of, height, cut.path);
  return { plane: low(plane), guide: low(guide), cut, error: cut.error / width };
}

function checkOverlap(over: number, side: number): void {
  if (!(over > 0 && over <= side))
    throw new RangeError(`an overlap of ${over} does not close a side of ${side}`);
}

/** For each pixel of a tile whether a cut runs along its left (1) or its top (2). */
export function cutsOf(width: number, height: number, across: Cut, down: Cut): Uint8Array {
  const cuts = new Uint8Array(width * height);
  down.path.forEach((row, column) => {
    cuts[row * width + column]! |= 2;
  });
  for (let row = 0; row < height; row += 1) {
    const own = across.path[row]!;
    const from = row < down.path[own]! ? row + height : row;
    cuts[row * width + across.path[from]!]! |= 1;
  }
  return cuts;
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
function overLeft(plane: Plane, width: number, path: Int32Array): Plane {
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
function overTop(plane: Plane, height: number, path: Int32Array): Plane {
  const { width, data } = plane;
  const into = blankPlane(width, height, 3);
  for (let row = 0, to = 0; row < height; row += 1) {
    for (let column = 0; column < width; column += 1, to += 3) {
      const from = ((row < path[column]! ? row + height : row) * width + column) * 3;
      into.data[to] = data[from]!;
      into.data[to + 1] = data[from + 1]!;
      into.data[to + 2] = data[from + 2]!;
    }
  }
  return into;
}

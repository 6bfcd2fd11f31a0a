// One fabric of many in a picture (a shelf, a fan of folded pieces), by a tap on it: pixels of its colours, in its mixture, grown from
// the tap; and the largest frame that lies inside them.
import { phrase } from '../../model/phrase';
import { failed, ok, type Result } from '../../model/result';
import { coloursIn } from '../fabric/mainColours';
import { cutOut, type Frame } from '../pixels/frame';
import { oklabPlane } from '../pixels/linear';
import { blankPlane, type Pixels, type Plane } from '../pixels/pixels';
import { shrunkTo } from '../pixels/resize';
import { largestFrame, type Mask } from './largestFrame';

/** The picture is looked at this large; the colours of the tapped fabric are read so far round the tap. */
const LONGEST = 480;
const ROUND_TAP = 7;
/** A pixel has a colour of the fabric when it lies no farther from it in OKLab, darker or lighter by folds allowed for. */
const OFF = 0.055;
const DARKEST = 0.84;
const LIGHTEST = 1.06;
/** Mixtures are compared in a window of this reach; so much of it may differ (half the sum of differences). */
const WINDOW = 5;
const MAY_DIFFER = 0.38;
/** A frame smaller than this, in pixels of the picture as it is looked at, shows too little. */
const LEAST = 10;

/** The frame of the fabric under a point of the picture. A problem with a sentence where too little of it is found. Seeded. */
export function frameOfTapped(pixels: Pixels, x: number, y: number, seed: number): Result<Frame> {
  if (!(x >= 0 && y >= 0 && x < pixels.width && y < pixels.height))
    return failed('tap-outside', 'tap', phrase('Tap inside the picture.'));
  const linear = shrunkTo(pixels, LONGEST);
  const scale = pixels.width / linear.width;
  const column = Math.min(linear.width - 1, Math.floor(x / scale));
  const row = Math.min(linear.height - 1, Math.floor(y / scale));
  const oklab = oklabPlane(linear);
  const palette = paletteRound(pixels, x, y, scale, seed);
  const region = grownFrom(coloursOf(oklab, palette), palette.length, column, row);
  const frame = region && largestFrame(region, column, row);
  if (!frame || Math.min(frame.width, frame.height) < LEAST)
    return failed('tap-small', 'tap', phrase('Too little of this fabric shows. Tap nearer its middle, or set a frame by hand.')); // biome-ignore format: one sentence
  return ok({
    x: frame.x * scale,
    y: frame.y * scale,
    width: frame.width * scale,
    height: frame.height * scale,
    angle: frame.angle,
  });
}

type Colour = readonly [number, number, number];

/** The main colours round the tap, OKLab. */
function paletteRound(pixels: Pixels, x: number, y: number, scale: number, seed: number): readonly Colour[] {
  const side = 2 * ROUND_TAP + 1;
  const reach = side * scale;
  const plane = oklabPlane(cutOut(pixels, { x, y, width: reach, height: reach, angle: 0 }, side, side));
  const { of } = coloursIn(plane, seed);
  const sums = Array.from({ length: Math.max(...of) + 1 }, () => [0, 0, 0, 0]);
  of.forEach((colour, pixel) => {
    for (let part = 0; part < 3; part += 1) sums[colour]![part]! += plane.data[pixel * 3 + part]!;
    sums[colour]![3]! += 1;
  });
  return sums.map(([light, a, b, count]) => [light! / count!, a! / count!, b! / count!] as const);
}

interface Coloured {
  readonly width: number;
  readonly height: number;
  /** For each pixel the place of its colour in the palette; the palette's length where it has none of them. */
  readonly of: Uint8Array;
}

function coloursOf({ width, height, data }: Plane, palette: readonly Colour[]): Coloured {
  const of = new Uint8Array(width * height);
  for (let pixel = 0; pixel < of.length; pixel += 1) {
    const seen = [data[pixel * 3]!, data[pixel * 3 + 1]!, data[pixel * 3 + 2]!] as const;
    let best = OFF;
    of[pixel] = palette.length;
    palette.forEach((colour, place) => {
      const off = shadedDistance(seen, colour);
      if (off < best) [best, of[pixel]] = [off, place];
    });
  }
  return { width, height, of };
}

/** From a pixel to a colour that may be in shadow or in light: less light scales OKLab as a whole (its cones are cube roots). */
function shadedDistance(seen: Colour, colour: Colour): number {
  const length = colour[0] ** 2 + colour[1] ** 2 + colour[2] ** 2;
  const along = (seen[0] * colour[0] + seen[1] * colour[1] + seen[2] * colour[2]) / Math.max(1e-9, length);
  const shade = Math.max(DARKEST, Math.min(LIGHTEST, along));
  return Math.hypot(seen[0] - shade * colour[0], seen[1] - shade * colour[1], seen[2] - shade * colour[2]);
}

/** Pixels connected to the tap in whose window the colours are mixed as round the tap, then as in what was found. */
function grownFrom(coloured: Coloured, colours: number, column: number, row: number): Mask | null {
  const windows = windowsOf(coloured, colours + 1);
  const tap = row * coloured.width + column;
  let mixture = windows.mixtureAt(tap);
  let region: Mask | null = null;
  for (let round = 0; round < 2; round += 1) {
    const wanted = mixture;
    region = connected(coloured, tap, (pixel) => windows.differs(pixel, wanted) <= MAY_DIFFER);
    mixture = windows.meanOver(region);
  }
  return region;
}

interface Windows {
  mixtureAt(pixel: number): Float32Array;
  differs(pixel: number, mixture: Float32Array): number;
  meanOver(mask: Mask): Float32Array;
}

/** The share of each colour in the window round each pixel, from sums over all before it. */
function windowsOf({ width, height, of }: Coloured, colours: number): Windows {
  const sums = blankPlane(width + 1, height + 1, colours);
  const line = (width + 1) * colours;
  for (let row = 0; row < height; row += 1) {
    const here = new Float32Array(colours);
    for (let column = 0; column < width; column += 1) {
      here[of[row * width + column]!]! += 1;
      const to = (row + 1) * line + (column + 1) * colours;
      for (let one = 0; one < colours; one += 1)
        sums.data[to + one] = sums.data[to - line + one]! + here[one]!;
    }
  }
  const mixture = new Float32Array(colours);
  const read = (pixel: number) => {
    const [column, row] = [pixel % width, Math.floor(pixel / width)];
    const [left, right] = [Math.max(0, column - WINDOW), Math.min(width, column + WINDOW + 1)];
    const [top, bottom] = [Math.max(0, row - WINDOW), Math.min(height, row + WINDOW + 1)];
    const area = (right - left) * (bottom - top);
    for (let one = 0; one < colours; one += 1) {
      const at = (y: number, x: number) => sums.data[y * line + x * colours + one]!;
      mixture[one] = (at(bottom, right) - at(top, right) - at(bottom, left) + at(top, left)) / area;
    }
    return mixture;
  };
  return {
    mixtureAt: (pixel) => read(pixel).slice(),
    differs: (pixel, wanted) =>
      read(pixel).reduce((sum, share, one) => sum + Math.abs(share - wanted[one]!), 0) / 2,
    meanOver: ({ inside }) => {
      const total = new Float32Array(colours);
      inside.forEach((isIn, pixel) => {
        if (isIn) total[of[pixel]!]! += 1;
      });
      const count = total.reduce((sum, one) => sum + one, 0);
      return total.map((one) => one / Math.max(1, count));
    },
  };
}

/** Pixels that hold and hang together with the first. */
function connected({ width, height }: Coloured, first: number, holds: (pixel: number) => boolean): Mask {
  const inside = new Uint8Array(width * height);
  const seen = new Uint8Array(width * height);
  const next = [first];
  seen[first] = 1;
  inside[first] = 1;
  for (let at = next.pop(); at !== undefined; at = next.pop()) {
    const column = at % width;
    for (const [beside, there] of [
      [at - 1, column > 0],
      [at + 1, column < width - 1],
      [at - width, at >= width],
      [at + width, at < width * (height - 1)],
    ] as const) {
      if (!there || seen[beside]) continue;
      seen[beside] = 1;
      if (!holds(beside)) continue;
      inside[beside] = 1;
      next.push(beside);
    }
  }
  return { width, height, inside };
}

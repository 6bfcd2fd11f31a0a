// One fabric of many in a picture (a shelf, a fan of folded pieces), by a tap on it: pixels of its colours, in its mixture, grown from
// the tap; and the largest frame that lies inside them.
import { linearOfHex, oklabOf } from '../../colour/spaces';
import { phrase } from '../../model/phrase';
import { failed, ok, type Result } from '../../model/result';
import { grouped } from '../fabric/clusters';
import { coloursIn, MOST_COLOURS } from '../fabric/mainColours';
import { cutOut, type Frame } from '../pixels/frame';
import { oklabPlane } from '../pixels/linear';
import { blankPlane, type Pixels, type Plane } from '../pixels/pixels';
import { shrunkTo } from '../pixels/resize';
import { largestFrame, type Mask } from './largestFrame';

/** The picture is looked at this large. */
const LONGEST = 480;
/** A pixel has a colour of the fabric when it lies no farther from it in OKLab, darker or lighter by folds allowed for. */
const OFF = 0.05;
/** Hue and chroma tell neighbours apart better than lightness, which folds change: they count so much more. */
const CHROMA_COUNTS = 1.7;
const DARKEST = 0.88;
const LIGHTEST = 1.06;
/**
 * Mixtures are compared in windows of this reach, in larger ones only where the small ones find too little of a large print;
 * so much of a window may differ (half the sum of differences).
 */
const WINDOWS = [5, 7, 9] as const;
/** A frame whose shorter side is this long, in pixels of the picture as it is looked at, is enough. */
const ENOUGH = 16;
/** The colours are read so far round the tap: farther off may lie a neighbour. */
const ROUND_TAP = 7;
const MAY_DIFFER = 0.32;
/** A line so long (to each side) of none of the fabric's colours, but for this share, is a fold or an edge. */
const FOLD = 8;
const FOLD_SHARE = 0.7;
/** A frame smaller than this, in pixels of the picture as it is looked at, shows too little. */
const LEAST = 10;

/** The frame of the fabric under a point of the picture. A problem with a sentence where too little of it is found. Seeded. */
export function frameOfTapped(pixels: Pixels, x: number, y: number, seed: number): Result<Frame> {
  if (!(x >= 0 && y >= 0 && x < pixels.width && y < pixels.height))
    return failed('tap-outside', 'tap', phrase('Tap inside the picture.'));
  const oklab = lookedAt(pixels);
  const scale = pixels.width / oklab.width;
  const column = Math.min(oklab.width - 1, Math.floor(x / scale));
  const row = Math.min(oklab.height - 1, Math.floor(y / scale));
  const coloured = coloursOf(oklab, paletteRound(pixels, x, y, scale, seed));
  let frame: Frame | null = null;
  for (const reach of WINDOWS) {
    const found = largestFrame(grownFrom(coloured, column, row, reach), column, row);
    if (found && (!frame || shortSide(found) > shortSide(frame))) frame = found;
    if (frame && shortSide(frame) >= ENOUGH) break;
  }
  if (!frame || shortSide(frame) < LEAST)
    return failed('tap-small', 'tap', phrase('Too little of this fabric shows. Tap nearer its middle, or set a frame by hand.')); // biome-ignore format: one sentence
  return ok({
    x: frame.x * scale,
    y: frame.y * scale,
    width: frame.width * scale,
    height: frame.height * scale,
    angle: frame.angle,
  });
}

const looks = new WeakMap<Pixels, Plane>();

/** The picture made small, in OKLab: the same for every tap on it. */
function lookedAt(pixels: Pixels): Plane {
  const look = looks.get(pixels) ?? oklabPlane(shrunkTo(pixels, LONGEST));
  looks.set(pixels, look);
  return look;
}

function shortSide({ width, height }: Frame): number {
  return Math.min(width, height);
}

type Colour = readonly [number, number, number];

/** A colour that a pixel of the fabric may have, OKLab, and the main colour it counts as. */
interface Shade {
  readonly colour: Colour;
  readonly main: number;
}

/** The shades round the tap, blends at the edges of fine figures too; each counts as the main colour nearest to it. */
function paletteRound(pixels: Pixels, x: number, y: number, scale: number, seed: number): readonly Shade[] {
  const looked = 2 * ROUND_TAP + 1;
  const side = looked * scale;
  const plane = oklabPlane(cutOut(pixels, { x, y, width: side, height: side, angle: 0 }, looked, looked));
  const mains = coloursIn(plane, seed).colours.map(({ hex }) => oklabOf(linearOfHex(hex)));
  const { middles } = grouped(plane.data, MOST_COLOURS, seed);
  return Array.from({ length: middles.length / 3 }, (_, at) => {
    const colour = [middles[at * 3]!, middles[at * 3 + 1]!, middles[at * 3 + 2]!] as const;
    const offs = mains.map((main) => Math.hypot(...main.map((part, channel) => part - colour[channel]!)));
    return { colour, main: offs.indexOf(Math.min(...offs)) };
  });
}

interface Coloured {
  readonly width: number;
  readonly height: number;
  /** How many colours the palette has. */
  readonly colours: number;
  /** For each pixel its main colour; `colours` where it has none. */
  readonly of: Uint8Array;
}

function coloursOf({ width, height, data }: Plane, palette: readonly Shade[]): Coloured {
  const colours = Math.max(...palette.map(({ main }) => main)) + 1;
  const of = new Uint8Array(width * height).fill(colours);
  for (let pixel = 0; pixel < of.length; pixel += 1) {
    const seen = [data[pixel * 3]!, data[pixel * 3 + 1]!, data[pixel * 3 + 2]!] as const;
    let best = OFF;
    for (const { colour, main } of palette) {
      const off = shadedDistance(seen, colour);
      if (off < best) [best, of[pixel]] = [off, main];
    }
  }
  return { width, height, colours, of };
}

/** From a pixel to a colour that may be in shadow or in light: less light scales OKLab as a whole (its cones are cube roots). */
function shadedDistance(seen: Colour, colour: Colour): number {
  const length = colour[0] ** 2 + colour[1] ** 2 + colour[2] ** 2;
  const along = (seen[0] * colour[0] + seen[1] * colour[1] + seen[2] * colour[2]) / Math.max(1e-9, length);
  const shade = Math.max(DARKEST, Math.min(LIGHTEST, along));
  const light = seen[0] - shade * colour[0];
  const chroma = (seen[1] - shade * colour[1]) ** 2 + (seen[2] - shade * colour[2]) ** 2;
  return Math.sqrt(light * light + CHROMA_COUNTS ** 2 * chroma);
}

/** Pixels connected to the tap in whose window the colours are mixed as round the tap, then as in what was found. */
function grownFrom(coloured: Coloured, column: number, row: number, reach: number): Mask {
  const windows = windowsOf(coloured, reach);
  const tap = row * coloured.width + column;
  const grown = (mixture: Float32Array) =>
    connected(
      coloured,
      tap,
      (pixel) => windows.differs(pixel, mixture) <= MAY_DIFFER && !windows.isFold(pixel),
    );
  return grown(windows.meanOver(grown(windows.mixtureAt(tap))));
}

interface Windows {
  mixtureAt(pixel: number): Float32Array;
  differs(pixel: number, mixture: Float32Array): number;
  /** Whether a level or upright line through the pixel has none of the colours. */
  isFold(pixel: number): boolean;
  meanOver(mask: Mask): Float32Array;
}

/** The share of each colour in the window round each pixel, from sums over all before it. */
function windowsOf({ width, height, colours: inPalette, of }: Coloured, reach: number): Windows {
  const colours = inPalette + 1;
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
  const read = (pixel: number, reachX = reach, reachY = reach) => {
    const [column, row] = [pixel % width, Math.floor(pixel / width)];
    const [left, right] = [Math.max(0, column - reachX), Math.min(width, column + reachX + 1)];
    const [top, bottom] = [Math.max(0, row - reachY), Math.min(height, row + reachY + 1)];
    const area = (right - left) * (bottom - top);
    for (let one = 0; one < colours; one += 1) {
      const [upper, lower] = [top * line + one, bottom * line + one];
      const below = sums.data[lower + right * colours]! - sums.data[lower + left * colours]!;
      mixture[one] =
        (below - sums.data[upper + right * colours]! + sums.data[upper + left * colours]!) / area;
    }
    return mixture;
  };
  return {
    mixtureAt: (pixel) => read(pixel).slice(),
    differs: (pixel, wanted) =>
      read(pixel).reduce((sum, share, one) => sum + Math.abs(share - wanted[one]!), 0) / 2,
    isFold: (pixel) =>
      read(pixel, FOLD, 0)[inPalette]! > FOLD_SHARE || read(pixel, 0, FOLD)[inPalette]! > FOLD_SHARE,
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

// Draws letters of the device on a canvas, for names in scripts that the pattern's typefaces do not have (drawing/pattern). In a worker
// too: the canvas is none of the page's.

import type { Face } from '../../drawing/pattern/page';
import type { DeviceLetters, LetterPicture } from '../../drawing/pattern/pdf/pdfType';

/** Height of a letter in pixels: 900 dots to the inch in running text, 240 in the largest title. */
const HIGH = 100;
/** A code point that is no character (Unicode), so that its picture is the device's sign for a missing letter. */
const NO_LETTER = '\u{10ffff}';

const FONTS: Readonly<Record<Face, string>> = {
  display: `400 ${HIGH}px serif`,
  text: `400 ${HIGH}px sans-serif`,
  strong: `600 ${HIGH}px sans-serif`,
};

/** The letters of this device; null where the browser gives no canvas to draw on apart from the page. */
export function deviceLetters(): DeviceLetters | null {
  if (typeof OffscreenCanvas === 'undefined') return null;
  const canvas = new OffscreenCanvas(1, 1);
  const pen = canvas.getContext('2d', { willReadFrequently: true });
  if (!pen) return null;
  const lacking = new Map<Face, Pixels>();
  const seen = (run: string, face: Face) => {
    draw(canvas, pen, run, face, '#000000');
    return pixelsOf(canvas, pen);
  };
  return {
    has(letter, face) {
      // Joiners have no picture of their own; they belong to their neighbours.
      if (/^\p{Cf}$/u.test(letter)) return true;
      const lacks = lacking.get(face) ?? seen(NO_LETTER, face);
      lacking.set(face, lacks);
      return !same(seen(letter, face), lacks);
    },
    width(run, face) {
      pen.font = FONTS[face];
      return pen.measureText(run).width / HIGH;
    },
    picture(run, face, ink) {
      const place = draw(canvas, pen, run, face, ink);
      return { ...place, pixels: pixelsOf(canvas, pen) };
    },
  };
}

type Pixels = LetterPicture['pixels'];

function pixelsOf({ width, height }: OffscreenCanvas, pen: OffscreenCanvasRenderingContext2D): Pixels {
  const { data } = pen.getImageData(0, 0, width, height);
  return { data, width, height };
}

function same(one: Pixels, other: Pixels): boolean {
  return (
    one.width === other.width &&
    one.height === other.height &&
    one.data.every((byte, at) => byte === other.data[at])
  );
}

/** Draws a run on the canvas, which gets the size of the run. Returns its place for letters one inch high. */
function draw(
  canvas: OffscreenCanvas,
  pen: OffscreenCanvasRenderingContext2D,
  run: string,
  face: Face,
  ink: string,
): Omit<LetterPicture, 'pixels'> {
  pen.font = FONTS[face];
  const size = pen.measureText(run);
  const left = Math.ceil(size.actualBoundingBoxLeft) + 1;
  const rise = Math.ceil(size.actualBoundingBoxAscent) + 1;
  const width = Math.max(1, left + Math.ceil(size.actualBoundingBoxRight) + 1);
  const height = Math.max(1, rise + Math.ceil(size.actualBoundingBoxDescent) + 1);
  // A new size empties the canvas and resets its pen.
  canvas.width = width;
  canvas.height = height;
  pen.font = FONTS[face];
  pen.fillStyle = ink;
  pen.fillText(run, left, rise);
  return {
    left: -left / HIGH,
    rise: rise / HIGH,
    width: width / HIGH,
    height: height / HIGH,
  };
}

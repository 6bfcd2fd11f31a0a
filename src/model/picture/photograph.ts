// What a file from outside is, told from its bytes before anything is decoded: a photograph that may be read, with its size, or else a
// sentence that says what it is and what to do. What is kept afterwards is takePicture.ts.
import { phrase } from '../phrase';
import { failed, ok, type Result } from '../result';
import { plainImage, typeOfBytes } from './image';

/** The most bytes of a photograph, and the most pixels: four bytes each once it is decoded. */
export const MOST_PHOTOGRAPH_BYTES = 40 * 1024 * 1024;
export const MOST_PHOTOGRAPH_PIXELS = 64_000_000;
/** The fewest pixels on a side in which a fabric can be seen, let alone a block. */
const LEAST_PHOTOGRAPH_SIDE = 48;
/** The longest side that browsers decode. */
const MOST_PHOTOGRAPH_SIDE = 16_384;

export interface Photograph {
  readonly type: 'image/jpeg' | 'image/png' | 'image/webp' | 'image/heic' | 'image/avif';
  /** As stored; turned by a quarter it may be shown the other way. */
  readonly width: number;
  readonly height: number;
}

/** What a photograph is, by its first bytes and its headers; a problem with a sentence where it cannot be read. */
export function checkPhotograph(bytes: Uint8Array): Result<Photograph> {
  const size = checkSize(bytes.length);
  if (!size.ok) return size;
  const type = typeOfBytes(bytes) ?? containerOf(bytes);
  if (!type)
    return failed('no-photo', '', phrase(`${otherKind(bytes)} Choose a photograph: JPEG, PNG or WebP.`));
  const photograph =
    type === 'image/heic' || type === 'image/avif' ? inContainer(bytes, type) : plainImage(bytes);
  if (!photograph)
    return failed('photo-damaged', '', phrase('This photograph is damaged or not whole. Send or copy it again, then choose it again.')); // biome-ignore format: one sentence
  const { width, height } = photograph;
  if (Math.min(width, height) < LEAST_PHOTOGRAPH_SIDE)
    return failed('photo-small', '', phrase('This picture has only {width} × {height} pixels, too few to read anything. Choose a larger one: at least {least} on a side.', { width, height, least: LEAST_PHOTOGRAPH_SIDE })); // biome-ignore format: one sentence
  if (Math.max(width, height) > MOST_PHOTOGRAPH_SIDE || width * height > MOST_PHOTOGRAPH_PIXELS)
    return failed('photo-pixels', '', phrase('This photograph has {width} × {height} pixels; at most {side} on a side and {most} million in all can be read. Save it smaller, then choose it again.', { width, height, side: MOST_PHOTOGRAPH_SIDE, most: MOST_PHOTOGRAPH_PIXELS / 1e6 })); // biome-ignore format: one sentence
  return ok({ type, width, height });
}

/** Whether a file of so many bytes may be a photograph that is read: asked before it is. */
export function checkSize(bytes: number): Result<null> {
  if (bytes === 0) return failed('photo-empty', '', phrase('This file is empty. Choose another.'));
  if (bytes <= MOST_PHOTOGRAPH_BYTES) return ok(null);
  return failed('photo-large', '', phrase('This file takes {size} MB; a photograph takes at most {most} MB. Save it smaller, then choose it again.', { size: megabytes(bytes), most: megabytes(MOST_PHOTOGRAPH_BYTES) })); // biome-ignore format: one sentence
}

function megabytes(bytes: number): number {
  return Math.ceil(bytes / (1024 * 1024));
}

function letters(bytes: Uint8Array, from: number, to: number): string {
  return String.fromCharCode(...bytes.subarray(from, Math.min(to, bytes.length)));
}

/** Brands of HEIF and AVIF (ISO/IEC 23008-12, annex B; AV1 Image File Format, section 6). */
const HEIC = /hei[cxms]|hev[cxms]|mif1|msf1/;
const AVIF = /avi[fs]/;

/** HEIC or AVIF by the brands of an ISO file (ISO/IEC 14496-12, section 4.3); null for films and all else. */
function containerOf(bytes: Uint8Array): 'image/heic' | 'image/avif' | null {
  if (letters(bytes, 4, 8) !== 'ftyp') return null;
  const end = new DataView(bytes.buffer, bytes.byteOffset).getUint32(0);
  const brands = letters(bytes, 8, Math.min(end, 128));
  if (AVIF.test(brands)) return 'image/avif';
  return HEIC.test(brands) ? 'image/heic' : null;
}

/** Boxes of sizes lie near the beginning. */
const HEAD = 256 * 1024;

/** The largest of the sizes that the file names for its parts (box ispe: ISO/IEC 23008-12, section 6.5.3); null for none. */
function inContainer(bytes: Uint8Array, type: Photograph['type']): Photograph | null {
  const head = bytes.subarray(0, HEAD);
  const view = new DataView(head.buffer, head.byteOffset, head.length);
  let [width, height] = [0, 0];
  for (let at = head.indexOf(0x69); at >= 0; at = head.indexOf(0x69, at + 1)) {
    if (letters(head, at, at + 4) !== 'ispe' || at + 16 > head.length) continue;
    width = Math.max(width, view.getUint32(at + 8));
    height = Math.max(height, view.getUint32(at + 12));
  }
  return width > 0 && height > 0 ? { type, width, height } : null;
}

const SIGNS = [
  { begins: /^GIF8/, is: 'This is a GIF.' },
  { begins: /^%PDF/, is: 'This is a PDF.' },
  { begins: /^BM/, is: 'This is a BMP.' },
  { begins: /^(?:II\*\0|MM\0\*)/, is: 'This is a TIFF or a camera’s raw file.' },
  { begins: /^[\s\S]{4}ftyp/, is: 'This is a film.' },
  { begins: /^PK/, is: 'This is an archive.' },
] as const;

function otherKind(bytes: Uint8Array): string {
  const head = letters(bytes, 0, 1024);
  const known = SIGNS.find(({ begins }) => begins.test(head));
  if (known) return known.is;
  if (head.includes('\0')) return 'This file is no picture.';
  return /<svg[\s>]/i.test(head) ? 'This is a drawing (SVG).' : 'This file holds text, not a picture.';
}

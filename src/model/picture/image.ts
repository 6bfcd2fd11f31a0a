// Reads an image file without decoding it: which kind it is, its size in pixels, and the parts that draw it. All else (where and with
// what it was taken, comments, previews) is left out. The three kinds are in jpeg.ts, png.ts and webp.ts.
import { plainJpeg } from './jpeg';
import type { StoredPicture } from './picture';
import { plainPng } from './png';
import { plainWebp } from './webp';

const KINDS = [
  { type: 'image/jpeg', begins: [[0, 0xff, 0xd8, 0xff]], plain: plainJpeg },
  { type: 'image/png', begins: [[0, 0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]], plain: plainPng },
  { type: 'image/webp', begins: [[0, 0x52, 0x49, 0x46, 0x46], [8, 0x57, 0x45, 0x42, 0x50]], plain: plainWebp },
] as const; // biome-ignore format: a table

/** The type that the first bytes of a file tell (the signatures of the three formats); null where they tell none of them. */
export function typeOfBytes(bytes: Uint8Array): StoredPicture['type'] | null {
  return kindOf(bytes)?.type ?? null;
}

/** The image without what does not draw it; null where it is of no kind that is read here, breaks off or is damaged. */
export function plainImage(bytes: Uint8Array): StoredPicture | null {
  const kind = kindOf(bytes);
  const image = kind?.plain(bytes);
  if (!kind || !image || image.width < 1 || image.height < 1) return null;
  return { type: kind.type, width: image.width, height: image.height, bytes: joined(image.parts) };
}

function kindOf(bytes: Uint8Array) {
  return KINDS.find(({ begins }) =>
    begins.every(([at, ...signs]) => signs.every((sign, index) => bytes[at + index] === sign)),
  );
}

function joined(parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

// The chunks of a PNG (W3C Portable Network Graphics, section 5).
import type { PlainImage } from './picture';

/** What draws the picture; text, time, camera data and profiles of devices are not among it. */
const DRAWING = new Set(['IHDR', 'PLTE', 'tRNS', 'sRGB', 'gAMA', 'cHRM', 'IDAT', 'IEND']);
const SIGNATURE = 8;

/** The picture's chunks that draw it; null where they do not run from IHDR to IEND, each whole. */
export function plainPng(bytes: Uint8Array): PlainImage | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  const parts = [bytes.subarray(0, SIGNATURE)];
  const seen = new Set<string>();
  for (let at = SIGNATURE; at + 12 <= bytes.length; ) {
    const length = view.getUint32(at);
    const name = String.fromCharCode(...bytes.subarray(at + 4, at + 8));
    const next = at + 12 + length;
    if (next > bytes.length || (seen.size === 0) !== (name === 'IHDR')) return null;
    seen.add(name);
    if (DRAWING.has(name)) parts.push(bytes.subarray(at, next));
    if (name === 'IEND') {
      if (view.getUint32(SIGNATURE) !== 13 || !seen.has('IDAT')) return null;
      return { width: view.getUint32(SIGNATURE + 8), height: view.getUint32(SIGNATURE + 12), parts };
    }
    at = next;
  }
  return null;
}

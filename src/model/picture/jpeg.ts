// The segments of a JPEG (ITU-T T.81, annex B).
import type { PlainImage } from './picture';

/** Markers (table B.1). */
const SOI = 0xd8;
const EOI = 0xd9;
const SOS = 0xda;
const APP0 = 0xe0;
/** Adobe's, which says how the colours are coded. */
const APP14 = 0xee;
const COMMENT = 0xfe;

/** Its segments but applications' data and comments; null where they do not run from SOI to EOI with one frame and a scan. */
export function plainJpeg(bytes: Uint8Array): PlainImage | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  const parts = [bytes.subarray(0, 2)];
  let size: { width: number; height: number } | null = null;
  let scanned = false;
  for (let at = 2; at + 2 <= bytes.length; ) {
    if (bytes[at] !== 0xff) return null;
    const marker = bytes[at + 1]!;
    if (marker === 0xff) {
      // A fill byte (B.1.1.2).
      at += 1;
      continue;
    }
    if (marker === EOI) {
      parts.push(bytes.subarray(at, at + 2));
      return size && scanned ? { ...size, parts } : null;
    }
    if (marker === SOI || isBare(marker) || at + 4 > bytes.length) return null;
    const length = view.getUint16(at + 2);
    let next = at + 2 + length;
    if (length < 2 || next > bytes.length) return null;
    if (isFrame(marker)) {
      if (size || length < 8) return null;
      size = { height: view.getUint16(at + 5), width: view.getUint16(at + 7) };
    }
    if (marker === SOS) {
      if (!size) return null;
      next = endOfScan(bytes, next);
      scanned = true;
    }
    if (draws(marker, bytes.subarray(at, next))) parts.push(bytes.subarray(at, next));
    at = next;
  }
  return null;
}

/** Markers without a segment: TEM, RST and the reserved 00. */
function isBare(marker: number): boolean {
  return marker <= 0x01 || (marker >= 0xd0 && marker <= 0xd7);
}

/** SOF0 to SOF15 without DHT, JPG and DAC. */
function isFrame(marker: number): boolean {
  return marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;
}

/** Applications' data and comments do not draw; of JFIF's own only the head without a preview (16 bytes) is left. */
function draws(marker: number, segment: Uint8Array): boolean {
  if (marker === APP0) return segment.length === 18 && segment[4] === 0x4a && segment[5] === 0x46;
  if (marker === COMMENT) return false;
  return marker === APP14 || marker < APP0 || marker > 0xef;
}

/** Where the coded data of a scan end: at the first marker that is neither a stuffed byte nor a restart. */
function endOfScan(bytes: Uint8Array, from: number): number {
  let at = from;
  for (;;) {
    at = bytes.indexOf(0xff, at);
    if (at < 0) return bytes.length;
    const sign = bytes[at + 1] ?? 0;
    if (sign !== 0 && !(sign >= 0xd0 && sign <= 0xd7)) return at;
    at += 2;
  }
}

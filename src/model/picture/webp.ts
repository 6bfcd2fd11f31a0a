// The chunks of a WebP that stands still (RFC 9649, section 2).
import type { PlainImage } from './picture';

const DRAWING = new Set(['VP8X', 'ALPH', 'VP8 ', 'VP8L']);
const HEAD = 12;
/** Flags of VP8X (section 2.7): of these only transparency stays true of what is kept. */
const ALPHA = 0x10;

/** The chunks that draw it; null where they are not whole, or are the frames of a film. */
export function plainWebp(bytes: Uint8Array): PlainImage | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  const end = 8 + view.getUint32(4, true);
  if (bytes.length < HEAD || end > bytes.length) return null;
  const parts: Uint8Array[] = [];
  let size: { width: number; height: number } | null = null;
  let canvas: { width: number; height: number } | null = null;
  for (let at = HEAD; at + 8 <= end; ) {
    const name = String.fromCharCode(...bytes.subarray(at, at + 4));
    const length = view.getUint32(at + 4, true);
    const next = at + 8 + length + (length % 2);
    if (next > end) return null;
    const chunk = bytes.subarray(at, next);
    if (name === 'VP8 ' || name === 'VP8L') {
      if (size) return null;
      size = name === 'VP8 ' ? lossySize(chunk) : losslessSize(chunk);
      if (!size) return null;
    }
    if (name === 'VP8X') canvas = canvasSize(chunk);
    if (DRAWING.has(name)) parts.push(name === 'VP8X' ? withoutMore(chunk) : chunk);
    at = next;
  }
  // The canvas of a picture that stands still is its frame: a larger one would be made room for.
  if (!size || (canvas && (canvas.width !== size.width || canvas.height !== size.height))) return null;
  return { ...size, parts: [headOf(parts), ...parts] };
}

/** Width and height of a key frame of VP8 (RFC 6386, section 9.1). */
function lossySize(chunk: Uint8Array): { width: number; height: number } | null {
  if (chunk.length < 18 || (chunk[8]! & 1) !== 0) return null;
  if (chunk[11] !== 0x9d || chunk[12] !== 0x01 || chunk[13] !== 0x2a) return null;
  const view = new DataView(chunk.buffer, chunk.byteOffset, chunk.length);
  return { width: view.getUint16(14, true) & 0x3fff, height: view.getUint16(16, true) & 0x3fff };
}

/** Width and height, one less each, in 14 bits after the sign 2f (RFC 9649, section 3.4). */
function losslessSize(chunk: Uint8Array): { width: number; height: number } | null {
  if (chunk.length < 13 || chunk[8] !== 0x2f) return null;
  const bits = new DataView(chunk.buffer, chunk.byteOffset, chunk.length).getUint32(9, true);
  return { width: (bits & 0x3fff) + 1, height: ((bits >>> 14) & 0x3fff) + 1 };
}

/** Width and height, one less each, in 24 bits (section 2.7). */
function canvasSize(chunk: Uint8Array): { width: number; height: number } | null {
  if (chunk.length < 18) return null;
  const view = new DataView(chunk.buffer, chunk.byteOffset, chunk.length);
  return { width: (view.getUint32(11, true) >>> 8) + 1, height: (view.getUint32(14, true) >>> 8) + 1 };
}

function withoutMore(chunk: Uint8Array): Uint8Array {
  const plain = chunk.slice();
  if (plain.length > 8) plain[8]! &= ALPHA;
  return plain;
}

function headOf(parts: readonly Uint8Array[]): Uint8Array {
  const head = new Uint8Array(HEAD);
  head.set([0x52, 0x49, 0x46, 0x46]);
  head.set([0x57, 0x45, 0x42, 0x50], 8);
  const length = parts.reduce((sum, part) => sum + part.length, 4);
  new DataView(head.buffer).setUint32(4, length, true);
  return head;
}

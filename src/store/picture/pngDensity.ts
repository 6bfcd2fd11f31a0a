// Writes the dots to the inch into a PNG (chunk pHYs of the PNG specification, W3C, 11.3.5.3), so that a print shop gets the
// right size.

/** Length of signature (8 bytes) and IHDR (25); pHYs may follow directly. */
const HEAD = 33;
const METRES_PER_INCH = 0.0254;

/** The same picture with its density. `png` is a whole PNG file; `dotsPerInch` is above 0. */
export async function withDensity(png: Blob, dotsPerInch: number): Promise<Blob> {
  const head = new Uint8Array(await png.slice(0, HEAD).arrayBuffer());
  if (head.length < HEAD || String.fromCharCode(...head.subarray(12, 16)) !== 'IHDR') {
    throw new Error('withDensity: not a PNG file');
  }
  return new Blob([head, densityChunk(dotsPerInch), png.slice(HEAD)], { type: 'image/png' });
}

function densityChunk(dotsPerInch: number): Uint8Array<ArrayBuffer> {
  const perMetre = Math.round(dotsPerInch / METRES_PER_INCH);
  const bytes = new Uint8Array(21);
  const view = new DataView(bytes.buffer);
  view.setUint32(0, 9);
  bytes.set([0x70, 0x48, 0x59, 0x73], 4);
  view.setUint32(8, perMetre);
  view.setUint32(12, perMetre);
  bytes[16] = 1;
  view.setUint32(17, crc32(bytes.subarray(4, 17)));
  return bytes;
}

/** CRC-32 as the PNG specification (annex D) defines it. */
export function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit += 1) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0);
  }
  return (crc ^ 0xffffffff) >>> 0;
}

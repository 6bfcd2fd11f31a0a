// Converts a typeface from WOFF 1.0 (W3C Recommendation of 13 December 2012) to the TrueType file that a PDF embeds: the same
// tables, inflated, with a plain directory.

const WOFF_HEADER = 44;
const WOFF_ENTRY = 20;
const SFNT_HEADER = 12;
const SFNT_ENTRY = 16;
const WOFF_SIGNATURE = 0x774f4646;

/** Unpacks a WOFF file. Rejects a file that is damaged or no WOFF. */
export async function openFont(woff: Uint8Array<ArrayBuffer>): Promise<Uint8Array<ArrayBuffer>> {
  const from = new DataView(woff.buffer, woff.byteOffset, woff.byteLength);
  if (woff.byteLength < WOFF_HEADER || from.getUint32(0) !== WOFF_SIGNATURE) {
    throw new Error('openFont: not a WOFF file');
  }
  const tables = from.getUint16(12);
  const font = new Uint8Array(from.getUint32(16));
  const to = new DataView(font.buffer);
  const power = 2 ** Math.floor(Math.log2(tables));
  to.setUint32(0, from.getUint32(4));
  to.setUint16(4, tables);
  to.setUint16(6, power * 16);
  to.setUint16(8, Math.log2(power));
  to.setUint16(10, (tables - power) * 16);
  let at = SFNT_HEADER + SFNT_ENTRY * tables;
  for (let index = 0; index < tables; index += 1) {
    const entry = WOFF_HEADER + WOFF_ENTRY * index;
    const start = from.getUint32(entry + 4);
    const packed = woff.slice(start, start + from.getUint32(entry + 8));
    const length = from.getUint32(entry + 12);
    const table = packed.byteLength < length ? await inflated(packed) : packed;
    if (table.byteLength !== length) throw new Error('openFont: a table is damaged');
    const directory = SFNT_HEADER + SFNT_ENTRY * index;
    to.setUint32(directory, from.getUint32(entry));
    to.setUint32(directory + 4, from.getUint32(entry + 16));
    to.setUint32(directory + 8, at);
    to.setUint32(directory + 12, length);
    font.set(table, at);
    at += Math.ceil(length / 4) * 4;
  }
  return font;
}

async function inflated(packed: Uint8Array<ArrayBuffer>): Promise<Uint8Array> {
  const stream = new Blob([packed]).stream().pipeThrough(new DecompressionStream('deflate'));
  return new Uint8Array(await new Response(stream).arrayBuffer());
}

import { Resvg } from '@resvg/resvg-js';
import { expect, test } from 'vitest';
import { crc32, withDensity } from '../../../src/store/picture/pngDensity';

const bytesOf = (text: string) => new TextEncoder().encode(text);

test('the checksum is the CRC-32 of the PNG specification', () => {
  // Check value of CRC-32/ISO-HDLC in Greg Cook's Catalogue of parametrised CRC algorithms: "123456789" gives CBF43926.
  expect(crc32(bytesOf('123456789')).toString(16)).toBe('cbf43926');
  // The IEND chunk of every PNG file ends in AE 42 60 82 (PNG specification).
  expect(crc32(bytesOf('IEND')).toString(16)).toBe('ae426082');
});

test('300 dots to the inch are 11811 to the metre, in a pHYs chunk before the picture itself', async () => {
  const svg =
    '<svg xmlns="http://www.w3.org/2000/svg" width="6" height="4"><rect width="6" height="4" fill="#a52"/></svg>';
  const drawn = new Uint8Array(new Resvg(svg).render().asPng());
  const file = new Uint8Array(await (await withDensity(new Blob([drawn]), 300)).arrayBuffer());
  const chunks = chunksOf(file);
  expect(chunks.map((one) => one.type)).toContain('pHYs');
  expect(chunks.findIndex((one) => one.type === 'pHYs')).toBeLessThan(
    chunks.findIndex((one) => one.type === 'IDAT'),
  );
  const density = chunks.find((one) => one.type === 'pHYs')!.data;
  expect([density.getUint32(0), density.getUint32(4), density.getUint8(8)]).toEqual([11_811, 11_811, 1]);
  for (const chunk of chunks) expect(chunk.sum).toBe(chunk.stated);
  expect(chunks.filter((one) => one.type !== 'pHYs').map((one) => one.type)).toEqual(
    chunksOf(drawn).map((one) => one.type),
  );
});

test('what is not a PNG is a broken invariant', async () => {
  await expect(withDensity(new Blob(['not a picture at all, but long enough']), 300)).rejects.toThrow(
    'withDensity',
  );
});

function chunksOf(file: Uint8Array) {
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  const found: { type: string; data: DataView; sum: number; stated: number }[] = [];
  for (let at = 8; at < file.length; ) {
    const length = view.getUint32(at);
    const type = String.fromCharCode(...file.subarray(at + 4, at + 8));
    found.push({
      type,
      data: new DataView(file.buffer, file.byteOffset + at + 8, length),
      sum: crc32(file.subarray(at + 4, at + 8 + length)),
      stated: view.getUint32(at + 8 + length),
    });
    at += 12 + length;
  }
  return found;
}

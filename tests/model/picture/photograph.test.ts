import fc from 'fast-check';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { speak } from '../../../src/model/phrase';
import { checkPhotograph, MOST_PHOTOGRAPH_BYTES } from '../../../src/model/picture/photograph';
import { imageFile, KINDS } from './images';

const said = (bytes: Uint8Array) => {
  const checked = checkPhotograph(bytes);
  return checked.ok ? '' : speak(checked.problems[0]!.message);
};
const text = (words: string) => new TextEncoder().encode(words);
const be = (number: number) => [number >>> 24, (number >> 16) & 255, (number >> 8) & 255, number & 255];
/** The head of an ISO file with its brand and sizes of its parts; laid out after ISO/IEC 14496-12 and 23008-12. */
const iso = (brand: string, ...sizes: readonly (readonly [number, number])[]) =>
  Uint8Array.from([
    ...be(20), ...text(`ftyp${brand}`), ...be(0), ...text(brand),
    ...sizes.flatMap(([width, height]) => [...be(20), ...text('ispe'), ...be(0), ...be(width), ...be(height)]),
  ]); // biome-ignore format: boxes

describe('a photograph told from its bytes', () => {
  it.each(KINDS)('is a %s of the size that another library wrote, camera data or not', async (kind) => {
    for (const camera of [false, true]) {
      const bytes = await imageFile({ kind, width: 91, height: 57, camera });
      expect(checkPhotograph(bytes)).toEqual({
        ok: true,
        value: { type: `image/${kind}`, width: 91, height: 57 },
      });
    }
  });

  it('is an AVIF with the size of the whole, as libheif writes it', async () => {
    const raw = { width: 96, height: 64, channels: 3 as const };
    const bytes = await sharp(new Uint8Array(96 * 64 * 3), { raw })
      .avif()
      .toBuffer();
    expect(checkPhotograph(new Uint8Array(bytes))).toEqual({
      ok: true,
      value: { type: 'image/avif', width: 96, height: 64 },
    });
  });

  it('is a HEIC with the largest size that it names', () => {
    expect(checkPhotograph(iso('heic', [512, 512], [4032, 3024]))).toEqual({
      ok: true,
      value: { type: 'image/heic', width: 4032, height: 3024 },
    });
  });

  it('is refused by what it is, whatever its name says', () => {
    expect(said(text('GIF89a…'))).toMatch(/a GIF/);
    expect(said(text('%PDF-1.7'))).toMatch(/a PDF/);
    expect(said(text('<?xml version="1.0"?><svg xmlns="x"><script/></svg>'))).toMatch(/SVG/);
    expect(said(text('not a picture'))).toMatch(/holds text/);
    expect(said(iso('isom'))).toMatch(/a film/);
    expect(said(Uint8Array.of(0, 1, 2, 3))).toMatch(/no picture/);
    expect(said(new Uint8Array())).toMatch(/empty/);
    expect(said(new Uint8Array(MOST_PHOTOGRAPH_BYTES + 1))).toMatch(/takes 41 MB.*at most 40 MB/);
  });

  it.each([
    [1, 1],
    [47, 900],
  ])('is refused where it is only %i × %i pixels: nothing is read from so few', async (width, height) => {
    expect(said(await imageFile({ kind: 'jpeg', width, height }))).toContain(
      `only ${width} × ${height} pixels`,
    );
  });

  it('is refused before it is decoded where it has more pixels than can be read', async () => {
    const bomb = await imageFile({ kind: 'png', width: 40, height: 40 });
    // The width and height of a PNG are its bytes 16 to 23.
    bomb.set([...be(60_000), ...be(60_000)], 16);
    expect(said(bomb)).toMatch(/60,000 × 60,000 pixels/);
    expect(said(iso('heic', [9000, 9000]))).toMatch(/9,000 × 9,000 pixels/);
  });

  it('is refused with a sentence wherever it breaks off, and never throws', async () => {
    const files = await Promise.all(KINDS.map((kind) => imageFile({ kind, camera: true })));
    fc.assert(
      fc.property(
        fc.constantFrom(...files),
        fc.double({ min: 0, max: 0.999, noNaN: true }),
        (whole, part) => {
          expect(said(whole.slice(0, Math.floor(part * whole.length)))).not.toBe('');
        },
      ),
      { numRuns: 300 },
    );
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 400 }), (bytes) => {
        expect(checkPhotograph(bytes).ok).toBe(false);
      }),
      { numRuns: 500 },
    );
  });
});

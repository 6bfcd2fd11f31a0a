// Files of pictures read without decoding, against libvips by way of sharp: type, size, and that what is kept decodes to the same pixels
// and holds nothing of the camera.
import { createHash } from 'node:crypto';
import fc from 'fast-check';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { speak } from '../../../src/model/phrase';
import { base64Of, bytesOfBase64 } from '../../../src/model/picture/base64';
import { plainImage, typeOfBytes } from '../../../src/model/picture/image';
import { MOST_PICTURE_BYTES } from '../../../src/model/picture/picture';
import { sha256 } from '../../../src/model/picture/sha256';
import { takePicture } from '../../../src/model/picture/takePicture';
import { runs } from '../../runs';
import { imageFile, KINDS } from './images';

const pixels = (bytes: Uint8Array) => sharp(bytes).raw().toBuffer({ resolveWithObject: true });
const refusal = (bytes: Uint8Array) => {
  const taken = takePicture(bytes);
  return taken.ok ? null : speak(taken.problems[0]!.message);
};

describe('SHA-256', () => {
  it('gives the digests of the standard (FIPS 180-4, examples of NIST)', () => {
    const text = (words: string) => sha256(new TextEncoder().encode(words));
    expect(text('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
    expect(text('abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq')).toBe(
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
    );
  });

  it('agrees with OpenSSL for bytes of every length to 200 and by chance', () => {
    const same = (bytes: Uint8Array) => {
      expect(sha256(bytes)).toBe(createHash('sha256').update(bytes).digest('hex'));
    };
    for (let length = 0; length <= 200; length += 1) same(new Uint8Array(length).fill(length));
    fc.assert(fc.property(fc.uint8Array({ maxLength: 2_000 }), same), { seed: 12, numRuns: 300 });
  });
});

describe('base64', () => {
  it('agrees with Node and comes back, for bytes by chance', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
        const text = base64Of(bytes);
        expect(text).toBe(Buffer.from(bytes).toString('base64'));
        expect(bytesOfBase64(text)).toEqual(bytes);
      }),
      { seed: 12, numRuns: runs(60, 300) },
    );
    const long = new Uint8Array(100_000).map((_, at) => at * 7);
    expect(bytesOfBase64(base64Of(long))).toEqual(long);
  });

  it.each(['A', 'AA', 'A===', 'AA A', 'AAA\n', 'A-_=', 'AAAA=', '=AAA'])('refuses %j', (text) => {
    expect(bytesOfBase64(text)).toBeNull();
  });
});

describe('files of pictures', () => {
  const sizes = fc.record({
    width: fc.integer({ min: 1, max: 90 }),
    height: fc.integer({ min: 1, max: 90 }),
    kind: fc.constantFrom(...KINDS),
    camera: fc.boolean(),
    lossless: fc.boolean(),
    progressive: fc.boolean(),
  });

  it('tells type and size, and keeps every pixel and nothing of the camera', async () => {
    await fc.assert(
      fc.asyncProperty(sizes, async (wish) => {
        const file = await imageFile(wish);
        const plain = plainImage(file)!;
        expect(typeOfBytes(file)).toBe(`image/${wish.kind}`);
        expect(plain).toMatchObject({ type: `image/${wish.kind}`, width: wish.width, height: wish.height });
        const { exif, icc, xmp } = await sharp(plain.bytes).metadata();
        expect({ exif, icc, xmp }).toEqual({ exif: undefined, icc: undefined, xmp: undefined });
        expect(Buffer.from(plain.bytes).includes('telephone')).toBe(false);
        const [before, after] = [await pixels(file), await pixels(plain.bytes)];
        expect(after.info).toEqual(before.info);
        expect(after.data.equals(before.data)).toBe(true);
        // What is kept is kept as it is when it is read again.
        expect(plainImage(plain.bytes)!.bytes).toEqual(plain.bytes);
      }),
      { seed: 12, numRuns: runs(20, 120) },
    );
  });

  it('holds the camera’s data before it is taken, so that the check above checks', async () => {
    for (const kind of KINDS)
      expect((await sharp(await imageFile({ kind, camera: true })).metadata()).exif).toBeDefined();
  });

  it('drops what is hidden behind the end', async () => {
    for (const kind of KINDS) {
      const file = await imageFile({ kind });
      const more = new Uint8Array([...file, ...new TextEncoder().encode('<script>')]);
      expect(plainImage(more)!.bytes).toEqual(plainImage(file)!.bytes);
    }
  });

  it('refuses a file that breaks off anywhere', async () => {
    for (const kind of KINDS) {
      const { bytes } = plainImage(await imageFile({ kind, camera: true }))!;
      for (let length = 0; length < bytes.length; length += 1)
        expect(plainImage(bytes.subarray(0, length))).toBeNull();
    }
  });

  it('never throws on damaged bytes, and says why or takes them', async () => {
    const files = await Promise.all(KINDS.map((kind) => imageFile({ kind, camera: true })));
    const damage = fc.array(fc.tuple(fc.nat(), fc.nat(255)), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(fc.constantFrom(...files), damage, fc.nat(40), (file, changes, cut) => {
        const bytes = file.slice(0, file.length - cut);
        for (const [at, value] of changes) bytes[at % bytes.length] = value;
        expect(refusal(bytes) ?? 'sound').not.toBe('');
      }),
      { seed: 12, numRuns: 500 },
    );
  });

  it('says what it is that it does not take', async () => {
    expect(refusal(new TextEncoder().encode('<svg xmlns="http://www.w3.org/2000/svg"/>'))).toBe(
      'it is no JPEG, PNG or WebP picture',
    );
    expect(refusal(new Uint8Array())).toBe('it is no JPEG, PNG or WebP picture');
    expect(refusal(new TextEncoder().encode('GIF89a'))).toBe('it is no JPEG, PNG or WebP picture');
    expect(refusal((await imageFile()).slice(0, 60))).toBe('it breaks off or is damaged');
    expect(refusal(new Uint8Array(MOST_PICTURE_BYTES + 1))).toBe('it takes 5 MB; a picture is at most 4 MB');
  });

  it('refuses a bomb of pixels by its head', async () => {
    const file = await imageFile();
    const view = new DataView(file.buffer);
    view.setUint32(16, 60_000);
    view.setUint32(20, 60_000);
    expect(refusal(file)).toBe(
      'it has 60,000 × 60,000 pixels; a picture has at most 4,096 on a side and 8 million in all',
    );
    view.setUint32(16, 4_096);
    view.setUint32(20, 4_096);
    expect(refusal(file)).toContain('8 million in all');
  });

  it('refuses a WebP whose canvas is not its picture', async () => {
    const file = await imageFile({ kind: 'webp', camera: true });
    expect(String.fromCharCode(...file.subarray(12, 16))).toBe('VP8X');
    file[26] = 0xff;
    expect(refusal(file)).toBe('it breaks off or is damaged');
  });
});

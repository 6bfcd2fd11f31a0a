// The basics of pixels: bytes and light, areas, bells and turned frames. Random cases print their seed (fast-check).
import fc from 'fast-check';
import sharp from 'sharp';
import { expect, it } from 'vitest';
import { linearOf } from '../../../src/colour/spaces';
import { cutOut, frameCorners, inFrame, isInside, wholeFrame } from '../../../src/photo/pixels/frame';
import { byteOfLinear, LINEAR_OF_BYTE, meanOf, pixelsOf } from '../../../src/photo/pixels/linear';
import {
  blankPixels,
  blankPlane,
  checkPixels,
  type Pixels,
  type Plane,
} from '../../../src/photo/pixels/pixels';
import { resizedPlane, shrunk, shrunkTo } from '../../../src/photo/pixels/resize';
import { blurred, sampleInto } from '../../../src/photo/pixels/sample';
import { linearPlane } from '../render/linearPlane';

const picture = fc
  .record({
    width: fc.integer({ min: 1, max: 24 }),
    height: fc.integer({ min: 1, max: 24 }),
    seed: fc.nat(9999),
  })
  .map(({ width, height, seed }) => noisy(width, height, seed));

function noisy(width: number, height: number, seed: number): Pixels {
  const pixels = blankPixels(width, height);
  let state = seed + 1;
  for (let at = 0; at < pixels.data.length; at += 1) {
    state = (state * 48271) % 2147483647;
    if (at % 4 !== 3) pixels.data[at] = state % 256;
  }
  return pixels;
}

it('every byte comes back from light as itself, and the table is the formula of sRGB', () => {
  for (let byte = 0; byte < 256; byte += 1) {
    expect(byteOfLinear(LINEAR_OF_BYTE[byte]!)).toBe(byte);
    expect(LINEAR_OF_BYTE[byte]).toBeCloseTo(linearOf([byte / 255, 0, 0])[0], 7);
  }
  expect([byteOfLinear(-0.2), byteOfLinear(1.4)]).toEqual([0, 255]);
});

it('a picture comes back from linear light as itself', () => {
  fc.assert(
    fc.property(picture, (pixels) => {
      expect(pixelsOf(linearPlane(pixels))).toEqual(pixels);
    }),
  );
});

it('resizing keeps the light of the whole, and a size of its own keeps every pixel', () => {
  const side = fc.integer({ min: 1, max: 40 });
  fc.assert(
    fc.property(picture, side, side, (pixels, width, height) => {
      const whole = linearPlane(pixels);
      const box = { x: 0, y: 0, width: pixels.width, height: pixels.height };
      const small = shrunk(pixels, box, width, height);
      for (const [at, mean] of meanOf(small).entries()) expect(mean).toBeCloseTo(meanOf(whole)[at]!, 5);
      const again = resizedPlane(whole, width, height).data;
      expect(again.every((light, at) => Math.abs(light - small.data[at]!) < 1e-5)).toBe(true);
      expect(shrunk(pixels, box, pixels.width, pixels.height).data).toEqual(whole.data);
    }),
  );
});

it('averages light, not bytes: black and white lines far off are the byte 188', () => {
  const pixels = blankPixels(4, 4);
  for (let at = 0; at < 16; at += 1) if (at % 2 === 0) pixels.data.fill(255, at * 4, at * 4 + 3);
  expect([...pixelsOf(shrunkTo(pixels, 1)).data]).toEqual([188, 188, 188, 255]);
});

it('a blur keeps the light of a picture that is dark round its edge, and widens a point by its variance', () => {
  const plane = blankPlane(61, 61, 1);
  plane.data[30 * 61 + 30] = 1;
  for (const sigma of [0.8, 2, 5]) {
    const spread = blurred(plane, sigma);
    let [sum, square] = [0, 0];
    spread.data.forEach((light, at) => {
      sum += light;
      square += light * ((at % 61) - 30) ** 2;
    });
    expect(sum).toBeCloseTo(1, 5);
    // Cut off at three standard deviations a bell keeps 97 % of its variance.
    expect(Math.abs(Math.sqrt(square) / sigma - 1)).toBeLessThan(0.03);
  }
});

it('blurs as an image library does (libvips through sharp), within a byte in the middle', async () => {
  const { width, height, data } = noisy(60, 50, 4);
  const grey = Uint8Array.from({ length: width * height }, (_, at) => data[at * 4]!);
  const theirs = await sharp(grey, { raw: { width, height, channels: 1 } })
    .blur({ sigma: 2, precision: 'float', minAmplitude: 0.001 })
    .raw()
    .toBuffer();
  const ours = blurred({ width, height, channels: 1, data: Float32Array.from(grey) }, 2);
  for (let row = 10; row < height - 10; row += 1)
    for (let column = 10; column < width - 10; column += 1) {
      const at = row * width + column;
      expect(Math.abs(ours.data[at]! - theirs[at * (theirs.length / (width * height))]!)).toBeLessThan(1.5);
    }
});

function sampleAt(plane: Plane, x: number, y: number): number[] {
  const into = new Float32Array(plane.channels);
  sampleInto(plane, x, y, into, 0);
  return [...into];
}

it('reads between pixels in a straight line, and beyond the edge the edge', () => {
  const plane = blankPlane(8, 6, 2);
  for (let at = 0; at < 48; at += 1) plane.data.set([(at % 8) + 0.5, Math.floor(at / 8) + 0.5], at * 2);
  const within = fc.record({
    x: fc.double({ min: 0.5, max: 7.5, noNaN: true }),
    y: fc.double({ min: 0.5, max: 5.5, noNaN: true }),
  });
  fc.assert(
    fc.property(within, ({ x, y }) => {
      const [across, down] = sampleAt(plane, x, y);
      expect(across).toBeCloseTo(x, 4);
      expect(down).toBeCloseTo(y, 4);
    }),
  );
  expect(sampleAt(plane, -5, 90)).toEqual([0.5, 5.5]);
});

it('what a turned frame cuts out is what lies under it', () => {
  // Red grows to the right and green downwards, so that the colour of a pixel tells where it was.
  const pixels = blankPixels(200, 160);
  for (let row = 0; row < 160; row += 1)
    for (let column = 0; column < 200; column += 1)
      pixels.data.set(
        [byteOfLinear((column + 0.5) / 200), byteOfLinear((row + 0.5) / 160)],
        (row * 200 + column) * 4,
      );
  const frames = fc.record({
    x: fc.integer({ min: 80, max: 120 }),
    y: fc.integer({ min: 70, max: 90 }),
    width: fc.integer({ min: 20, max: 80 }),
    height: fc.integer({ min: 20, max: 60 }),
    angle: fc.integer({ min: -180, max: 180 }),
  });
  fc.assert(
    fc.property(frames, (frame) => {
      expect(isInside(frame, pixels)).toBe(true);
      const cut = cutOut(pixels, frame, 10, 10);
      const at = inFrame(frame);
      for (let one = 0; one < 100; one += 1) {
        const under = at(((one % 10) + 0.5) / 10, (Math.floor(one / 10) + 0.5) / 10);
        expect(cut.data[one * 3]! * 200 - under.x).toBeLessThan(2.5);
        expect(cut.data[one * 3]! * 200 - under.x).toBeGreaterThan(-2.5);
        expect(Math.abs(cut.data[one * 3 + 1]! * 160 - under.y)).toBeLessThan(2.5);
      }
    }),
  );
});

it('a frame of the whole picture has its corners, and one beyond an edge is told', () => {
  const pixels = blankPixels(30, 20);
  const frame = wholeFrame(pixels);
  expect(frameCorners(frame)).toEqual([
    { x: 0, y: 0 },
    { x: 30, y: 0 },
    { x: 30, y: 20 },
    { x: 0, y: 20 },
  ]);
  expect(isInside(frame, pixels)).toBe(true);
  expect(isInside({ ...frame, angle: 10 }, pixels)).toBe(false);
});

it.each([
  [0, 4, 0],
  [2.5, 4, 40],
  [4, 4, 63],
  [-4, 4, 64],
])('%d × %d pixels in %d bytes are refused', (width, height, bytes) => {
  expect(() => checkPixels({ width, height, data: new Uint8ClampedArray(bytes) })).toThrow(RangeError);
});

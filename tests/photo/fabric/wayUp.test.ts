// Prints that have a way up and prints that have none, drawn here; common practice, no source: a print is directional where it looks
// wrong upside down. Random cases print their seed (fast-check).
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DIRECTIONAL, wayUp } from '../../../src/photo/fabric/wayUp';
import { blankPlane, type Plane } from '../../../src/photo/pixels/pixels';
import { blurred } from '../../../src/photo/pixels/sample';
import { runs } from '../../runs';
import { dice } from '../render/dice';

const SIDE = 300;

/** Figures on a grid of `pitch` pixels that each cover where `inside` says, turned by `turn` of their own, softened as a camera does. */
function print(
  pitch: number,
  inside: (x: number, y: number) => boolean,
  turnOf: (figure: number) => number,
  noise: () => number,
): Plane {
  const plane = blankPlane(SIDE, SIDE, 1);
  const across = Math.ceil(SIDE / pitch);
  for (let at = 0; at < SIDE * SIDE; at += 1) {
    const [x, y] = [at % SIDE, Math.floor(at / SIDE)];
    const turn = turnOf(Math.floor(y / pitch) * across + Math.floor(x / pitch));
    const [u, v] = [((x % pitch) / pitch - 0.5) * 2, ((y % pitch) / pitch - 0.5) * 2];
    const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
    plane.data[at] = (inside(u * cos + v * sin, v * cos - u * sin) ? 35 : 75) + noise();
  }
  return blurred(plane, 1);
}

function upsideDown(plane: Plane): Plane {
  return { ...plane, data: plane.data.toReversed() };
}

/** A pointed figure, a drop, and a heart, all upright. */
const UPRIGHT = {
  tree: (x: number, y: number) => y > -0.7 && y < 0.6 && Math.abs(x) < 0.45 * (y + 0.7),
  drop: (x: number, y: number) => x * x + (y - 0.2) ** 2 < 0.16 || (y < 0.2 && y > -0.7 && Math.abs(x) < 0.36 * (y + 0.7)),
  heart: (x: number, y: number) => (Math.abs(x) - 0.3) ** 2 + (y + 0.2) ** 2 < 0.1 || (y > -0.2 && y < 0.6 && Math.abs(x) < 0.75 * (0.6 - y)),
}; // biome-ignore format: figures
/** The same upside down. */
const EVEN = {
  dot: (x: number, y: number) => x * x + y * y < 0.3,
  stripe: (x: number) => Math.abs(x) < 0.4,
  check: (x: number, y: number) => x < 0 !== y < 0,
};

const shapes = fc.record({ seed: fc.nat(9999), pitch: fc.integer({ min: 22, max: 46 }) });

describe('a print', () => {
  it.each(Object.entries(UPRIGHT))(
    'of upright figures (%s) is directional, upside down as well',
    (_, inside) => {
      fc.assert(
        fc.property(shapes, ({ seed, pitch }) => {
          const chance = dice(seed);
          const turn = chance.between(0, 2 * Math.PI);
          const plane = print(pitch, inside, () => turn, () => chance.between(-2, 2)); // biome-ignore format: a print
          const sure = wayUp(plane);
          expect(sure).toBeGreaterThanOrEqual(DIRECTIONAL);
          expect(wayUp(upsideDown(plane))).toBeCloseTo(sure, 1);
        }),
        { numRuns: runs(3, 12) },
      );
    },
  );

  it.each(Object.entries(EVEN))('that looks the same upside down (%s) is not', (_, inside) => {
    fc.assert(
      fc.property(shapes, ({ seed, pitch }) => {
        const chance = dice(seed);
        const plane = print(pitch, inside, () => 0, () => chance.between(-2, 2)); // biome-ignore format: a print
        expect(wayUp(plane)).toBeLessThan(DIRECTIONAL);
      }),
      { numRuns: runs(4, 12) },
    );
  });

  it.each(Object.entries(UPRIGHT))('of tossed figures (%s) is not', (_, inside) => {
    fc.assert(
      fc.property(shapes, ({ seed, pitch }) => {
        const chance = dice(seed);
        const turns = Array.from({ length: 400 }, () => chance.between(0, 2 * Math.PI));
        const plane = print(pitch, inside, (figure) => turns[figure]!, () => chance.between(-2, 2)); // biome-ignore format: a print
        expect(wayUp(plane)).toBeLessThan(DIRECTIONAL);
      }),
      { numRuns: runs(4, 12) },
    );
  });

  it('that is plain, or too small to show, is not', () => {
    const chance = dice(1);
    expect(wayUp(print(30, () => false, () => 0, () => chance.between(-2, 2)))).toBeLessThan(DIRECTIONAL); // biome-ignore format: a print
    expect(wayUp(blankPlane(40, 300, 1))).toBe(0);
  });
});

// True size from a ruler or a typed width, and what is refused.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { perInchBetween, perInchOfWidth } from '../../../src/photo/fabric/trueSize';

function codeOf(read: ReturnType<typeof perInchOfWidth>): string | number {
  return read.ok ? read.value : read.problems[0]!.code;
}

it('gives the same scale however the two points are turned', () => {
  const angle = fc.double({ min: 0, max: 7, noNaN: true });
  fc.assert(
    fc.property(angle, fc.integer({ min: 50, max: 4000 }), (turn, pixels) => {
      const from = { x: 300, y: 200 };
      const to = { x: 300 + pixels * Math.cos(turn), y: 200 + pixels * Math.sin(turn) };
      expect(codeOf(perInchBetween(from, to, 4))).toBeCloseTo(pixels / 4, 6);
      expect(codeOf(perInchBetween(to, from, 4))).toBeCloseTo(pixels / 4, 6);
    }),
  );
});

it.each([
  [0, 6, 'points-together'],
  [4, 6, 'points-together'],
  [600, 0, 'no-length'],
  [600, -1, 'no-length'],
  [600, Number.NaN, 'no-length'],
  [600, Number.POSITIVE_INFINITY, 'no-length'],
  [600, 900, 'length-long'],
  [600, 0.01, 'length-short'],
  [Number.NaN, 3, 'points-together'],
  [600, 6, 100],
])('%d pixels that are %d inches: %s', (pixels, inches, wanted) => {
  expect(codeOf(perInchBetween({ x: 0, y: 0 }, { x: pixels, y: 0 }, inches))).toBe(wanted);
  if (pixels > 5) expect(codeOf(perInchOfWidth(pixels, inches))).toBe(wanted);
});

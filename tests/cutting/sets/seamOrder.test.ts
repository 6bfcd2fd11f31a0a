// Sewing and pressing a strip set: alternate ends, one way of pressing, at the heights of the seams.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { seamOrder } from '../../../src/cutting/sets/seamOrder';
import { stripSet } from '../fabrics';

const widths = fc.array(
  fc.integer({ min: 12, max: 48 }).map((count) => count / 16),
  { minLength: 0, maxLength: 12 },
);

function setOf(list: readonly number[], pressing: 'first' | 'last') {
  return {
    ...stripSet(
      'a',
      list.map((width) => ({ fabric: 'f1', width })),
    ),
    pressing,
  };
}

describe('the seams of a strip set', () => {
  it('are one fewer than its strips, sewn from both ends in turn, beginning at the left', () => {
    fc.assert(
      fc.property(widths, (list) => {
        const seams = seamOrder(setOf(list, 'last'), 0.25);
        expect(seams).toHaveLength(Math.max(0, list.length - 1));
        for (const [index, { from }] of seams.entries())
          expect(from).toBe(index % 2 === 0 ? 'left' : 'right');
      }),
      { seed: 71 },
    );
  });

  it('are all pressed one way: up to the last strip, or down to the first', () => {
    expect(new Set(seamOrder(setOf([2, 1, 1.5, 2], 'last'), 0.25).map((one) => one.pressed))).toEqual(
      new Set(['up']),
    );
    expect(new Set(seamOrder(setOf([2, 1, 1.5, 2], 'first'), 0.25).map((one) => one.pressed))).toEqual(
      new Set(['down']),
    );
  });

  it('lie where the strips meet, worked by hand', () => {
    // 2, 1 and 1 1/2 with a 1/4 seam: 3 1/2 high; seen 1 3/4, 1/2 and 1 1/4 from the foot up.
    const at = seamOrder(setOf([2, 1, 1.5], 'last'), 0.25).map((one) => one.at);
    expect(at[0]).toBeCloseTo(3.5 - 1.75, 9);
    expect(at[1]).toBeCloseTo(3.5 - 1.75 - 0.5, 9);
  });
});

// The view of the wall: it is fitted clear of the buttons, and no pan or zoom pushes the top out of sight for good.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  buttonsOver,
  closeTo,
  fitted,
  isLarger,
  kept,
  panned,
  recentred,
  type Size,
  type View,
  zoomed,
} from '../../../src/ui/wall/view';

const runs = { numRuns: 2_000 };
const quilts = fc.record({
  width: fc.double({ min: 4, max: 140, noNaN: true }),
  height: fc.double({ min: 4, max: 140, noNaN: true }),
});
const windows = fc.record({
  width: fc.integer({ min: 320, max: 2000 }),
  height: fc.integer({ min: 150, max: 1400 }),
});
const shift = fc.integer({ min: -30_000, max: 30_000 });
const moves = fc.array(
  fc.oneof(
    fc.record({ across: shift, down: shift }),
    fc.record({
      factor: fc.double({ min: 0.05, max: 20, noNaN: true }),
      left: fc.integer({ min: 0, max: 2000 }),
      top: fc.integer({ min: 0, max: 1400 }),
    }),
  ),
  { minLength: 1, maxLength: 12 },
);

/** Pixels of the top in sight along one side. */
function inSight(start: number, size: number, frame: number): number {
  return Math.max(0, Math.min(start + size, frame) - Math.max(start, 0));
}

function expectGoodPart({ scale, at }: View, quilt: Size, window: Size): void {
  const [wide, high] = [quilt.width * scale, quilt.height * scale];
  const seen = [inSight(at.left, wide, window.width), inSight(at.top, high, window.height)] as const;
  expect(seen[0]).toBeGreaterThanOrEqual(Math.min(wide, window.width / 3) - 1e-6);
  expect(seen[1]).toBeGreaterThanOrEqual(Math.min(high, window.height / 3) - 1e-6);
}

describe('the view of the wall', () => {
  it('keeps a third of the frame, or the whole top, in sight after any pans and zooms', () => {
    fc.assert(
      fc.property(quilts, windows, moves, (quilt, window, list) => {
        const fit = fitted(quilt, window, 14);
        let view = fit;
        for (const move of list) {
          view =
            'factor' in move
              ? zoomed(view, move.factor, move, fit, quilt, window)
              : panned(view, move.across, move.down, quilt, window);
          expectGoodPart(view, quilt, window);
        }
      }),
      runs,
    );
  });

  it('goes exactly with the hand as long as a good part stays in sight', () => {
    fc.assert(
      fc.property(quilts, windows, moves, (quilt, window, list) => {
        const fit = fitted(quilt, window, 14);
        const [move] = list;
        if (!move || 'factor' in move) return;
        const free = { left: fit.at.left + move.across / 100, top: fit.at.top + move.down / 100 };
        const view = panned(fit, move.across / 100, move.down / 100, quilt, window);
        const wanted = { scale: fit.scale, at: free };
        const once = kept(wanted, quilt, window);
        expect(view).toEqual(once);
        expect(kept(once, quilt, window)).toEqual(once);
        for (const side of ['left', 'top'] as const) {
          const [size, frame] = side === 'left' ? [quilt.width, window.width] : [quilt.height, window.height];
          const seen = inSight(free[side], size * fit.scale, frame);
          if (seen > Math.min(size * fit.scale, frame / 3) + 1e-6)
            expect(view.at[side]).toBeCloseTo(free[side], 9);
        }
      }),
      runs,
    );
  });

  it('keeps its middle when the frame changes, and never loses the top by it', () => {
    fc.assert(
      fc.property(quilts, windows, windows, moves, (quilt, before, after, list) => {
        const fit = fitted(quilt, before, 14);
        const view = list.reduce<View>(
          (one, move) =>
            'factor' in move
              ? zoomed(one, move.factor, move, fit, quilt, before)
              : panned(one, move.across, move.down, quilt, before),
          fit,
        );
        const next = recentred(view, before, after, quilt);
        expect(next.scale).toBe(view.scale);
        expectGoodPart(next, quilt, after);
        const same = recentred(view, before, before, quilt);
        expect(same.at.left).toBeCloseTo(view.at.left, 6);
        expect(same.at.top).toBeCloseTo(view.at.top, 6);
      }),
      runs,
    );
  });

  it('is fitted with the whole top in sight and clear of every button, at any size of frame', () => {
    fc.assert(
      fc.property(quilts, windows, (quilt, window) => {
        const { scale, at } = fitted(quilt, window, 14);
        const [wide, high] = [quilt.width * scale, quilt.height * scale];
        fc.pre(scale > 40 / Math.max(quilt.width, quilt.height) + 1e-9);
        expect(inSight(at.left, wide, window.width)).toBeCloseTo(wide, 6);
        expect(inSight(at.top, high, window.height)).toBeCloseTo(high, 6);
        expect(isLarger({ scale, at }, quilt, window)).toBe(false);
        for (const box of buttonsOver(window)) {
          const apart =
            at.left + wide <= box.left + 1e-6 ||
            at.left >= box.left + box.width - 1e-6 ||
            at.top + high <= box.top + 1e-6 ||
            at.top >= box.top + box.height - 1e-6;
          expect(apart).toBe(true);
        }
      }),
      runs,
    );
  });

  it('goes close to a block: that block in the middle, at the wanted size', () => {
    fc.assert(
      fc.property(quilts, windows, fc.nat(100), fc.nat(100), (quilt, window, across, down) => {
        const point = { x: (quilt.width * across) / 100, y: (quilt.height * down) / 100 };
        const view = closeTo(point, 6, quilt, window);
        expect(view.scale).toBe(6);
        expectGoodPart(view, quilt, window);
        expect(point.x * 6 + view.at.left).toBeCloseTo(window.width / 2, 6);
        expect(point.y * 6 + view.at.top).toBeCloseTo(window.height / 2, 6);
      }),
      runs,
    );
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeBeside } from '../../../src/ui/popup/placeBeside';

const SEED = 20261128;
const GAP = 6;

describe('The place of a hint', () => {
  it('is on the screen and never on its button, wherever there is room for that', () => {
    fc.assert(
      fc.property(
        fc.record({
          width: fc.integer({ min: 320, max: 2000 }),
          height: fc.integer({ min: 240, max: 1200 }),
        }),
        fc.record({ width: fc.integer({ min: 20, max: 280 }), height: fc.integer({ min: 18, max: 60 }) }),
        fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true })),
        fc.constantFrom('top' as const, 'bottom' as const),
        (screen, box, [across, down], placement) => {
          const side = 44;
          const button = {
            left: across * (screen.width - side),
            top: down * (screen.height - side),
            width: side,
            height: side,
          };
          const { x, y } = placeBeside(button, box, screen, placement, GAP);
          expect(x).toBeGreaterThanOrEqual(0);
          expect(x + box.width).toBeLessThanOrEqual(screen.width);
          expect(y).toBeGreaterThanOrEqual(0);
          expect(y + box.height).toBeLessThanOrEqual(screen.height);
          expect(y + box.height <= button.top || y >= button.top + side).toBe(true);
        },
      ),
      { seed: SEED },
    );
  });

  it('is on the wanted side where both have room, and in the middle of the button', () => {
    const button = { left: 500, top: 400, width: 40, height: 40 };
    const [box, screen] = [
      { width: 100, height: 30 },
      { width: 1000, height: 800 },
    ];
    expect(placeBeside(button, box, screen, 'bottom', GAP)).toEqual({ x: 470, y: 446 });
    expect(placeBeside(button, box, screen, 'top', GAP)).toEqual({ x: 470, y: 364 });
  });
});

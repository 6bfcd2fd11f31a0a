import Color from 'colorjs.io';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hueOf, hueTurned } from '../../src/colour/hue';

const hex = fc.integer({ min: 0, max: 0xffffff }).map((number) => `#${number.toString(16).padStart(6, '0')}`);

describe('a colour in another hue', () => {
  it('keeps its OKLab lightness and turns its hue as asked, measured by a second library', () => {
    fc.assert(
      fc.property(hex, fc.integer({ min: -180, max: 180 }), (colour, degrees) => {
        const [l, c, h] = new Color(colour).to('oklch').coords as [number, number, number];
        const [lTurned, cTurned, hTurned] = new Color(hueTurned(colour, degrees)).to('oklch').coords as [
          number,
          number,
          number,
        ];
        // Near black one step of eight bits is a large step of lightness.
        if (l > 0.25) expect(Math.abs(lTurned - l)).toBeLessThan(0.006);
        expect(cTurned).toBeLessThan(c + 0.01);
        // Eight-bit steps blur the hue of a near-grey.
        if (c > 0.06 && cTurned > 0.06) {
          const off = Math.abs(((hTurned - h - degrees + 540 + 720) % 360) - 180);
          expect(off).toBeLessThan(4);
        }
      }),
      { seed: 20261125, numRuns: 300 },
    );
  });

  it('leaves greys and a turn of nothing as they are', () => {
    expect(hueTurned('#777777', 120)).toBe('#777777');
    expect(hueTurned('#b65c3d', 0)).toBe('#b65c3d');
    expect(hueTurned('#b65c3d', 360)).toBe('#b65c3d');
  });
});

describe('the hue of a colour', () => {
  it('is that of OKLCh as a second library measures it, and none for greys', () => {
    fc.assert(
      fc.property(hex, (colour) => {
        const [, chroma, hue] = new Color(colour).to('oklch').coords as [number, number, number];
        const own = hueOf(colour);
        // Beside the limit either answer will do.
        if (Math.abs(chroma - 0.025) < 1e-4) return;
        if (chroma < 0.025) expect(own).toBeNull();
        else expect(Math.abs(((own! - hue + 540) % 360) - 180)).toBeLessThan(0.2);
      }),
      { seed: 20261128, numRuns: 500 },
    );
    expect(hueOf('#777777')).toBeNull();
    expect(hueOf('#efe9dc')).toBeNull();
  });
});

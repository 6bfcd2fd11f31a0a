import chroma from 'chroma-js';
import Color from 'colorjs.io';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { invert, type Matrix, multiply } from '../../src/colour/matrix';
import { formatHex, srgbOf } from '../../src/colour/parse';
import * as spaces from '../../src/colour/spaces';
import { runs } from '../runs';
import { anyHex, SEED } from './arbitraryColours';
import { CONVERTED_COLOURS, CSS_OKLAB_EXAMPLES, GREY_VALUES } from './conversionTables';

const greyHex = (level: number): string => `#${level.toString(16).padStart(2, '0').repeat(3)}`;

function expectClose(
  actual: readonly number[],
  expected: readonly (number | null)[],
  tolerance: number,
  label = '',
): void {
  expect(actual).toHaveLength(expected.length);
  for (const [index, number] of actual.entries()) {
    expect(
      Math.abs(number - expected[index]!),
      `${label} [${index}]: ${number}, not ${expected[index]}`,
    ).toBeLessThanOrEqual(tolerance);
  }
}

describe('Published figures', () => {
  it('gives L*, a*, b* under D65 and OKLab of 23 colours as two libraries do', () => {
    for (const { hex, labD65, oklab } of CONVERTED_COLOURS) {
      const linear = spaces.linearOfHex(hex);
      expectClose(spaces.labD65Of(linear), labD65, 5.1e-6, `${hex} D65`);
      expectClose(spaces.oklabOf(linear), oklab, 5.1e-7, `${hex} OKLab`);
    }
  });

  it('gives the value of all 256 greys', () => {
    for (const [level, expected] of GREY_VALUES.entries()) {
      const hex = greyHex(level);
      expectClose([spaces.value(hex)], [expected], 6e-7, hex);
    }
  });

  it('names the colours of the CSS Color 4 oklab() examples within a step of 256', () => {
    for (const { oklab, hex } of CSS_OKLAB_EXAMPLES) {
      const shown = srgbOf(formatHex(spaces.encodedOf(spaces.linearOfOklab(oklab))));
      expectClose(
        shown.map((channel) => channel * 255),
        srgbOf(hex).map((channel) => channel * 255),
        1 + 1e-9,
        hex,
      );
    }
  });

  it("agrees with Ottosson's table of XYZ and OKLab pairs", () => {
    // Björn Ottosson, 'A perceptual color space for image processing', 23 December 2020, 'XYZ and Oklab pairs', 3 decimals.
    const pairs: readonly [[number, number, number], [number, number, number]][] = [
      [
        [0.95, 1, 1.089],
        [1, 0, 0],
      ],
      [
        [1, 0, 0],
        [0.45, 1.236, -0.019],
      ],
      [
        [0, 1, 0],
        [0.922, -0.671, 0.263],
      ],
      [
        [0, 0, 1],
        [0.153, -1.415, -0.449],
      ],
    ];
    const fromXyz = (xyz: [number, number, number]) =>
      spaces.oklabOf(new Color('xyz-d65', xyz).to('srgb-linear').coords as [number, number, number]);
    for (const [xyz, oklab] of pairs) expectClose(fromXyz(xyz), oklab, 6e-4, String(xyz));
    // colour-science/colour, colour/models/tests/test_oklab.py (Ottosson's first matrix, rounded: hence 1e-3).
    expectClose(fromXyz([0.20654008, 0.12197225, 0.05136952]), [0.51634019, 0.154695, 0.06289579], 1e-3);
    expectClose(fromXyz([0.1422201, 0.23042768, 0.10495772]), [0.59910746, -0.11139207, 0.07508465], 1e-3);
  });

  it("agrees with Ottosson's own listing from linear sRGB to OKLab", () => {
    // Same post, function linear_srgb_to_oklab, whose rounding leaves it a millionth from CSS Color 4.
    const response: Matrix = [
      [0.4122214708, 0.5363325363, 0.0514459929],
      [0.2119034982, 0.6806995451, 0.1073969566],
      [0.0883024619, 0.2817188376, 0.6299787005],
    ];
    const opponents: Matrix = [
      [0.2104542553, 0.793617785, -0.0040720468],
      [1.9779984951, -2.428592205, 0.4505937099],
      [0.0259040371, 0.7827717662, -0.808675766],
    ];
    const apply = (matrix: Matrix, vector: readonly number[]): number[] =>
      matrix.map((row) => row[0] * vector[0]! + row[1] * vector[1]! + row[2] * vector[2]!);
    for (const { hex } of CONVERTED_COLOURS) {
      const linear = spaces.linearOfHex(hex);
      expectClose(
        spaces.oklabOf(linear),
        apply(opponents, apply(response, linear).map(Math.cbrt)),
        2e-6,
        hex,
      );
    }
  });
});

describe('Second libraries on random colours', () => {
  it('agrees with colorjs.io in every space', () => {
    fc.assert(
      fc.property(anyHex, (hex) => {
        const linear = spaces.linearOfHex(hex);
        const other = new Color(hex);
        expectClose(linear, other.to('srgb-linear').coords, 1e-12, `${hex} linear`);
        expectClose(spaces.xyzOf(linear), other.to('xyz-d65').coords, 1e-12, `${hex} XYZ`);
        expectClose(spaces.labD65Of(linear), other.to('lab-d65').coords, 1e-9, `${hex} D65`);
        expectClose(spaces.oklabOf(linear), other.to('oklab').coords, 1e-12, `${hex} OKLab`);
      }),
      { seed: SEED, numRuns: runs(170, 500) },
    );
  });

  it('agrees with chroma-js', () => {
    fc.assert(
      fc.property(anyHex, (hex) => {
        // It rounds its white point and matrix: up to 0.011 off over the gamut.
        expectClose(spaces.labD65Of(spaces.linearOfHex(hex)), chroma(hex).lab(), 0.02, hex);
      }),
      { seed: SEED, numRuns: 500 },
    );
  });
});

describe('Round trips', () => {
  it('comes back from linear light and OKLab, inside the gamut and beyond it', () => {
    const channel = fc.double({ min: -0.5, max: 1.5, noNaN: true });
    fc.assert(
      fc.property(fc.tuple(channel, channel, channel), (srgb) => {
        const linear = spaces.linearOf(srgb);
        expectClose(spaces.encodedOf(linear), srgb, 1e-7);
        expectClose(spaces.linearOfOklab(spaces.oklabOf(linear)), linear, 1e-10);
      }),
      { seed: SEED },
    );
  });

  it('finds the luminance that has a given value', () => {
    for (const [level, lightness] of GREY_VALUES.entries()) {
      expectClose(
        [spaces.luminanceOfValue(lightness)],
        [spaces.linearOfHex(greyHex(level))[0]],
        3e-8,
        String(level),
      );
    }
  });

  it('undoes a matrix with its inverse and refuses one that has none', () => {
    const matrix: Matrix = [
      [2, 0, 1],
      [0, 3, 0],
      [1, 0, 1],
    ];
    expect(
      multiply(matrix, invert(matrix))
        .flat()
        .map((entry) => Math.round(entry * 1e12) / 1e12 + 0),
    ).toEqual([1, 0, 0, 0, 1, 0, 0, 0, 1]);
    expect(() =>
      invert([
        [1, 2, 3],
        [2, 4, 6],
        [0, 0, 1],
      ]),
    ).toThrow(/singular/);
  });
});

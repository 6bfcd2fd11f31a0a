// From one white to another: von Kries' rule (each cone is divided by its answer to the white) with the cones of Bradford, and how
// far a white lies from the colours that lamps and daylight have.
import { invert, type Matrix, multiply, transform } from '../../colour/matrix';
import type { Xyz } from '../../colour/spaces';

/**
 * The sharpened cones of Bradford: Lam, 'Metamerism and Colour Constancy', University of Bradford 1985, in the linear form of
 * ICC.1:2010 annex E, whose figures these are (CSS Color 4 uses the same).
 */
const BRADFORD: Matrix = [
  [0.8951, 0.2664, -0.1614],
  [-0.7502, 1.7135, 0.0367],
  [0.0389, -0.0685, 1.0296],
];

/** The matrix that takes XYZ seen under one white to XYZ under another. Throws on a white that some cone does not see. */
export function adaptation(from: Xyz, to: Xyz): Matrix {
  const [seen, wanted] = [transform(BRADFORD, from), transform(BRADFORD, to)];
  if (!seen.every((cone) => cone > 0)) throw new RangeError(`adaptation: ${from.join(', ')} is no white`);
  const gains: Matrix = [
    [wanted[0] / seen[0], 0, 0],
    [0, wanted[1] / seen[1], 0],
    [0, 0, wanted[2] / seen[2]],
  ];
  return multiply(invert(BRADFORD), multiply(gains, BRADFORD));
}

/** CIE 1960 u, v: chromaticities in which the colours of hot bodies are compared. */
export type Uv = readonly [u: number, v: number];

/** The chromaticity of light. Throws nothing; black gives not-a-number. */
export function uvOf([x, y, z]: Xyz): Uv {
  const sum = x + 15 * y + 3 * z;
  return [(4 * x) / sum, (6 * y) / sum];
}

/**
 * The chromaticity of a hot body of so many kelvin, 1000 to 15 000: the approximation of Krystek, 'An algorithm to calculate
 * correlated colour temperature', Color Research and Application 10 (1985), within 0.0001 of Planck's law.
 */
export function planckianUv(kelvin: number): Uv {
  const square = kelvin * kelvin;
  return [
    (0.860117757 + 1.54118254e-4 * kelvin + 1.28641212e-7 * square) /
      (1 + 8.42420235e-4 * kelvin + 7.08145163e-7 * square),
    (0.317398726 + 4.22806245e-5 * kelvin + 4.20481691e-8 * square) /
      (1 - 2.89741816e-5 * kelvin + 1.61456053e-7 * square),
  ];
}

/** Temperatures looked through, kelvin: lamps to a blue sky, in even steps of 1/T. */
const TEMPERATURES = Array.from(
  { length: 241 },
  (_, step) => 1 / (1 / 2000 + (step / 240) * (1 / 12000 - 1 / 2000)),
);

/** The temperature of the hot body nearest to a white, 2000 to 12 000 K, and how far off it lies in u, v. */
export function nearestLamp(white: Xyz): { readonly kelvin: number; readonly off: number } {
  const [u, v] = uvOf(white);
  const all = TEMPERATURES.map((kelvin) => {
    const [lampU, lampV] = planckianUv(kelvin);
    return { kelvin, off: Math.hypot(u - lampU, v - lampV) };
  });
  return all.reduce((best, one) => (one.off < best.off ? one : best));
}

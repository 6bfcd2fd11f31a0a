// Between colour spaces: sRGB, linear light, XYZ, CIELAB under D65, OKLab; and value, the L* of a cloth.
// Constants are those of CSS Color 4 (W3C, sample code for colour conversions). Tags in the types keep the spaces apart.
import { invert, type Matrix, multiply, type Row, transform } from './matrix';
import { type Srgb, srgbOf } from './parse';

/** Linear-light sRGB, 0–1 inside the gamut. These are amounts of light, so they may be added and averaged. */
export type LinearRgb = readonly [number, number, number] & { readonly space?: 'linear' };
/** CIE 1931 X, Y, Z under D65; white has Y = 1. */
export type Xyz = readonly [number, number, number] & { readonly space?: 'xyz' };
/** CIELAB under D65, sRGB's own white: L* 0–100, a* and b* about ±110. CSS lab() and d3-color mean D50. */
export type LabD65 = readonly [number, number, number] & { readonly space?: 'lab-d65' };
/** OKLab: L 0–1, a and b about ±0.32 inside sRGB. */
export type Oklab = readonly [number, number, number] & { readonly space?: 'oklab' };

/** The white of D65: chromaticity 0.3127, 0.3290 (CSS Color 4). */
export const WHITE_D65: Row = [0.3127 / 0.329, 1, (1 - 0.3127 - 0.329) / 0.329];
const XYZ_FROM_LINEAR: Matrix = [
  [506752 / 1228815, 87881 / 245763, 12673 / 70218],
  [87098 / 409605, 175762 / 245763, 12673 / 175545],
  [7918 / 409605, 87881 / 737289, 1001167 / 1053270],
];
/** OKLab's cone-like response, as CSS Color 4 recomputed it so that D65 white has a = b = 0. */
const LMS_FROM_XYZ: Matrix = [
  [0.819022437996703, 0.3619062600528904, -0.1288737815209879],
  [0.0329836539323885, 0.9292868615863434, 0.0361446663506424],
  [0.0481771893596242, 0.2642395317527308, 0.6335478284694309],
];
const OKLAB_FROM_ROOTS: Matrix = [
  [0.210454268309314, 0.7936177747023054, -0.0040720430116193],
  [1.9779985324311684, -2.4285922420485799, 0.450593709617411],
  [0.0259040424655478, 0.7827717124575296, -0.8086757549230774],
];
const LINEAR_FROM_XYZ = invert(XYZ_FROM_LINEAR);
const LMS_FROM_LINEAR = multiply(LMS_FROM_XYZ, XYZ_FROM_LINEAR);
const LINEAR_FROM_LMS = invert(LMS_FROM_LINEAR);
const ROOTS_FROM_OKLAB = invert(OKLAB_FROM_ROOTS);

function decode(channel: number): number {
  const size = Math.abs(channel);
  return size <= 0.04045 ? channel / 12.92 : Math.sign(channel) * ((size + 0.055) / 1.055) ** 2.4;
}

function encode(light: number): number {
  const size = Math.abs(light);
  return size <= 0.0031308 ? light * 12.92 : Math.sign(light) * (1.055 * size ** (1 / 2.4) - 0.055);
}

/** Decodes gamma: sRGB 0–1 → linear light 0–1 (IEC 61966-2-1). Extended as an odd function outside 0–1, as in CSS. */
export function linearOf([red, green, blue]: Srgb): LinearRgb {
  return [decode(red), decode(green), decode(blue)];
}

/** Encodes gamma: linear light → sRGB. The inverse of linearOf. */
export function encodedOf([red, green, blue]: LinearRgb): Srgb {
  return [encode(red), encode(green), encode(blue)];
}

/** Linear sRGB → XYZ under D65. */
export function xyzOf(linear: LinearRgb): Xyz {
  return transform(XYZ_FROM_LINEAR, linear);
}

/** Luminance Y of red, green and blue light (the middle row of the matrix to XYZ). */
export const LUMINANCE: Row = XYZ_FROM_LINEAR[1];

/** A change of XYZ as a change of linear sRGB. */
export function ofLinear(change: Matrix): Matrix {
  return multiply(LINEAR_FROM_XYZ, multiply(change, XYZ_FROM_LINEAR));
}

const KAPPA = 24389 / 27;
const EPSILON = 216 / 24389;

function labRoot(ratio: number): number {
  return ratio > EPSILON ? Math.cbrt(ratio) : (KAPPA * ratio + 16) / 116;
}

/** Linear sRGB → CIELAB under D65 (CIE 15 with the exact κ = 24389/27, ε = 216/24389). */
export function labD65Of(linear: LinearRgb): LabD65 {
  const [x, y, z] = xyzOf(linear);
  const rootX = labRoot(x / WHITE_D65[0]);
  const rootY = labRoot(y / WHITE_D65[1]);
  const rootZ = labRoot(z / WHITE_D65[2]);
  return [116 * rootY - 16, 500 * (rootX - rootY), 200 * (rootY - rootZ)];
}

/** L* 0–100 → luminance Y 0–1; the inverse of the lightness formula of CIE 15. */
export function luminanceOfValue(lightness: number): number {
  return lightness > KAPPA * EPSILON ? ((lightness + 16) / 116) ** 3 : lightness / KAPPA;
}

/** Linear sRGB → OKLab (Ottosson, 'A perceptual color space for image processing', 2020; constants of CSS Color 4). */
export function oklabOf(linear: LinearRgb): Oklab {
  const cones = transform(LMS_FROM_LINEAR, linear);
  return transform(OKLAB_FROM_ROOTS, [Math.cbrt(cones[0]), Math.cbrt(cones[1]), Math.cbrt(cones[2])]);
}

/** OKLab → linear sRGB; the inverse of oklabOf, also for colours outside the gamut. */
export function linearOfOklab(oklab: Oklab): LinearRgb {
  const [long, medium, short] = transform(ROOTS_FROM_OKLAB, oklab);
  return transform(LINEAR_FROM_LMS, [long ** 3, medium ** 3, short ** 3]);
}

/** The linear light of a colour written #rgb or #rrggbb. Throws on anything else. */
export function linearOfHex(hex: string): LinearRgb {
  return linearOf(srgbOf(hex));
}

/**
 * Value, how light or dark a colour is: CIE L* under D65, 0 (black) to 100 (white). It depends on luminance alone. Throws on
 * anything but #rgb or #rrggbb.
 */
export function value(hex: string): number {
  return valueOfLinear(linearOfHex(hex));
}

/** The same of linear light. */
export function valueOfLinear([red, green, blue]: LinearRgb): number {
  return 116 * labRoot(LUMINANCE[0] * red + LUMINANCE[1] * green + LUMINANCE[2] * blue) - 16;
}

// Writes and reads lengths for people: inches as fractions, centimetres as decimals. All code computes in inches.
import Fraction from 'fraction.js';
import { decimalText, roundedHalfUp, withDecimalPoint } from './decimals';
import { ENGLISH_NUMBERS } from './words/numberStyle';

/** A length in inches. */
export type Inches = number;
/** An angle in degrees. */
export type Degrees = number;
/** The unit lengths are shown and typed in. */
export type LengthUnit = 'in' | 'cm';

export const CENTIMETRES_PER_INCH = 2.54;
const SIXTEENTHS = 16;
const MILLIMETRES_PER_INCH = 25.4;

/**
 * A length for people: inches to the nearest sixteenth as a fraction (14 1/4"), centimetres to one decimal, halves up (36.2 cm).
 * Input in inches, any sign; not-a-number gives a dash.
 */
export function formatLength(inches: Inches, unit: LengthUnit): string {
  if (!Number.isFinite(inches)) return '–';
  if (unit === 'cm') return `${decimalText(inches * CENTIMETRES_PER_INCH, 1)} cm`;
  return `${formatFraction(inches)}"`;
}

/**
 * A seam for people, finer than other lengths: a measured seam is seldom a whole sixteenth, and the rounding error adds up
 * over the seams of a block. A seam on a sixteenth is a fraction (1/4"), any other is to the thousandth (0.298"); with
 * centimetres it is in millimetres to the tenth (6.4 mm). Input in inches; not-a-number gives a dash.
 */
export function formatSeam(inches: Inches, unit: LengthUnit): string {
  if (!Number.isFinite(inches)) return '–';
  if (unit === 'cm') return `${roundedHalfUp(inches * CENTIMETRES_PER_INCH * 10, 1)} mm`;
  const onSixteenth = Math.abs(Math.round(inches * SIXTEENTHS) / SIXTEENTHS - inches) < 1e-6;
  return onSixteenth ? formatLength(inches, unit) : `${decimalText(inches, 3)}"`;
}

/**
 * A limit for people, inches: a least length rounded up and a most length rounded down to what people write, a sixteenth or a
 * millimetre, so that whoever keeps to what is written keeps the limit. A limit on such a step is written as it is.
 */
export function formatLimit(limit: Inches, unit: LengthUnit, kind: 'least' | 'most'): string {
  const step = unit === 'cm' ? 1 / MILLIMETRES_PER_INCH : 1 / SIXTEENTHS;
  const steps = kind === 'least' ? Math.ceil(limit / step - 1e-6) : Math.floor(limit / step + 1e-6);
  return formatLength(steps * step, unit);
}

/** Inches to the nearest sixteenth as a mixed fraction without the unit: 14 1/4. */
export function formatFraction(inches: Inches): string {
  return new Fraction(Math.round(inches * SIXTEENTHS), SIXTEENTHS).toFraction(true);
}

/** The text of a length field that is not being edited, without the unit or marks between thousands: 14 1/4, 36.2 or 36,2. */
export function lengthFieldText(inches: Inches, unit: LengthUnit, { decimal } = ENGLISH_NUMBERS): string {
  const text =
    unit === 'cm' ? String(roundedHalfUp(inches * CENTIMETRES_PER_INCH, 2)) : exactFraction(inches);
  return text.replace('.', decimal);
}

function exactFraction(inches: Inches): string {
  const near = Math.round(inches * 64) / 64;
  if (Math.abs(near - inches) > 1e-6) return String(roundedHalfUp(inches, 4));
  return new Fraction(Math.round(inches * 64), 64).toFraction(true);
}

/**
 * Reads a length as people write it: 14 1/4, 14-1/4, 14¼, 14 1⁄4, 14.25, 14,25, 1/2, with or without ", in, cm or mm. A mark at the
 * end (20,) is a decimal mark with nothing behind it; of two kinds of marks the last is the decimal one (1,234.5).
 * A bare number is in `unit`. Returns inches, or null for what is not a length (empty, words, a negative number, x/0).
 */
export function parseLength(text: string, unit: LengthUnit): Inches | null {
  const [, bare, suffix] = /^(.*?)\s*("|″|''|in\.?|inch|inches|cm|mm)?$/s.exec(text.trim().toLowerCase())!;
  const amount = parseAmount(withDecimalPoint(withPlainFraction(bare!)));
  if (amount === null) return null;
  const read = suffix === undefined ? unit : suffix;
  if (read === 'mm') return amount / MILLIMETRES_PER_INCH;
  return read === 'cm' ? amount / CENTIMETRES_PER_INCH : amount;
}

/** ¾ is written  3⁄4 in Unicode's own terms (compatibility decomposition), with FRACTION SLASH. */
function withPlainFraction(text: string): string {
  return text
    .replace(/[¼-¾⅐-⅞]/g, (sign) => ` ${sign.normalize('NFKC')}`)
    .replace(/[\u2044\u2215]/g, '/')
    .trim();
}

function parseAmount(text: string): number | null {
  const match = /^(?:(\d+(?:\.\d*)?|\.\d+)|(?:(\d+)(?:\s+|\s*-\s*))?(\d+)\s*\/\s*(\d+))$/.exec(text);
  if (!match) return null;
  const [, decimal, whole, over, under] = match;
  if (decimal !== undefined) return Number(decimal);
  return Number(under) === 0 ? null : Number(whole ?? 0) + Number(over) / Number(under);
}

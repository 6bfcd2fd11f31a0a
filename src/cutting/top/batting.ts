// Packaged batting and which sizes cover the quilt.
import type { Inches, LengthUnit } from '../../model/units';

export interface BattingSize {
  /** What the package is called. */
  readonly name: string;
  readonly width: Inches;
  readonly height: Inches;
}

/**
 * Packaged sizes, inches: three independent public size charts agree (a convention of packaging, no standard found). Sizes
 * they do not agree on are left out.
 */
const BATTING_SIZES: readonly BattingSize[] = [
  { name: 'Crib', width: 45, height: 60 },
  { name: 'Twin', width: 72, height: 90 },
  { name: 'Full', width: 81, height: 96 },
  { name: 'Queen', width: 90, height: 108 },
  { name: 'King', width: 120, height: 120 },
];

/**
 * Packages that cover width × height either way round, smallest first; empty when none does. Who cuts by centimetres is offered
 * none: these are packed in the United States, and elsewhere batting comes off the roll (common practice, no source).
 */
export function battingFor(width: Inches, height: Inches, unit: LengthUnit = 'in'): BattingSize[] {
  if (unit === 'cm') return [];
  const [short, long] = [Math.min(width, height), Math.max(width, height)];
  return BATTING_SIZES.filter(
    (size) =>
      Math.min(size.width, size.height) >= short - 1e-9 && Math.max(size.width, size.height) >= long - 1e-9,
  ).toSorted((one, other) => one.width * one.height - other.width * other.height);
}

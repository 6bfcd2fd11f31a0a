// Simulates colour-vision deficiencies. The filter that shows them is in seen.ts.
import { type ColourVision, SEVERITY_MATRICES } from './machadoMatrices';
import type { Matrix, Row } from './matrix';

function between(lower: Row, upper: Row, share: number): Row {
  return [
    lower[0] + (upper[0] - lower[0]) * share,
    lower[1] + (upper[1] - lower[1]) * share,
    lower[2] + (upper[2] - lower[2]) * share,
  ];
}

/**
 * The matrix on LINEAR sRGB that simulates a deficiency (Machado et al. 2009; for tritan indicative only). Severity runs from
 * 0 (none) to 1 (cones missing); between the published tenths the matrix is interpolated.
 * Throws on a severity outside 0–1.
 */
export function visionMatrix(kind: ColourVision, severity: number): Matrix {
  if (!(severity >= 0 && severity <= 1)) {
    throw new RangeError(`visionMatrix: severity runs from 0 to 1, got ${severity}`);
  }
  const step = Math.min(9, Math.floor(severity * 10));
  const lower = SEVERITY_MATRICES[kind][step]!;
  const upper = SEVERITY_MATRICES[kind][step + 1]!;
  const share = severity * 10 - step;
  return [
    between(lower[0], upper[0], share),
    between(lower[1], upper[1], share),
    between(lower[2], upper[2], share),
  ];
}

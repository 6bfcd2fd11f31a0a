// A seam as the tool found it, finer than a ruler shows: thousandths of an inch, or millimetres.
import { CENTIMETRES_PER_INCH, type Inches, type LengthUnit } from '../../../model/units';

export function seamText(seam: Inches, unit: LengthUnit): string {
  return unit === 'in' ? `${seam.toFixed(3)}"` : `${(seam * CENTIMETRES_PER_INCH * 10).toFixed(1)} mm`;
}

// Measures how far apart two colours look: CIEDE2000. cloth/likeness.ts decides whether that matters.
import type { LabD65 } from './spaces';

const POWER_25_7 = 25 ** 7;
const RADIANS = Math.PI / 180;

/** Hue angle in degrees 0–360; 0 for a colour without chroma. */
function hueAngle(a: number, b: number): number {
  if (a === 0 && b === 0) return 0;
  const angle = Math.atan2(b, a) / RADIANS;
  return angle < 0 ? angle + 360 : angle;
}

/** √(C⁷ / (C⁷ + 25⁷)), 0–1: near 0 for dull colours, 1 for strong ones. */
function strength(chroma: number): number {
  const power = chroma ** 7;
  return Math.sqrt(power / (power + POWER_25_7));
}

function hueStep(hue1: number, hue2: number): number {
  const step = hue2 - hue1;
  if (step > 180) return step - 360;
  return step < -180 ? step + 360 : step;
}

function meanHue(hue1: number, hue2: number): number {
  const sum = hue1 + hue2;
  if (Math.abs(hue1 - hue2) <= 180) return sum / 2;
  return sum < 360 ? (sum + 360) / 2 : (sum - 360) / 2;
}

/** The factor T of the hue term, for a mean hue in degrees. */
function hueWeight(hue: number): number {
  return (
    1 -
    0.17 * Math.cos((hue - 30) * RADIANS) +
    0.24 * Math.cos(2 * hue * RADIANS) +
    0.32 * Math.cos((3 * hue + 6) * RADIANS) -
    0.2 * Math.cos((4 * hue - 63) * RADIANS)
  );
}

/**
 * CIEDE2000 colour difference ΔE00, 0 (the same) to a little over 100, with kL = kC = kH = 1.
 * After Sharma, Wu and Dalal, 'The CIEDE2000 Color-Difference Formula: Implementation Notes, Supplementary Test Data,
 * and Mathematical Observations', Color Research and Application 30 (2005). A trained eye sees a difference of about 1 when
 * the colours lie side by side. Symmetric, but no metric: it jumps slightly where hues are opposite.
 */
export function ciede2000(lab1: LabD65, lab2: LabD65): number {
  const [light1, a1, b1] = lab1;
  const [light2, a2, b2] = lab2;
  const stretch = 1 + 0.5 * (1 - strength((Math.hypot(a1, b1) + Math.hypot(a2, b2)) / 2));
  const chroma1 = Math.hypot(a1 * stretch, b1);
  const chroma2 = Math.hypot(a2 * stretch, b2);
  const colourless = chroma1 === 0 || chroma2 === 0;
  const hue1 = hueAngle(a1 * stretch, b1);
  const hue2 = hueAngle(a2 * stretch, b2);

  const lightStep = light2 - light1;
  const chromaStep = chroma2 - chroma1;
  const turn = colourless ? 0 : hueStep(hue1, hue2);
  const hueChord = 2 * Math.sqrt(chroma1 * chroma2) * Math.sin((turn / 2) * RADIANS);

  const light = (light1 + light2) / 2;
  const chroma = (chroma1 + chroma2) / 2;
  const hue = colourless ? hue1 + hue2 : meanHue(hue1, hue2);

  const offMiddle = (light - 50) ** 2;
  const lightTerm = lightStep / (1 + (0.015 * offMiddle) / Math.sqrt(20 + offMiddle));
  const chromaTerm = chromaStep / (1 + 0.045 * chroma);
  const hueTerm = hueChord / (1 + 0.015 * chroma * hueWeight(hue));
  const blueTurn = 60 * Math.exp(-(((hue - 275) / 25) ** 2));
  const rotation = -2 * strength(chroma) * Math.sin(blueTurn * RADIANS);
  return Math.sqrt(lightTerm ** 2 + chromaTerm ** 2 + hueTerm ** 2 + rotation * chromaTerm * hueTerm);
}

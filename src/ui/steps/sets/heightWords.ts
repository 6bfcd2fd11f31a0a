// The height of a set against the height its wedge needs, in words.
import { type Phrase, phrase } from '../../../model/phrase';
import type { Inches } from '../../../model/units';

/** "8" high, 1/2" to spare", "just high enough" or "6 3/4" high, short by 3/4"". */
export function heightWords(height: Inches, needed: Inches): Phrase {
  const over = height - needed;
  const values = { height: { inches: height }, over: { inches: Math.abs(over) } };
  if (over < -1e-9) return phrase('{height} high, short by {over}', values);
  if (over < 1 / 32) return phrase('{height} high, just enough', values);
  return phrase('{height} high, {over} to spare', values);
}

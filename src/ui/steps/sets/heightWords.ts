// Words on the height of a set, compared with the height that its wedge needs.
import { heightShort } from '../../../geometry/stripSet';
import { type Phrase, phrase } from '../../../model/phrase';
import type { WedgePlan } from '../../../model/project';
import type { Inches } from '../../../model/units';

/** "8" high, 1/2" to spare", "just high enough" or "6 3/4" high, short by 3/4"". */
export function heightWords(height: Inches, wedge: Pick<WedgePlan, 'cutHeight'>): Phrase {
  const over = height - wedge.cutHeight;
  const short = heightShort(height, wedge);
  // Down and up, so that both come to the wedge as they are printed.
  if (short > 0) {
    return phrase('{height} high, short by {short}', {
      height: { atMost: height },
      short: { atLeast: short },
    });
  }
  const values = { height: { inches: height }, over: { inches: over } };
  if (over < 1 / 32) return phrase('{height} high, just enough', values);
  return phrase('{height} high, {over} to spare', values);
}

// What of a fabric goes into one kit, in words.
import type { KitFabric } from '../../../../cutting/kits/kits';
import { clothText } from '../../../../cutting/yardage/clothLength';
import type { SellingUnit } from '../../../../model/buying';
import { counted, type Phrase, phrase } from '../../../../model/phrase';

/** The cloth of one kit in words: strips by the inch, or lengths as the shop sells them. */
export function inKit(one: KitFabric, asStrips: boolean, unit: SellingUnit): Phrase {
  if (one.fatQuarters > 0) return counted(one.fatQuarters, '1 fat quarter', '{count} fat quarters');
  if (asStrips) return phrase('{cloth}', { cloth: { inches: one.inches } });
  return phrase('{cloth}', { cloth: clothText(one.inches, unit) });
}

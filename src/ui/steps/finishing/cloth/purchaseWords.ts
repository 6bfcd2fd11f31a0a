// Words on what to buy of a fabric, and of all fabrics together.

import { clothText } from '../../../../cutting/yardage/clothLength';
import type { Purchase } from '../../../../cutting/yardage/fabricYardage';
import type { ClothSum } from '../../../../cutting/yardage/yardage';
import type { SellingUnit } from '../../../../model/buying';
import { counted, type Phrase, phrase } from '../../../../model/phrase';

/** Words on what to buy of a fabric. */
export function purchaseWords(buy: Purchase, unit: SellingUnit): Phrase {
  switch (buy.kind) {
    case 'nothing':
      return phrase('nothing');
    case 'length':
      return phrase('{cloth}', { cloth: clothText(buy.inches, unit) });
    case 'fatQuarters':
      return counted(buy.count, '1 fat quarter', '{count} fat quarters');
    default:
      return buy satisfies never;
  }
}

/** The sum of several fabrics in words. */
export function clothSumWords({ inches, fatQuarters }: ClothSum, unit: SellingUnit): Phrase {
  const quarters = purchaseWords({ kind: 'fatQuarters', count: fatQuarters }, unit);
  if (inches > 0 && fatQuarters > 0) {
    return phrase('{cloth} and {quarters}', { cloth: clothText(inches, unit), quarters });
  }
  if (fatQuarters > 0) return quarters;
  return purchaseWords(inches > 0 ? { kind: 'length', inches } : { kind: 'nothing' }, unit);
}

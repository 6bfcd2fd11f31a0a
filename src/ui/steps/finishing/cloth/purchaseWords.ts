// What to buy of a fabric, in words.
import { clothText, type SellingUnit } from '../../../../cutting/yardage/clothLength';
import type { Purchase } from '../../../../cutting/yardage/fabricYardage';
import { counted, type Phrase, phrase } from '../../../../model/phrase';

export function purchaseWords(buy: Purchase, unit: SellingUnit): Phrase {
  switch (buy.kind) {
    case 'nothing':
      return phrase('nothing');
    case 'length':
      return phrase('{cloth}', { cloth: clothText(buy.inches, unit) });
    case 'fat quarters':
      return counted(buy.count, '1 fat quarter', '{count} fat quarters');
    default:
      return buy satisfies never;
  }
}

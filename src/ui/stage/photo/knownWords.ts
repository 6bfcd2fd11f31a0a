// Which block of the quilt a photographed block looks like, in words.
import { type Phrase, phrase } from '../../../model/phrase';
import type { ReadBlock } from '../../../photo/block/readLook';

const TURNS = ['not turned', 'turned once', 'turned twice', 'turned three times'] as const;

/** 'This looks like block 7, turned once'; null where it is none of the quilt. Turns are quarter turns clockwise. */
export function knownWords({ known }: Pick<ReadBlock, 'known'>): Phrase | null {
  if (!known) return null;
  const values = { block: known.number, turned: phrase(TURNS[Math.round(known.quarters) % 4]!) };
  return phrase('This looks like block {block}, {turned}', values);
}

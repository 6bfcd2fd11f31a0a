// Parts that several schemas share: ids, names of fabrics and pictures, lengths in inches between two limits, and lists.
import * as v from 'valibot';

/** An id: 1 to 60 characters. */
export const id = v.pipe(
  v.string(),
  v.minLength(1, 'an id cannot be empty'),
  v.maxLength(60, 'an id is at most 60 characters'),
);

/** The id of a fabric wherever the document names one; each place has its row in fabricUses.ts. */
export const fabricId = v.pipe(id, v.description('the id of a fabric'));

/** The id of a picture wherever the document names one: the SHA-256 of its bytes, so that equal pictures are kept once. */
export const pictureId = v.pipe(
  v.string(),
  v.regex(/^[0-9a-f]{64}$/, 'the id of a picture is 64 digits, 0 to 9 and a to f'),
  v.description('the id of a picture'),
);

/** A length in inches between two limits, both included. */
export const length = (least: number, most: number) =>
  v.pipe(
    v.number(),
    v.finite(),
    v.minValue(least, `must be at least ${least} in`),
    v.maxValue(most, `must be at most ${most} in`),
  );

/** A list of `least` to `most` items. Its length comes before its items, so that a list of millions is refused at once. */
export const list = <Item extends v.GenericSchema>(item: Item, most: number, least = 0) =>
  v.pipe(v.array(v.unknown()), v.maxLength(most), v.minLength(least), v.array(item));

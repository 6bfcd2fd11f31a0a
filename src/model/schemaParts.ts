// Parts that several schemas share: ids, and lengths in inches between two limits.
import * as v from 'valibot';

export const id = v.pipe(
  v.string(),
  v.minLength(1, 'an id cannot be empty'),
  v.maxLength(60, 'an id is at most 60 characters'),
);

export const length = (least: number, most: number) =>
  v.pipe(
    v.number(),
    v.finite(),
    v.minValue(least, `must be at least ${least} in`),
    v.maxValue(most, `must be at most ${most} in`),
  );

// How often the long laws are tried: fewer times each day, the full count with `npm run test:long`.
import process from 'node:process';

const LONG = process.env.LONG_TESTS === '1';

/** So many runs in `npm test`; `full` of them in `npm run test:long`. What must be met on the way at least is told in the same way. */
export function runs(usual: number, full: number): number {
  return LONG ? full : usual;
}

/** The cases of `npm test` are the same every day, so that what must be met among few is met; the long run draws others each time. */
export const CASES = LONG ? {} : { seed: 1129 };

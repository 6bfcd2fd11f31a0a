// When something lighter is drawn: where zooming stutters again and again, not where one frame was long.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { slowFrames } from '../../../../src/ui/wall/moving/slowFrames';

const quick = fc.integer({ min: 1, max: 49 });
const long = fc.integer({ min: 50, max: 5000 });

it('frames that stutter three times of four are slow', () => {
  fc.assert(
    fc.property(fc.array(quick), fc.array(long, { minLength: 3, maxLength: 9 }), (before, then) => {
      const slow = slowFrames();
      for (const length of before) expect(slow(length)).toBe(false);
      expect(then.map(slow).at(-1)).toBe(true);
    }),
  );
});

it('two long frames among quick ones are not', () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(long, long, quick, quick)), (groups) => {
      const slow = slowFrames();
      expect(groups.flat().some(slow)).toBe(false);
    }),
  );
});

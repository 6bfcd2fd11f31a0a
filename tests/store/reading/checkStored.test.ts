// A saved quilt is checked beside the page where it is large, with the same answer.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openDocument } from '../../../src/editing/openDocument';
import { checkBeside } from '../../../src/store/reading/checkBeside';
import { checkStored, holdsMany } from '../../../src/store/reading/checkStored';
import { READING } from '../../../src/store/reading/readingAnswers';
import type { ReadingJobs } from '../../../src/store/reading/readingJobs';
import { inPage, type WorkerLike } from '../../../src/store/workers/protocol';
import { scrappyTop } from '../../balance/tops';
import { demo } from '../../demo';

const sound = demo('harbour-reading-corner');
const damaged = { ...sound, wedge: { ...sound.wedge, perBlock: 7 } };

describe('a saved quilt', () => {
  it.each([
    ['that is sound', sound],
    ['that is damaged', damaged],
    ['that is none', []],
  ])('%s is checked beside the page as in it, with or without a worker', async (_what, document) => {
    const working = () => inPage<ReadingJobs>(() => Promise.resolve(READING));
    const none = (): WorkerLike<ReadingJobs> => {
      throw new Error('no workers here');
    };
    expect(await checkBeside(document, working)).toEqual(openDocument(document));
    expect(await checkBeside(document, none)).toEqual(openDocument(document));
  });

  it('of any size has the same answer', async () => {
    const large = scrappyTop({ rows: 40, columns: 40, seed: 1 });
    expect(holdsMany(large, 60_000)).toBe(true);
    expect(holdsMany(sound, 60_000)).toBe(false);
    expect(await checkStored(large)).toEqual(openDocument(large));
    expect(await checkStored(damaged)).toEqual(openDocument(damaged));
    expect(await checkStored('no quilt')).toEqual(openDocument('no quilt'));
  });

  it('holds as many values as there are in it, itself among them', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (data) => {
        let count = 0;
        JSON.stringify(data, (_key, value: unknown) => {
          count += 1;
          return value;
        });
        expect(holdsMany(data, count)).toBe(true);
        expect(holdsMany(data, count + 1)).toBe(false);
      }),
      { seed: 6 },
    );
  });
});

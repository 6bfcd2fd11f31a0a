// A project file is read beside the page: the same answer as in the page, and it can be stopped whatever the worker does.
import { describe, expect, it } from 'vitest';
import { openFile } from '../../../src/editing/openFile';
import { writeProject } from '../../../src/model/reading/read';
import { startReading } from '../../../src/store/reading/readFile';
import { READING } from '../../../src/store/reading/readingAnswers';
import type { ReadingJobs } from '../../../src/store/reading/readingJobs';
import { inPage, type WorkerLike } from '../../../src/store/workers/protocol';
import { demo } from '../../demo';

const sound = new Blob([writeProject(demo('harbour-reading-corner'))]);
const working = () => inPage<ReadingJobs>(() => Promise.resolve(READING));

/** A worker that takes every message and never answers. */
const silent = (): WorkerLike<ReadingJobs> => ({
  onmessage: null,
  onerror: null,
  onmessageerror: null,
  postMessage: () => {},
  terminate: () => {},
});

describe('a chosen file', () => {
  it.each([
    ['that is sound', sound],
    ['that is cut off', sound.slice(0, 900)],
    ['that is no project', new Blob(['{"a": 1}'])],
    ['that is not text', new Blob([new Uint8Array([255, 254, 0])])],
  ])('%s is read as in the page', async (_what, file) => {
    expect(await startReading(file, working).opened).toEqual(await openFile(file));
  });

  it('is given up at once when it is stopped, though the worker hangs', async () => {
    const reading = startReading(sound, silent);
    setTimeout(() => reading.stop(), 20);
    expect(await reading.opened).toBeNull();
  });

  it('is read in the page itself where no worker can be started', async () => {
    const none = () => {
      throw new Error('no workers here');
    };
    expect((await startReading(sound, none).opened)?.ok).toBe(true);
  });

  it('that cannot be read is refused with the reason', async () => {
    const gone = { size: 9, arrayBuffer: () => Promise.reject(new Error('not found')) };
    expect(await startReading(gone, working).opened).toMatchObject({
      ok: false,
      problems: [{ code: 'cannot-read' }],
    });
  });
});

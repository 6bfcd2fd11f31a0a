// What the worker that reads project files does. editing/openFile.ts decides everything.
import { openDocument } from '../../editing/openDocument';
import { openBytes } from '../../editing/openFile';
import type { Answers } from '../workers/protocol';
import type { ReadingJobs } from './readingJobs';

export const READING: Answers<ReadingJobs> = {
  check: (document) => openDocument(document),
  read: (bytes) => {
    const opened = openBytes(bytes);
    if (!opened.ok) return opened;
    const { value, remarks } = opened;
    const pictures = Array.from(opened.pictures, ([id, picture]) => ({ id, picture }));
    return { ok: true, value, pictures, remarks };
  },
};

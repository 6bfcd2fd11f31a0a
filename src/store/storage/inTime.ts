// Gives up waiting for a browser that does not answer.
import { phrase } from '../../model/phrase';
import { StorageRefusal } from './storageProblem';

/** The outcome of `work`, or a refusal with code 'storage-silent' after `patience` milliseconds; `onSilent` is called then. */
export async function inTime<T>(work: Promise<T>, patience: number, onSilent: () => void): Promise<T> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const silence = new Promise<never>((_resolve, reject) => {
    timer = setTimeout(() => {
      onSilent();
      const say = 'The browser does not answer when asked to read or save quilts.';
      reject(new StorageRefusal('storage-silent', phrase(say)));
    }, patience);
  });
  // A failure that comes after the waiting is nobody's any more.
  work.catch(() => {});
  try {
    return await Promise.race([work, silence]);
  } finally {
    clearTimeout(timer);
  }
}

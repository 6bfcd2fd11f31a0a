// How long what is saved lasts: the browser is asked to keep it for good once there is something to keep, room that runs low is told, and so is a
// browser that removes what pages saved.
import { describe, expect, it, vi } from 'vitest';
import { askToLast, isRemovedAfterAWeek, LOW_ROOM } from '../../../src/store/storage/lasting';

const manager = (given: Partial<StorageManager>) => given as StorageManager;
const APPLE = { vendor: 'Apple Computer, Inc.' };

describe('the browser', () => {
  it('is asked to keep what is saved, unless it does already', async () => {
    const persist = vi.fn(() => Promise.resolve(true));
    const asked = await askToLast(manager({ persisted: () => Promise.resolve(false), persist }));
    expect([asked.lasts, persist.mock.calls.length]).toEqual([true, 1]);
    const again = await askToLast(manager({ persisted: () => Promise.resolve(true), persist }));
    expect([again.lasts, persist.mock.calls.length]).toEqual([true, 1]);
  });

  it.each([
    ['lacks it', {}],
    ['refuses', { persisted: () => Promise.resolve(false), persist: () => Promise.resolve(false) }],
    ['fails', { persisted: () => Promise.reject(new Error('no')) }],
  ])('that %s is believed to keep nothing for good, and nothing breaks', async (_how, given) => {
    expect(await askToLast(manager(given))).toEqual({ lasts: false, room: null });
    expect(await askToLast(undefined)).toEqual({ lasts: false, room: null });
  });

  it.each([
    [5e9, 1e9, null],
    [5e9, 5e9 - LOW_ROOM, null],
    [5e9, 5e9 - LOW_ROOM + 1, LOW_ROOM - 1],
    [5e9, 6e9, 0],
    [undefined, 5, null],
  ])('with a quota of %s and %s used has %s left that is to be told', async (quota, usage, told) => {
    const estimate = () => Promise.resolve({ quota, usage } as StorageEstimate);
    expect((await askToLast(manager({ estimate }))).room).toBe(told);
  });
});

describe('what a page saved', () => {
  // WebKit, 'Full Third-Party Cookie Blocking and More', 24 March 2020: all script-writable storage of a site is deleted after seven days of
  // Safari use without interaction with it; web applications added to the home screen are not part of Safari.
  it.each([
    ['Safari', APPLE, false, false, true],
    ['a web app on the home screen', APPLE, true, false, false],
    ['Safari that keeps it for good', APPLE, false, true, false],
    ['another browser', { vendor: 'Google Inc.' }, false, false, false],
    ['Firefox', { vendor: '' }, false, false, false],
  ])('in %s is removed after a week or not', (_what, browser, installed, lasts, removed) => {
    expect(isRemovedAfterAWeek(browser, installed, lasts)).toBe(removed);
  });
});

// Quilts that several tests begin with: made by hand once in each worker, and from then on put into the browser's storage before the tool
// is opened, which takes half of the work.
import { type BrowserContext, expect, type Page } from '@playwright/test';
import type { Project } from '../src/model/project';
import { firstVisit, still } from './room';

type Stored = Awaited<ReturnType<BrowserContext['storageState']>>;

const stored = new Map<string, Stored>();

/** Opens the tool on the quilt that `make` makes of the first visit. What is made must be the same each time. */
export async function openMade(page: Page, name: string, make: () => Promise<void>): Promise<void> {
  const known = stored.get(name);
  if (known) {
    await page.context().setStorageState(known);
  } else {
    await firstVisit(page);
    await make();
    await still(page);
    await saveNow(page);
    await expect(page.getByText('Saved', { exact: true })).toBeAttached();
    stored.set(name, await page.context().storageState({ indexedDB: true }));
  }
  await firstVisit(page);
}

/** Lets the page save what is not saved yet at once, as when another window covers it, instead of a while after the change. */
async function saveNow(page: Page): Promise<void> {
  await page.evaluate(() => {
    Object.defineProperty(document, 'visibilityState', { value: 'hidden', configurable: true });
    document.dispatchEvent(new Event('visibilitychange'));
    Reflect.deleteProperty(document, 'visibilityState');
  });
}

/** The quilt that is open, as the browser saved it; no other may have been changed. */
export async function savedQuilt(page: Page): Promise<Project> {
  await saveNow(page);
  await expect(page.getByText('Saved', { exact: true })).toBeAttached();
  const all = await page.evaluate(async () => {
    const answer = <T>(request: IDBRequest<T>) =>
      new Promise<T>((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
    const database = await answer(indexedDB.open('wedgewall'));
    const found = await answer(database.transaction('documents').objectStore('documents').getAll());
    database.close();
    return found as Project[];
  });
  expect(all).toHaveLength(1);
  return all[0]!;
}

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
    await expect(page.getByText('Saved', { exact: true })).toBeAttached();
    stored.set(name, await page.context().storageState({ indexedDB: true }));
  }
  await firstVisit(page);
}

/** The quilt that is open, as the browser saved it; no other may have been changed. */
export async function savedQuilt(page: Page): Promise<Project> {
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

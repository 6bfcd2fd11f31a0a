// What the browser has saved: a quilt put there before the tool is opened, which spares a test the first example and the menu, and the quilt
// that is open.
import { expect, type Page, test } from '@playwright/test';
import type { Project } from '../src/model/project';
import type { LengthUnit } from '../src/model/units';
import type { ProjectSummary } from '../src/store/storage/summary';
import { firstVisit } from './room';

/** What the browser holds of one quilt, saved once (src/store/storage/indexedDb.ts), by a person of that unit. */
function holding(quilt: Project, unit: LengthUnit) {
  const { id, name, blocks } = quilt;
  const summary: ProjectSummary = { id, name, changedAt: 0, blocks: blocks.length, revision: 1 };
  const store = (name: string, key?: string, value?: unknown) => ({
    name,
    autoIncrement: false,
    records: key === undefined ? [] : [{ key, value }],
    indexes: [],
  });
  const stores = [
    store('documents', id, quilt),
    store('summaries', id, summary),
    store('histories', id, { done: [], undone: [] }),
    store('notes', 'last-open', id),
    store('pictures'),
  ];
  return {
    origin: test.info().project.use.baseURL!,
    localStorage: [{ name: 'wedgewall-unit', value: unit }],
    indexedDB: [{ name: 'wedgewall', version: 3, stores }],
  };
}

/** Opens the tool on a quilt, the text of a project file without pictures, as the only one that the browser has saved. */
export async function openSaved(page: Page, text: string, unit: LengthUnit = 'in'): Promise<void> {
  await page.context().setStorageState({ cookies: [], origins: [holding(JSON.parse(text), unit)] });
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

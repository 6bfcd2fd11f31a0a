// What every spec of the workshop does first: the small example, which a newcomer finds open, and a step of the work.
import { readFileSync } from 'node:fs';
import { expect, type Page } from '@playwright/test';
import { firstVisit, goTo, openExample as openExampleByName } from './room';
import { openMade } from './stored';

/** Opens the six-block example and goes to a step. */
export async function openExample(page: Page, step: string): Promise<void> {
  await firstVisit(page);
  await goTo(page, step);
}

/** Opens an example by its file and goes to a step. A newcomer finds the small one open, which spares opening it. */
export async function openDemo(page: Page, file: string, step: string): Promise<void> {
  if (file === 'harbour-reading-corner') await firstVisit(page);
  else await openMade(page, file, () => openDemoFile(page, file));
  await goTo(page, step);
}

/** Opens an example by its file, whatever is open. */
export async function openDemoFile(page: Page, file: string): Promise<void> {
  await page.getByRole('button', { name: /^Quilt:/ }).click();
  await page.setInputFiles('input[type=file]', `demo-data/${file}.json`);
  await expect(page.getByRole('dialog')).toBeHidden({ timeout: 15_000 });
}

/** Opens one of the examples by the start of its name. */
export async function startWith(page: Page, example: string): Promise<void> {
  await openMade(page, `example ${example}`, () => openExampleByName(page, example));
}

/** Opens an empty quilt at the ways to begin. */
export async function emptyQuilt(page: Page): Promise<void> {
  await openMade(page, 'an empty quilt', async () => {
    await page.getByRole('button', { name: /^Quilt:/ }).click();
    await page.getByRole('button', { name: 'New quilt' }).click();
    await expect(page.getByRole('dialog')).toBeHidden();
  });
  await expect(page.getByRole('heading', { name: 'Begin the quilt' })).toBeVisible();
}

/** Opens the example that has strips and nothing sewn, its strip sets made, at that step. */
export async function setsFromStrips(page: Page): Promise<void> {
  await openMade(page, 'sets from strips', async () => {
    await openDemoFile(page, 'kiln-shed');
    await goTo(page, 'Strip sets');
    await page.getByRole('button', { name: 'Make sets' }).click();
    await expect(page.getByText(/\d+ sets made, /)).toBeVisible();
  });
  await goTo(page, 'Strip sets');
}

/** The first example before any set was sewn or cut. */
export function planned(): string {
  const quilt = JSON.parse(readFileSync('demo-data/harbour-reading-corner.json', 'utf8'));
  for (const set of quilt.stripSets) Object.assign(set, { progress: 'planned', cut: null });
  return JSON.stringify({ ...quilt, id: 'only-planned' });
}

/** The words of the next undo. */
export async function nextUndo(page: Page): Promise<string> {
  const button = page.getByRole('toolbar', { name: 'Undo and redo' }).getByRole('button').first();
  return (await button.getAttribute('aria-label')) ?? '';
}

// What every spec of the workshop does first: the small example, which a newcomer finds open, and a step of the work.
import { expect, type Page } from '@playwright/test';
import { firstVisit, goTo } from './room';

/** Opens the six-block example and goes to a step. */
export async function openExample(page: Page, step: string): Promise<void> {
  await firstVisit(page);
  await goTo(page, step);
}

/** Opens an example by its file and goes to a step. A newcomer finds the small one open, which spares opening it. */
export async function openDemo(page: Page, file: string, step: string): Promise<void> {
  await firstVisit(page);
  if (file !== 'harbour-reading-corner') {
    await page.getByRole('button', { name: /^Quilt:/ }).click();
    await page.setInputFiles('input[type=file]', `demo-data/${file}.json`);
    await expect(page.getByRole('dialog')).toBeHidden({ timeout: 15_000 });
  }
  await goTo(page, step);
}

/** The words of the next undo. */
export async function nextUndo(page: Page): Promise<string> {
  const button = page.getByRole('toolbar', { name: 'Undo and redo' }).getByRole('button').first();
  return (await button.getAttribute('aria-label')) ?? '';
}

// What every spec of the workshop does first: the small example opened from its file, and a step of the work.
import { expect, type Page } from '@playwright/test';

/** Opens the six-block example as a project of its own and goes to a step. */
export async function openExample(page: Page, step: string): Promise<void> {
  await page.goto('/');
  await page.locator('.project-button').click();
  await page.setInputFiles('input[type=file]', 'demo-data/harbour-reading-corner.json');
  await expect(page.getByRole('dialog')).toBeHidden();
  await page.getByRole('navigation', { name: 'Order of work' }).getByRole('button', { name: step }).click();
}

/** The words of the next undo. */
export async function nextUndo(page: Page): Promise<string> {
  const button = page.getByRole('toolbar', { name: 'Undo and redo' }).getByRole('button').first();
  return (await button.getAttribute('aria-label')) ?? '';
}

// What axe-core finds on the page as it stands, in words. It is put into a page once, and only its faults come back: the lists of what it
// passed are long, and nobody reads them.
import type { Page } from '@playwright/test';
import axe from 'axe-core';
import { type Asked, putRoundAxe, type WithAxe } from './axeInPage';

/** Every rule of WCAG 2.2 up to AA. */
export const AA: axe.RunOnly = {
  type: 'tag',
  values: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'],
};
/** What depends on the scheme of colours; all other rules hold in one scheme as in the other. */
export const RULES_OF_COLOUR = {
  type: 'rule',
  values: ['color-contrast', 'link-in-text-block'],
} satisfies axe.RunOnly;

/** Faults of the page, one line each. */
export async function faultsOf(page: Page, asked: Asked = {}): Promise<string[]> {
  const question = { ...asked, ofColour: asked.only === RULES_OF_COLOUR };
  const ask = () =>
    page.evaluate((all) => (globalThis as unknown as WithAxe).faultsOfPage?.(all) ?? null, question);
  const faults = await ask();
  if (faults) return faults;
  await page.evaluate(axe.source);
  await page.evaluate(putRoundAxe);
  return (await ask())!;
}

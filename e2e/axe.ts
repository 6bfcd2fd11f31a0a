// What axe-core finds on the page as it stands, in words. It is put into a page once, and only its faults come back: the lists of what it
// passed are long, and nobody reads them.
import type { Page } from '@playwright/test';
import axe from 'axe-core';
import { paint } from './guarded';

/** Every rule of WCAG 2.2 up to AA. */
export const AA: axe.RunOnly = {
  type: 'tag',
  values: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'],
};
/** What depends on the scheme of colours; all other rules hold in one scheme as in the other. */
export const RULES_OF_COLOUR: axe.RunOnly = {
  type: 'rule',
  values: ['color-contrast', 'link-in-text-block'],
};

interface Asked {
  /** Parts of the page, by selector; without them, all of it. */
  readonly within?: readonly string[];
  /** Some of the rules; without them, all that axe has on, its advice on good practice among them. */
  readonly only?: axe.RunOnly;
}

/** Faults of the page, one line each. */
export async function faultsOf(page: Page, asked: Asked = {}): Promise<string[]> {
  await paint(page);
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(axe.source);
  return page.evaluate(
    async ({ within, only }) => {
      const { axe: inPage } = globalThis as unknown as { axe: typeof axe };
      const where = within ? { include: within.map((one) => [one]) } : document;
      const { violations } = await inPage.run(where, {
        resultTypes: ['violations'],
        ...(only ? { runOnly: only } : {}),
      });
      return violations.map(
        ({ id, nodes }) =>
          `${id}: ${nodes.map((node) => `${node.target.join(' ')} ${node.failureSummary ?? ''}`).join(' | ')}`,
      );
    },
    { within: asked.within, only: asked.only },
  );
}

/** Faults in light, and those of colour in dark; leaves the page light. */
export async function faultsInBoth(page: Page, asked: Asked = {}): Promise<string[]> {
  const light = await faultsOf(page, asked);
  await page.emulateMedia({ colorScheme: 'dark' });
  const dark = await faultsOf(page, { ...asked, only: RULES_OF_COLOUR });
  await page.emulateMedia({ colorScheme: 'light' });
  return [...light.map((fault) => `light: ${fault}`), ...dark.map((fault) => `dark: ${fault}`)];
}

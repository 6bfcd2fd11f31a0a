// Browser zoom, narrow windows and larger text: everything is reached, nothing lies under anything (WCAG 2.2, 1.4.10, 1.4.4, 1.4.12).
import { expect, type Page, test } from '@playwright/test';
import { STATES, through } from './states';
import { outOfReach, resize, SIZES, type Size } from './within-reach';

const DESK: Size = [1440, 900];

/** Faults of the page at each of the sizes, each with its size. */
async function faultsAt(page: Page, sizes: readonly Size[]): Promise<string[]> {
  const faults: string[] = [];
  for (const size of sizes) {
    await resize(page, size);
    for (const fault of await outOfReach(page)) faults.push(`${size.join(' × ')}: ${fault}`);
  }
  await resize(page, DESK);
  return faults;
}

test('whatever is on show is reached at every zoom and width', async ({ page }) => {
  test.setTimeout(180_000);
  await through(page, STATES, async ({ name }) => {
    expect.soft(await faultsAt(page, SIZES), name).toEqual([]);
  });
});

// Browser zoom, narrow windows and larger text: everything is reached, nothing lies under anything (WCAG 2.2, 1.4.10, 1.4.4, 1.4.12).
import { expect, type Page, test } from './guarded';
import { STATES, through } from './states';
import { outOfReach, resize, SIZES, type Size, TEXT_SPACED, TEXT_TWICE, withRules } from './within-reach';

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
  test.setTimeout(360_000);
  await through(page, STATES, async ({ name }) => {
    expect.soft(await faultsAt(page, SIZES), name).toEqual([]);
  });
});

for (const [words, rules, sizes] of [
  ['text twice as large', TEXT_TWICE, [[1280, 800]]],
  [
    'text spaced out',
    TEXT_SPACED,
    [
      [320, 256],
      [390, 844],
    ],
  ],
] as const)
  test(`with ${words} nothing is cut off and everything is reached`, async ({ page }) => {
    test.setTimeout(360_000);
    await through(page, STATES, async ({ name }) => {
      const away = await withRules(page, rules);
      expect.soft(await faultsAt(page, sizes), name).toEqual([]);
      await away();
    });
  });

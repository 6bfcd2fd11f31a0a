// What a screen reader calls things: every control has a name, and on its step a name of its own; tables and regions are named. Every fraction is set as one.
import { plainFractions } from './fractions';
import { expect, type Page, test } from './guarded';
import { nameFaults } from './nameFaults';
import { openDemoFile } from './quilt';
import { allThere, block, button, firstVisit, goTo, openExample, openPart, still, unfold } from './room';
import { PARTS, STEPS } from './states';
import { readTree } from './tree';

/** Every control on show, in folds too, has a name of its own, and every fraction is set as one. */
async function hold(page: Page, what: string): Promise<void> {
  await unfold(page);
  await allThere(page);
  await still(page, 60);
  expect(nameFaults(await readTree(page)), what).toEqual([]);
  expect(await plainFractions(page), what).toEqual([]);
}

/** Opens what is listed on a step, and its ways of counting fabric; every fraction there is set as one. */
async function holdOpened(page: Page, what: string): Promise<void> {
  const rows = page.locator('.laid-piece > button, .lay-name, .cut-name');
  for (const row of [rows.nth(1), rows.nth(0)]) if ((await row.count()) > 0) await row.click();
  for (const name of [
    'Change strips',
    'Add fabric on hand',
    'Work out what to cut',
    'How large a top it makes',
  ]) {
    const opener = page.getByRole('button', { name, exact: true });
    if ((await opener.count()) > 0) await opener.click();
  }
  await unfold(page);
  expect(await plainFractions(page), `${what}, opened`).toEqual([]);
}

// whatever-is-on-show.spec.ts holds the first quilt to the same, step by step, and what else opens.
test('names and fractions of what opens, of every step of a quilt with nothing sewn with all its folds open, and of a large one', async ({
  page,
}) => {
  test.setTimeout(300_000);
  await firstVisit(page);
  await test.step('what opens: ways of counting fabric, layouts; a block tells where it hangs, how it lies and what clashes', async () => {
    await goTo(page, 'Fabrics');
    await page.locator('.laid-pieces button').first().click();
    for (const name of ['Work out what to cut', 'How large a top', 'Add fabric on hand']) {
      await button(page, name).click();
      await hold(page, name);
    }
    await goTo(page, 'Wall');
    await expect(block(page, 1)).toHaveAccessibleName(
      /^Block 1, row 1, column 1(, turned \d+°)?; (\d+ clash(es)?(, with blocks? [\d, and]+)?|no clash)$/,
    );
    await button(page, 'Show several to choose from').click();
    await expect(page.getByRole('heading', { name: 'Layouts to choose from' })).toBeVisible({
      timeout: 60_000,
    });
    await hold(page, 'layouts');
  });
  await test.step('a quilt with nothing sewn', async () => {
    await openExample(page, 'The kiln shed');
    for (const step of STEPS.slice(0, -1)) {
      await goTo(page, step);
      await hold(page, step);
      await holdOpened(page, step);
    }
    await goTo(page, 'Finishing');
    for (const part of PARTS) {
      await openPart(page, part);
      await hold(page, part);
    }
  });
  await test.step('a large quilt: every fraction is set as one', async () => {
    await openDemoFile(page, 'keepers-winter');
    for (const step of STEPS) {
      await goTo(page, step);
      await holdOpened(page, step);
    }
  });
});

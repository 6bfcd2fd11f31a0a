// What a screen reader calls things: every control has a name, and on its step a name of its own; tables and regions are named.
import { expect, type Page, test } from './guarded';
import { block, button, firstVisit, goTo, openExample, openPart } from './room';
import { CONTROLS, openTree, type Part } from './tree';

/** Nodes that are read out on entering, so that a field in one is told from a field in another. */
const ROUND = new Set(['region', 'form', 'group', 'radiogroup', 'dialog', 'row', 'table']);
/** What stands by itself: it has a name of its own wherever it is. */
const ALONE = new Set(['button', 'link']);
/** A hidden button at each end of what lies over the page, by which a screen reader leaves it. */
const LEAVES = 'Dismiss';

function faultsOf(parts: readonly Part[]): string[] {
  const seen = new Map<string, number>();
  const faults: string[] = [];
  for (const { role, name, within } of parts) {
    if (role === 'table' && name === '') faults.push('a table without a name');
    if (!CONTROLS.has(role) || name === LEAVES) continue;
    if (name === '') faults.push(`${role} without a name in ${within.at(-1)?.name}`);
    if (/\b(\w{3,}) \1\b/i.test(name)) faults.push(`a word twice: ${name}`);
    const round = ALONE.has(role) ? [] : within.filter((one) => ROUND.has(one.role)).map((one) => one.name);
    const key = [...round, name].join(' > ');
    seen.set(key, (seen.get(key) ?? 0) + 1);
  }
  return [
    ...faults,
    ...[...seen].filter(([, count]) => count > 1).map(([key, count]) => `${count} times: ${key}`),
  ];
}

async function names(page: Page) {
  const tree = await openTree(page);
  let counted = 0;
  return {
    hold: async (what: string) => {
      await page.evaluate(() => {
        for (const fold of document.querySelectorAll('details')) fold.open = true;
      });
      await page.waitForTimeout(500);
      const parts = await tree.all();
      counted += parts.filter(({ role }) => CONTROLS.has(role)).length;
      expect(faultsOf(parts), what).toEqual([]);
    },
    counted: () => counted,
  };
}

test('every step with all its folds open', async ({ page }) => {
  test.setTimeout(180_000);
  await firstVisit(page);
  const { hold, counted } = await names(page);
  for (const example of ['the first quilt', 'The kiln shed']) {
    if (example === 'The kiln shed') await openExample(page, example);
    for (const step of ['Fabrics', 'Strip sets', 'Wedges', 'Blocks', 'Wall']) {
      await goTo(page, step);
      await hold(`${example}, ${step}`);
    }
    await goTo(page, 'Finishing');
    const parts = await page
      .getByRole('navigation', { name: 'Parts of finishing' })
      .getByRole('button')
      .allTextContents();
    for (const part of parts) {
      await openPart(page, part);
      await hold(`${example}, ${part}`);
    }
  }
  console.log(counted(), 'names');
});

test('what opens: fabrics and forms, a set, cuts, a block, findings, layouts, the ways to begin', async ({
  page,
}) => {
  test.setTimeout(240_000);
  await firstVisit(page);
  const { hold, counted } = await names(page);
  await goTo(page, 'Fabrics');
  await page.locator('.laid-pieces button').first().click();
  for (const name of [
    'Add a fabric',
    'Work out what to cut',
    'How large a top',
    'Add fabric on hand',
    'Change strips',
  ]) {
    await button(page, name).click();
    await hold(name);
  }
  await goTo(page, 'Strip sets');
  await button(page, /^Set A:/).click();
  await hold('a set');
  await goTo(page, 'Wedges');
  await hold('its cuts');
  await goTo(page, 'Blocks');
  await button(page, 'Update progress').click();
  await hold('progress');
  await page.keyboard.press('Escape');
  await button(page, /^Block 2:/).click();
  await hold('a block');
  await page.keyboard.press('Escape');
  await button(page, 'Enter sewn blocks').click();
  await hold('sewn blocks');
  await goTo(page, 'Wall');
  for (const at of [0, 1]) {
    await page.locator('.findings > .finding > button').nth(at).click();
    await expect(page.locator('.mends input').first()).toBeVisible({ timeout: 60_000 });
    await hold(`finding ${at + 1}`);
  }
  await block(page, 1).press('Enter');
  await hold('a picked block');
  await button(page, 'Show several to choose from').click();
  await expect(page.getByRole('heading', { name: 'Layouts to choose from' })).toBeVisible({
    timeout: 60_000,
  });
  await hold('layouts');
  await button(page, /^Quilt:/).click();
  await hold('the menu');
  await button(page, 'New quilt').click();
  for (const way of [/^Start from strips/, /^Start from fabric/, /^Plan a size/, /^Open a roll/]) {
    await button(page, way).click();
    await hold(String(way));
  }
  console.log(counted(), 'names');
});

test('a block on the wall tells where it hangs, how it lies and what clashes', async ({ page }) => {
  await firstVisit(page);
  await goTo(page, 'Wall');
  await expect(block(page, 1)).toHaveAccessibleName(
    /^Block 1, row 1, column 1(, turned \d+°)?; (\d+ clash(es)?(, with blocks? [\d, and]+)?|no clash)$/,
  );
});

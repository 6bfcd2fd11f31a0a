// What a screen reader calls things: every control has a name, and on its step a name of its own; tables and regions are named.
import { expect, type Page, test } from './guarded';
import { nameFaults } from './nameFaults';
import { allThere, block, button, firstVisit, goTo, openExample, openPart, still } from './room';
import { PARTS } from './states';
import { CONTROLS, readTree } from './tree';

function names(page: Page) {
  let counted = 0;
  return {
    hold: async (what: string) => {
      await page.evaluate(() => {
        for (const fold of document.querySelectorAll('details')) fold.open = true;
      });
      await allThere(page);
      await still(page);
      const parts = await readTree(page);
      counted += parts.filter(({ role }) => CONTROLS.has(role)).length;
      expect(nameFaults(parts), what).toEqual([]);
    },
    counted: () => counted,
  };
}

// whatever-is-on-show.spec.ts holds the first quilt to the same, step by step; this one has strips and nothing sewn.
test('every step of a quilt with nothing sewn, with all its folds open', async ({ page }) => {
  test.setTimeout(180_000);
  await firstVisit(page);
  const { hold, counted } = names(page);
  await openExample(page, 'The kiln shed');
  for (const step of ['Fabrics', 'Strip sets', 'Wedges', 'Blocks', 'Wall']) {
    await goTo(page, step);
    await hold(step);
  }
  await goTo(page, 'Finishing');
  for (const part of PARTS) {
    await openPart(page, part);
    await hold(part);
  }
  console.log(counted(), 'names');
});

// Forms, sets, blocks and the menu are held there too.
test('what opens: ways of counting fabric, progress, a finding, layouts, the ways to begin', async ({
  page,
}) => {
  test.setTimeout(240_000);
  await firstVisit(page);
  const { hold, counted } = names(page);
  await goTo(page, 'Fabrics');
  await page.locator('.laid-pieces button').first().click();
  for (const name of ['Work out what to cut', 'How large a top', 'Add fabric on hand']) {
    await button(page, name).click();
    await hold(name);
  }
  await goTo(page, 'Blocks');
  await button(page, 'Update progress').click();
  await hold('progress');
  await goTo(page, 'Wall');
  await page.locator('.findings > .finding > button').nth(1).click();
  await expect(page.locator('.mends input').first()).toBeVisible({ timeout: 60_000 });
  await hold('a finding');
  await button(page, 'Show several to choose from').click();
  await expect(page.getByRole('heading', { name: 'Layouts to choose from' })).toBeVisible({
    timeout: 60_000,
  });
  await hold('layouts');
  await button(page, /^Quilt:/).click();
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

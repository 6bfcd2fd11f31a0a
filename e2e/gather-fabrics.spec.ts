// Step 1: fabrics and the strips cut from them.
import { AxeBuilder } from '@axe-core/playwright';
import { expect, type Page, test } from '@playwright/test';
import { firstVisit, goTo, undoButton } from './room';

async function newQuilt(page: Page): Promise<void> {
  await firstVisit(page);
  await page.getByRole('button', { name: /^Quilt:/ }).click();
  await page.getByRole('button', { name: 'New quilt' }).click();
  // The menu gives the focus back as it closes; a key pressed before that would open it again.
  await expect(page.getByRole('dialog')).toBeHidden();
  await expect(page.getByRole('heading', { level: 2, name: 'Fabrics' })).toBeVisible();
}

const list = (page: Page) => page.getByRole('region', { name: 'Fabrics', exact: true });
const strips = (page: Page) => page.getByRole('region', { name: 'Strips on hand' });

test.describe('gathering fabrics', () => {
  test('a newcomer is told what comes first, and adds two fabrics by keyboard alone', async ({ page }) => {
    await newQuilt(page);
    await expect(page.getByText('Start here: add the fabrics you want to sew with.')).toBeVisible();
    await page.getByRole('button', { name: 'Add a fabric' }).press('Enter');
    await expect(page.getByRole('textbox', { name: 'Name' })).toBeFocused();
    await page.keyboard.type('Rust');
    await page.keyboard.press('Enter');
    await expect(list(page).getByRole('button', { name: /Rust Value \d+/ })).toBeVisible();
    await expect(page.getByRole('textbox', { name: 'Name' })).toBeFocused();
    await page.keyboard.type('Slate');
    await page.keyboard.press('Enter');
    await expect(undoButton(page)).toHaveAccessibleName('Undo: add the fabric Slate');
    await page.getByRole('button', { name: 'Done' }).focus();
    await page.keyboard.press('Enter');
    await expect(page.getByRole('button', { name: 'Add a fabric' })).toBeFocused();
    await expect(list(page).getByRole('listitem')).toHaveCount(3);
  });

  test('a colour that is none is refused where it was written, and what was written stays', async ({
    page,
  }) => {
    await newQuilt(page);
    await page.getByRole('button', { name: 'Add a fabric' }).click();
    const colour = page.getByRole('textbox', { name: 'Colour of the cloth', exact: true });
    await colour.fill('rusty');
    await page.getByRole('textbox', { name: 'Name' }).fill('Rust');
    await expect(page.getByText('Write a colour as # and six figures or letters a to f')).toBeVisible();
    await expect(colour).toHaveValue('rusty');
    await colour.fill('a53');
    await colour.press('Tab');
    await expect(colour).toHaveValue('#aa5533');
    await expect(page.getByText('Write a colour as #')).toBeHidden();
  });

  test('a print is chosen from cloth and drawn with the colours it is printed with', async ({ page }) => {
    await newQuilt(page);
    await page.getByRole('button', { name: 'Add a fabric' }).click();
    await page.getByText('printed', { exact: true }).click();
    await page.getByRole('radio', { name: 'Gingham' }).check({ force: true });
    await page.getByRole('textbox', { name: 'Printed with', exact: true }).fill('#123456');
    await page.getByRole('textbox', { name: 'Name' }).fill('Kitchen check');
    await page.getByRole('button', { name: 'Add this fabric' }).click();
    await expect(list(page).getByRole('button', { name: /Kitchen check/ })).toBeVisible();
    const drawn = await page.locator('defs pattern').evaluateAll((all) => all.map((one) => one.innerHTML));
    expect(drawn.some((one) => one.includes('#123456'))).toBe(true);
  });

  test('a fabric in use is not removed; another takes its place everywhere, then it goes', async ({
    page,
  }) => {
    await firstVisit(page);
    await page.getByRole('button', { name: /^Quilt:/ }).click();
    await page.setInputFiles('input[type=file]', 'demo-data/plum-orchard.json');
    await expect(page.getByRole('dialog')).toBeHidden({ timeout: 15_000 });
    await goTo(page, 'Fabrics');
    const rows = list(page).getByRole('listitem');
    const count = await rows.count();
    const used = rows.filter({ hasText: /\bsets?\b/ }).first();
    await used.getByRole('button').first().click();
    const name = await page.getByRole('textbox', { name: 'Name' }).inputValue();
    await page.getByRole('button', { name: 'Remove', exact: true }).click();
    await expect(page.getByRole('alert').filter({ hasText: `${name} is sewn into strip set` })).toBeVisible();
    await page.getByRole('button', { name: /Put another in its place/ }).click();
    await page.getByRole('option').filter({ hasNotText: name }).last().click();
    await page.getByRole('button', { name: 'Swap it everywhere' }).click();
    await expect(undoButton(page)).toHaveAccessibleName(new RegExp(`in place of ${name}$`));
    await page.getByRole('button', { name: 'Remove', exact: true }).click();
    await expect(rows).toHaveCount(count - 1);
  });

  test('light to dark puts the lightest cloth first', async ({ page }) => {
    await firstVisit(page);
    await goTo(page, 'Fabrics');
    await page.getByText('light to dark', { exact: true }).click();
    const values = await list(page)
      .getByText(/^Value \d+/)
      .evaluateAll((all) => all.map((one) => Number(/\d+/.exec(one.textContent ?? '')?.[0])));
    expect(values.length).toBeGreaterThan(5);
    expect(values).toEqual(values.toSorted((one, other) => other - one));
  });
});

test.describe('strips on hand', () => {
  test('precut strips are written down and split lengthwise', async ({ page }) => {
    await newQuilt(page);
    await page.getByRole('button', { name: 'Add strips' }).click();
    await page.getByRole('button', { name: 'Add these strips' }).click();
    await expect(page.getByText('Choose the fabric these strips are of.')).toBeVisible();
    await strips(page)
      .getByRole('button', { name: /Fabric/ })
      .click();
    await page.getByRole('option', { name: 'Background' }).click();
    await page.getByRole('button', { name: /^2.1\/2"$/ }).click();
    await page.getByRole('textbox', { name: 'Strips' }).fill('8');
    await page.getByRole('button', { name: 'Add these strips' }).click();
    await page.getByRole('button', { name: 'Done' }).click();
    await page.getByRole('button', { name: /Change the strips of Background cut 2 1\/2" wide/ }).click();
    await page.getByRole('textbox', { name: 'How many' }).fill('6');
    await page.getByRole('textbox', { name: 'How many' }).press('Enter');
    await page.getByRole('button', { name: /Split 6 strips into 1.1\/2" \+ 1"/ }).click();
    await expect(undoButton(page)).toHaveAccessibleName('Undo: split 6 strips lengthwise');
    const cells = await strips(page).locator('tbody tr').allInnerTexts();
    expect(cells.some((row) => /^1"\s+40"\s+6\s/.test(row))).toBe(true);
    expect(cells.some((row) => /^2.1\/2"\s+40"\s+2\s/.test(row))).toBe(true);
    await expect(strips(page)).toContainText('14 strips');
  });

  test('what to cut for six blocks is worked out and written down', async ({ page }) => {
    await firstVisit(page);
    await goTo(page, 'Fabrics');
    const shown = await strips(page)
      .getByText(/^\d+ strips$/)
      .textContent();
    const before = Number(/\d+/.exec(shown ?? '')?.[0]);
    await page.getByRole('button', { name: 'Work out what to cut' }).click();
    const cut = page.getByRole('button', { name: /^Cut: write down \d+ strips$/ });
    const planned = Number(/\d+/.exec((await cut.textContent()) ?? '')?.[0]);
    expect(planned).toBeGreaterThan(10);
    await cut.click();
    await expect(strips(page).getByText(`${before + planned} strips`)).toBeVisible();
  });
});

test('the fabrics step has no barrier that axe finds, and nothing sticks out of the panel @phone @tablet', async ({
  page,
}) => {
  await firstVisit(page);
  await goTo(page, 'Fabrics');
  await list(page).getByRole('listitem').nth(2).getByRole('button').first().click();
  const name = page.getByRole('textbox', { name: 'Name' });
  await name.fill(
    'A name as long as a shop writes it on the bolt, third shelf from the left, second row, at the window',
  );
  await name.press('Enter');
  const { violations } = await new AxeBuilder({ page }).include('.panel').analyze();
  expect(violations.map((one) => `${one.id}: ${one.nodes[0]?.html}`)).toEqual([]);
  const over = await page.locator('.panel').evaluate((panel) => panel.scrollWidth - panel.clientWidth);
  expect(over).toBeLessThanOrEqual(0);
});

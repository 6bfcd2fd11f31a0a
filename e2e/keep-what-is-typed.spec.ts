// What a person has typed is kept until it is used, refused where it was given with a way on, and read in its own direction.
import { expect, type Page, test } from './guarded';
import { openDemo } from './quilt';
import { firstVisit, goTo, undoButton } from './room';

const name = (page: Page) => page.getByRole('textbox', { name: 'Name', exact: true });

test('a fabric half made up is there again after another step, until it is cleared', async ({ page }) => {
  await firstVisit(page);
  await goTo(page, 'Fabrics');
  await page.getByRole('button', { name: 'Add a fabric' }).click();
  await name(page).fill('Heather');
  await page.getByText('printed', { exact: true }).click();
  await page.getByRole('radio', { name: 'Gingham' }).check({ force: true });
  await goTo(page, 'Wall');
  await goTo(page, 'Fabrics');
  await expect(name(page)).toHaveValue('Heather');
  await expect(name(page)).not.toBeFocused();
  await expect(page.getByRole('radio', { name: 'Gingham' })).toBeChecked();
  await page.getByRole('button', { name: 'Clear' }).click();
  await expect(name(page)).toHaveValue('');
  await expect(undoButton(page)).toBeDisabled();
});

test('a set’s letter that is too long is refused with its length and stays as it was typed', async ({
  page,
}) => {
  await firstVisit(page);
  await goTo(page, 'Strip sets');
  await page.getByRole('button', { name: /^Set A: / }).click();
  const letter = page.getByRole('textbox', { name: 'Letter' });
  await letter.fill('AAAAAA');
  await letter.press('Tab');
  await expect(page.getByText('At most 4 characters; it has 6.')).toBeVisible();
  await expect(letter).toHaveValue('AAAAAA');
});

test('a set too short for a wedge says which length the first one needs', async ({ page }) => {
  await openDemo(page, 'plum-orchard', 'Strip sets');
  await page.getByRole('button', { name: 'Add a set by hand' }).click();
  const length = page.getByRole('textbox', { name: /Usable length/ });
  await length.fill('5');
  await length.press('Enter');
  await expect(page.getByText(/No wedge fits on this length; the first one needs 6.9\/16"/)).toBeVisible();
  await length.fill('6 9/16');
  await length.press('Enter');
  await expect(page.getByText(/No wedge fits/)).toBeHidden();
});

test('another number of wedges that cut sets refuse leads to a new quilt from the same cloth', async ({
  page,
}) => {
  await firstVisit(page);
  await goTo(page, 'Wedges');
  await page.getByText('6', { exact: true }).first().click();
  await expect(page.getByText('Set A is cut into wedges of 8 to the block.').first()).toBeVisible();
  await page.getByRole('button', { name: 'New quilt from these fabrics, 6 wedges' }).click();
  await expect(page.getByRole('button', { name: /^Quilt: .*, 6 wedges/ })).toBeVisible();
  await expect(page.getByRole('radio', { name: '6', exact: true })).toBeChecked();
  await goTo(page, 'Fabrics');
  await expect(page.getByRole('button', { name: /Quay brick check Value/ })).toBeVisible();
});

test('more blocks than the wedges fill are added knowingly', async ({ page }) => {
  await firstVisit(page);
  await goTo(page, 'Blocks');
  const count = page.getByRole('textbox', { name: 'Blocks to add' });
  await count.fill('3');
  await count.press('Tab');
  await expect(page.getByText(/^3 of these will have empty places until more wedges are cut/)).toBeVisible();
});

test('a name that reads from right to left keeps to itself among other words', async ({ page }) => {
  await firstVisit(page);
  await goTo(page, 'Fabrics');
  const hebrew = 'תכלת 12';
  await page.getByRole('button', { name: /^Night ink, tiny stars Value/ }).click();
  await name(page).fill(hebrew);
  await name(page).press('Enter');
  await expect(undoButton(page)).toBeEnabled();
  const strip = page.getByRole('region', { name: 'Fabrics in the top, light to dark' });
  const label = await strip.getByRole('button', { name: /תכלת/ }).getAttribute('aria-label');
  expect(label).toContain(`\u2068${hebrew}\u2069:`);
  await expect(page.locator('.laid-name', { hasText: hebrew })).toBeVisible();
});

test('the first two stops of the keyboard skip to the step and to the wall @phone', async ({ page }) => {
  await firstVisit(page);
  // Nothing takes the focus by itself in the meantime.
  await page.waitForTimeout(600);
  await page.keyboard.press('Tab');
  const step = page.getByRole('button', { name: 'To the step' });
  await expect(step).toBeFocused();
  await expect(step).toBeInViewport();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 2, name: 'Wall' })).toBeFocused();
  await page.getByRole('button', { name: 'To the wall' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: /^Block 1, row 1/ })).toBeFocused();
});

test('two kept quilts of one name are told apart by when they were changed', async ({ page }) => {
  await firstVisit(page);
  for (let times = 0; times < 2; times += 1) {
    await page.getByRole('button', { name: /^Quilt:/ }).click();
    await page.getByRole('button', { name: 'New quilt', exact: true }).click();
    await expect(page.getByRole('dialog')).toBeHidden();
  }
  await page.getByRole('button', { name: /^Quilt:/ }).click();
  const kept = page.getByRole('button', { name: /^New quilt 0 blocks · changed \d{4}-\d\d-\d\d \d\d:\d\d/ });
  await expect(kept).toBeVisible();
});

test('a phone on its side shows all six steps and room for panel and wall', async ({ page }) => {
  await page.setViewportSize({ width: 844, height: 390 });
  await firstVisit(page);
  await expect(page.getByRole('button', { name: /^Finishing/ })).toBeInViewport({ ratio: 1 });
  // Bars with targets of 44 px leave the wall a little less; it can fill the screen.
  for (const [place, height] of [
    ['.panel', 240],
    ['.wall', 220],
  ] as const) {
    const box = (await page.locator(place).first().boundingBox())!;
    expect(box.width).toBeGreaterThan(280);
    expect(box.height).toBeGreaterThan(height);
  }
});

test('what is being typed when the page is loaded again is taken, and the step and a half-filled form are there', async ({
  page,
}) => {
  await firstVisit(page);
  await goTo(page, 'Strip sets');
  await page.getByRole('button', { name: 'Add a set by hand' }).click();
  await page.getByRole('textbox', { name: /^Usable length/ }).fill('33');
  await page.reload();
  await expect(page.getByRole('heading', { level: 2, name: 'Strip sets' })).toBeVisible();
  await page
    .getByRole('button', { name: /^Set \w+: / })
    .last()
    .click();
  await expect(page.getByRole('textbox', { name: /^Usable length/ })).toHaveValue('33');
  await goTo(page, 'Fabrics');
  await page.getByRole('button', { name: 'Add a fabric' }).click();
  await name(page).fill('Heather at du');
  await page.reload();
  await expect(name(page)).toHaveValue('Heather at du');
});

test('leaving the page asks first while a field holds what cannot be used', async ({ page }) => {
  await firstVisit(page);
  await goTo(page, 'Wedges');
  await page.getByRole('textbox', { name: /^Cut height/ }).fill('14 1/0');
  const asked = page.waitForEvent('dialog');
  await page.close({ runBeforeUnload: true });
  const dialog = await asked;
  expect(dialog.type()).toBe('beforeunload');
  await dialog.dismiss();
  await expect(page.getByText('Write a length such as 7 1/2 or 7.5.')).toBeVisible();
  await expect(page.getByRole('textbox', { name: /^Cut height/ })).toHaveValue('14 1/0');
});

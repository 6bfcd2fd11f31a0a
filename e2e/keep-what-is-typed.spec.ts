// What a person has typed is kept until it is used, refused where it was given with a way on, and read in its own direction.
import { expect, type Page, test } from './guarded';
import { firstVisit, goTo, undoButton } from './room';

const name = (page: Page) => page.getByRole('textbox', { name: 'Name', exact: true });

/** The first two stops of a page just opened, where nothing has the focus yet. */
async function skipByKeys(page: Page): Promise<void> {
  await page.keyboard.press('Tab');
  const step = page.getByRole('button', { name: 'To the step' });
  await expect(step).toBeFocused();
  await expect(step).toBeInViewport();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 2, name: 'Wall' })).toBeFocused();
  await page.getByRole('button', { name: 'To the wall' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: /^Block 1, row 1/ })).toBeFocused();
}

test('the first two stops of the keyboard skip to the step and to the wall @phone @touch', async ({
  page,
}) => {
  await firstVisit(page);
  // Nothing takes the focus by itself in the meantime.
  await page.waitForTimeout(600);
  await skipByKeys(page);
});

test('what is typed on the steps is kept until it is used, refused where it was given, and there after a reload', async ({
  page,
}) => {
  await firstVisit(page);
  await test.step('the first two stops of the keyboard skip to the step and to the wall', async () => {
    await page.waitForTimeout(600);
    await skipByKeys(page);
  });
  await test.step('a phone on its side shows all six steps and room for panel and wall', async () => {
    const desk = page.viewportSize()!;
    await page.setViewportSize({ width: 844, height: 390 });
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
    await page.setViewportSize(desk);
  });
  await test.step('more blocks than the wedges fill are added knowingly', async () => {
    await goTo(page, 'Blocks');
    const count = page.getByRole('textbox', { name: 'Blocks to add' });
    await count.fill('3');
    await count.press('Tab');
    await expect(
      page.getByText(/^3 of these will have empty places until more wedges are cut/),
    ).toBeVisible();
  });
  await test.step('a fabric half made up is there again after another step, until it is cleared', async () => {
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
  await test.step('a form half filled in is there after a reload', async () => {
    await name(page).fill('Heather at du');
    await page.reload();
    await expect(name(page)).toHaveValue('Heather at du');
    await page.getByRole('button', { name: 'Clear' }).click();
  });
  await test.step('a name that reads from right to left keeps to itself among other words', async () => {
    const hebrew = 'תכלת 12';
    await page.getByRole('button', { name: /^Night ink, tiny stars Value/ }).click();
    const own = page.getByRole('region', { name: /^The fabric/ }).getByRole('textbox', { name: 'Name' });
    await own.fill(hebrew);
    await own.press('Enter');
    await expect(undoButton(page)).toBeEnabled();
    const strip = page.getByRole('region', { name: 'Fabrics in the top, light to dark' });
    const label = await strip.getByRole('button', { name: /תכלת/ }).getAttribute('aria-label');
    expect(label).toContain(`\u2068${hebrew}\u2069:`);
    await expect(page.locator('.laid-name', { hasText: hebrew })).toBeVisible();
  });
  await test.step('a set’s letter that is too long is refused with its length and stays as it was typed', async () => {
    await goTo(page, 'Strip sets');
    await page.getByRole('button', { name: /^Set A: / }).click();
    const letter = page.getByRole('textbox', { name: 'Letter' });
    await letter.fill('AAAAAA');
    await letter.press('Tab');
    await expect(page.getByText('At most 4 characters; it has 6.')).toBeVisible();
    await expect(letter).toHaveValue('AAAAAA');
  });
  await test.step('a set too short for a wedge says which length the first one needs', async () => {
    await page.getByRole('button', { name: 'Add a set by hand' }).click();
    const length = page.getByRole('textbox', { name: /Usable length/ });
    await length.fill('5');
    await length.press('Enter');
    await expect(page.getByText(/No wedge fits on this length; the first one needs 6.9\/16"/)).toBeVisible();
    await length.fill('6 9/16');
    await length.press('Enter');
    await expect(page.getByText(/No wedge fits/)).toBeHidden();
  });
  await test.step('what is being typed when the page is loaded again is taken, and the step is there', async () => {
    await page.getByRole('textbox', { name: /^Usable length/ }).fill('33');
    await page.reload();
    await expect(page.getByRole('heading', { level: 2, name: 'Strip sets' })).toBeVisible();
    await page
      .getByRole('button', { name: /^Set \w+: / })
      .last()
      .click();
    await expect(page.getByRole('textbox', { name: /^Usable length/ })).toHaveValue('33');
  });
  await test.step('leaving the page asks first while a field holds what cannot be used', async () => {
    await goTo(page, 'Wedges');
    const height = page.getByRole('textbox', { name: /^Cut height/ });
    await height.fill('14 1/0');
    const asked = page.waitForEvent('dialog');
    await page.close({ runBeforeUnload: true });
    const dialog = await asked;
    expect(dialog.type()).toBe('beforeunload');
    await dialog.dismiss();
    await expect(page.getByText('Write a length such as 7 1/2 or 7.5.')).toBeVisible();
    await expect(height).toHaveValue('14 1/0');
    await height.press('Escape');
  });
  await test.step('another number of wedges that cut sets refuse leads to a new quilt from the same fabrics', async () => {
    await page.getByRole('radio', { name: '6', exact: true }).click({ force: true });
    await expect(page.getByText('Set A is cut into wedges of 8 to the block.').first()).toBeVisible();
    await page.getByRole('button', { name: 'New quilt from these fabrics, 6 wedges' }).click();
    await expect(page.getByRole('button', { name: /^Quilt: .*, 6 wedges/ })).toBeVisible();
    await expect(page.getByRole('radio', { name: '6', exact: true })).toBeChecked();
    await goTo(page, 'Fabrics');
    await expect(page.getByRole('button', { name: /Quay brick check Value/ })).toBeVisible();
  });
});

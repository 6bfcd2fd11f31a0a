// Escape closes what was opened last, one thing at a time, Back what lies over the page; and undo in a field and of the quilt agree,
// in every field of a number or a length.
import { writeProject } from '../src/model/reading/read';
import { demo } from '../tests/demo';
import { expect, type Locator, type Page, test } from './guarded';
import { button, firstVisit, foot, goTo, openExample, openFile, openPart, still, undoButton } from './room';

/** Opens things in order, then holds that each Escape closes the last one that is left and no other. */
async function opensAndCloses(
  page: Page,
  things: readonly { open: Locator; there: Locator }[],
): Promise<void> {
  for (const { open, there } of things) {
    await open.focus();
    await page.keyboard.press('Enter');
    await expect(there).toBeVisible({ timeout: 60_000 });
  }
  // The hint of a button that has the focus would be what was opened last.
  await still(page);
  await page.locator('.panel h2').focus();
  for (let left = things.length; left > 0; left -= 1) {
    await page.keyboard.press('Escape');
    await expect(things[left - 1]!.there).toBeHidden();
    for (const { there } of things.slice(0, left - 1)) await expect(there).toBeVisible();
    await expect.poll(() => page.evaluate(() => document.activeElement === document.body)).toBe(false);
    // What closed may still give its focus on, to a button with a hint.
    await still(page);
    await page.locator('.panel h2').focus();
  }
}

test('Escape closes what was opened last on every step, and Back a dialog before it goes a step back', async ({
  page,
}) => {
  await firstVisit(page);
  await test.step('Fabrics: a fabric, a new one, what to cut, a fold, the strips', async () => {
    await goTo(page, 'Fabrics');
    const cutting = page.getByRole('region', { name: 'What to cut' });
    await opensAndCloses(page, [
      { open: button(page, 'Add a fabric'), there: page.getByRole('form', { name: 'A new fabric' }) },
      { open: button(page, 'Work out what to cut'), there: cutting },
      {
        open: cutting.locator('summary', { hasText: 'fabrics' }).first(),
        there: cutting.getByRole('checkbox').first(),
      },
      { open: button(page, 'Change strips'), there: page.getByRole('region', { name: 'Enter strips' }) },
    ]);
  });
  await test.step('Strip sets and Blocks: a set, the question before a set goes, progress, a block', async () => {
    await goTo(page, 'Strip sets');
    await opensAndCloses(page, [
      { open: button(page, /^Set A:/), there: page.getByRole('region', { name: 'Set A' }).first() },
      { open: button(page, /^Remove set A/), there: button(page, 'Remove it anyway') },
    ]);
    await goTo(page, 'Blocks');
    await opensAndCloses(page, [
      { open: button(page, 'Update progress'), there: button(page, 'Choose all shown') },
    ]);
    await opensAndCloses(page, [
      { open: button(page, /^Block 1:/), there: page.getByRole('heading', { level: 2, name: 'Block 1' }) },
    ]);
    await opensAndCloses(page, [
      { open: button(page, 'Show the wall large'), there: button(page, 'Back to the blocks') },
    ]);
  });
  await test.step('Wall: a finding, a fold, the answer of a shuffle; layouts', async () => {
    await goTo(page, 'Wall');
    await opensAndCloses(page, [
      { open: page.locator('.finding > button').first(), there: page.locator('.mends').first() },
      { open: page.locator('summary', { hasText: /^Sashing/ }), there: page.getByText('Between and around') },
      {
        open: foot(page).getByRole('button', { name: 'Shuffle' }),
        there: foot(page).getByRole('button', { name: /^(Cancel|Close)$/ }),
      },
    ]);
    await opensAndCloses(page, [
      {
        open: button(page, 'Show several to choose from'),
        there: page.getByRole('heading', { name: 'Layouts to choose from' }),
      },
    ]);
  });
  await test.step("'?' lists all keys from the wall, and is a letter in a field", async () => {
    await goTo(page, 'Wall');
    const list = page.getByRole('dialog', { name: 'Keys' });
    await page.locator('[data-cell][tabindex="0"]').focus();
    await page.keyboard.press('?');
    await expect(list).toContainText('F6');
    await expect(list).toBeFocused();
    await page.keyboard.press('Escape');
    await expect(list).toBeHidden();
    await expect(page.locator('[data-cell]:focus')).toBeAttached();
  });
  await test.step('Back closes a dialog first, then goes a step back, and stays in the tool', async () => {
    await goTo(page, 'Wall');
    await goTo(page, 'Fabrics');
    await button(page, /^Quilt:/).click();
    const menu = page.getByRole('dialog', { name: 'Quilts and files' });
    await expect(menu).toBeVisible();
    await page.goBack();
    await expect(menu).toBeHidden();
    await expect(page.getByRole('heading', { level: 2, name: 'Fabrics', exact: true })).toBeVisible();
    await page.goBack();
    await expect(page.getByRole('heading', { level: 2, name: 'Wall', exact: true })).toBeVisible();
  });
  await openExample(page, 'The kiln shed');
  await test.step('a strip of a set that can still be changed', async () => {
    await goTo(page, 'Strip sets');
    await page.getByRole('button', { name: 'Make sets' }).click();
    await expect(page.getByText(/\d+ sets made, /)).toBeVisible();
    await opensAndCloses(page, [
      { open: button(page, /^Set A:/), there: page.getByRole('region', { name: 'Set A' }).first() },
      {
        open: page.locator('.set-strip-open').first(),
        there: page.locator('.set-strip-open[aria-expanded="true"]'),
      },
    ]);
  });
});

/** Another value than the one that stands in the field, of its kind. */
function another(text: string): string {
  const whole = /^\d+$/.test(text);
  if (text === '') return '2';
  return whole
    ? String(Number(text) + 1)
    : `${text.split(' ')[0]!.replace(/\/.*$/, '')} 3/4`.replace(/^\d+ /, (n) => `${Number(n) + 1} `);
}

/** Types into every field of a number or length in turn. Returns how many took what was typed. */
async function undoInEach(page: Page, fields: Locator): Promise<number> {
  let taken = 0;
  const count = await fields.count();
  for (let at = 0; at < count; at += 1) {
    const field = fields.nth(at);
    const { before, name, open } = await field.evaluate((one) => {
      const { value, labels, ariaLabel, readOnly, disabled } = one as HTMLInputElement;
      const open = !readOnly && !disabled && one.checkVisibility({ visibilityProperty: true });
      return { before: value, name: labels?.[0]?.textContent ?? ariaLabel ?? '', open };
    });
    if (!open || !/^[\d ./,]*$/.test(before)) continue;
    const undo = await undoButton(page).getAttribute('aria-label');
    await field.focus();
    await page.keyboard.press('Control+a');
    // Not taken yet: the text goes. That is the field's own, and the same in each.
    if (taken < 2) {
      await page.keyboard.type(another(before));
      for (let letter = 0; letter < 6 && (await field.inputValue()) !== before; letter += 1)
        await page.keyboard.press('Control+z');
      expect(await field.inputValue(), `${name}, before it is taken`).toBe(before);
      expect(await undoButton(page).getAttribute('aria-label'), name).toBe(undo);
      await page.keyboard.press('Control+a');
    }
    await page.keyboard.insertText(another(before));
    await page.keyboard.press('Enter');
    await still(page, 60);
    if ((await field.getAttribute('aria-invalid')) === 'true' || (await field.inputValue()) === before) {
      await field.press('Escape');
      continue;
    }
    // Enter may go on to the next cell of a grid.
    await field.focus();
    await page.keyboard.press('Control+z');
    await expect(field, `${name}, once it is taken`).toHaveValue(before);
    expect(await undoButton(page).getAttribute('aria-label'), name).toBe(undo);
    taken += 1;
  }
  return taken;
}

test('Ctrl Z in every field of a number or length agrees with the undo of the quilt', async ({ page }) => {
  const project = demo('harbour-reading-corner');
  const sashing = { ...project.setting.sashing, where: 'between' as const };
  const border = { fabric: 'oar', width: 3 };
  const setting = { ...project.setting, sashing, borders: [border] };
  await firstVisit(page);
  await openFile(page, writeProject({ ...project, setting }, new Map()));
  await expect(page.getByRole('dialog')).toBeHidden();
  const fields = page.locator('.panel input[data-shown]');
  let taken = 0;
  for (const step of ['Fabrics', 'Strip sets', 'Wedges', 'Blocks', 'Wall']) {
    await goTo(page, step);
    if (step === 'Fabrics')
      for (const name of ['Work out what to cut', 'How large a top']) await button(page, name).click();
    if (step === 'Strip sets') await button(page, /^Set A:/).click();
    await page.evaluate(() => {
      for (const fold of document.querySelectorAll('details')) fold.open = true;
    });
    await still(page);
    taken += await undoInEach(page, fields);
  }
  await goTo(page, 'Fabrics');
  await button(page, 'Change strips').click();
  taken += await undoInEach(page, page.locator('.grid-input[data-line="0"]'));
  await goTo(page, 'Finishing');
  for (const part of ['Fabric and cutting list', 'Kits and cost', 'Weight and bulk']) {
    await openPart(page, part);
    taken += await undoInEach(page, fields);
  }
  expect(taken).toBeGreaterThan(20);
});

// The tool worked by keys: the focus never falls to the body, Escape closes what was opened last, '?' lists the keys, Back goes a step
// back, and undo in a field and of the quilt agree.
import { holdsFocus, press } from './focus';
import { expect, type Page, test } from './guarded';
import { button, firstVisit, foot, goTo, openExample, openPart, undoAll, undoButton } from './room';

/** Leaves all but the first part out of the pattern. */
async function coverAlone(page: Page): Promise<void> {
  await page.locator('.pattern-parts input').evaluateAll((parts: HTMLInputElement[]) => {
    for (const part of parts.slice(1)) part.click();
  });
}

test('by keys: the wall, undo in a field, the lists of keys and words, Back and Escape, and the focus near whatever is made', async ({
  page,
}) => {
  test.setTimeout(180_000);
  await firstVisit(page);
  await test.step('after a block was taken down and the undo the focus is on its place of the wall', async () => {
    const block = page.getByRole('button', { name: /^Block 1, row/ });
    await block.focus();
    await page.keyboard.press('Delete');
    await expect(block).toBeHidden();
    await holdsFocus(page, 'Delete', '.wall-area');
    await page.keyboard.press('Control+z');
    await expect(block).toBeVisible();
    await expect(block).toBeFocused();
  });
  await test.step('undo in a field takes back letters until they are taken, then the change of the quilt', async () => {
    const rows = page.getByRole('textbox', { name: 'Rows' });
    const before = await rows.inputValue();
    const label = await undoButton(page).getAttribute('aria-label');
    await rows.focus();
    await rows.press('Control+a');
    await rows.pressSequentially('8');
    await rows.press('Control+z');
    await expect(rows).toHaveValue(before);
    await expect(undoButton(page)).toHaveAccessibleName(label!);
    await rows.press('Control+a');
    await rows.pressSequentially('8');
    await rows.press('Enter');
    await expect(page.getByRole('group', { name: /^8 down/ })).toBeAttached();
    await rows.press('Control+z');
    await expect(rows).toHaveValue(before);
    await expect(page.getByRole('group', { name: new RegExp(`^${before} down`) })).toBeAttached();
    await rows.press('Control+y');
    await expect(rows).toHaveValue('8');
    await expect(page.getByRole('group', { name: /^8 down/ })).toBeAttached();
  });
  await test.step('a question mark lists all keys, the menu too, and Escape closes the list', async () => {
    await page.locator('.panel h2').focus();
    await page.keyboard.press('?');
    const list = page.getByRole('dialog', { name: 'Keys' });
    for (const part of ['Everywhere', 'Design wall', 'Strip sets', 'Grid of strips', 'Opened block'])
      await expect(list.getByRole('heading', { name: part })).toBeAttached();
    await expect(list.getByText('Ctrl Z', { exact: true })).toBeAttached();
    await page.keyboard.press('Escape');
    await expect(list).toBeHidden();
    await button(page, /^Quilt:/).focus();
    await page.keyboard.press('Enter');
    await press(page, button(page, 'Keys'), '[role="dialog"]');
    await expect(list).toBeVisible();
    await page.keyboard.press('Escape');
    await expect(list).toBeHidden();
    await holdsFocus(page, 'the keys', '.top-bar');
    // In a field it is a letter.
    const rows = page.getByRole('textbox', { name: 'Rows' });
    await rows.focus();
    await page.keyboard.press('?');
    await expect(list).toBeHidden();
    await page.keyboard.press('Escape');
  });
  await test.step('the words of the trade are in the menu, found by typing; Escape closes them and the focus goes back', async () => {
    const quilt = button(page, /^Quilt:/);
    await quilt.focus();
    await page.keyboard.press('Enter');
    await press(page, button(page, 'Words'), '[role="dialog"]');
    const list = page.getByRole('dialog', { name: 'Words of the trade' });
    await expect(list.getByRole('status')).toHaveText(/^\d+ words$/);
    await expect(list.getByRole('searchbox', { name: 'Find a word' })).toBeFocused();
    await page.keyboard.type('Corners');
    await expect(list.getByRole('term').first()).toHaveText('cornerstone');
    await expect(list.getByRole('definition').first()).toHaveText(
      'A square where two strips of sashing cross.',
    );
    await page.keyboard.press('Escape');
    await expect(list).toBeHidden();
    await expect(quilt).toBeFocused();
  });
  await test.step('Back goes a step back and forth without loading the page anew', async () => {
    await page.evaluate(() => Object.assign(window, { stays: true }));
    await goTo(page, 'Fabrics');
    await goTo(page, 'Strip sets');
    await page.goBack();
    await expect(page.getByRole('heading', { level: 2, name: 'Fabrics', exact: true })).toBeVisible();
    await page.goBack();
    await expect(page.getByRole('heading', { level: 2, name: 'Wall', exact: true })).toBeVisible();
    await page.goForward();
    await expect(page.getByRole('heading', { level: 2, name: 'Fabrics', exact: true })).toBeVisible();
    expect(await page.evaluate(() => 'stays' in window)).toBe(true);
  });
  await test.step('Escape closes what was opened last, one at a time', async () => {
    await goTo(page, 'Fabrics');
    await press(page, button(page, /^Add a fabric|^New fabric|^Another fabric/));
    const form = page.getByRole('form', { name: 'A new fabric' });
    await expect(form).toBeVisible();
    await press(page, button(page, 'How large a top it makes'));
    const top = page.getByRole('region', { name: 'The largest top' });
    await expect(top).toBeVisible();
    await page.keyboard.press('Escape');
    await expect(top).toBeHidden();
    await expect(form).toBeVisible();
    await page.keyboard.press('Escape');
    await expect(form).toBeHidden();
    await holdsFocus(page, 'Escape');
  });
  await undoAll(page);
  await goTo(page, 'Wall');
  await test.step('the focus stays near through Shuffle, Cancel, several layouts, a look at one on the wall, and Use', async () => {
    await press(page, foot(page).getByRole('button', { name: 'Shuffle' }));
    await expect(foot(page).getByRole('button', { name: /^(Cancel|Close)$/ })).toBeVisible({
      timeout: 60_000,
    });
    await holdsFocus(page, 'the shuffle');
    await press(page, foot(page).getByRole('button', { name: /^(Cancel|Close)$/ }));
    await expect(foot(page).getByRole('button', { name: 'Shuffle' })).toBeFocused();
    await press(page, button(page, 'Show several to choose from'));
    await expect(page.getByRole('heading', { name: 'Layouts to choose from' })).toBeVisible({
      timeout: 60_000,
    });
    await holdsFocus(page, 'the search', '.panel, .work');
    const layouts = page.getByRole('region', { name: 'Layouts to choose from' });
    const first = layouts.getByRole('listitem', { name: 'Layout 1' });
    await expect(first).toContainText(/Layout 1 · \d+ clashes · score \d+: the best found/);
    await first.getByRole('button', { name: 'See layout 1 on the wall' }).click();
    await expect(undoButton(page)).toBeDisabled();
    await expect(page.locator('.standing p')).toHaveText(/→/);
    await page.getByRole('button', { name: 'Back to the layouts' }).click();
    await press(page, button(page, /^Use .*Layout 1/), '.panel, .work');
    await expect(page.getByRole('heading', { name: 'Layouts to choose from' })).toBeHidden();
    await holdsFocus(page, 'Use', '.panel, .work');
    await expect(undoButton(page)).toHaveAccessibleName('Undo: hang the blocks in another layout');
  });
  await undoAll(page);
  await test.step('the focus stays near while the pattern and the picture are made', async () => {
    await goTo(page, 'Finishing');
    for (const [part, action, file] of [
      ['Pattern', 'Make the pattern (PDF)', /\.pdf$/],
      ['Picture', 'Save the picture (PNG)', /\.png$/],
    ] as const) {
      await openPart(page, part);
      if (part === 'Picture') await page.getByLabel('Width of the PNG in pixels').fill('600');
      else await coverAlone(page);
      const saved = page.waitForEvent('download', { timeout: 60_000 });
      await press(page, button(page, action));
      await expect(button(page, action)).toBeFocused();
      expect((await saved).suggestedFilename()).toMatch(file);
      await expect(button(page, action)).toBeEnabled();
      await expect(button(page, action)).toBeFocused();
    }
  });
  await openExample(page, 'The kiln shed');
  await test.step('the focus stays near while sets are made and cutting is planned', async () => {
    await goTo(page, 'Strip sets');
    for (const action of ['Make sets', /^(Others, by the next number|Try another mix)$/]) {
      await press(page, button(page, action));
      await expect(page.getByText(/\d+ sets made, /)).toBeVisible();
      await expect(button(page, action)).toBeFocused();
    }
    await goTo(page, 'Fabrics');
    for (const action of ['Work out what to cut', 'How large a top it makes']) {
      await press(page, button(page, action));
      const within = await page.evaluate(() => document.activeElement?.closest('.panel') !== null);
      expect(within, action).toBe(true);
      // Escape closes it again, and the focus is back where it was opened.
      await page.keyboard.press('Escape');
      await expect(button(page, action)).toBeFocused();
    }
  });
});

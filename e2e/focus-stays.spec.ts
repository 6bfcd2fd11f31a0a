// The focus stays in sight near where it was, whatever a button starts, replaces, opens, closes or removes.

import { holdsFocus, opensAndCloses, press } from './focus';
import { expect, type Page, test } from './guarded';
import { openDemo } from './quilt';
import { button, firstVisit, foot, goTo, openPart, undoAll, undoButton } from './room';

test('from fabrics to blocks the focus stays near', async ({ page }) => {
  await openDemo(page, 'kiln-shed', 'Fabrics');
  await test.step('Fabrics: forms that open and close, rows of fabric on hand, a fabric removed', async () => {
    for (const name of [
      'Add a fabric',
      'Work out what to cut',
      'Add fabric on hand',
      'How large a top it makes',
    ]) {
      await press(page, button(page, name));
      await press(page, page.locator('.panel').getByRole('button', { name: /^Done/ }).first());
    }
    for (const name of ['Work out what to cut', 'How large a top it makes']) {
      await press(page, button(page, name));
      // Escape closes it again, and the focus is back where it was opened.
      await page.keyboard.press('Escape');
      await expect(button(page, name)).toBeFocused();
    }
    await press(page, button(page, 'Change strips'), '.work');
    await press(page, button(page, /^Done/));
    await press(page, page.locator('.laid-pieces button').first());
    await press(page, page.getByRole('button', { name: /^Remove/ }).last(), '.panel, .work');
  });
  await undoAll(page);
  await test.step('Strip sets and Wedges: sets made, opened, a strip and a set removed, sets cut', async () => {
    await goTo(page, 'Strip sets');
    for (const action of ['Make sets', 'Try another mix']) {
      await press(page, button(page, action));
      await expect(page.getByText(/\d+ sets made, /)).toBeVisible();
      await expect(button(page, action)).toBeFocused();
    }
    const strip = page.locator('.set-strip-open').first();
    await opensAndCloses(page, [
      { open: button(page, /^Set A:/), there: page.getByRole('region', { name: 'Set A' }).first() },
      { open: strip, there: page.locator('.set-strip-open[aria-expanded="true"]') },
    ]);
    await press(page, button(page, /^Set A:/), '.panel, .work');
    await press(page, page.locator('.set-strip button').first());
    await press(page, button(page, /^Remove set A/), '.panel, .work');
    await press(page, button(page, /^Mix number: one more/));
    await goTo(page, 'Wedges');
    await press(page, button(page, /^Cut set . next/));
    await press(page, button(page, /^Mark set . as cut/));
    await press(page, button(page, /^One tip-up wedge of set . is lost/));
    await press(page, button(page, /^Close/), '.panel, .work');
  });
  await test.step('Blocks: added and filled, started over, opened, progress, sewn ones entered, one removed', async () => {
    await goTo(page, 'Blocks');
    await press(page, foot(page).getByRole('button', { name: /^Add \d+ block/ }));
    await press(page, button(page, 'Start over'));
    await press(page, button(page, 'Update progress'), '.work');
    await press(page, button(page, 'Choose all shown'), '.work');
    await press(page, page.locator('.gallery-tools').getByRole('button', { name: /^Done/ }), '.work');
    await press(page, button(page, 'Enter sewn blocks'), '.work, .panel');
    await press(page, foot(page).getByRole('button', { name: 'Done' }), '.work, .panel');
    await press(page, button(page, /^Block 1:/), '.work, .panel');
    await press(page, button(page, /^Remove block 1/), '.work, .panel');
  });
});

test('on the wall, in the bar and while finishing the focus stays near', async ({ page }) => {
  await firstVisit(page);
  const shuffle = foot(page).getByRole('button', { name: 'Shuffle' });
  const several = button(page, 'Show several to choose from');
  const layouts = page.getByRole('region', { name: 'Layouts to choose from' });
  await goTo(page, 'Wall');
  await test.step('Wall: a shuffle put away by its button and by Escape', async () => {
    const close = foot(page).getByRole('button', { name: /^(Cancel|Close)$/ });
    for (const leave of [() => press(page, close), () => page.keyboard.press('Escape')]) {
      await press(page, shuffle);
      await expect(close).toBeVisible({ timeout: 60_000 });
      await holdsFocus(page, 'the shuffle');
      await leave();
      await expect(shuffle).toBeFocused();
    }
  });
  await test.step('Wall: several layouts, put away by their button and by Escape, one seen on the wall and used', async () => {
    // All are stopped: how long they are sought makes no difference here.
    const seek = async () => {
      await press(page, several);
      await press(page, foot(page).getByRole('button', { name: 'Stop' }), '.panel, .work');
      await expect(layouts).toBeVisible({ timeout: 60_000 });
      await holdsFocus(page, 'the search', '.panel, .work');
    };
    await seek();
    await press(page, button(page, /^Cancel/), '.panel, .work');
    await expect(layouts).toBeHidden();
    await seek();
    await page.keyboard.press('Escape');
    await expect(layouts).toBeHidden();
    await holdsFocus(page, 'Escape', '.panel, .work');
    await seek();
    const first = layouts.getByRole('listitem', { name: 'Layout 1' });
    await expect(first).toContainText(/Layout 1 · \d+ clashes · score \d+: the best found/);
    await first.getByRole('button', { name: 'See layout 1 on the wall' }).click();
    await expect(undoButton(page)).toBeDisabled();
    await expect(page.locator('.standing p')).toHaveText(/→/);
    await page.getByRole('button', { name: 'Back to the layouts' }).click();
    await press(page, button(page, /^Use .*Layout 1/), '.panel, .work');
    await expect(layouts).toBeHidden();
    await holdsFocus(page, 'Use', '.panel, .work');
    await expect(undoButton(page)).toHaveAccessibleName('Undo: hang the blocks in another layout');
  });
  await undoAll(page);
  await test.step('Wall: findings and mends, a border added and removed, sizes, a block taken down', async () => {
    const finding = page.locator('.finding > button').first();
    await press(page, finding);
    const mend = page.locator('.mends input').first();
    await expect(mend).toBeVisible({ timeout: 60_000 });
    await mend.check();
    await press(page, button(page, 'Apply'));
    await page.locator('summary', { hasText: 'Borders' }).press('Enter');
    await press(page, button(page, 'Add a border'));
    await press(page, button(page, /^Remove/));
    await press(page, button(page, 'Rows: one less'));
    await press(page, button(page, 'Columns: one less'));
    await press(page, button(page, 'Columns: one less'));
    await press(page, button(page, /^Block 1, row/), '.wall-area');
    await press(page, button(page, /^Take down to the side table/), '.wall-area');
  });
  await test.step('the bar: undo to the last, dialogs and settings opened and closed', async () => {
    await page.getByRole('button', { name: 'Rows: one more' }).click();
    await press(page, button(page, /^Undo:/), '.top-bar');
    await press(page, button(page, /^Redo:/), '.top-bar');
    for (const name of [/^Quilt:/, /^Ways of seeing/, 'Units of lengths']) {
      await press(page, button(page, name), '[role="dialog"]');
      await page.keyboard.press('Escape');
      await expect(button(page, name)).toBeFocused();
    }
  });
  await test.step('Finishing: pattern, picture, copies, kits, colourways', async () => {
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
    for (const [part, action] of [
      ['Sizes', /^Copy/],
      ['In words', /^Copy/],
      ['Colourways', /./],
    ] as const) {
      await openPart(page, part);
      await press(page, foot(page).getByRole('button', { name: action }).first());
    }
  });
});

/** Leaves all but the first part out of the pattern. */
async function coverAlone(page: Page): Promise<void> {
  await page.locator('.pattern-parts input').evaluateAll((parts: HTMLInputElement[]) => {
    for (const part of parts.slice(1)) part.click();
  });
}

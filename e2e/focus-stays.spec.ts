// The focus stays in sight near where it was, whatever a button starts, replaces, opens, closes or removes.

import { holdsFocus, press } from './focus';
import { expect, test } from './guarded';
import { startWith } from './quilt';
import { button, firstVisit, foot, goTo, openPart, undoAll } from './room';

test('from fabrics to blocks the focus stays near', async ({ page }) => {
  await startWith(page, 'The kiln shed');
  await test.step('Fabrics: forms that open and close, rows of fabric on hand, a fabric removed', async () => {
    await goTo(page, 'Fabrics');
    for (const name of [
      'Add a fabric',
      'Work out what to cut',
      'Add fabric on hand',
      'How large a top it makes',
    ]) {
      await press(page, button(page, name));
      await press(page, page.locator('.panel').getByRole('button', { name: /^Done/ }).first());
    }
    await press(page, button(page, 'Change strips'), '.work');
    await press(page, button(page, /^Done/));
    await press(page, page.locator('.laid-pieces button').first());
    await press(page, page.getByRole('button', { name: /^Remove/ }).last(), '.panel, .work');
  });
  await undoAll(page);
  await test.step('Strip sets and Wedges: sets made, opened, a strip and a set removed, sets cut', async () => {
    await goTo(page, 'Strip sets');
    await press(page, button(page, 'Make sets'));
    await press(page, button(page, 'Try another mix'));
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
  await test.step('Wall: a shuffle stopped and cancelled, layouts, sizes, mends, a border added and removed', async () => {
    await goTo(page, 'Wall');
    await press(page, foot(page).getByRole('button', { name: 'Shuffle' }));
    await expect(foot(page).getByRole('button', { name: /^(Cancel|Close)/ })).toBeVisible({
      timeout: 60_000,
    });
    await holdsFocus(page, 'the shuffle');
    await page.keyboard.press('Escape');
    await expect(foot(page).getByRole('button', { name: 'Shuffle' })).toBeFocused();
    await press(page, button(page, 'Show several to choose from'));
    await expect(page.getByRole('heading', { name: 'Layouts to choose from' })).toBeVisible({
      timeout: 60_000,
    });
    await holdsFocus(page, 'Show several', '.panel, .work');
    await press(page, button(page, /^Cancel/), '.panel, .work');
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
    for (const [part, action] of [
      ['Pattern', /^Make the pattern/],
      ['Picture', /PNG/],
      ['Sizes', /^Copy/],
      ['In words', /^Copy/],
      ['Colourways', /./],
    ] as const) {
      await openPart(page, part);
      const main = foot(page).getByRole('button', { name: action }).first();
      await press(page, main);
    }
  });
});

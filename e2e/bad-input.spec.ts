// What was refused is never acted on.
import { expect, test } from './guarded';
import { firstVisit, foot, goTo, undoAll, undoButton } from './room';

test('what is refused is never acted on, and a press counts once', async ({ page }) => {
  await firstVisit(page);
  const part = page.getByRole('region', { name: 'Shuffle for balance' });
  await test.step('blocks are not added while their number is refused', async () => {
    await goTo(page, 'Blocks');
    const count = page.getByRole('textbox', { name: 'Blocks to add' });
    await count.fill('six');
    await count.press('Tab');
    await page.getByRole('button', { name: /^Add 1 block/ }).click();
    await expect(undoButton(page)).toBeDisabled();
    await expect(count).toBeFocused();
  });
  await page.getByRole('textbox', { name: 'Blocks to add' }).press('Escape');
  await test.step('a double click adds once, and quick presses of a step up all count', async () => {
    await goTo(page, 'Blocks');
    const count = page.getByRole('textbox', { name: 'Blocks to add' });
    await page.getByRole('button', { name: 'Blocks to add: one more' }).dblclick();
    await expect(count).toHaveValue('3');
    await page.getByRole('button', { name: 'Add 3 blocks' }).dblclick();
    await expect(page.getByText('Enough wedges for 6 blocks; 9 made.')).toBeVisible();
    await goTo(page, 'Strip sets');
    const sets = page.getByRole('button', { name: /^Set \w+: / });
    await expect(sets.first()).toBeVisible();
    const before = await sets.count();
    await page.getByRole('button', { name: 'Add a set by hand' }).dblclick();
    await expect(sets).toHaveCount(before + 1);
  });
  await undoAll(page);
  await test.step('what is said of a new fabric without a name goes once one is written', async () => {
    await goTo(page, 'Fabrics');
    await page.getByRole('button', { name: 'Add a fabric' }).click();
    await page.getByRole('button', { name: 'Add this fabric' }).click();
    await expect(page.getByText('Give the fabric a name first.')).toBeVisible();
    await page.getByRole('textbox', { name: 'Name', exact: true }).fill('x'.repeat(130));
    await page.getByRole('button', { name: 'Add this fabric' }).click();
    await expect(page.getByText('At most 120 characters; it has 130.')).toBeVisible();
    await expect(page.getByText('Give the fabric a name first.')).toBeHidden();
  });
  await goTo(page, 'Wall');
  await test.step('a field refused in one fold holds up no button of another', async () => {
    const fold = (name: string) => page.locator('details.fold > summary').filter({ hasText: name });
    await fold('Sashing').click();
    await page.getByText('Between', { exact: true }).click();
    const width = page.getByRole('textbox', { name: /^Finished width/ });
    await width.fill('wide');
    await width.press('Tab');
    await expect(page.getByText('Write a length such as 7 1/2 or 7.5.')).toBeVisible();
    await fold('Borders').click();
    await page.getByRole('button', { name: 'Add a border' }).click();
    await expect(page.getByRole('group', { name: 'Border 1' })).toBeVisible();
    await width.press('Escape');
  });
  await undoAll(page);
  await test.step('a shuffle that may move nothing, or minds nothing, says so instead of a proof', async () => {
    const shuffle = foot(page).getByRole('button', { name: 'Shuffle', exact: true });
    await part.getByText('Shuffle options').click();
    for (const name of [/^Swap/, /^Turn blocks/, /^Turn corners/])
      await part.getByRole('checkbox', { name }).uncheck();
    await expect(part).toContainText('Nothing is allowed to move yet');
    await expect(shuffle).toBeDisabled();
    await part.getByRole('checkbox', { name: /^Turn blocks/ }).check();
    await expect(shuffle).toBeEnabled();
    for (const weight of await part.getByRole('slider').all()) await weight.fill('0');
    await expect(part).toContainText('Nothing counts yet');
    await expect(shuffle).toBeDisabled();
  });
  await undoAll(page);
  await test.step('a button does nothing while a field beside it is refused, and the field gets the focus', async () => {
    const seed = part.getByRole('textbox', { name: 'Shuffle number' });
    await seed.fill('banana');
    await seed.press('Tab');
    await expect(part.getByText('Write a whole number from 0 to 9,999.')).toBeVisible();
    await foot(page).getByRole('button', { name: 'Shuffle', exact: true }).click();
    await expect(seed).toBeFocused();
    await expect(foot(page).getByRole('progressbar')).toHaveCount(0);
    await seed.fill('7');
    await seed.press('Enter');
    await foot(page).getByRole('button', { name: 'Shuffle', exact: true }).click();
    // It runs, or is over already.
    const begun = foot(page)
      .getByRole('progressbar')
      .or(foot(page).getByRole('button', { name: 'Use this layout' }));
    await expect(begun).toBeVisible();
  });
});

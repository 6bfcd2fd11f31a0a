import { expect, test } from './guarded';
import { nextUndo, openExample } from './quilt';
import { undoAll } from './room';

test('wedges are chosen, blocks added, several marked as sewn, and one opened with its card', async ({
  page,
  context,
}) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await openExample(page, 'Blocks');
  await test.step('a block that is added is filled at once, and the others stay as they are', async () => {
    const first = page.getByRole('button', { name: /^Block 1: / });
    // Seams are drawn once a block stays in sight.
    await expect(first.locator('.seams')).toBeVisible();
    const kept = await first.innerHTML();
    await page.getByRole('button', { name: /^Add 1 block$/ }).click();
    await expect(page.getByText('1 block added; it has 1 empty place.')).toBeVisible();
    await expect(page.getByRole('button', { name: /^Block 7: / })).toBeVisible();
    await expect.poll(() => first.innerHTML()).toBe(kept);
  });
  await undoAll(page);
  await test.step('several blocks are marked and said to be sewn at once; a sewn block keeps its wedges', async () => {
    await page.getByRole('button', { name: 'Update progress' }).click();
    await page.getByRole('button', { name: /^Block 2: / }).click();
    await page.getByRole('button', { name: /^Block 4: / }).click({ modifiers: ['Shift'] });
    await expect(page.getByText('3 chosen')).toBeVisible();
    await page.getByRole('button', { name: 'Wedges joined' }).click();
    await expect.poll(() => nextUndo(page)).toBe('Undo: update the progress of 3 blocks');
    await page.getByRole('button', { name: 'Done' }).click();
    await page.getByRole('button', { name: /^Block 3: / }).click();
    await expect(page.locator('.place-panel')).toContainText('Block 3 is sewn; its wedges stay as they are.');
    await expect(page.locator('.offer')).toHaveCount(0);
    await page.getByRole('button', { name: 'Remove block 3' }).click();
    await expect(page.getByRole('alert').filter({ hasText: 'Block 3 is sewn' })).toBeVisible();
  });
  await undoAll(page);
  await page.getByRole('button', { name: 'All blocks' }).click();
  await test.step('a block with an empty place cannot be sewn, and the reason stands beside the control', async () => {
    await page.getByRole('button', { name: /^Block 1: / }).click();
    await page.getByRole('button', { name: 'Take it out' }).click();
    await page.getByRole('button', { name: 'Wedges joined' }).click();
    await expect(page.getByRole('alert').filter({ hasText: 'Block 1 has an empty place' })).toBeVisible();
  });
  await undoAll(page);
  await test.step('the block card names every place and copies as text', async () => {
    await page.getByText('Block card').click();
    await page.locator('.leaf').getByRole('button', { name: 'Copy' }).click();
    await expect(page.getByText('Copied.')).toBeVisible();
    const text = await page.evaluate(() => navigator.clipboard.readText());
    for (let number = 1; number <= 8; number += 1)
      expect(text).toMatch(new RegExp(`^Place ${number}: set [A-Z]+, tip (up|down); seams`, 'm'));
  });
  await undoAll(page);
  await page.getByRole('button', { name: 'All blocks' }).click();
  await test.step('the tool chooses wedges for every block and says what was proved', async () => {
    await page.getByRole('button', { name: 'Start over' }).click();
    const proof = page.locator('.proof');
    await expect(proof).toContainText('No fabric meets itself on a rim.');
    await expect.poll(() => nextUndo(page)).toMatch(/^Undo: choose the wedges/);
    await page.getByText('Clashing').click();
    // What is still listed once the choice has been looked through: look-alikes at most, never a fabric and itself.
    const listed = page.locator('.block-card');
    const names = () =>
      listed.evaluateAll((cards) => cards.map((card) => card.getAttribute('aria-label') ?? ''));
    await expect
      .poll(async () => (await names()).filter((name) => !name.includes('look-alikes meet')))
      .toEqual([]);
  });
});

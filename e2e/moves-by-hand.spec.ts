// The list of moves to make at the wall: few blocks and what they give, ticks that outlive a reload, words to copy.
// At every size and for axe: whatever-is-on-show.spec.ts.
import { expect, type Page, test } from './guarded';
import { nextUndo } from './quilt';
import { block, firstVisit, goTo, undoAll } from './room';

async function findMoves(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Find what a few moves can do' }).click();
  await expect(page.getByRole('group', { name: 'How many blocks to move' })).toBeVisible({ timeout: 60_000 });
}

const work = (page: Page) => page.getByRole('region', { name: 'List of moves' });

test('a few moves, and the layout a shuffle found, are listed, ticked off, used and copied', async ({
  page,
  context,
}) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await firstVisit(page);
  // A quilt of one's own: an example that was never changed is a new one after a reload.
  await block(page, 1).focus();
  await page.keyboard.press('r');
  await test.step('a few moves are found, listed, ticked off, and kept over a reload', async () => {
    await findMoves(page);
    await expect(page.getByRole('heading', { name: 'Moves by hand', level: 2 })).toBeFocused();
    const numbers = page.getByRole('group', { name: 'How many blocks to move' }).getByRole('radio');
    await numbers.last().check();
    const ticks = work(page).getByRole('checkbox');
    await expect(ticks.first()).toBeVisible();
    const count = await ticks.count();
    expect(count).toBeGreaterThan(0);
    const box = (await work(page).locator('.hand-tick').first().boundingBox())!;
    expect(box.height).toBeGreaterThanOrEqual(44);
    await ticks.first().check();
    await expect(work(page).getByRole('status').first()).toContainText(
      count === 1 ? 'The move is made.' : `1 of ${count} moves made.`,
    );
    // Nothing is changed in the quilt by a tick.
    expect(await nextUndo(page)).not.toContain('layout');
    await page.reload();
    await expect(work(page).getByRole('checkbox').first()).toBeChecked();
    await expect(work(page).getByRole('checkbox')).toHaveCount(count);
    await work(page).getByRole('button', { name: 'Use this layout' }).click();
    await expect(work(page)).toContainText('On screen the wall hangs like this already.');
    expect(await nextUndo(page)).toContain('hang the blocks in another layout');
    await expect(work(page).getByRole('checkbox').first()).toBeChecked();
  });
  await page.keyboard.press('Escape');
  await undoAll(page);
  await goTo(page, 'Wall');
  await test.step('the layout a shuffle found is listed before it is used', async () => {
    await page.getByText('Shuffle options').click();
    for (const name of [
      'Turn corners by one wedge',
      'Trade wedges between blocks',
      'Order of strips in sets',
    ])
      await page.getByRole('checkbox', { name }).uncheck();
    await page.getByRole('button', { name: 'Shuffle', exact: true }).click();
    const listing = page.getByRole('button', { name: 'List the moves to this layout' }).first();
    await expect(listing).toBeVisible({ timeout: 60_000 });
    await listing.click();
    await expect(work(page).getByRole('checkbox').first()).toBeVisible();
    await work(page).getByRole('button', { name: 'Copy the list' }).click();
    const words = await page.evaluate(() => navigator.clipboard.readText());
    expect(words).toMatch(/^1\. (Turn|Swap|Move) /);
    await page.keyboard.press('Escape');
    await expect(work(page).getByRole('checkbox').first()).toBeHidden();
    await expect(page.getByRole('button', { name: /^Open the list: 0 of/ })).toBeVisible();
  });
});

// What a screen reader is told: every change in one sentence with the clashes there are now, the name of the quilt as the first heading.
// Names of tables: names.spec.ts.
import { expect, type Page, test } from './guarded';
import { block, firstVisit, foot } from './room';

/** All that the live regions have said since the last call of `since`, each sentence as often as it is said. */
async function listen(page: Page) {
  await page.evaluate(() => {
    const said: string[] = [];
    Object.assign(window, { said });
    const regions = document.querySelectorAll('.room > [role="status"]');
    const hear = new MutationObserver((changes) => {
      for (const { target } of changes) {
        const words = target.textContent?.trim();
        if (words) said.push(words);
      }
    });
    for (const region of regions)
      hear.observe(region, { childList: true, characterData: true, subtree: true });
  });
  let heard = 0;
  const all = () => page.evaluate(() => (window as unknown as { said: string[] }).said);
  return {
    said: async () => (await all()).slice(heard),
    forget: async () => {
      heard = (await all()).length;
    },
  };
}

test('turning, pinning, taking down, undo and an order that is kept are told with the clashes', async ({
  page,
}) => {
  test.setTimeout(120_000);
  await firstVisit(page);
  const quilt = page.getByRole('heading', { level: 1 });
  await expect(quilt).toHaveCount(1);
  await expect(quilt).toHaveText(/Harbour library/i);
  const { said, forget } = await listen(page);
  const tells = async (words: RegExp) => {
    await expect.poll(said, { timeout: 30_000 }).toEqual([expect.stringMatching(words)]);
    await page.waitForTimeout(150);
    expect(await said(), 'told once').toHaveLength(1);
    await forget();
  };
  await block(page, 1).focus();
  await page.keyboard.press('r');
  await tells(/^Turned block 1\. (\d+ clash(es)?|No clashes)(, \d+ (fewer|more))?\.$/);
  await page.keyboard.press('p');
  await tells(/^Pinned block 1\. \d+ clash(es)?\.$/);
  await page.keyboard.press('p');
  await tells(/^Unpinned block 1\. \d+ clash(es)?\.$/);
  await page.keyboard.press('Delete');
  await tells(/^Took down block 1\. \d+ clash(es)?(, \d+ fewer)?\.$/);
  await page.keyboard.press('Control+z');
  await tells(/^Undone: take down block 1\. \d+ clash(es)?(, \d+ more)?\.$/);
  await foot(page).getByRole('button', { name: 'Shuffle' }).click();
  const use = foot(page).getByRole('button', { name: 'Use this layout' });
  await expect(use).toBeVisible({ timeout: 60_000 });
  await forget();
  await use.click();
  await tells(/^Shuffled for balance\. (\d+ clash(es)?|No clashes)(, \d+ (fewer|more))?\.$/);
});

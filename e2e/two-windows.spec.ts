// Two windows of one browser with the same quilt: one shows what the other saved, and where both changed it nothing is lost.
import { expect, type Page, test } from './guarded';
import { block, firstVisit, hangsAt, undoButton } from './room';

const notice = (page: Page) => page.getByRole('region', { name: 'Saving' });

async function turn(page: Page, number: number): Promise<void> {
  await block(page, number).focus();
  await page.keyboard.press('r');
}

test('what one window saves stands in the other at once, and can be undone there', async ({
  page,
  context,
}) => {
  await firstVisit(page);
  const second = await hangsAt(page, 2);
  await block(page, 1).dragTo(block(page, 2));
  await expect(page.getByText('Saved', { exact: true })).toBeVisible();
  const other = await context.newPage();
  await other.goto(page.url());
  await expect.poll(() => hangsAt(other, 1)).toBe(second);
  await turn(other, 3);
  await expect(undoButton(page)).toHaveAccessibleName(/block 3/);
  await undoButton(page).click();
  await undoButton(page).click();
  await expect.poll(() => hangsAt(other, 2)).toBe(second);
});

test('where both windows changed a quilt both states are looked at, one is taken, and undone @phone', async ({
  page,
  context,
}) => {
  await firstVisit(page);
  await turn(page, 1);
  await expect(undoButton(page)).toBeEnabled();
  await page.waitForTimeout(1000);
  const other = await context.newPage();
  await other.goto(page.url());
  await expect(undoButton(other)).toHaveAccessibleName(/block 1/);
  // No news comes, as where there are no channels.
  await other.evaluate(() => {
    BroadcastChannel.prototype.postMessage = () => {};
  });
  await turn(other, 2);
  await other.waitForTimeout(1000);
  await turn(page, 3);
  await expect(notice(page)).toContainText('Another window has changed');
  await notice(page).getByRole('button', { name: 'Look at both' }).click();
  const states = page.getByRole('list', { name: 'Both states of the quilt' }).getByRole('listitem');
  await expect(states).toHaveCount(2);
  await expect(states.nth(0)).toContainText(/last change: .*block 3/i);
  await expect(states.nth(1)).toContainText(/last change: .*block 2/i);
  await expect(states.locator('img')).toHaveCount(2);
  await page.getByRole('button', { name: 'Take the state of the other window' }).click();
  await expect(notice(page)).toHaveCount(0);
  await expect(undoButton(page)).toHaveAccessibleName(/Take the state of the other window/);
  await undoButton(page).click();
  await expect(undoButton(page)).toHaveAccessibleName(/block 3/);
});

test('where nothing can be saved that is said with its cause and the button for a file, and closing asks @phone', async ({
  page,
}) => {
  await page.addInitScript(() => Object.defineProperty(globalThis, 'indexedDB', { value: undefined }));
  await firstVisit(page);
  await expect(notice(page)).toContainText('Not saved. This browser saves no projects');
  await expect(notice(page)).toBeInViewport();
  await turn(page, 1);
  const asked = page.waitForEvent('dialog');
  void page.close({ runBeforeUnload: true });
  const dialog = await asked;
  expect(dialog.type()).toBe('beforeunload');
  await dialog.dismiss();
  const download = page.waitForEvent('download');
  await notice(page).getByRole('button', { name: 'Save to a file' }).click();
  expect((await download).suggestedFilename()).toMatch(/\.wedgewall\.json$/);
  await expect(notice(page)).toContainText('Saved as');
  const closed = page.waitForEvent('close');
  void page.close({ runBeforeUnload: true });
  await closed;
});

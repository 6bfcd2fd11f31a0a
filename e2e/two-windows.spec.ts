// Two windows of one browser with the same quilt: one shows what the other saved, and where both changed it nothing is lost.
import { expect, type Page, test } from './guarded';
import { block, firstVisit, hangsAt, openExample, undoButton } from './room';

const notice = (page: Page) => page.getByRole('region', { name: 'Saving' });

async function turn(page: Page, number: number): Promise<void> {
  await block(page, number).focus();
  await page.keyboard.press('r');
}

test('what one window saves stands in the other, and where both changed a quilt both states are looked at', async ({
  page,
  context,
}) => {
  await firstVisit(page);
  const second = await hangsAt(page, 2);
  await block(page, 1).dragTo(block(page, 2));
  await expect(page.getByText('Saved', { exact: true })).toBeVisible();
  const other = await context.newPage();
  await other.goto(page.url());
  await test.step('what one window saves stands in the other at once, and can be undone there', async () => {
    await expect.poll(() => hangsAt(other, 1)).toBe(second);
    await turn(other, 3);
    await expect(undoButton(page)).toHaveAccessibleName(/block 3/);
    await undoButton(page).click();
    await undoButton(page).click();
    await expect.poll(() => hangsAt(other, 2)).toBe(second);
  });
  await turn(page, 1);
  await expect(undoButton(other)).toHaveAccessibleName(/block 1/);
  await test.step('where both windows changed a quilt both states are looked at, one is taken, and undone', async () => {
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
    for (const width of [390, 1440]) {
      await page.setViewportSize({ width, height: 900 });
      await expect(states).toHaveCount(2);
      await expect(states.nth(0)).toContainText(/last change: .*block 3/i);
      await expect(states.nth(1)).toContainText(/last change: .*block 2/i);
      await expect(states.locator('img')).toHaveCount(2);
    }
    await page.getByRole('button', { name: 'Take the state of the other window' }).click();
    await expect(notice(page)).toHaveCount(0);
    await expect(undoButton(page)).toHaveAccessibleName(/Take the state of the other window/);
    await undoButton(page).click();
    await expect(undoButton(page)).toHaveAccessibleName(/block 3/);
  });
  await test.step('a quilt kept in another window stands in the list without loading the page again', async () => {
    await openExample(page, 'A lighthouse keeper');
    await other.getByRole('button', { name: /^Quilt:/ }).click();
    const others = other.getByRole('region', { name: 'Other quilts saved here' });
    await expect(others.getByRole('button', { name: /^A lighthouse keeper/ })).toBeVisible();
  });
});

test('where nothing can be saved that is said with its cause and the button for a file, and closing asks', async ({
  page,
}) => {
  await page.addInitScript(() => Object.defineProperty(globalThis, 'indexedDB', { value: undefined }));
  await firstVisit(page);
  const desk = page.viewportSize()!;
  for (const size of [{ width: 390, height: 844 }, desk]) {
    await page.setViewportSize(size);
    await expect(notice(page)).toContainText('Not saved. This browser saves no quilts');
    await expect(notice(page)).toBeInViewport();
  }
  await test.step('the tool works and never says “Saved”', async () => {
    await expect(page.getByText('Not saved', { exact: true })).toBeVisible();
    await turn(page, 1);
    await expect(undoButton(page)).toBeEnabled();
    await page.waitForTimeout(600);
    await expect(page.getByText('Not saved', { exact: true })).toBeVisible();
    await expect(page.getByText('Saved', { exact: true })).toHaveCount(0);
  });
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

import { readFileSync } from 'node:fs';
import { expect, test } from '@playwright/test';
import { block, firstVisit, goTo, hangsAt, openExample, openFile, undoButton } from './room';

const demo = readFileSync(new URL('../demo-data/harbour-reading-corner.json', import.meta.url), 'utf8');

test('what was done is there after the page is loaded again', async ({ page }) => {
  await firstVisit(page);
  const second = await hangsAt(page, 2);
  await block(page, 1).dragTo(block(page, 2));
  await expect(page.getByText('Kept', { exact: true })).toBeVisible();
  await page.reload();
  await expect.poll(() => hangsAt(page, 1)).toBe(second);
});

test('several quilts are kept and opened in turn', async ({ page }) => {
  await firstVisit(page);
  await openExample(page, 'A lighthouse keeper');
  await expect(page.getByRole('button', { name: /^Quilt:/ })).not.toContainText('Harbour');
  const name = await page.getByRole('button', { name: /^Quilt:/ }).textContent();
  await openExample(page, 'Harbour library');
  await page.getByRole('button', { name: /^Quilt:/ }).click();
  await page
    .getByRole('region', { name: 'Other quilts kept here' })
    .getByRole('button', { name: new RegExp(`^${name}`) })
    .click();
  await expect(page.getByRole('button', { name: /^Quilt:/ })).toContainText(name!);
});

test('a saved file opens again as the same quilt', async ({ page }) => {
  await firstVisit(page);
  await block(page, 1).dragTo(block(page, 2));
  await page.getByRole('button', { name: /^Quilt:/ }).click();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save to a file' }).click();
  const file = await download;
  expect(file.suggestedFilename()).toMatch(/\.wedgewall\.json$/);
  const text = readFileSync(await file.path(), 'utf8');
  await page.keyboard.press('Escape');
  await undoButton(page).click();
  await expect.poll(() => hangsAt(page, 1)).toBe('row 1, column 1');
  await openFile(page, text);
  await expect(page.getByRole('dialog')).toBeHidden();
  await expect.poll(() => hangsAt(page, 1)).toBe('row 1, column 2');
});

const spoilt = JSON.parse(demo);
spoilt.fabrics[2].colour = 'purple';
const bad: [what: string, text: string, reason: RegExp][] = [
  ['no JSON at all', 'a quilt', /does not begin with a brace/],
  ['an empty file', '', /empty|not readable/i],
  ['some other JSON', '{"hello":1}', /not a Wedgewall project/],
  ['a bad colour', JSON.stringify(spoilt), /#rrggbb/],
  ['a newer version', demo.replace('"version": 1', '"version": 7'), /version 7/],
];
for (const [what, text, reason] of bad) {
  test(`a file with ${what} is refused with its reason, and the open quilt and its undo stay`, async ({
    page,
  }) => {
    await firstVisit(page);
    await block(page, 1).dragTo(block(page, 2));
    await openFile(page, text);
    await expect(page.getByRole('alert').filter({ hasText: reason })).toBeVisible();
    await expect(
      page.getByRole('alert').filter({ hasText: 'the quilt on the wall is untouched' }),
    ).toBeVisible();
    await page.keyboard.press('Escape');
    await expect.poll(() => hangsAt(page, 1)).toBe('row 1, column 2');
    await undoButton(page).click();
    await expect.poll(() => hangsAt(page, 1)).toBe('row 1, column 1');
  });
}

test('a new quilt starts at the fabrics, with the old one kept', async ({ page }) => {
  await firstVisit(page);
  await page.getByRole('button', { name: /^Quilt:/ }).click();
  await page.getByRole('button', { name: 'New quilt' }).click();
  await expect(page.getByRole('heading', { level: 2, name: 'Fabrics' })).toBeVisible();
  await goTo(page, 'Wall');
  await expect(page.getByRole('heading', { name: 'Nothing hangs yet' })).toBeVisible();
});

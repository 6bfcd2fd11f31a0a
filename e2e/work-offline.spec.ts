import { readFile } from 'node:fs/promises';
import { readPdf } from '../tests/drawing/pattern/readPdf';
import { expect, type Page, test } from './guarded';
import { block, firstVisit, foot, goTo, openPart, undoButton } from './room';

// The other specs go without it, so that none of them sees anything but the build under test.
test.use({ serviceWorkers: 'allow' });

/** Waits until the whole build is kept. */
async function kept(page: Page): Promise<void> {
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
}

test('opened once, the tool opens again without a network, the quilt as it was left, and makes the pattern', async ({
  page,
  context,
  request,
}) => {
  test.setTimeout(120_000);
  await firstVisit(page);
  await test.step('the tool can be installed: a manifest with icons that are there', async () => {
    const address = await page.locator('link[rel=manifest]').getAttribute('href');
    const manifest = await (await request.get(new URL(address!, page.url()).href)).json();
    expect(manifest).toMatchObject({ name: 'Wedgewall', display: 'standalone' });
    expect(manifest.icons.length).toBeGreaterThan(2);
    for (const { src, type } of manifest.icons) {
      const icon = await request.get(new URL(src, new URL(address!, page.url())).href);
      expect(icon.headers()['content-type']).toContain(type);
    }
  });
  await kept(page);
  await block(page, 1).focus();
  await page.keyboard.press('r');
  await expect(undoButton(page)).toHaveAccessibleName('Undo: turn block 1');
  await expect(page.getByText('Saved', { exact: true })).toBeVisible();
  await context.setOffline(true);
  await page.reload();
  await expect(block(page, 6)).toBeVisible();
  await page.getByRole('button', { name: /^Quilt:/ }).click();
  await page.getByRole('button', { name: 'Licences' }).click();
  const licences = page.getByRole('dialog', { name: 'Licences' });
  await licences
    .locator('summary')
    .filter({ hasText: /^react MIT$/ })
    .click();
  await expect(licences).toContainText('Permission is hereby granted');
  await page.keyboard.press('Escape');
  await goTo(page, 'Wall');
  await expect(page.getByRole('region', { name: 'What clashes' })).toContainText('things to look at');
  await foot(page).getByRole('button', { name: 'Shuffle', exact: true }).click();
  await foot(page).getByRole('button', { name: 'Use this layout' }).click({ timeout: 30_000 });
  await goTo(page, 'Finishing');
  await openPart(page, 'Pattern');
  // The pages on screen come offline too.
  await expect(page.getByText('Page 1 of')).toBeVisible({ timeout: 30_000 });
  // Its templates alone come of the same worker, with the same fonts; the whole of it is held in write-the-pattern.spec.ts.
  const [download] = await Promise.all([
    page.waitForEvent('download', { timeout: 60_000 }),
    page.getByRole('button', { name: 'Templates only' }).click(),
  ]);
  const pdf = await readPdf(new Uint8Array(await readFile(await download.path())), { lines: false });
  expect(pdf.bookmarks).toEqual(['Templates']);
  expect(pdf.pages[0]!.text).toContain('Template');
});

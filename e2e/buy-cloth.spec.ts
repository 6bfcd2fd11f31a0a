// What to buy and how to cut it, opened to the working behind each figure; kits with their price; tables to take away.
import { readFile } from 'node:fs/promises';
import { expect, type Page, test } from './guarded';
import { openExample } from './quilt';
import { goTo, openPart, undoAll, undoButton } from './room';
import { openSaved } from './stored';

const CLOTH = 'Fabric and cutting list';
const KITS = 'Kits and cost';

function cloth(page: Page) {
  return page.getByRole('region', { name: CLOTH });
}

function kits(page: Page) {
  return page.getByRole('region', { name: KITS });
}

test('the cutting list and kits: figures, fat quarters, narrower fabric, prices, the backing, each from the quilt as it was opened', async ({
  page,
}) => {
  await openExample(page, 'Finishing');
  await test.step('fabrics are a line each; all are opened at once and folded again', async () => {
    await openPart(page, CLOTH);
    const list = cloth(page);
    const open = list.locator('.cloths > li > details[open]');
    await expect(list.getByText(/^16 fabrics: .* yd/)).toBeVisible();
    await expect(open).toHaveCount(0);
    await list.getByRole('button', { name: 'Open all fabrics of the cutting list' }).click();
    await expect(open).toHaveCount(16);
    await open.first().locator('summary').first().click();
    await expect(list.getByRole('button', { name: 'Open all fabrics of the cutting list' })).toBeVisible();
    await list.getByRole('button', { name: 'Open all fabrics of the cutting list' }).click();
    await list.getByRole('button', { name: 'Fold all fabrics of the cutting list' }).click();
    await expect(open).toHaveCount(0);
  });
  await test.step('a figure of the cutting list opens to how it was reckoned', async () => {
    await openPart(page, CLOTH);
    const list = cloth(page);
    const fabric = list.locator('.cloths > li').filter({ hasText: 'Sailcloth with faint specks' });
    await expect(fabric.locator('.cloth-buy')).toHaveText('3/8 yd');
    await fabric.locator('.cloth-name').click();
    await expect(fabric.getByText('12 squares 5 1/2"')).toBeVisible();
    await fabric.locator('summary').filter({ hasText: 'Squares for corner triangles, halved' }).click();
    await expect(fabric.getByText('24 triangles, two from each of 12.')).toBeVisible();
  });
  await test.step('a fat quarter is as large as the cloth makes it, straightened, and its cost is told', async () => {
    await openPart(page, KITS);
    const part = kits(page);
    await part.getByText('Lengths of fabric').click();
    await part.locator('summary').filter({ hasText: 'Prices' }).click();
    const quarter = part.getByLabel('Price of a fat quarter');
    await quarter.fill('1.255');
    await quarter.press('Enter');
    await expect(quarter).toHaveValue('1.255');
    const size = /^A fat quarter gives 20" × 17" to cut: half of 40", and 18" less 1" to straighten it\.$/;
    await expect(part.locator('.kit-prices').getByText(size)).toBeVisible();
    await openPart(page, CLOTH);
    const list = cloth(page);
    const fabric = list.locator('.cloths > li').filter({ hasText: 'Sailcloth with faint specks' });
    // Nine squares of 5 1/2" lie on 20" × 17", so twelve take two.
    await expect(fabric.locator('.cloth-buy')).toHaveText('2 fat quarters');
    await fabric.locator('.cloth-name').click();
    await expect(fabric.getByText(size)).toBeVisible();
    await expect(
      fabric.getByText('2 fat quarters at $1.255 each: $2.51, rounded to two decimals.'),
    ).toBeVisible();
    const width = list.getByLabel('Usable width of fabric');
    await list.getByText('Yardage settings').click();
    await width.fill('44');
    await width.press('Enter');
    await expect(list.getByText(/^A fat quarter gives 22" × 17" to cut/).first()).toBeVisible();
    await expect(fabric.locator('.cloth-buy')).toHaveText('1 fat quarter');
  });
  await undoAll(page);
  // What was unfolded is folded when a part is opened again.
  await openPart(page, KITS);
  await test.step('narrower cloth takes more of it, in words that can be undone', async () => {
    await openPart(page, CLOTH);
    const list = cloth(page);
    await list.getByText('Yardage settings').click();
    await list.getByLabel('Fat quarters where they are cheaper').uncheck();
    const fabric = list.locator('.cloths > li').filter({ hasText: 'Sailcloth with faint specks' });
    // 12 squares of 5 1/2": seven to the strip of 40", two strips, 11" and 1" to straighten.
    await expect(fabric.locator('.cloth-buy')).toHaveText('3/8 yd');
    const width = list.getByLabel('Usable width of fabric');
    await width.fill('16');
    await width.press('Enter');
    // Two to the strip: six strips, 33" and 1".
    await expect(fabric.locator('.cloth-buy')).toHaveText('1 yd');
    await undoButton(page).click();
    await expect(fabric.locator('.cloth-buy')).toHaveText('3/8 yd');
  });
  await undoAll(page);
  await test.step('a kit has a price once cloth has one, and its order and labels can be taken away', async () => {
    await openPart(page, KITS);
    const part = kits(page);
    await part.locator('summary').filter({ hasText: 'Prices' }).click();
    const price = part.getByLabel('Price of fabric');
    await price.fill('');
    await price.press('Enter');
    await expect(part.getByText('Write a price and the kit has one.')).toBeVisible();
    await part.getByLabel('Currency').fill('£');
    await price.fill('dear');
    await price.press('Enter');
    await expect(part.getByText('Write an amount such as 12.50.')).toBeVisible();
    await price.fill('12');
    await price.press('Enter');
    await expect(part.locator('.kit-price')).toContainText(/£\d+\.\d\d/);
    for (const [button, first] of [
      ['Save the order (CSV)', 'Number,Fabric,Per kit (yd)'],
      ['Save the labels (CSV)', 'Label,Fabric,Strips per kit'],
    ] as const) {
      const [download] = await Promise.all([
        page.waitForEvent('download'),
        page.getByRole('button', { name: button }).click(),
      ]);
      expect(download.suggestedFilename()).toMatch(/\.csv$/);
      await expect(page.locator('.saved')).toHaveText(`Saved as ${download.suggestedFilename()}.`);
      const text = await readFile(await download.path(), 'utf8');
      expect(text.replace(/^\uFEFF/, '').startsWith(first)).toBe(true);
      expect(text.endsWith('\r\n')).toBe(true);
    }
  });
  await undoAll(page);
  await test.step('the backing is given a fabric of the quilt and counted in its line, or left open', async () => {
    await openPart(page, CLOTH);
    const list = cloth(page);
    const fabric = list.locator('.cloths > li').filter({ hasText: 'Night ink, tiny stars' });
    const backing = list.locator('details.cloth').filter({ hasText: 'Fabric of the backing' });
    // 50 1/2" and 1" to straighten, up to the next eighth.
    await expect(backing.locator('summary .cloth-buy').first()).toHaveText('1 1/2 yd');
    await expect(fabric.locator('.cloth-buy')).toHaveText('1/4 yd');
    await backing.locator('summary').first().click();
    await backing.getByText('A fabric', { exact: true }).click();
    await backing.getByRole('button', { name: /Fabric of the backing$/ }).click();
    await page.getByRole('option', { name: 'Night ink, tiny stars' }).click();
    await expect(backing.locator('summary').first()).toContainText('Backing of Night ink, tiny stars');
    // Its strips, 5" together, and the length of 50 1/2", straightened once: 56 1/2".
    await expect(fabric.locator('.cloth-buy')).toHaveText('1 5/8 yd');
    await fabric.locator('summary').first().click();
    await expect(fabric.locator('span').filter({ hasText: /^Lengths of the backing$/ })).toBeVisible();
    await backing.getByLabel('Width of the fabric').fill('108');
    await backing.getByLabel('Width of the fabric').press('Enter');
    await expect(
      backing.getByText('The backing is of wider fabric than the rest, so it is bought by itself.'),
    ).toBeVisible();
    await expect(fabric.locator('.cloth-buy').first()).toHaveText('1/4 yd');
    await undoButton(page).click();
    await backing.getByText('Not chosen', { exact: true }).click();
    await expect(backing.locator('summary .cloth-buy').first()).toHaveText('1 1/2 yd');
  });
  await undoAll(page);
  await test.step('a fabric has its price in one place, and a kit costs what its cloth costs', async () => {
    await openPart(page, KITS);
    const part = kits(page);
    await part.locator('summary').filter({ hasText: 'Prices' }).click();
    await expect(part.getByLabel('Price of this fabric')).toHaveCount(0);
    const before = await part.locator('.kit-price').textContent();
    await part.getByRole('button', { name: /Fabric with a price of its own/ }).click();
    await page.getByRole('option', { name: 'Night ink, tiny stars' }).click();
    await part.getByLabel('Price of this fabric').fill('40');
    await part.getByLabel('Price of this fabric').press('Enter');
    await expect(part.getByText('With a price of their own: Night ink, tiny stars.')).toBeVisible();
    await expect(part.locator('.kit-price')).not.toHaveText(before!);
    const row = part.locator('.cloths > li').filter({ hasText: 'Night ink, tiny stars' });
    await row.locator('summary').first().click();
    await expect(row.getByText('At a price of its own: $40.00.')).toBeVisible();
  });
  await undoAll(page);
  await test.step('fabric sold by the metre keeps what its prices are worth, and says so', async () => {
    const part = kits(page);
    const price = part.getByLabel('Price of fabric');
    await price.fill('13');
    await price.press('Enter');
    await openPart(page, CLOTH);
    const list = cloth(page);
    await list.getByText('Yardage settings').click();
    const told = list.getByText('Prices are changed to match: $13.00 a yard is $14.22 a metre, rounded.');
    await expect(told).toHaveCount(0);
    await list.getByText('Metre, in 10 cm').click();
    await expect(told).toBeVisible();
    await undoButton(page).click();
    await expect(list.getByLabel('Yard, in eighths')).toBeChecked();
    await expect(told).toHaveCount(0);
    await list.getByText('Metre, in 10 cm').click();
    await openPart(page, KITS);
    await expect(price).toHaveValue('14.22');
  });
});

test('a name of one long word keeps to its row beside what is bought, in list, kits and pictures', async ({
  page,
}) => {
  const quilt = JSON.parse(await readFile('demo-data/keepers-winter.json', 'utf8'));
  for (const fabric of quilt.fabrics) fabric.name = 'Donaudampfschifffahrtsgesellschaftskapitänsmützenstoff';
  await openSaved(page, JSON.stringify(quilt));
  await goTo(page, 'Finishing');
  for (const size of [page.viewportSize()!, { width: 390, height: 844 }]) {
    await page.setViewportSize(size);
    for (const part of [CLOTH, KITS]) {
      await openPart(page, part);
      const rows = page.locator('.cloths > li summary:has(.cloth-buy), .cloth-card figcaption');
      await expect(rows.first()).toBeVisible();
      const over = await rows.evaluateAll(
        (all) =>
          all.filter((row) => {
            const text = document.createRange();
            text.selectNodeContents(row.querySelector('bdi')!);
            const bought = row.querySelector('.cloth-buy, .number:last-child')!.getBoundingClientRect();
            return [...text.getClientRects()].some(
              ({ right }) => right > Math.max(bought.left, row.getBoundingClientRect().left + 1),
            );
          }).length,
      );
      expect(over, `${part}, ${size.width} wide`).toBe(0);
    }
  }
});

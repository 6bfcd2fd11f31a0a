// The browser's own Print: the quilt with its name, sizes and map, or the list that is open, read back with PDF.js; never the tool.
import { expect, type Page, test } from '@playwright/test';
import { bare, type ReadPdf, readPdf } from '../tests/drawing/pattern/readPdf';
import { openExample } from './quilt';
import { openPart } from './room';

async function printed(page: Page): Promise<ReadPdf> {
  const bytes = await page.pdf({
    format: 'Letter',
    margin: { top: '0.5in', bottom: '0.5in', left: '0.5in', right: '0.5in' },
  });
  return readPdf(new Uint8Array(bytes), { lines: false });
}

const textOf = (pdf: ReadPdf) => pdf.pages.map(({ text }) => text).join('');

/** Words of the tool that stand on the page, of which none may be printed. */
async function toolsWords(page: Page): Promise<string[]> {
  const words = await page.locator('.panel h2, .step-foot button, .selvedge .name').allTextContents();
  return words.map(bare).filter((one) => one.length > 5);
}

for (const step of ['Wall', 'Strip sets', 'Fabrics']) {
  test(`at the step ${step} the quilt is printed with its name, sizes and map`, async ({ page }) => {
    await openExample(page, step);
    const tools = await toolsWords(page);
    expect(tools.length).toBeGreaterThan(3);
    const pdf = await printed(page);
    const text = textOf(pdf);
    expect(text).toContain(bare((await page.getByRole('heading', { level: 1 }).textContent()) ?? ''));
    expect(text).toMatch(/\d"×\d.*finished;6blocks/);
    expect(text).toContain('Mapofthewall');
    for (let row = 1; row <= 2; row += 1) expect(text).toContain(`Row${row}`);
    for (let number = 1; number <= 6; number += 1) expect(text).toContain(String(number));
    for (const words of tools) expect(text, words).not.toContain(words);
    expect(pdf.pages.length).toBeLessThanOrEqual(2);
    // On screen nothing of it stays.
    await expect(page.locator('.print-sheet')).toHaveCount(0);
    await expect(page.locator('html')).not.toHaveAttribute('data-print', /./);
  });
}

test('the cutting list that is open is printed whole, and the kits', async ({ page }) => {
  test.setTimeout(90_000);
  await openExample(page, 'Finishing');
  for (const part of ['Fabric and cutting list', 'Kits and cost']) {
    await openPart(page, part);
    const shut = await page.locator('.cloth-part details:not([open])').count();
    const rows = await page
      .locator('.cloth-part .cloth-name, .cloth-part .cloth > summary bdi')
      .allTextContents();
    expect(rows.length).toBeGreaterThan(2);
    const pdf = await printed(page);
    const text = textOf(pdf);
    for (const row of rows) expect(text, row).toContain(bare(row));
    for (const words of ['Colourways', 'Save the order', 'Print the list', 'Undo'])
      expect(text, words).not.toContain(bare(words));
    // No page is blank.
    for (const { text: words } of pdf.pages) expect(words).not.toBe('');
    expect(await page.locator('.cloth-part details:not([open])').count()).toBe(shut);
  }
});

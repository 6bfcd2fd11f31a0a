// The browser's own Print: the quilt with its name, sizes and map, or the list that is open, read back with PDF.js; never the tool.

import { writeProject } from '../src/model/reading/read';
import { demo } from '../tests/demo';
import { bare, type ReadPdf, readPdf } from '../tests/drawing/pattern/readPdf';
import { expect, type Page, test } from './guarded';
import { firstVisit, goTo, openFile, openPart, undoButton } from './room';

/** Half an inch, in points. */
const MARGIN = 36;

async function printed(page: Page, format: 'A4' | 'Letter'): Promise<ReadPdf> {
  const side = `${MARGIN / 72}in`;
  const bytes = await page.pdf({ format, margin: { top: side, bottom: side, left: side, right: side } });
  return readPdf(new Uint8Array(bytes), { lines: false });
}

/** No page is blank, and all words stand inside the margins, so that none is cut off. */
function expectWhole({ pages }: ReadPdf): void {
  for (const { text, words, width, height } of pages) {
    expect(text).not.toBe('');
    const outside = words.filter(
      (one) =>
        one.text.trim() !== '' &&
        (one.x < MARGIN - 1 ||
          one.x + one.width > width - MARGIN + 1 ||
          one.y < MARGIN - 1 ||
          one.y + one.height > height - MARGIN + 3),
    );
    expect(outside.map(({ text: words }) => words)).toEqual([]);
  }
}

const textOf = (pdf: ReadPdf) => pdf.pages.map(({ text }) => text).join('');

/** Words of the tool that stand on the page, of which none may be printed. */
async function toolsWords(page: Page): Promise<string[]> {
  const words = await page.locator('.panel h2, .step-foot button, .selvedge .name').allTextContents();
  return words.map(bare).filter((one) => one.length > 5);
}

/** Prints the quilt at a step, and holds that its name, sizes and map are on paper and nothing of the tool is. */
async function expectQuilt(page: Page, step: string, format: 'A4' | 'Letter'): Promise<void> {
  await goTo(page, step);
  const tools = await toolsWords(page);
  expect(tools.length).toBeGreaterThan(3);
  const pdf = await printed(page, format);
  const text = textOf(pdf);
  expect(text).toContain(bare((await page.getByRole('heading', { level: 1 }).textContent()) ?? ''));
  expect(text).toMatch(/\d"×\d.*finished;6blocks/);
  expect(text).toContain('Mapofthewall');
  for (let row = 1; row <= 2; row += 1) expect(text).toContain(`Row${row}`);
  for (let number = 1; number <= 6; number += 1) expect(text).toContain(String(number));
  for (const words of tools) expect(text, words).not.toContain(words);
  expect(pdf.pages.length).toBeLessThanOrEqual(2);
  expectWhole(pdf);
  // On screen nothing of it stays.
  await expect(page.locator('.print-sheet')).toHaveCount(0);
  await expect(page.locator('html')).not.toHaveAttribute('data-print', /./);
}

/** The small example, all of plain fabrics: a browser takes seconds to print a wall of prints, and no word depends on them. */
async function openPlain(page: Page): Promise<void> {
  const project = demo('harbour-reading-corner');
  const fabrics = project.fabrics.map((fabric) => ({ ...fabric, cloth: { kind: 'plain' as const } }));
  await firstVisit(page);
  await openFile(page, writeProject({ ...project, fabrics }, new Map()));
  await expect(page.getByRole('dialog')).toBeHidden();
}

test('the quilt is printed with its name, sizes and map, the cutting list that is open whole, and the kits', async ({
  page,
}) => {
  await openPlain(page);
  await test.step('at the step Wall on Letter', () => expectQuilt(page, 'Wall', 'Letter'));
  await test.step('a pattern of a wall with empty places is not made without a word', async () => {
    const words = page
      .locator('.panel')
      .getByText(/place on the wall is empty: hang a block there before you sew/);
    await page.locator('g.block').first().press('Enter');
    await page.getByRole('button', { name: 'Take down' }).click();
    await goTo(page, 'Finishing');
    await openPart(page, 'Pattern');
    await expect(words).toBeVisible();
    await undoButton(page).click();
    await expect(words).toBeHidden();
  });
  // The narrower paper for the one, the lower for the other: both are laid out by the same rules.
  for (const [part, format] of [
    ['Fabric and cutting list', 'A4'],
    ['Kits and cost', 'Letter'],
  ] as const)
    await test.step(`${part} on ${format}`, async () => {
      await openPart(page, part);
      const shut = await page.locator('.cloth-part details:not([open])').count();
      const rows = await page
        .locator('.cloth-part .cloth-name, .cloth-part .cloth > summary bdi')
        .allTextContents();
      expect(rows.length).toBeGreaterThan(2);
      const pdf = await printed(page, format);
      const text = textOf(pdf);
      for (const row of rows) expect(text, row).toContain(bare(row));
      for (const words of ['Colourways', 'Save the order', 'Print the list', 'Undo'])
        expect(text, words).not.toContain(bare(words));
      expectWhole(pdf);
      expect(await page.locator('.cloth-part details:not([open])').count()).toBe(shut);
    });
  await test.step('at the step Fabrics on A4, from a dark window at 400 % zoom, where the page flows', async () => {
    await page.emulateMedia({ colorScheme: 'dark' });
    await page.setViewportSize({ width: 320, height: 256 });
    await expectQuilt(page, 'Fabrics', 'A4');
  });
});

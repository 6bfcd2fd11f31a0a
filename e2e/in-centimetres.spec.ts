// A maker who cuts by centimetres, from an empty quilt to the pattern as a PDF: the browser's language gives the unit, every usual size is
// a round one, nothing on screen or in the PDF is told by the inch, and every decimal on screen has its comma.
import { readFile } from 'node:fs/promises';
import { readPdf } from '../tests/drawing/pattern/readPdf';
import { expect, type Page, test } from './guarded';
import { firstVisit, goTo, openExample, openPart, undoButton } from './room';

test.use({ locale: 'de-DE' });

/** What only who cuts by the inch says; in a field (after its =) also a bare fraction. */
const BY_THE_INCH = /\d ?["″]|\d \d+\/\d|^= .*\/|\binch|\byards?\b|\d yd\b|\bCrib\b|\bTwin\b/;

/** A decimal point; a point before three figures stands between thousands. */
const DECIMAL_POINT = /\d\.(?!\d{3}(?!\d))\d/;

/** Everything that is read on the page, also by a screen reader, with all that is folded away. */
async function allWords(page: Page): Promise<string> {
  const attributes = await page.evaluate(() => {
    for (const fold of document.querySelectorAll('details')) fold.open = true;
    return [...document.querySelectorAll('*')].flatMap((one) => [
      ...['aria-label', 'title', 'placeholder', 'aria-description'].map(
        (name) => one.getAttribute(name) ?? '',
      ),
      one instanceof HTMLInputElement && !['file', 'range'].includes(one.type) ? `= ${one.value}` : '',
    ]);
  });
  // biome-ignore lint/performance/useDomNodeTextContent: what is hidden is not read, and where a line ends counts
  return [await page.locator('body').innerText(), ...attributes].join('\n');
}

async function expectMetric(page: Page): Promise<void> {
  const lines = (await allWords(page)).split('\n');
  expect(lines.filter((line) => DECIMAL_POINT.test(line))).toEqual([]);
  const found = lines.filter((line) => BY_THE_INCH.test(line));
  // Yards are on offer where fabric is bought, beside metres; metres are chosen.
  expect(found.filter((line) => line !== 'Yard, in eighths')).toEqual([]);
}

const laid = (page: Page) => page.getByRole('region', { name: 'The quilt laid out' });

async function unitChosen(page: Page, unit: 'inches' | 'centimetres'): Promise<void> {
  await page.getByRole('button', { name: 'Units of lengths' }).click();
  await page.getByRole('radio', { name: unit }).check({ force: true });
  await page.keyboard.press('Escape');
}

test('from an empty quilt to the pattern nothing is told by the inch', async ({ page }) => {
  test.setTimeout(240_000);
  await firstVisit(page);
  await page.getByRole('button', { name: /^Quilt:/ }).click();
  await page.getByRole('button', { name: 'New quilt' }).click();
  await expect(page.getByRole('heading', { name: 'Begin the quilt' })).toBeVisible();

  for (const way of [/^Plan a size/, /^Open a roll/, /^Start from fabric/, /^Start from strips/]) {
    await page.getByRole('button', { name: way }).click();
    await expectMetric(page);
  }
  const form = page.getByRole('form', { name: 'Strips I have' });
  await expect(form.getByRole('textbox', { name: 'Length of the strips' })).toHaveValue('105');
  for (const [at, width] of [/^2[.,]5$/, '4', '5'].entries())
    await expect(form.getByRole('textbox', { name: 'Strips cut' }).nth(at)).toHaveValue(width);
  await form.getByRole('button', { name: 'Lay out the whole quilt' }).click();
  await expect(laid(page)).toContainText(/\d+ blocks hung/, { timeout: 90_000 });
  await expectMetric(page);

  for (const step of ['Fabrics', 'Strip sets', 'Wedges', 'Blocks', 'Wall']) {
    await goTo(page, step);
    await expectMetric(page);
  }
  const main = page.getByRole('main');
  await main.getByRole('button', { name: 'Add a border' }).click();
  const border = main.getByRole('textbox', { name: 'Border 1' });
  await expect(border).toHaveValue('8');
  for (const typed of ['8,5', '8.5']) {
    await border.fill(typed);
    await border.press('Tab');
    await expect(border).toHaveValue('8,5');
  }
  await main.getByRole('radio', { name: /^6([.,]0)? cm/ }).check({ force: true });
  await expectMetric(page);

  await goTo(page, 'Finishing');
  const parts = page.getByRole('navigation', { name: 'Parts of finishing' }).getByRole('button');
  for (const part of await parts.allTextContents()) {
    await openPart(page, part);
    if (part === 'Pattern') await expect(page.getByText(/^Page 1 of \d+$/)).toBeVisible({ timeout: 30_000 });
    await expectMetric(page);
  }

  await openPart(page, 'Pattern');
  await expect(main.getByRole('radio', { name: 'A4' })).toBeChecked();
  const [download] = await Promise.all([
    page.waitForEvent('download', { timeout: 90_000 }),
    main.getByRole('button', { name: 'Make the pattern' }).click(),
  ]);
  const pdf = await readPdf(new Uint8Array(await readFile(await download.path())), { lines: false });
  expect(pdf.pages.length).toBeGreaterThan(8);
  // Words stand without spaces here.
  for (const { text } of pdf.pages)
    expect(
      /\d["″]|\d\/\d|inch|yard(?!age)|\dyd|(?:Crib|Twin|Full|Queen|King|no)package/.exec(text)?.[0],
    ).toBeUndefined();
  expect(pdf.pages.map(({ text }) => text).join('')).toContain('2cm');
});

test('the unit is the person’s: it outlives a reload, holds for every quilt, and changes none', async ({
  page,
}) => {
  test.setTimeout(120_000);
  await firstVisit(page);
  await goTo(page, 'Wedges');
  await expectMetric(page);
  const undo = await undoButton(page).getAttribute('aria-label');
  await unitChosen(page, 'inches');
  await expect.poll(() => allWords(page)).toMatch(/\d"/);
  expect(await undoButton(page).getAttribute('aria-label')).toBe(undo);
  await page.reload();
  await expect.poll(() => allWords(page)).toMatch(/\d"/);
  await openExample(page, 'The kiln shed');
  await goTo(page, 'Wedges');
  await expect.poll(() => allWords(page)).toMatch(/\d"/);
  await unitChosen(page, 'centimetres');
  await expect.poll(() => allWords(page)).not.toMatch(/\d"/);
  await page.getByRole('button', { name: /^Quilt:/ }).click();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save to a file' }).click(),
  ]);
  const saved = JSON.parse(await readFile(await download.path(), 'utf8'));
  expect(saved.preferences.unit).toBe('in');
});

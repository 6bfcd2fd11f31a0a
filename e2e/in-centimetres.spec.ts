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
function allWords(page: Page): Promise<string> {
  return page.evaluate(() => {
    for (const fold of document.querySelectorAll('details')) fold.open = true;
    const attributes = [...document.querySelectorAll('*')].flatMap((one) => [
      ...['aria-label', 'title', 'placeholder', 'aria-description'].map(
        (name) => one.getAttribute(name) ?? '',
      ),
      one instanceof HTMLInputElement && !['file', 'range'].includes(one.type) ? `= ${one.value}` : '',
    ]);
    // biome-ignore lint/performance/useDomNodeTextContent: what is hidden is not read, and where a line ends counts
    return [document.body.innerText, ...attributes].join('\n');
  });
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

/** The PDF that a button makes. */
async function made(page: Page, button: string) {
  const [download] = await Promise.all([
    page.waitForEvent('download', { timeout: 60_000 }),
    page.getByRole('button', { name: button }).click(),
  ]);
  const bytes = await readFile(await download.path());
  const [, ...size] = /\/MediaBox\s*\[\s*0\s+0\s+([\d.]+)\s+([\d.]+)/.exec(bytes.toString('latin1'))!;
  const { pages } = await readPdf(new Uint8Array(bytes), { lines: false });
  return { name: download.suggestedFilename(), pages, size: size.map(Number).map(Math.round) };
}

test('the unit is the person’s, and from an empty quilt to the pattern nothing is told by the inch', async ({
  page,
}) => {
  test.setTimeout(240_000);
  const main = page.getByRole('main');
  await firstVisit(page);
  await test.step('the unit outlives a reload, holds for every quilt, and changes none', async () => {
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
  await test.step('the ways to begin, and a quilt laid out', async () => {
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
  });
  await test.step('the steps of the work', async () => {
    for (const step of ['Fabrics', 'Strip sets', 'Wedges', 'Blocks', 'Wall']) {
      await goTo(page, step);
      await expectMetric(page);
    }
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
  });
  await test.step('the parts of finishing', async () => {
    await goTo(page, 'Finishing');
    const parts = page.getByRole('navigation', { name: 'Parts of finishing' }).getByRole('button');
    for (const part of (await parts.allTextContents()).filter((one) => one !== 'Pattern')) {
      await openPart(page, part);
      await expectMetric(page);
    }
  });
  await test.step('the pattern', async () => {
    await openPart(page, 'Pattern');
    await expect(page.getByText(/^Page 1 of \d+$/)).toBeVisible({ timeout: 30_000 });
    await expectMetric(page);
    await expect(main.getByRole('radio', { name: 'A4' })).toBeChecked();
    const pdf = await made(page, 'Make the pattern');
    expect(pdf.pages.length).toBeGreaterThan(8);
    // Words stand without spaces here.
    for (const { text } of pdf.pages)
      expect(
        /\d["″]|\d\/\d|inch|yard(?!age)|\dyd|(?:Crib|Twin|Full|Queen|King|no)package/.exec(text)?.[0],
      ).toBeUndefined();
    expect(pdf.pages.map(({ text }) => text).join('')).toContain('2cm');
  });
  await test.step('the map of the wall is saved from the wall as one page, on the paper chosen for the pattern', async () => {
    await main.getByRole('radio', { name: 'Letter' }).check({ force: true });
    await goTo(page, 'Wall');
    // With its fold open, tops of a wanted size lie on the large area.
    await page.getByRole('button', { name: 'Show the wall large' }).click();
    const map = await made(page, 'Wall map');
    expect(map.name).toMatch(/-wall-map\.pdf$/);
    expect(map.pages).toHaveLength(1);
    expect(map.pages[0]!.text).toContain('Mapofthewall');
    // Letter is 8 1/2 by 11 inches (ANSI/ASME Y14.1, size A), in points of 1/72".
    expect(map.size).toEqual([612, 792]);
  });
});

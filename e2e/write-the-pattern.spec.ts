import { readFile } from 'node:fs/promises';
import { readPdf } from '../tests/drawing/pattern/readPdf';
import { expect, type Page, test } from './guarded';
import { openExample } from './quilt';
import { openPart } from './room';

/** The panel: the choices of the pattern, and its action in the foot. */
const pattern = (page: Page) => page.getByRole('main');

async function saved(page: Page, button: string): Promise<{ name: string; bytes: Buffer }> {
  const [download] = await Promise.all([
    page.waitForEvent('download', { timeout: 60_000 }),
    pattern(page).getByRole('button', { name: button }).click(),
  ]);
  return { name: download.suggestedFilename(), bytes: await readFile(await download.path()) };
}

/** Leaves out all parts of the pattern but these. */
async function leave(page: Page, parts: readonly string[]): Promise<void> {
  await pattern(page)
    .getByRole('checkbox')
    .evaluateAll((all: HTMLInputElement[], wanted) => {
      for (const one of all)
        if (one.checked !== wanted.includes(one.labels![0]!.textContent!.trim())) one.click();
    }, parts);
  for (const part of parts) await expect(pattern(page).getByLabel(part)).toBeChecked();
  await expect(pattern(page).getByRole('checkbox', { checked: true })).toHaveCount(parts.length);
}

test('the pattern is made on the paper and of the parts that were chosen, in any script, or stopped', async ({
  page,
}) => {
  await openExample(page, 'Finishing');
  await openPart(page, 'Pattern');
  await test.step('templates come alone, at true size on Letter for a quilt in inches', async () => {
    const { name, bytes } = await saved(page, 'Templates only');
    expect(name).toMatch(/-templates\.pdf$/);
    const pdf = await readPdf(new Uint8Array(bytes));
    expect(pdf.bookmarks).toEqual(['Templates']);
    expect([pdf.pages[0]!.width, pdf.pages[0]!.height]).toEqual([612, 792]);
    expect(pdf.printScaling).toBe('None');
  });
  await test.step('the pages are turned by button, key and list, on the paper and with the parts chosen', async () => {
    const work = page.getByRole('region', { name: 'To save or print' });
    const number = work.locator('.page-number');
    await expect(number).toHaveText(/^Page 1 of \d+$/, { timeout: 30_000 });
    const pages = Number(/of (\d+)/.exec((await number.textContent())!)![1]);
    await expect(work.getByRole('button', { name: 'Previous page' })).toBeDisabled();
    await work.getByRole('button', { name: 'Next page' }).click();
    await expect(number).toHaveText(`Page 2 of ${pages}`);
    await work.getByRole('group', { name: /arrows turn the pages/ }).focus();
    await page.keyboard.press('End');
    await expect(number).toHaveText(`Page ${pages} of ${pages}`);
    await expect(work.locator('.page-sheet')).toContainText(`${pages} of ${pages}`);
    await page.keyboard.press('ArrowLeft');
    await expect(number).toHaveText(`Page ${pages - 1} of ${pages}`);
    await work.getByRole('combobox', { name: 'Go to page' }).selectOption('2');
    await expect(number).toHaveText(`Page 3 of ${pages}`);
    const sheet = work.locator('.page-sheet');
    await expect(sheet).toHaveAttribute('viewBox', '0 0 612 792');
    await pattern(page).getByText('A4', { exact: true }).click();
    // 210 × 297 mm in points (ISO 216).
    await expect(sheet).toHaveAttribute('viewBox', /^0 0 595\.27\d* 841\.88\d*$/);
    const parts = await pattern(page).getByRole('checkbox').all();
    await leave(page, ['Cover, sizes, symbols and cautions']);
    await expect(number).toHaveText(/^Page 1 of \d$/);
    for (const part of parts) await part.check();
  });
  await test.step('the making of a pattern is stopped: nothing is saved', async () => {
    let downloads = 0;
    page.on('download', () => {
      downloads += 1;
    });
    await pattern(page).getByRole('button', { name: 'Make the pattern' }).click();
    await pattern(page).getByRole('button', { name: 'Stop' }).click();
    await expect(pattern(page).getByRole('status').getByText('Stopped. Nothing was saved.')).toBeVisible();
    await expect(pattern(page).getByRole('button', { name: 'Stop' })).toBeHidden();
    expect(downloads).toBe(0);
  });
  await test.step('it is made after all, and saved as a PDF on the paper that was chosen, with a card for every block', async () => {
    await pattern(page).getByText('A4', { exact: true }).click();
    await expect(pattern(page).getByRole('radio', { name: 'A4' })).toBeChecked();
    await leave(page, ['Cover, sizes, symbols and cautions', 'Making a block, block cards, map of the wall']);
    const { name, bytes } = await saved(page, 'Make the pattern');
    expect(name).toMatch(/-pattern\.pdf$/);
    const pdf = await readPdf(new Uint8Array(bytes), { lines: false });
    // A4 by ISO 216: 210 × 297 mm, in points.
    expect(pdf.pages[0]!.width).toBeCloseTo((210 / 25.4) * 72, 2);
    const text = pdf.pages.map((one) => one.text).join('');
    for (const number of [1, 2, 3, 4, 5, 6]) expect(text).toContain(`Block${number}`);
    await expect(pattern(page).getByText(`Saved as ${name}, ${pdf.pages.length} pages.`)).toBeVisible();
  });
  await test.step('a name in another script is set as a picture where the device has its letters, and said to be', async () => {
    await page.locator('.project-button').click();
    const name = page.getByRole('dialog').getByLabel('Name of this quilt');
    await name.fill('Υφαντό Ковдра');
    await name.press('Enter');
    await page.keyboard.press('Escape');
    await leave(page, ['Cover, sizes, symbols and cautions']);
    const { bytes } = await saved(page, 'Make the pattern');
    const pdf = await readPdf(new Uint8Array(bytes));
    expect(pdf.title).toBe('Υφαντό Ковдра');
    // Neither wrong letters nor question marks stand for it: the facts follow with the name as a picture.
    const cover = pdf.pages[0]!.text;
    expect(cover).not.toContain('?');
    expect(cover).toMatch(/^28"×42"finished/);
    await expect(
      pattern(page).getByText(/names with them are pictures of your device’s letters/),
    ).toBeVisible();
  });
  await test.step('parts left out stay out, and nothing at all is answered in words', async () => {
    await leave(page, []);
    await pattern(page).getByRole('button', { name: 'Make the pattern' }).click();
    await expect(pattern(page).getByRole('alert')).toHaveText('Choose at least one part of the pattern.');
    await pattern(page).getByLabel('Materials and cutting list').check();
    const { bytes } = await saved(page, 'Make the pattern');
    const pdf = await readPdf(new Uint8Array(bytes), { lines: false });
    expect(pdf.bookmarks).toEqual(['Materials', 'Cutting list']);
  });
});

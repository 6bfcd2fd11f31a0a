import { readFile } from 'node:fs/promises';
import { expect, type Page, test } from './guarded';
import { openExample } from './quilt';
import { openPart } from './room';

async function saved(page: Page, button: string): Promise<{ name: string; bytes: Buffer }> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button }).click(),
  ]);
  return { name: download.suggestedFilename(), bytes: await readFile(await download.path()) };
}

test('a picture as PNG and SVG, on the clipboard, refused where it is too large, stopped, and refused by the browser', async ({
  page,
  context,
}) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await openExample(page, 'Finishing');
  await openPart(page, 'Picture');
  await test.step('the PNG has the width that was asked for, the top’s own proportions, 300 dots to the inch, and cloth in every corner', async () => {
    await page.getByLabel('With a caption').uncheck();
    const width = page.getByLabel('Width of the PNG in pixels');
    await width.fill('700');
    await width.press('Enter');
    await expect(page.getByText('700 × 1,044 pixels')).toBeVisible();
    const { name, bytes } = await saved(page, 'Save the picture (PNG)');
    expect(name).toMatch(/\.png$/);
    // With a quarter inch of binding on every side: 28 1/2 by 42 1/2. IHDR follows the eight bytes of the signature: width and height as four bytes each (PNG specification).
    expect([bytes.readUInt32BE(16), bytes.readUInt32BE(20)]).toEqual([700, 1044]);
    const density = bytes.indexOf('pHYs');
    expect(bytes.readUInt32BE(density + 4)).toBe(11_811);
    await expect(page.locator('.saved')).toHaveText(`Saved as ${name}.`);
    // An empty canvas would be clear or white.
    const corners = await page.evaluate(
      async (address) => {
        const image = new Image();
        image.src = address;
        await image.decode();
        const canvas = document.createElement('canvas');
        canvas.width = image.width;
        canvas.height = image.height;
        const context = canvas.getContext('2d')!;
        context.drawImage(image, 0, 0);
        const at = (x: number, y: number) => [...context.getImageData(x, y, 1, 1).data];
        return [
          at(8, 8),
          at(image.width - 9, 8),
          at(8, image.height - 9),
          at(image.width - 9, image.height - 9),
        ];
      },
      `data:image/png;base64,${bytes.toString('base64')}`,
    );
    for (const corner of corners) {
      expect(corner[3]).toBe(255);
      expect(corner.slice(0, 3)).not.toEqual([255, 255, 255]);
    }
  });
  await test.step('the SVG is in inches, one unit to the inch, and carries its marks only when they are wanted', async () => {
    await page.getByLabel('With a caption').uncheck();
    const plain = (await saved(page, 'Save as SVG')).bytes.toString();
    expect(plain).toContain('width="28.5in" height="42.5in" viewBox="-0.25 -0.25 28.5 42.5"');
    expect(plain).not.toContain('data-layer="marks"');
    await page.getByLabel('With the clashes marked').check();
    expect((await saved(page, 'Save as SVG')).bytes.toString()).toContain('data-layer="marks"');
  });
  await test.step('a picture larger than browsers draw is refused beside the field, with the widest that works', async () => {
    const width = page.getByLabel('Width of the PNG in pixels');
    await width.fill('20000');
    await width.press('Enter');
    const refusal = page.getByRole('alert').filter({ hasText: 'up to 16,384 pixels' });
    await expect(refusal).toBeVisible();
    const [, widest] = /that is ([\d,]+) wide/.exec((await refusal.textContent()) ?? '') ?? [];
    await width.fill(widest!.replaceAll(',', ''));
    await width.press('Enter');
    await expect(refusal).toBeHidden();
  });
  await test.step('the drawing of a picture is stopped: nothing is saved, and it can be drawn again', async () => {
    let downloads = 0;
    page.on('download', () => {
      downloads += 1;
    });
    const width = page.getByLabel('Width of the PNG in pixels');
    await width.fill('8000');
    await width.press('Enter');
    await page.getByRole('button', { name: 'Save the picture (PNG)' }).click();
    await expect(page.getByRole('progressbar', { name: 'Drawing the picture' })).toBeVisible();
    await page.getByRole('button', { name: 'Stop' }).click();
    await expect(page.getByRole('status').getByText('Stopped. There is no picture.')).toBeVisible();
    await expect(page.getByRole('button', { name: 'Stop' })).toBeHidden();
    expect(downloads).toBe(0);
    await width.fill('700');
    await width.press('Enter');
    expect((await saved(page, 'Save the picture (PNG)')).name).toMatch(/\.png$/);
  });
  await test.step('the picture goes to the clipboard as a PNG, and its words as text', async () => {
    await page.getByRole('button', { name: 'Copy the picture' }).click();
    await expect(page.getByText('Copied. Paste it where you want it.')).toBeVisible();
    const types = await page.evaluate(async () =>
      (await navigator.clipboard.read()).flatMap((item) => item.types),
    );
    expect(types).toContain('image/png');
    await openPart(page, 'In words');
    await page.getByRole('button', { name: 'Copy the words' }).click();
    await expect(page.getByText('Copied.', { exact: true })).toBeVisible();
    const text = await page.evaluate(() => navigator.clipboard.readText());
    expect(text).toContain('a quilt top with 6 blocks in 3 rows of 2, 28" by 42" finished.');
  });
  await test.step('a refused copy, a refused share and one that was put off are each answered in words', async () => {
    await page.evaluate(() => {
      const refuse = (name: string) => () => Promise.reject(new DOMException('no', name));
      Object.defineProperty(navigator, 'canShare', { value: () => true });
      Object.defineProperty(navigator, 'share', {
        value: () =>
          refuse((window as unknown as { putOff?: boolean }).putOff ? 'AbortError' : 'NotAllowedError')(),
      });
      const clipboard = { write: refuse('NotAllowedError'), writeText: refuse('NotAllowedError') };
      Object.defineProperty(navigator, 'clipboard', { value: clipboard });
    });
    await openPart(page, 'Picture');
    const part = page.getByRole('main');
    await part.getByRole('button', { name: 'Email size' }).click();
    await part.getByRole('button', { name: 'Copy the picture' }).click();
    await expect(part.getByText('The browser did not allow copying. Save it instead.')).toBeVisible();
    // Drawing takes longer than browsers take a press for: the first press draws, the next one shares.
    await part.getByRole('button', { name: 'Share', exact: true }).click();
    await expect(part.getByText('The picture is drawn. Press Share now.')).toBeVisible();
    await part.getByRole('button', { name: 'Share now' }).click();
    await expect(part.getByText('The browser did not share it. Save it and send the file.')).toBeVisible();
    // Who closes the share sheet has not failed at anything.
    await page.evaluate(() => Object.assign(window, { putOff: true }));
    await part.getByRole('button', { name: 'Share now' }).click();
    await expect(part.getByRole('button', { name: 'Share now' })).toBeEnabled();
    await expect(part.getByRole('alert').last()).toHaveText('');
    // Another picture is drawn anew.
    await part.getByRole('button', { name: 'A page' }).click();
    await expect(part.getByRole('button', { name: 'Share', exact: true })).toBeVisible();
    await openPart(page, 'In words');
    await page.getByRole('button', { name: 'Copy the words' }).click();
    await expect(
      page.getByText('The browser did not allow copying. Select the text and copy it.'),
    ).toBeVisible();
  });
});

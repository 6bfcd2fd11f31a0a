// Frames of the page while a photograph of 12 megapixels is decoded and read as a fabric beside it, in a worker.
import type { Browser } from 'playwright';
import sharp from 'sharp';
import { type Frames, frameRow, framesIn } from './frames';
import { freshPage } from './page';
import type { BenchRow } from './row';

const SIZE = { width: 4000, height: 3000 };

export async function readingFrameRows(browser: Browser, url: string, empty: Frames): Promise<BenchRow[]> {
  const noise = { type: 'gaussian' as const, mean: 128, sigma: 40 };
  const background = '#888';
  const picture = sharp({ create: { ...SIZE, channels: 3, background, noise } }).blur(2);
  const buffer = await picture.jpeg({ quality: 85 }).toBuffer();
  const page = await freshPage(browser);
  await page.goto(url);
  await page
    .getByRole('navigation', { name: 'Order of work' })
    .getByRole('button', { name: 'Fabrics' })
    .click();
  await page.getByRole('button', { name: 'From a photograph' }).click();
  const field = page.getByLabel('Photographs of fabrics');
  const frames = await framesIn(1)(page, async () => {
    await field.setInputFiles({ name: 'fabric.jpg', mimeType: 'image/jpeg', buffer });
    await page.waitForSelector('.photo-reading', { timeout: 60_000 });
  });
  await page.close();
  return [frameRow('a page beside which a picture of 12 megapixels is read', frames, empty)];
}

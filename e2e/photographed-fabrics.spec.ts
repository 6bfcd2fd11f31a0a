import { readFileSync } from 'node:fs';
import sharp from 'sharp';
import { writeProject } from '../src/model/reading/read';
import { demo } from '../tests/demo';
import { keptPicture, photographed } from '../tests/model/picture/images';
import { expect, type Page, test } from './guarded';
import { chooseFile, firstVisit, openFile } from './room';

test.use({ painted: true });

/** A quilt all of one photographed fabric. Its picture is blue and its mean colour, were that drawn, is rust. */
async function photographedQuilt() {
  const at = () => [20, 120, 220] as const;
  const kept = await keptPicture({ kind: 'jpeg', width: 64, height: 64, at });
  const project = demo('harbour-reading-corner');
  const fabrics = project.fabrics.map((fabric) => ({
    ...photographed(kept[0]),
    id: fabric.id,
    name: fabric.name,
  }));
  return { id: kept[0], text: writeProject({ ...project, fabrics }, new Map([kept])) };
}

/** How much of the wall on screen is of the blue of the picture, and of the mean colour, 0 to 1. */
async function seen(page: Page): Promise<{ blue: number; rust: number }> {
  const shot = await page.locator('[data-block="1"]').screenshot();
  const { data, info } = await sharp(shot).raw().toBuffer({ resolveWithObject: true });
  const all = info.width * info.height;
  let [blue, rust] = [0, 0];
  for (let at = 0; at < data.length; at += info.channels) {
    const [r, g, b] = [data[at]!, data[at + 1]!, data[at + 2]!];
    if (r < 70 && g > 80 && g < 160 && b > 170) blue += 1;
    if (r > 160 && g > 90 && g < 150 && b < 120) rust += 1;
  }
  return { blue: blue / all, rust: rust / all };
}

test('a picture that is not in the file is told, and fabric that has one is on the wall as itself, after a reload, and in the saved file', async ({
  page,
}) => {
  const { id, text } = await photographedQuilt();
  await firstVisit(page);
  await test.step('a picture that is not in the file is told, and the quilt opens in mean colours', async () => {
    const { pictures: _pictures, ...without } = JSON.parse(text) as { pictures: unknown };
    await openFile(page, JSON.stringify({ ...without, id: 'no-pictures' }));
    await expect(page.getByRole('dialog')).toBeHidden();
    await expect.poll(async () => (await seen(page)).rust).toBeGreaterThan(0.4);
    await page.getByRole('button', { name: /^Quilt:/ }).click();
    await expect(page.getByText('What lacks its picture is drawn in its mean colour.')).toBeVisible();
  });
  await test.step('photographed fabric is on the wall as itself, after a reload, and in the saved file', async () => {
    await chooseFile(page, text);
    await expect(page.getByRole('dialog')).toBeHidden();
    await expect.poll(async () => (await seen(page)).blue).toBeGreaterThan(0.4);
    await expect(page.getByText('Saved', { exact: true })).toBeVisible();
    await page.reload();
    await expect.poll(async () => (await seen(page)).blue).toBeGreaterThan(0.4);
    expect((await seen(page)).rust).toBeLessThan(0.02);
    await page.getByRole('button', { name: /^Quilt:/ }).click();
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save to a file' }).click();
    const saved = JSON.parse(readFileSync(await (await download).path(), 'utf8')) as {
      pictures: Record<string, string>;
    };
    expect(Object.keys(saved.pictures)).toEqual([id]);
    expect(saved.pictures[id]).toBe((JSON.parse(text) as typeof saved).pictures[id]);
  });
});

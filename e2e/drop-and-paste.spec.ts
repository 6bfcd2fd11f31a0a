// Photographs that are dropped, pasted or taken with the camera, as the browser hands them over: on fabrics, blocks and the wall. The
// camera's button under a finger: photograph-a-block.spec.ts.
import sharp from 'sharp';
import { expect, type Page, test } from './guarded';
import { heicOf, plainPhotograph } from './photos';
import { firstVisit, goTo } from './room';

interface Given {
  readonly name: string;
  readonly type: string;
  readonly bytes: Buffer;
}

/** Drops or pastes files as the browser does: by an event with the files in it. */
async function hand(page: Page, how: 'drop' | 'paste', files: readonly Given[]): Promise<void> {
  const plain = files.map(({ name, type, bytes }) => ({ name, type, text: bytes.toString('base64') }));
  const heeded = await page.evaluate(
    ([kind, given]) => {
      const carried = new DataTransfer();
      for (const { name, type, text } of given)
        carried.items.add(
          new File([Uint8Array.from(atob(text), (one) => one.charCodeAt(0))], name, { type }),
        );
      const init = { bubbles: true, cancelable: true };
      if (kind === 'paste')
        return !document.body.dispatchEvent(new ClipboardEvent('paste', { ...init, clipboardData: carried }));
      const over = document.querySelector('.large-area')!;
      const entered = new DragEvent('dragover', { ...init, dataTransfer: carried });
      // Without this the browser would open the file in place of the page.
      return !over.dispatchEvent(entered) && !over.dispatchEvent(new DragEvent('drop', { ...init, dataTransfer: carried })); // biome-ignore format: both
    },
    [how, plain] as const,
  );
  expect(heeded, `${how} is heeded`).toBe(true);
}

const jpeg = (name: string, bytes: Buffer): Given => ({ name, type: 'image/jpeg', bytes });
const refused = (page: Page) => page.locator('.photo-refused');

test('photographs are dropped and pasted on fabrics, blocks and the wall', async ({ page, context }) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  const picture = await plainPhotograph();
  const png = await sharp(picture).png().toBuffer();
  const webp = await sharp(picture).webp().toBuffer();
  const list = page.getByRole('list', { name: 'Photographs' });
  await firstVisit(page);
  await goTo(page, 'Fabrics');
  await test.step('several files at once are dropped, then one pasted: pictures are taken, and what is none says why', async () => {
    // The work on photographs opens with what is handed over.
    await hand(page, 'drop', [
      jpeg('one.jpg', picture),
      { name: 'two.png', type: 'image/png', bytes: png },
      { name: 'three.webp', type: 'image/webp', bytes: webp },
      { name: 'list.txt', type: 'text/plain', bytes: Buffer.from('ten strips of plum') },
      { name: 'telephone.heic', type: 'image/heic', bytes: heicOf() },
    ]);
    await expect(page.getByRole('heading', { name: 'Fabrics from photographs' })).toBeVisible();
    await expect(list.getByRole('button')).toHaveCount(3, { timeout: 90_000 });
    for (const name of ['one.jpg', 'two.png', 'three.webp'])
      await expect(list.getByRole('button', { name: `Photograph ${name}` })).toBeVisible();
    await expect(refused(page).getByText(/^list\.txt: This file holds text/)).toBeVisible();
    await expect(
      refused(page).getByText(/^telephone\.heic: This is a HEIC photograph.*Save or share it as a JPEG/),
    ).toBeVisible();
    // What is handed over next goes beside what is there.
    await hand(page, 'paste', [jpeg('four.jpg', picture)]);
    await expect(list.getByRole('button')).toHaveCount(4, { timeout: 90_000 });
    await expect(refused(page)).toBeHidden();
  });
  await test.step('a picture on the clipboard is pasted with Control V', async () => {
    await page.evaluate(async (text) => {
      const bytes = Uint8Array.from(atob(text), (one) => one.charCodeAt(0));
      await navigator.clipboard.write([new ClipboardItem({ 'image/png': new Blob([bytes], { type: 'image/png' }) })]); // biome-ignore format: one call
    }, png.toString('base64'));
    await page.keyboard.press('Control+v');
    await expect(list.getByRole('button')).toHaveCount(5, { timeout: 60_000 });
    await expect(page.getByRole('region', { name: 'What was read' })).toBeVisible({ timeout: 60_000 });
  });
  await test.step('pasted text is left alone, and a file dropped beside the large area is neither taken nor opened in place of the tool', async () => {
    const left = await page.evaluate(() => {
      const carried = new DataTransfer();
      carried.items.add('plum', 'text/plain');
      const pasted = new ClipboardEvent('paste', { bubbles: true, cancelable: true, clipboardData: carried });
      const files = new DataTransfer();
      files.items.add(new File([new Uint8Array([1])], 'a.jpg', { type: 'image/jpeg' }));
      const drop = new DragEvent('drop', { bubbles: true, cancelable: true, dataTransfer: files });
      return [document.body.dispatchEvent(pasted), document.querySelector('.panel')!.dispatchEvent(drop)];
    });
    expect(left).toEqual([true, false]);
    await expect(list.getByRole('button')).toHaveCount(5);
  });
  await test.step('the field of the camera takes a picture; a desk has no button of it', async () => {
    await expect(page.getByRole('button', { name: 'Take a photograph' })).toBeHidden();
    await page
      .getByLabel('Photograph from the camera')
      .setInputFiles({ name: 'image.jpg', mimeType: 'image/jpeg', buffer: picture });
    await expect(list.getByRole('button')).toHaveCount(6, { timeout: 60_000 });
  });
  await test.step('blocks and the wall take what is dropped; of several pictures of the wall the first is taken, and that is said', async () => {
    await goTo(page, 'Blocks');
    await page.getByRole('button', { name: 'From a photograph' }).click();
    await expect(page.getByRole('heading', { name: 'Blocks from photographs' })).toBeVisible();
    await hand(page, 'drop', [
      jpeg('one.jpg', picture),
      { name: 'telephone.heic', type: 'image/heic', bytes: heicOf() },
    ]);
    await expect(page.getByRole('article', { name: 'Photograph one.jpg' })).toBeVisible({ timeout: 60_000 });
    await expect(page.getByRole('alert').filter({ hasText: 'telephone.heic' })).toContainText('HEIC');
    await goTo(page, 'Wall');
    await page.getByRole('button', { name: 'From a photograph of the wall' }).click();
    await expect(page.getByRole('heading', { name: 'The wall from a photograph' })).toBeVisible();
    await hand(page, 'paste', [jpeg('front.jpg', picture), jpeg('other.jpg', picture)]);
    await expect(page.getByText('One photograph of the wall at a time: front.jpg is taken.')).toBeVisible();
    await expect(page.locator('.corner-picture')).toBeVisible({ timeout: 60_000 });
  });
});

// A sewn block from its photograph: corners found and moved, strips put right, known blocks told, put on the wall, kept and undone.
import type { Project } from '../src/model/project';
import { writeProject } from '../src/model/reading/read';
import { blockShot } from '../tests/photo/render/shots';
import { faultsOf } from './axe';
import { expect, type Locator, type Page, test } from './guarded';
import { jpegOf } from './photos';
import { nextUndo } from './quilt';
import { firstVisit, layoutMoves, openFile } from './room';

/** A block whose picture is easy enough for any reader; the same for every test. */
const SEED = 11;
const shot = blockShot(SEED, 900);
test.describe.configure({ mode: 'serial' });

async function openBlocks(page: Page, project: Project): Promise<void> {
  await firstVisit(page);
  await openFile(page, writeProject(project, new Map()));
  await expect(page.getByRole('dialog')).toBeHidden();
  await page
    .getByRole('navigation', { name: 'Order of work' })
    .getByRole('button', { name: 'Blocks' })
    .click();
  await page.getByRole('button', { name: 'From a photograph' }).click();
  await expect(page.getByRole('heading', { name: 'Blocks from photographs' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Choose photographs' })).toBeFocused();
}

async function choose(page: Page, name: string, buffer: Buffer): Promise<void> {
  await page.getByLabel('Files of photographs').setInputFiles({ name, mimeType: 'image/jpeg', buffer });
}

const corner = (page: Page, name = 'Top left corner'): Locator =>
  page.getByRole('button', { name, exact: true });

/** Where a corner stands on the photograph, in its pixels. */
async function cornerAt(page: Page, name?: string): Promise<{ x: number; y: number }> {
  const { width, height } = (await shot).pixels;
  const style = (await corner(page, name).getAttribute('style')) ?? '';
  const [left, top] = [...style.matchAll(/([\d.]+)%/g)].map(([, share]) => Number(share) / 100);
  return { x: left! * width, y: top! * height };
}

test('a block of the quilt is told from its photograph, and its corners are moved by hand and keys @phone', async ({
  page,
}) => {
  test.setTimeout(90_000);
  const { project, pixels, corners, number } = await shot;
  await openBlocks(page, project);
  await choose(page, 'block.jpg', await jpegOf(pixels));
  await expect(page.getByText(`This looks like block ${number}`)).toBeVisible({ timeout: 60_000 });
  const found = await cornerAt(page);
  expect(Math.hypot(found.x - corners[0]!.x, found.y - corners[0]!.y)).toBeLessThan(0.02 * pixels.width);
  const moved = await layoutMoves(page, '.corner-picture');
  await corner(page).focus();
  await expect(page.locator('.loupe')).toBeVisible();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Shift+ArrowDown');
  await expect.poll(async () => Math.round((await cornerAt(page)).x - found.x)).toBe(1);
  expect(Math.round((await cornerAt(page)).y - found.y)).toBe(10);
  const handle = (await corner(page).boundingBox())!;
  expect(Math.min(handle.width, handle.height)).toBeGreaterThanOrEqual(44);
  expect(await faultsOf(page)).toEqual([]);
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('Shift+ArrowUp');
  await expect(page.getByText(`This looks like block ${number}`)).toBeVisible({ timeout: 60_000 });
  // Reading began and ended meanwhile.
  expect(await moved(), 'how often the picture moved under the hand').toBe(0);
});

test('a new block is put right, hangs as its picture, outlives a reload and is undone in one step', async ({
  page,
}) => {
  test.setTimeout(90_000);
  const { project, pixels } = await shot;
  const cells = project.wall.cells.map(() => null);
  await openBlocks(page, { ...project, blocks: [], wall: { ...project.wall, cells } });
  await choose(page, 'block.jpg', await jpegOf(pixels));
  const rim = page.locator('[data-band="1 0"]');
  await expect(rim).toBeVisible({ timeout: 60_000 });
  // A wedge is one stop for Tab, and arrows go along its strips.
  await expect(page.locator('[data-band][tabindex="0"]')).toHaveCount(8);
  await page.locator('[data-band="1 1"]').focus();
  await page.keyboard.press('ArrowLeft');
  await expect(rim).toBeFocused();
  await page.keyboard.press('Enter');
  const choice = page.getByRole('group', { name: /^Place 2, rim/ });
  const last = choice.locator('.fabrics-for-band button').last();
  const name = (await last.textContent())!.trim();
  await last.click();
  await expect(rim).toHaveAccessibleName(`Place 2, rim: ${name}`);
  await rim.click();
  // A photographed fabric, of the very patch; its tile is in the list.
  await page.getByRole('button', { name: 'Make a fabric of this strip' }).click();
  await expect.poll(() => nextUndo(page), { timeout: 60_000 }).toContain('add the fabric');
  await expect(rim).not.toHaveAccessibleName(`Place 2, rim: ${name}`);
  await page.locator('[data-band="2 0"]').click();
  await page.getByRole('button', { name: 'Not known' }).click();
  await page.getByRole('button', { name: 'Put on the wall as a picture' }).click();
  await expect(page.getByText(/It is block 1 now/).first()).toBeVisible();
  expect(await nextUndo(page)).toContain('add a block from its picture');
  await page.getByRole('button', { name: 'Done' }).click();
  await expect(page.getByText('Saved', { exact: true })).toBeVisible();
  await page.reload();
  await expect(page.locator('.wall-area image').first()).toBeVisible();
  await page.getByRole('toolbar', { name: 'Undo and redo' }).getByRole('button').first().click();
  await expect(page.locator('[data-block="1"]')).toHaveCount(0);
  // What is not known is made of the very strip on the wall too, from the picture as which the block hangs.
  await page.getByRole('toolbar', { name: 'Undo and redo' }).getByRole('button').nth(1).click();
  await page.locator('button.block-card').last().click();
  await page.getByText('Put right what was read', { exact: true }).click();
  await page.getByRole('button', { name: 'Place 3, rim: make a fabric of this strip' }).click();
  await expect.poll(() => nextUndo(page), { timeout: 60_000 }).toContain('put right place 3 of block 1');
  await expect(page.getByRole('button', { name: 'Place 3, rim: make a fabric of this strip' })).toBeHidden();
});

test('what is no photograph is told by name, and the rest goes on', async ({ page }) => {
  test.setTimeout(90_000);
  const { project, pixels } = await shot;
  await openBlocks(page, project);
  await page.getByLabel('Files of photographs').setInputFiles([
    { name: 'notes.txt', mimeType: 'text/plain', buffer: Buffer.from('ten strips of plum') },
    {
      name: 'drawing.svg',
      mimeType: 'image/svg+xml',
      buffer: Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"><script>1</script></svg>'),
    },
    { name: 'block.jpg', mimeType: 'image/jpeg', buffer: await jpegOf(pixels) },
  ]);
  await expect(page.getByRole('alert').filter({ hasText: 'notes.txt' })).toContainText('holds text');
  await expect(page.getByRole('alert').filter({ hasText: 'drawing.svg' })).toContainText('SVG');
  await expect(page.locator('.corner-picture')).toBeVisible({ timeout: 60_000 });
  // Corners that cross are said at their place, and nothing is read from them.
  await page.getByText('Corners in pixels').click();
  const across = page
    .getByRole('group', { name: 'Top left corner' })
    .getByRole('textbox', { name: 'Across' });
  await across.fill(String(pixels.width));
  await across.press('Enter');
  await expect(page.getByText('The sides cross, or a corner points inwards')).toBeVisible({
    timeout: 60_000,
  });
});

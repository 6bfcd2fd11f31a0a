// A sewn block from its photograph: corners found and moved, strips put right, known blocks told, put on the wall, kept and undone.
// How well blocks are read is held in tests/photo/block; axe looks at these screens in whatever-is-on-show.spec.ts.
import type { Project } from '../src/model/project';
import { writeProject } from '../src/model/reading/read';
import { type BlockShot, blockShot } from '../tests/photo/render/shots';
import { expect, type Locator, type Page, test } from './guarded';
import { type GivenFile, jpegOf } from './photos';
import { nextUndo } from './quilt';
import { firstVisit, goTo, layoutMoves, openFile, undoButton } from './room';

/** A block whose picture is easy enough for any reader; the same for every test. */
const SEED = 11;
/** Large enough for a fabric of one strip; otherwise small. */
const LARGE = 820;
const SMALL = 450;

/** Opens a quilt that has the block, and nothing on its wall. */
async function openBlocks(page: Page, { project }: BlockShot): Promise<void> {
  const bare: Project = { ...project, wall: { ...project.wall, cells: project.wall.cells.map(() => null) } };
  await firstVisit(page);
  await openFile(page, writeProject(bare, new Map()));
  await expect(page.getByRole('dialog')).toBeHidden();
  await goTo(page, 'Blocks');
  await page.getByRole('button', { name: 'From a photograph' }).click();
  await expect(page.getByRole('heading', { name: 'Blocks from photographs' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Choose photographs' })).toBeFocused();
}

const photoOf = async ({ pixels }: BlockShot): Promise<GivenFile> => ({
  name: 'block.jpg',
  mimeType: 'image/jpeg',
  buffer: await jpegOf(pixels),
});

/** Waits until the photograph of the block is read. */
async function isRead(page: Page, { number }: BlockShot): Promise<void> {
  await expect(page.getByText(`This looks like block ${number}`)).toBeVisible({ timeout: 60_000 });
  await expect(page.locator('.photo-working.busy')).toHaveCount(0);
}

/** What a press changes is read anew to its end: until then what is read may move what is pressed next. */
async function readAnew(page: Page, shot: BlockShot, change: () => Promise<void>): Promise<void> {
  const squared = page.getByRole('img', { name: 'The block squared up' });
  const before = (await squared.getAttribute('src'))!;
  await change();
  await expect(squared).not.toHaveAttribute('src', before, { timeout: 60_000 });
  await isRead(page, shot);
}

const corner = (page: Page): Locator => page.getByRole('button', { name: 'Top left corner', exact: true });

/** Where the first corner stands on the photograph, in its pixels. */
async function cornerAt(
  page: Page,
  { pixels: { width, height } }: BlockShot,
): Promise<{ x: number; y: number }> {
  const style = (await corner(page).getAttribute('style')) ?? '';
  const [left, top] = [...style.matchAll(/([\d.]+)%/g)].map(([, share]) => Number(share) / 100);
  return { x: left! * width, y: top! * height };
}

/** The first corner is where it is in the picture, is moved by keys and back, and the block is read again; the picture stays in its place. */
async function moveCorner(page: Page, shot: BlockShot): Promise<void> {
  const { pixels, corners } = shot;
  const found = await cornerAt(page, shot);
  expect(Math.hypot(found.x - corners[0]!.x, found.y - corners[0]!.y)).toBeLessThan(0.02 * pixels.width);
  const moved = await layoutMoves(page, '.corner-picture');
  await corner(page).focus();
  await expect(page.locator('.loupe')).toBeVisible();
  await readAnew(page, shot, async () => {
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Shift+ArrowDown');
    await expect.poll(async () => Math.round((await cornerAt(page, shot)).x - found.x)).toBe(1);
  });
  expect(Math.round((await cornerAt(page, shot)).y - found.y)).toBe(10);
  const handle = (await corner(page).boundingBox())!;
  expect(Math.min(handle.width, handle.height)).toBeGreaterThanOrEqual(44);
  await readAnew(page, shot, async () => {
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('Shift+ArrowUp');
  });
  // Reading began and ended meanwhile.
  expect(await moved(), 'how often the picture moved under the hand').toBe(0);
}

test('a block is told from its photograph, put right, hangs as its picture, outlives a reload and is undone in one step', async ({
  page,
}) => {
  const shot = await blockShot(SEED, LARGE);
  const { project } = shot;
  await openBlocks(page, shot);
  await test.step('what is no photograph is told by name, and the rest goes on', async () => {
    const svg = Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"><script>1</script></svg>');
    await page
      .getByLabel('Files of photographs')
      .setInputFiles([
        { name: 'notes.txt', mimeType: 'text/plain', buffer: Buffer.from('ten strips of plum') },
        { name: 'drawing.svg', mimeType: 'image/svg+xml', buffer: svg },
        await photoOf(shot),
      ]);
    await isRead(page, shot);
    await expect(page.getByRole('alert').filter({ hasText: 'notes.txt' })).toContainText('holds text');
    await expect(page.getByRole('alert').filter({ hasText: 'drawing.svg' })).toContainText('SVG');
  });
  await test.step('its corners are moved by keys', () => moveCorner(page, shot));
  const rim = page.locator('[data-band="1 0"]');
  await test.step('a strip is put right by keys, made a fabric, or left unknown', async () => {
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
  });
  const added = project.blocks.length + 1;
  await test.step('it hangs as its picture', async () => {
    await page.getByRole('button', { name: 'Put on the wall as a picture' }).click();
    await expect(page.getByText(`It is block ${added} now`).first()).toBeVisible();
    expect(await nextUndo(page)).toContain('add a block from its picture');
  });
  await test.step('it outlives a reload, and is undone in one step', async () => {
    await page.getByRole('button', { name: 'Done' }).click();
    await expect(page.getByText('Saved', { exact: true })).toBeVisible();
    await page.reload();
    await expect(page.locator('.wall-area image').first()).toBeVisible();
    await undoButton(page).click();
    await expect(page.locator(`[data-block="${added}"]`)).toHaveCount(0);
  });
  await test.step('what is not known is made of the very strip on the wall too, from the picture as which the block hangs', async () => {
    await page.getByRole('toolbar', { name: 'Undo and redo' }).getByRole('button').nth(1).click();
    await page.locator('button.block-card').last().click();
    await page.getByText('Put right what was read', { exact: true }).click();
    await page.getByRole('button', { name: 'Place 3, rim: make a fabric of this strip' }).click();
    await expect
      .poll(() => nextUndo(page), { timeout: 60_000 })
      .toContain(`put right place 3 of block ${added}`);
    await expect(
      page.getByRole('button', { name: 'Place 3, rim: make a fabric of this strip' }),
    ).toBeHidden();
  });
});

// In one column more could move the picture.
test('the camera hands a picture over; in a narrow window it stays in its place while its block is read; corners that cross are said @phone @touch', async ({
  page,
}) => {
  const shot = await blockShot(SEED, SMALL);
  await openBlocks(page, shot);
  await test.step('the camera hands its picture over', async () => {
    const chosen = page.waitForEvent('filechooser');
    await page.getByRole('button', { name: 'Take a photograph' }).click();
    const chooser = await chosen;
    await expect(page.getByLabel('Photograph from the camera')).toHaveAttribute('capture', 'environment');
    await chooser.setFiles(await photoOf(shot));
    await isRead(page, shot);
  });
  await moveCorner(page, shot);
  await test.step('corners that cross are said at their place, and nothing is read from them', async () => {
    await page.getByText('Corners in pixels').click();
    const across = page
      .getByRole('group', { name: 'Top left corner' })
      .getByRole('textbox', { name: 'Across' });
    await across.fill(String(shot.pixels.width));
    await across.press('Enter');
    await expect(page.getByText('The sides cross, or a corner points inwards')).toBeVisible();
  });
});

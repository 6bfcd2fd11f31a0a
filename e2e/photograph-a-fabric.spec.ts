// A fabric from a photograph, from the file to the wall and back out of a file; by pointer, by keys alone, and with files that are none.
import { readFileSync } from 'node:fs';
import sharp from 'sharp';
import { meanColour } from '../src/cloth/likeness';
import { printMix } from '../src/cloth/print/printMix';
import { ciede2000 } from '../src/colour/difference';
import { labD65Of, linearOfHex } from '../src/colour/spaces';
import { expect, type Page, test } from './guarded';
import { CHECKS, type GivenFile, heicOf, PER_INCH, photograph, plainPhotograph, SCENE } from './photos';
import { firstVisit, goTo, layoutMoves } from './room';
import { savedQuilt } from './stored';

async function openPhotos(page: Page): Promise<void> {
  await firstVisit(page);
  await goTo(page, 'Fabrics');
  await page.getByRole('button', { name: 'From a photograph' }).click();
  await expect(page.getByRole('heading', { name: 'Fabrics from photographs' })).toBeVisible();
}

const choose = (page: Page, ...files: GivenFile[]) =>
  page.getByLabel('Photographs of fabrics').setInputFiles(files);
const jpeg = (name: string, buffer: Buffer) => ({ name, mimeType: 'image/jpeg', buffer });
const read = (page: Page) => page.getByRole('region', { name: 'What was read' });

/** A place on screen of a point of the photograph. */
async function onScreen(page: Page, x: number, y: number): Promise<{ x: number; y: number }> {
  const box = (await page.locator('.photo-picture').boundingBox())!;
  return { x: box.x + (x / SCENE.width) * box.width, y: box.y + (y / SCENE.height) * box.height };
}

/** Drags a handle to a point of the photograph, and holds that it is there. */
async function drag(page: Page, handle: string, x: number, y: number): Promise<void> {
  const held = page.getByRole('button', { name: handle, exact: true });
  await held.scrollIntoViewIfNeeded();
  const to = await onScreen(page, x, y);
  const from = middleOf((await held.boundingBox())!);
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move((from.x + to.x) / 2, (from.y + to.y) / 2, { steps: 4 });
  await page.mouse.move(to.x, to.y, { steps: 4 });
  await page.mouse.up();
  const [wanted, there] = [await onScreen(page, x, y), middleOf((await held.boundingBox())!)];
  expect(Math.hypot(there.x - wanted.x, there.y - wanted.y)).toBeLessThan(4);
}

function middleOf({ x, y, width, height }: { x: number; y: number; width: number; height: number }) {
  return { x: x + width / 2, y: y + height / 2 };
}

/** The saved file of the open quilt. */
async function savedFile(page: Page): Promise<Saved> {
  await page.getByRole('button', { name: /^Quilt:/ }).click();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save to a file' }).click();
  const text = readFileSync(await (await download).path(), 'utf8');
  await page.keyboard.press('Escape');
  return JSON.parse(text) as Saved;
}

/** A file of each kind that is refused. */
async function noPhotographs(): Promise<GivenFile[]> {
  const good = await photograph();
  const white = { width: 8, height: 8, channels: 3 as const, background: '#fff' };
  const bomb = await sharp({ create: white }).png().toBuffer();
  bomb.writeUInt32BE(60_000, 16);
  bomb.writeUInt32BE(60_000, 20);
  const svg = '<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>';
  return [
    { name: 'script.jpg', mimeType: 'image/jpeg', buffer: Buffer.from(svg) },
    { name: 'notes.png', mimeType: 'image/png', buffer: Buffer.from('a shopping list') },
    { name: 'dance.gif', mimeType: 'image/gif', buffer: Buffer.from('GIF89a\u0001\u0000') },
    { name: 'empty.jpg', mimeType: 'image/jpeg', buffer: Buffer.alloc(0) },
    { name: 'half.jpg', mimeType: 'image/jpeg', buffer: good.subarray(0, good.length / 2) },
    { name: 'bomb.png', mimeType: 'image/png', buffer: bomb },
    { name: 'telephone.heic', mimeType: 'image/heic', buffer: heicOf() },
  ];
}

interface Saved {
  readonly fabrics: readonly {
    readonly id: string;
    readonly name: string;
    readonly colour: string;
    readonly cloth: {
      readonly kind: string;
      readonly photo?: { picture: string; width: number; scale: number };
    };
  }[];
  readonly pictures?: Readonly<Record<string, string>>;
}

/**
 * By mouse: framed, its true size and its light given, named, added, undone, and there after a reload and in the saved file. That the file
 * shows the fabric in a browser that has never seen it is held in photographed-fabrics.spec.ts.
 */
async function byMouse(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'From a photograph' }).click();
  await choose(page, jpeg('checks.jpg', await photograph()));
  await expect(read(page)).toBeVisible({ timeout: 30_000 });
  // Upright as it was taken.
  const box = (await page.locator('.photo-picture').boundingBox())!;
  expect(box.width / box.height).toBeCloseTo(SCENE.width / SCENE.height, 1);
  // The frame over the fabric.
  const { cloth, ruler, card } = SCENE;
  const moved = await layoutMoves(page, '.photo-picture');
  await drag(page, 'Frame', cloth.x + cloth.width / 2, cloth.y + cloth.height / 2);
  await drag(page, 'Bottom right corner', cloth.x + cloth.width - 30, cloth.y + cloth.height - 20);
  // Not yet: its size is not known.
  await page.getByRole('button', { name: 'Add this fabric' }).click();
  await expect(page.getByText('Give the true size first')).toBeVisible();
  // The ruler.
  await page.getByText('True size', { exact: true }).click();
  await drag(page, 'First point on the ruler', ruler.x, ruler.y + ruler.height / 2);
  await drag(page, 'Second point on the ruler', ruler.x + ruler.width, ruler.y + ruler.height / 2);
  await page.getByLabel('Between the points').fill('8');
  await page.getByLabel('Between the points').press('Enter');
  await expect(page.getByText(/^The frame is /)).toBeVisible();
  // Reading began and ended meanwhile.
  expect(await moved(), 'how often the picture moved under the hand').toBe(0);
  // The light.
  await page.getByText('Light', { exact: true }).click();
  await expect(page.getByText('The light is not corrected.')).toBeVisible();
  const tap = await onScreen(page, card.x + card.width / 2, card.y + card.height / 2);
  await page.mouse.click(tap.x, tap.y);
  await expect(page.getByText(/^Corrected for light of about \d/)).toBeVisible();
  await expect(page.getByText('Before', { exact: true })).toBeVisible();
  await expect(
    read(page)
      .getByText(/teal|green|blue/)
      .first(),
  ).toBeVisible();
  // What is read last stands under the hand that adds it.
  await expect(page.locator('.photo-working.busy')).toHaveCount(0);
  await page.getByRole('region', { name: 'New fabrics' }).getByLabel('Name').fill('Teal checks');
  await page.getByRole('region', { name: 'New fabrics' }).getByLabel('Name').press('Enter');
  await page.getByRole('button', { name: 'Add this fabric' }).click();
  await expect(page.getByRole('button', { name: 'From a photograph' })).toBeFocused();
  const piece = page.locator('.laid-piece').getByRole('button', { name: /Teal checks/ });
  await expect(piece).toBeVisible();
  await page.keyboard.press('Control+z');
  await expect(piece).toBeHidden();
  await page.keyboard.press('Control+y');
  await expect(piece).toBeVisible();
  await expect(page.getByText('Saved', { exact: true })).toBeVisible();
  await page.reload();
  await expect(piece).toBeVisible();
  const { fabrics, pictures } = await savedFile(page);
  const added = fabrics.find(({ name }) => name === 'Teal checks')!;
  // In truth: the mean of the print by daylight, checks that repeat every quarter inch.
  const truth = labD65Of(linearOfHex(meanColour(printMix(CHECKS))));
  expect(ciede2000(truth, labD65Of(linearOfHex(added.colour)))).toBeLessThan(3);
  expect(added.cloth.photo!.scale).toBeGreaterThan(0.24);
  expect(added.cloth.photo!.scale).toBeLessThan(0.26);
  expect(Object.keys(pictures!)).toContain(added.cloth.photo!.picture);
  const tile = Buffer.from(pictures![added.cloth.photo!.picture]!.split(',')[1]!, 'base64');
  expect(tile.includes('Exif')).toBe(false);
}

test('files that are no photographs, a fabric by keys alone, one that is there takes on its photograph, and one by mouse, kept', async ({
  page,
}) => {
  await openPhotos(page);
  await expect(page.getByRole('button', { name: 'Choose photographs' })).toBeFocused();
  await test.step('files that are no photographs each have their sentence, and the good one goes on', async () => {
    await choose(page, ...(await noPhotographs()), {
      ...jpeg('good.txt', await photograph()),
      mimeType: 'text/plain',
    });
    await expect(read(page)).toBeVisible({ timeout: 30_000 });
    const list = page.locator('.photo-refused');
    for (const words of [
      /script\.jpg: This is a drawing \(SVG\)/,
      /notes\.png: This file holds text/,
      /dance\.gif: This is a GIF/,
      /empty\.jpg: This file is empty/,
      /half\.jpg: This photograph is damaged or not whole/,
      /bomb\.png: This photograph has 60,000 × 60,000 pixels/,
      /telephone\.heic: This is a HEIC photograph/,
    ])
      await expect(list.getByText(words)).toBeVisible();
    // A file that lies about its type the other way is still a photograph.
    await expect(page.getByRole('img', { name: 'Photograph good.txt' })).toBeVisible();
  });
  await test.step('the frame by keys and by numbers', async () => {
    await page.getByText('Frame by numbers').click();
    const across = page.getByLabel('Middle, across (pixels)');
    const before = Number(await across.inputValue());
    await page.getByRole('button', { name: 'Frame', exact: true }).focus();
    for (let times = 0; times < 5; times += 1) await page.keyboard.press('ArrowLeft');
    expect(Number(await across.inputValue())).toBeLessThan(before - 0.02 * SCENE.height);
    const width = Number(await page.getByLabel('Width (pixels)').inputValue());
    await page.keyboard.press('Shift+ArrowRight');
    expect(Number(await page.getByLabel('Width (pixels)').inputValue())).toBeGreaterThan(width);
    await page.keyboard.press(']');
    await expect(page.getByLabel('Turned (degrees)')).toHaveValue('1');
    await page.keyboard.press('[');
    await expect(page.getByLabel('Turned (degrees)')).toHaveValue('0');
    await across.fill('5000');
    await across.press('Enter');
    await expect(page.getByText(`Write a number from 0 to ${SCENE.width}.`)).toBeVisible();
    await across.press('Escape');
  });
  await test.step('its true size by the width of the frame', async () => {
    const inches = Number(await page.getByLabel('Width (pixels)').inputValue()) / PER_INCH;
    await page.getByRole('radio', { name: 'Frame', exact: true }).focus();
    await page.keyboard.press('ArrowRight');
    await page.getByLabel('Width of the frame').fill('0');
    await page.keyboard.press('Enter');
    await expect(page.getByText('Type a length above 0.')).toBeVisible();
    await page.getByLabel('Width of the frame').fill(inches.toFixed(2));
    await page.keyboard.press('Enter');
    await expect(page.getByText(/^The frame is /)).toBeVisible();
  });
  await test.step('the light, by the tool’s own proposal', async () => {
    await page.getByRole('radio', { name: 'True size', exact: true }).focus();
    await page.keyboard.press('ArrowRight');
    await page.getByRole('button', { name: /^Use the marked spot/ }).press('Enter');
    await expect(page.getByText(/^Corrected for light of about/)).toBeVisible();
    // The cross on the dark table shows no light, and says so.
    const cross = page.getByRole('button', { name: 'What is white or grey' });
    await cross.focus();
    await page.keyboard.press('Enter');
  });
  await test.step('several fabrics: the cross stands on the fabric', async () => {
    await page.getByRole('radio', { name: 'Light', exact: true }).focus();
    await page.keyboard.press('ArrowRight');
    await page.getByRole('button', { name: 'Fabric to tap' }).focus();
    await page.keyboard.press('Enter');
    await expect(page.getByRole('button', { name: 'Add 2 fabrics' })).toBeVisible({ timeout: 20_000 });
    await page
      .getByRole('button', { name: /^Leave out/ })
      .last()
      .press('Enter');
    await page.getByRole('button', { name: 'Add this fabric' }).press('Enter');
    await expect(page.getByRole('button', { name: 'From a photograph' })).toBeFocused();
  });
  await test.step('a fabric that is there takes on its photograph; what is half made stays while another step is on show', async () => {
    const first = page.locator('.laid-piece > button').first();
    const id = (await first.getAttribute('data-fabric'))!;
    await first.click();
    await page.getByRole('button', { name: 'Use a photograph' }).click();
    await choose(page, jpeg('plain.jpg', await plainPhotograph()));
    await expect(read(page)).toBeVisible({ timeout: 30_000 });
    await goTo(page, 'Wall');
    await goTo(page, 'Fabrics');
    await expect(read(page)).toBeVisible();
    await page.getByText('True size', { exact: true }).click();
    await page.getByLabel('Width of the frame').fill('6');
    await page.getByLabel('Width of the frame').press('Enter');
    await page.getByRole('button', { name: /^Use for / }).click();
    await expect(page.getByRole('button', { name: 'From a photograph' })).toBeFocused();
    const kind = async () => (await savedQuilt(page)).fabrics.find((one) => one.id === id)!.cloth.kind;
    expect(await kind()).toBe('photo');
    await page.keyboard.press('Control+z');
    expect(await kind()).not.toBe('photo');
  });
  await test.step('by mouse a fabric is framed, read, added, undone, and is there after a reload and in the saved file', () =>
    byMouse(page));
});

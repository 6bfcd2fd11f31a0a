// How the wall is seen: ways of seeing, one fabric lit, a photograph beside it, its background. Nothing of it is in the quilt.
import sharp from 'sharp';
import { seenAs } from '../tests/colour/throughFilter';
import { expect, type Page, test } from './guarded';
import { firstVisit } from './room';

test.use({ painted: true });

const opener = (page: Page) =>
  page.getByRole('button', { name: /^Ways of seeing/ }).filter({ visible: true });
const wall = (page: Page) => page.getByRole('region', { name: 'Design wall' });
const told = (page: Page) => page.getByRole('status').filter({ hasText: /^Seen / });

async function choose(page: Page, way: string): Promise<void> {
  await opener(page).click();
  await page.getByRole('radio', { name: new RegExp(`^${way}`) }).check();
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog')).toBeHidden();
}

/** The colour in the middle of what is shown, 0 to 255 each. */
async function middleOf(page: Page, selector: string): Promise<number[]> {
  const box = (await page.locator(selector).boundingBox())!;
  const clip = {
    x: Math.round(box.x + box.width / 2),
    y: Math.round(box.y + box.height / 2),
    width: 2,
    height: 2,
  };
  const { data } = await sharp(await page.screenshot({ clip }))
    .removeAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  return [...data.subarray(0, 3)];
}

const channels = (hex: string) => [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16));

// One test asks for an address that has been given up.
test.use({ mayBeLogged: /ERR_FILE_NOT_FOUND/ });

/** A way of seeing is chosen by name or with V on the wall, is told, and changes nothing of the quilt. */
async function waysChosen(page: Page): Promise<void> {
  const cloth = wall(page).locator('svg.top .hung-cloth');
  await expect(cloth).toHaveCSS('filter', 'none');
  await choose(page, 'Three tones');
  await expect(told(page)).toHaveText('Seen in three tones');
  await expect(opener(page)).toHaveAccessibleName(/: Three tones$/);
  await expect(cloth).toHaveCSS('filter', 'url("#way-of-seeing")');
  await expect(page.locator('.value-strip .seen').first()).toHaveCSS('filter', 'url("#way-of-seeing")');
  await page.locator('g.block').first().focus();
  await page.keyboard.press('v');
  await expect(told(page)).toHaveText('Seen squinting');
  const blur = page.locator('#way-of-seeing feGaussianBlur');
  const before = Number(await blur.getAttribute('stdDeviation'));
  await opener(page).click();
  await page.getByRole('textbox', { name: /^Viewing distance/ }).fill('240');
  await page.keyboard.press('Enter');
  await expect.poll(async () => Number(await blur.getAttribute('stdDeviation')) / before).toBeCloseTo(2, 6);
  await page.getByRole('textbox', { name: /^Viewing distance/ }).fill('3');
  await page.keyboard.press('Enter');
  await expect(page.getByText('It must be at least 12".')).toBeVisible();
  // The first Escape takes back what was typed.
  await page.keyboard.press('Escape');
  await expect(page.getByRole('textbox', { name: /^Viewing distance/ })).toHaveValue('240');
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog')).toBeHidden();
  await page.locator('g.block').first().focus();
  for (let back = 0; back < 3; back += 1) await page.keyboard.press('Shift+V');
  await expect(told(page)).toHaveText('Seen in colour');
  await expect(cloth).toHaveCSS('filter', 'none');
  await expect(page.getByRole('button', { name: 'Nothing to undo' })).toBeAttached();
}

const photoField = (page: Page) => page.getByLabel('Photograph of the wall', { exact: true });
const photo = (page: Page) => page.getByRole('img', { name: 'Photograph of the wall: wall.png' });
const picture = () =>
  sharp({ create: { width: 60, height: 40, channels: 3, background: '#446688' } })
    .png()
    .toBuffer();

/** A photograph of the wall is shown as high as the wall: beside it, or under it on a phone. */
async function photographShown(page: Page): Promise<void> {
  await photoField(page).setInputFiles({
    name: 'wall.png',
    mimeType: 'image/png',
    buffer: await picture(),
  });
  await page.keyboard.press('Escape');
  await expect(photo(page)).toBeVisible();
  const frame = (await page.locator('.wall-photo').boundingBox())!;
  const beside = (await page.locator('.wall-row > .wall').boundingBox())!;
  expect(Math.abs(frame.height - beside.height)).toBeLessThan(1);
  const under = page.viewportSize()!.width < 721;
  expect(Math.abs(frame.y - beside.y - (under ? beside.height : 0))).toBeLessThan(1);
}

/** Files that are no pictures are refused; a photograph stays out of the quilt, and its address is given up. */
async function photographBeside(page: Page): Promise<void> {
  await opener(page).click();
  const file = photoField(page);
  await file.setInputFiles({ name: 'notes.txt', mimeType: 'text/plain', buffer: Buffer.from('no picture') });
  await expect(page.getByText(/^This browser cannot read notes.txt as a picture/)).toBeVisible();
  const torn = (await picture()).subarray(0, 60);
  await file.setInputFiles({ name: 'torn.png', mimeType: 'image/png', buffer: torn });
  await expect(page.getByText('torn.png is damaged. Choose another picture.')).toBeVisible();
  await photographShown(page);
  const address = (await photo(page).locator('image').getAttribute('href'))!;
  expect(address).toMatch(/^blob:/);
  const reads = () =>
    page.evaluate(
      (url) =>
        fetch(url).then(
          (it) => it.ok,
          () => false,
        ),
      address,
    );
  expect(await reads()).toBe(true);
  await page.getByRole('button', { name: 'Remove the photograph' }).click();
  await expect(photo(page)).toBeHidden();
  expect(await reads()).toBe(false);
  await expect(page.getByRole('button', { name: 'Nothing to undo' })).toBeAttached();
}

test('the wall by ways of seeing, lit by a fabric, on black and white, squinted at, and beside its photograph', async ({
  page,
}) => {
  await firstVisit(page);
  await test.step('a way of seeing is chosen by name or with V', () => waysChosen(page));
  await test.step('a photograph of the wall is shown beside it', () => photographBeside(page));
  await test.step('a fabric stays lit once it is pressed in the strip of values, until Escape or the menu lets it go', async () => {
    const dimmed = wall(page).locator('path[opacity="0.13"]');
    const slice = page.locator('.value-strip .slices button').nth(3);
    await slice.click();
    await page.mouse.move(300, 300);
    await page.locator('h2').first().focus();
    await expect(dimmed).not.toHaveCount(0);
    await page.keyboard.press('Escape');
    await expect(dimmed).toHaveCount(0);
    await opener(page).click();
    await page.getByRole('button', { name: /One fabric lit/ }).click();
    await page.getByRole('listbox').getByRole('option').nth(2).click();
    await expect(dimmed).not.toHaveCount(0);
    await page.getByRole('button', { name: 'Show all fabrics again' }).click();
    await expect(dimmed).toHaveCount(0);
  });
  await test.step('the wall can hang on black and on white', async () => {
    await page.keyboard.press('Escape');
    await opener(page).click();
    const background = page.getByRole('slider', { name: /^Wall background/ });
    for (const [value, colour] of [
      ['0', 'rgb(0, 0, 0)'],
      ['100', 'rgb(255, 255, 255)'],
    ] as const) {
      await background.fill(value);
      await expect(wall(page)).toHaveCSS('background-color', colour);
    }
  });
  await test.step('squinting blurs the fabric and leaves the ring of the focus and the marks sharp', async () => {
    await page.keyboard.press('Escape');
    await choose(page, 'Squinting');
    const block = page.locator('g.block').first();
    await block.focus();
    await page.keyboard.press('ArrowRight');
    await expect(page.locator('g.block:focus .focus-ring')).toBeVisible();
    expect(
      await page.locator('.seen .focus-ring, .seen .mark, .seen .pin, .seen .block-number').count(),
    ).toBe(0);
  });
  for (let back = 0; back < 3; back += 1) await page.keyboard.press('Shift+V');
  await expect(told(page)).toContainText('Seen in colour');
  await test.step('the browser shows a colour as each way of seeing is worked out to show it', async () => {
    await page.getByRole('button', { name: /^Quilt:/ }).click();
    await page.getByRole('button', { name: 'New quilt' }).click();
    await expect(page.getByRole('dialog')).toBeHidden();
    await page.getByRole('button', { name: 'Add fabrics' }).click();
    await page.getByRole('textbox', { name: 'Colour', exact: true }).fill('#b22222');
    await page.getByRole('textbox', { name: 'Name' }).fill('Brick');
    await page.keyboard.press('Enter');
    const piece = '.laid-piece:has-text("Brick") svg .seen';
    expect(await middleOf(page, piece)).toEqual(channels('#b22222'));
    for (const [name, way] of [
      ['Grey', 'grey'],
      ['Red-weak', 'protan'],
      ['Green-weak', 'deutan'],
      ['Blue-weak', 'tritan'],
    ] as const) {
      await choose(page, name);
      const shown = await middleOf(page, piece);
      // A browser filters with 8 bits a channel.
      for (const [at, wanted] of channels(seenAs(way, '#b22222')).entries())
        expect(Math.abs(shown[at]! - wanted), `${name}: ${shown.join(' ')}`).toBeLessThanOrEqual(6);
    }
    await opener(page).click();
    await page.getByRole('slider', { name: /^How weak/ }).fill('0');
    await page.keyboard.press('Escape');
    await page.mouse.move(5, 5);
    const full = await middleOf(page, piece);
    for (const [at, wanted] of channels('#b22222').entries())
      expect(Math.abs(full[at]! - wanted)).toBeLessThanOrEqual(3);
  });
});

test('on a phone a way of seeing is chosen, and the photograph lies under the wall @phone @touch', async ({
  page,
}) => {
  await firstVisit(page);
  await choose(page, 'Three tones');
  await expect(told(page)).toHaveText('Seen in three tones');
  await expect(wall(page).locator('svg.top .hung-cloth')).toHaveCSS('filter', 'url("#way-of-seeing")');
  await opener(page).click();
  await photographShown(page);
});

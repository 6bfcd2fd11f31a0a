// Setting the quilt: layout, corners, sashing, borders and binding chosen part by part, and a size the other way round. The
// sizes are worked by hand from the 14" block of the example (3 rows of 2), beside each check.
import { drawProject } from '../src/drawing/drawProject';
import { drawingToSvg } from '../src/drawing/svg';
import { parseLength } from '../src/model/units';
import { type ReadPolygon, readSvg } from '../tests/drawing/readSvg';
import { expect, type Locator, type Page, test } from './guarded';
import { openExample } from './quilt';
import { foot, goTo, openPart, undoAll, undoButton, unfold } from './room';
import { savedQuilt } from './stored';
import { byFinger, resize } from './within-reach';

function fold(page: Page, name: string): Locator {
  const title = page.locator('summary .name').getByText(name, { exact: true });
  return page
    .getByRole('region', { name: 'Setting', exact: true })
    .locator('details.fold')
    .filter({ has: title });
}

async function opened(page: Page, name: string): Promise<Locator> {
  const part = fold(page, name);
  if (!(await part.evaluate((one: HTMLDetailsElement) => one.open)))
    await part.locator('summary').first().click();
  return part;
}

/** The words that stand beside the name of a folded part. */
function now(page: Page, name: string): Locator {
  return fold(page, name).locator('summary .now').first();
}

function size(page: Page): Locator {
  return page.getByRole('region', { name: 'Size of the wall' }).getByText(/^The finished top measures/);
}

async function write(field: Locator, text: string): Promise<void> {
  await field.fill(text);
  await field.press('Enter');
}

async function pick(page: Page, within: Locator, label: string, fabric: string): Promise<void> {
  await within.getByRole('button', { name: new RegExp(`${label}$`) }).click();
  await page.getByRole('option', { name: fabric }).click();
}

interface DrawnPiece {
  readonly part: string;
  readonly fabric: string;
  /** Its corners, inches on the top. */
  readonly corners: ReadPolygon['points'];
}

/** The pieces of the setting and the corners of the blocks, as they are drawn of the quilt that was saved. */
async function drawn(page: Page): Promise<DrawnPiece[]> {
  const { polygons } = readSvg(drawingToSvg(drawProject(await savedQuilt(page))));
  return polygons.flatMap(({ data, points }) => {
    const part = data['data-part'];
    return part ? [{ part, fabric: data['data-fabric'] ?? '', corners: points }] : [];
  });
}

function count(pieces: readonly DrawnPiece[], part: string): number {
  return pieces.filter((piece) => piece.part === part).length;
}

test('layout, corners, sashing, borders and binding, each from the quilt as it was opened', async ({
  page,
}) => {
  await openExample(page, 'Wall');
  await test.step('sashing between the blocks, then around them too, makes the top as much larger', async () => {
    await expect(size(page)).toContainText('28" × 42"');
    const sashing = await opened(page, 'Sashing');
    await sashing.getByText('Between', { exact: true }).click();
    await write(sashing.getByLabel('Finished width'), '1 1/2');
    // One gap across, two down: 28 + 1 1/2 and 42 + 3.
    await expect(size(page)).toContainText('29 1/2" × 45"');
    await sashing.getByText('Between and around', { exact: true }).click();
    // Two more each way.
    await expect(size(page)).toContainText('32 1/2" × 48"');
    await expect(now(page, 'Sashing')).toContainText('1 1/2"');
    await undoButton(page).click();
    await expect(size(page)).toContainText('29 1/2" × 45"');
    await sashing.getByText('None', { exact: true }).click();
    await expect(size(page)).toContainText('28" × 42"');
  });
  await page.keyboard.press('Escape');
  await undoAll(page);
  await test.step('borders make the top larger on every side; their corners are butted, mitred, or cornerstones', async () => {
    const borders = await opened(page, 'Borders');
    await borders.getByRole('button', { name: 'Add a border' }).click();
    // 3" on every side.
    await expect(size(page)).toContainText('34" × 48"');
    await write(borders.getByRole('textbox', { name: 'Border 1' }), '2');
    await expect(size(page)).toContainText('32" × 46"');
    await borders.getByText('Mitred', { exact: true }).click();
    let pieces = await drawn(page);
    // Every mitred strip ends aslant: two corners out, two corners in.
    const border = pieces.filter((piece) => piece.part === 'border');
    expect(border).toHaveLength(4);
    for (const { corners } of border)
      expect(new Set(corners.map(([x]) => x)).size + new Set(corners.map(([, y]) => y)).size).toBe(6);
    await borders.getByText('Cornerstones', { exact: true }).click();
    pieces = await drawn(page);
    expect(count(pieces, 'cornerstone')).toBe(4);
    await borders.getByRole('button', { name: 'Remove border 1' }).click();
    await expect(size(page)).toContainText('28" × 42"');
    await expect(now(page, 'Borders')).toHaveText('none');
  });
  await page.keyboard.press('Escape');
  await undoAll(page);
  await test.step('about 60 × 72 is answered with ways to come close, and one is taken up', async () => {
    const wanted = page.getByRole('region', { name: 'Fit to a size' });
    await wanted.locator('summary').click();
    await write(wanted.getByLabel('Width'), '60');
    await write(wanted.getByLabel('Height'), '72');
    const offers = page.getByRole('region', { name: 'Layouts to choose from' }).getByRole('listitem');
    await expect(offers.first()).toBeVisible();
    for (const words of await offers.locator('.size').allTextContents()) {
      const [across, down] = words.split('×').map((text) => parseLength(text, 'in')!) as [number, number];
      // No farther than half a block from what was asked for.
      expect(Math.abs(across - 60)).toBeLessThanOrEqual(7);
      expect(Math.abs(down - 72)).toBeLessThanOrEqual(7);
    }
    for (const words of await offers.allTextContents()) expect(words).toMatch(/Ringed|no cell is new/);
    // Two rows of two are 28" square: the third row comes down, seen in a picture of the top as it is.
    await write(wanted.getByLabel('Width'), '28');
    await write(wanted.getByLabel('Height'), '28');
    const less = offers.filter({ hasText: '2 blocks that come down' }).first();
    await expect(
      less.getByRole('img', { name: 'The top as it is now' }).locator('.stitch-solid'),
    ).toHaveCount(2);
    await foot(page).getByRole('button', { name: 'Cancel' }).click();
    await expect(offers).toHaveCount(0);
    await wanted.locator('summary').click();
    await write(wanted.getByLabel('Width'), '60');
    await write(wanted.getByLabel('Height'), '72');
    const first = await offers.first().locator('.size').textContent();
    await offers.first().getByRole('button', { name: /^Use / }).click();
    await expect(size(page)).toContainText(first!);
    await expect(undoButton(page)).toBeEnabled();
  });
  await page.keyboard.press('Escape');
  await undoAll(page);
  await test.step('a gap of a width of its own moves the top by the difference, and goes back to the rest', async () => {
    const sashing = await opened(page, 'Sashing');
    await sashing.getByText('Between', { exact: true }).click();
    await sashing.getByText('Vary sashing widths').click();
    await write(sashing.getByLabel('After column 1'), '3');
    await write(sashing.getByLabel('After row 2'), '1/2');
    // 28 + 3, and 42 + 1 1/2 + 1/2.
    await expect(size(page)).toContainText('31" × 44"');
    await sashing.getByRole('button', { name: 'Like the rest' }).first().click();
    await expect(size(page)).toContainText('29 1/2" × 44"');
    await write(sashing.getByLabel('After row 2'), 'wide');
    await expect(sashing.getByText('Write a length such as 7 1/2 or 7.5.')).toBeVisible();
    await expect(size(page)).toContainText('29 1/2" × 44"');
  });
  await page.keyboard.press('Escape');
  await undoAll(page);
  await test.step('cornerstones lie wherever the sashing crosses, in the fabric chosen', async () => {
    const sashing = await opened(page, 'Sashing');
    await sashing.getByText('Between and around', { exact: true }).click();
    await sashing.getByLabel('Cornerstones where it crosses').check();
    await pick(page, sashing, 'Fabric of the cornerstones', 'Night ink, tiny stars');
    const pieces = await drawn(page);
    // Three upright lines cross four level ones; between them 3 × 3 upright and 4 × 2 level pieces.
    expect(count(pieces, 'cornerstone')).toBe(12);
    expect(count(pieces, 'sashing')).toBe(17);
    expect(new Set(pieces.filter((one) => one.part === 'cornerstone').map((one) => one.fabric))).toEqual(
      new Set(['ink']),
    );
  });
  await page.keyboard.press('Escape');
  await undoAll(page);
  await test.step('on point the top grows by the root of two and gets its triangles; plain squares fill the gaps', async () => {
    const layout = await opened(page, 'Layout');
    await layout.getByText('On point', { exact: true }).click();
    // 2 × 14 × √2 = 39.598 and 3 × 14 × √2 = 59.397, to the sixteenth.
    await expect(size(page)).toContainText('39 5/8" × 59 3/8"');
    await expect(page.getByRole('button', { name: /^Empty cell/ })).toHaveCount(2);
    let pieces = await drawn(page);
    // One between the two blocks at top and foot, two between the three at each side.
    expect(count(pieces, 'side')).toBe(6);
    expect(count(pieces, 'setting-corner')).toBe(4);
    await layout.getByText('In between', { exact: true }).click();
    await expect(page.getByRole('button', { name: /^Empty cell/ })).toHaveCount(0);
    await pick(page, layout, 'Side triangles', 'Deep water scales');
    pieces = await drawn(page);
    expect(count(pieces, 'plain')).toBe(2);
    expect(new Set(pieces.filter((one) => one.part === 'side').map((one) => one.fabric)).size).toBe(1);
    await expect(now(page, 'Layout')).toHaveText('on point with plain squares');
  });
  await page.keyboard.press('Escape');
  await undoAll(page);
  await test.step('plain squares take every second place and send their blocks to the side table, until it is undone', async () => {
    const layout = await opened(page, 'Layout');
    await layout.getByText('Alternate, block first', { exact: true }).click();
    await expect(size(page)).toContainText('3 blocks wait on the side table.');
    expect(count(await drawn(page), 'plain')).toBe(3);
    await undoButton(page).click();
    await expect(size(page)).not.toContainText('side table');
  });
  await page.keyboard.press('Escape');
  await undoAll(page);
  await test.step('a wall of more cells has empty ones, which say where they are', async () => {
    const wall = page.getByRole('region', { name: 'Size of the wall' });
    await write(wall.getByLabel('Columns', { exact: true }), '3');
    await expect(size(page)).toContainText('42" × 42"');
    await expect(page.getByRole('button', { name: /^Empty cell/ })).toHaveCount(3);
    await expect(page.getByRole('button', { name: 'Empty cell, row 2, column 3' })).toBeVisible();
    await write(wall.getByLabel('Rows', { exact: true }), '1');
    await expect(size(page)).toContainText('42" × 14"');
    await expect(size(page)).toContainText('4 blocks wait on the side table.');
  });
  await page.keyboard.press('Escape');
  await undoAll(page);
  await test.step('corners by rule: every other block, or the blocks along the edge', async () => {
    const corners = await opened(page, 'Corner triangles');
    await corners.getByText('Checkerboard', { exact: true }).click();
    await pick(page, corners, 'Second fabric', 'Oar brown hatch');
    let pieces = await drawn(page);
    const own = (fabric: string) =>
      pieces.filter((one) => one.part === 'corner' && one.fabric === fabric).length;
    expect([own('sailcloth'), own('oar')]).toEqual([12, 12]);
    await corners.getByText('Dark outside', { exact: true }).click();
    pieces = await drawn(page);
    // Two columns: every block lies along the edge.
    expect([own('sailcloth'), own('oar')]).toEqual([0, 24]);
    await expect(now(page, 'Corner triangles')).toHaveText('dark outside');
  });
  await page.keyboard.press('Escape');
  await undoAll(page);
  await test.step('the binding shows as an edge and changes nothing of the size', async () => {
    const binding = await opened(page, 'Binding');
    await binding.getByText('2 1/2"', { exact: true }).click();
    await pick(page, binding, 'Fabric of the binding', 'Quay brick check');
    await expect(now(page, 'Binding')).toHaveText('2 1/2", Quay brick check');
    await expect(size(page)).toContainText('28" × 42"');
    const pieces = await drawn(page);
    expect(pieces.filter((one) => one.part === 'binding').length).toBeGreaterThan(0);
    await binding.getByText('Other', { exact: true }).click();
    await write(binding.getByLabel('Cut width'), '9');
    await expect(binding.getByText('It must be at most 6".')).toBeVisible();
    // A width that is a ready choice too leaves the field where the hand is.
    await write(binding.getByLabel('Cut width'), '2 1/4');
    await expect(binding.getByLabel('Cut width')).toBeVisible();
    await expect(now(page, 'Binding')).toHaveText('2 1/4", Quay brick check');
  });
  await page.keyboard.press('Escape');
  await undoAll(page);
  await test.step('a border is pieced from strips left over; where whole pieces do not fit, a spacer makes them', async () => {
    const sashing = await opened(page, 'Sashing');
    await sashing.getByText('Between', { exact: true }).click();
    await write(sashing.getByLabel('Finished width'), '1 3/8');
    // 28 + 1 3/8 and 42 + 2 3/4: no whole number of the pieces' halves of an inch.
    await expect(size(page)).toContainText('29 3/8" × 44 3/4"');
    const borders = await opened(page, 'Borders');
    await borders.getByRole('button', { name: 'Add a border' }).click();
    await borders.getByText('Piece it from strips left over').click();
    await expect(borders.getByText(/^Cut across, the strips left over make/)).toBeVisible();
    await expect(borders.getByText(/^Whole pieces do not fit\. A plain border/)).toBeVisible();
    await borders.getByRole('button', { name: 'Add the spacer' }).click();
    const pieced = borders.getByRole('group', { name: 'Border 2' });
    await expect(pieced.getByText('Whole pieces fit every side.')).toBeVisible();
    await pieced.getByRole('button', { name: 'Piece this border' }).click();
    await expect(pieced.getByText(/^Pieced from \d+ pieces$/)).toBeVisible();
    await expect(pieced.getByText('Mitred', { exact: true })).toBeHidden();
    const words = await pieced.getByText(/^Pieced from \d+ pieces$/).textContent();
    const pieces = (await drawn(page)).filter((piece) => piece.part === 'border');
    // The spacer is four strips; the rest are the pieces.
    expect(pieces.length).toBe(4 + Number(/\d+/.exec(words!)![0]));
    expect(new Set(pieces.map((piece) => piece.fabric)).size).toBeGreaterThan(3);
    await pieced.getByRole('button', { name: 'Make it plain' }).click();
    expect((await drawn(page)).filter((piece) => piece.part === 'border')).toHaveLength(8);
  });
  await page.keyboard.press('Escape');
  await undoAll(page);
  await test.step('no part of it makes the panel wider than it is, on a phone', async () => {
    const desk = page.viewportSize()!;
    await byFinger(page, true);
    await resize(page, [390, 844]);
    const setting = page.getByRole('region', { name: 'Setting', exact: true });
    await unfold(page);
    await setting.getByText('Checkerboard').click();
    await setting.getByText('Between and around').click();
    await setting.getByRole('button', { name: 'Add a border' }).click();
    const spill = await setting.evaluate((part) => {
      let panel: Element = part;
      while (panel.parentElement && getComputedStyle(panel).overflowY !== 'auto') panel = panel.parentElement;
      return panel.scrollWidth - panel.clientWidth;
    });
    expect(spill).toBe(0);
    await byFinger(page, false);
    await resize(page, [desk.width, desk.height]);
  });
  await undoAll(page);
  await test.step('in centimetres the squares the steps speak of are those the cutting list cuts', async () => {
    const layout = await opened(page, 'Layout');
    await layout.getByText('On point', { exact: true }).click();
    await page.getByRole('button', { name: 'Units of lengths' }).click();
    await page.getByRole('radio', { name: 'centimetres' }).check({ force: true });
    await page.keyboard.press('Escape');
    // 14√2 + 1/4 (2 + 2√2) is 53.4 cm, its half and 1/4 (2 + √2) 27.3 cm; with the allowances rounded up to half centimetres
    // 54 and 28. The corner of the block takes 4.1005 + 1/4 (2 + √2), 12.58 cm.
    await expect(layout).toContainText(
      'Squares of 54.0 cm quartered make the side triangles, squares of 28.0 cm halved the corners',
    );
    await goTo(page, 'Wedges');
    const figures = page
      .locator('dl > div')
      .filter({ hasText: /two corners/ })
      .locator('dd');
    await expect(figures).toHaveText(['13.0 cm', '14.0 cm']);
    await goTo(page, 'Finishing');
    await openPart(page, 'Fabric and cutting list');
    const list = page.getByRole('region', { name: 'Fabric and cutting list' });
    for (const cut of ['squares 54.0 cm', 'squares 28.0 cm', 'squares 14.0 cm'])
      await expect(list.getByText(cut).first()).toBeAttached();
  });
});

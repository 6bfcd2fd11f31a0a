// A design wall from its photograph: grid found and moved, empty cells marked, blocks read and hung as in the picture, known ones kept.
// How well walls are read is held in tests/photo/wall; axe looks at these screens in whatever-is-on-show.spec.ts.
import { writeProject } from '../src/model/reading/read';
import { wallShot } from '../tests/photo/render/shots';
import { expect, test } from './guarded';
import { jpegOf } from './photos';
import { nextUndo } from './quilt';
import { block, firstVisit, goTo, hangsAt, openFile, undoButton } from './room';

test('a wall is read from its photograph and hung in one step: known blocks by their numbers, new ones by their pictures', async ({
  page,
}) => {
  const { project, pixels, rows, columns, cells } = await wallShot(4, 360, [2, 2]);
  const numbers = cells.map((cell) => cell!.number);
  const [known, added] = [numbers.slice(0, -2), numbers.slice(-2)];
  const blocks = project.blocks.filter(({ number }) => known.includes(number));
  // Every block hangs elsewhere than in the picture, and two are not in the quilt.
  const turned = [...project.wall.cells.slice(1), project.wall.cells[0]!].map((cell) =>
    blocks.some(({ id }) => id === cell?.block) ? { ...cell!, turn: 0 } : null,
  );
  await firstVisit(page);
  await openFile(
    page,
    writeProject({ ...project, blocks, wall: { ...project.wall, cells: turned } }, new Map()),
  );
  await expect(page.getByRole('dialog')).toBeHidden();
  await goTo(page, 'Wall');
  const hung = () => Promise.all(known.map((number) => hangsAt(page, number)));
  const before = await hung();
  await page.getByRole('button', { name: 'From a photograph of the wall' }).click();
  await expect(page.getByRole('button', { name: 'Choose a photograph' })).toBeFocused();
  await page
    .getByLabel('Files of photographs')
    .setInputFiles({ name: 'wall.jpg', mimeType: 'image/jpeg', buffer: await jpegOf(pixels) });
  await expect(page.locator('.corner-picture')).toBeVisible({ timeout: 60_000 });

  await test.step('the grid is found, rows and columns can be set, and cells be marked empty', async () => {
    const area = page.getByRole('region', { name: 'Photograph of the wall' });
    const found = area.locator('.wall-cells button');
    await expect(area.getByRole('textbox', { name: 'Rows' })).toHaveValue(String(rows));
    await expect(area.getByRole('textbox', { name: 'Columns' })).toHaveValue(String(columns));
    await area.getByRole('button', { name: 'Rows (Photograph): one more' }).click();
    await expect(found).toHaveCount((rows + 1) * columns);
    await area.getByRole('button', { name: 'Rows (Photograph): one less' }).click();
    await expect(found).toHaveCount(rows * columns);
    await found.first().click();
    const none = area.getByRole('checkbox', { name: 'No block hangs here' });
    await none.check();
    await expect(found.first()).toHaveAccessibleName('Row 1, column 1: empty');
    await none.uncheck();
  });
  await test.step('what hanging does is told first', async () => {
    await page.getByRole('button', { name: 'Read the blocks' }).click();
    await expect(page.getByText(/^Recognised, and moved or turned/)).toBeVisible({ timeout: 90_000 });
    await expect(page.getByText(`${added.length} blocks are added by their pictures.`)).toBeVisible();
  });
  await test.step('all hang as in the picture, and one undo brings the quilt back', async () => {
    await page.getByRole('button', { name: 'Hang the blocks as photographed' }).click();
    await expect(page.locator('.wall-area image')).toHaveCount(added.length);
    expect(await nextUndo(page)).toContain('hang the wall as photographed');
    const placeOf = (at: number) => `row ${Math.floor(at / columns) + 1}, column ${(at % columns) + 1}`;
    expect(await hung()).toEqual(known.map((_, at) => placeOf(at)));
    await undoButton(page).click();
    await expect(page.locator('.wall-area image')).toHaveCount(0);
    await expect(block(page, known[0]!)).toBeVisible();
    expect(await hung()).toEqual(before);
    await expect(page.locator('[data-block]')).toHaveCount(known.length);
  });
});

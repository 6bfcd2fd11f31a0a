// A design wall from its photograph: grid found and moved, empty cells marked, blocks read and hung as in the picture, known ones kept.
import type { Project } from '../src/model/project';
import { writeProject } from '../src/model/reading/read';
import { wallShot } from '../tests/photo/render/shots';
import { faultsOf } from './axe';
import { expect, type Page, test } from './guarded';
import { jpegOf } from './photos';
import { nextUndo } from './quilt';
import { firstVisit, openFile } from './room';

const shot = wallShot(3, 1100, [3, 4]);
test.describe.configure({ mode: 'serial', timeout: 120_000 });

const photographed = async () => jpegOf((await shot).pixels);

async function openWall(page: Page, project: Project): Promise<void> {
  await firstVisit(page);
  await openFile(page, writeProject(project, new Map()));
  await expect(page.getByRole('dialog')).toBeHidden();
  await page.getByRole('navigation', { name: 'Order of work' }).getByRole('button', { name: 'Wall' }).click();
  await page.getByRole('button', { name: 'From a photograph of the wall' }).click();
  await expect(page.getByRole('button', { name: 'Choose a photograph' })).toBeFocused();
  await page
    .getByLabel('Files of photographs')
    .setInputFiles({ name: 'wall.jpg', mimeType: 'image/jpeg', buffer: await photographed() });
  await expect(page.locator('.corner-picture')).toBeVisible({ timeout: 60_000 });
}

test('the grid is found, rows and columns can be set, and cells be marked empty @phone', async ({ page }) => {
  const { project, rows, columns } = await shot;
  await openWall(page, project);
  const area = page.getByRole('region', { name: 'Photograph of the wall' });
  await expect(area.getByRole('textbox', { name: 'Rows' })).toHaveValue(String(rows));
  await expect(area.getByRole('textbox', { name: 'Columns' })).toHaveValue(String(columns));
  await area.getByRole('button', { name: 'Rows (Photograph): one more' }).click();
  await expect(area.locator('.wall-cells button')).toHaveCount((rows + 1) * columns);
  await area.getByRole('button', { name: 'Rows (Photograph): one less' }).click();
  await expect(area.locator('.wall-cells button')).toHaveCount(rows * columns);
  await area.locator('.wall-cells button').first().click();
  await area.getByRole('checkbox', { name: 'No block hangs here' }).check();
  await expect(area.locator('.wall-cells button').first()).toHaveAccessibleName('Row 1, column 1: empty');
  expect(await faultsOf(page)).toEqual([]);
});

test('known blocks keep their numbers and hang as in the picture, in one step', async ({ page }) => {
  const made = await shot;
  const { project, columns, cells } = made;
  // Every block hangs elsewhere than in the picture.
  const turned = [...project.wall.cells.slice(1), project.wall.cells[0]!].map(
    (cell) => cell && { ...cell, turn: 0 },
  );
  await openWall(page, { ...project, wall: { ...project.wall, cells: turned } });
  await page.getByRole('button', { name: 'Read the blocks' }).click();
  await expect(page.getByText(/^Recognised, and moved or turned/)).toBeVisible({ timeout: 90_000 });
  await page.getByRole('button', { name: 'Hang the blocks as photographed' }).click();
  await expect(page.locator('.wall-area').first()).toBeVisible();
  expect(await nextUndo(page)).toContain('hang the wall as photographed');
  const first = cells.findIndex((cell) => cell !== null);
  const words = `Block ${cells[first]!.number}, row ${Math.floor(first / columns) + 1}, column ${(first % columns) + 1}`;
  await expect(page.locator(`[data-cell="${first}"]`).first()).toHaveAccessibleName(
    new RegExp(`^${words}\\b`),
  );
});

test('new blocks are added by their pictures, and one undo brings the quilt back', async ({ page }) => {
  const { project, cells } = await shot;
  const wanted = cells.filter((cell) => cell !== null).length;
  const bare = project.wall.cells.map(() => null);
  await openWall(page, { ...project, blocks: [], wall: { ...project.wall, cells: bare } });
  await page.getByRole('button', { name: 'Read the blocks' }).click();
  await expect(page.getByText(`${wanted} blocks are added by their pictures.`)).toBeVisible({
    timeout: 90_000,
  });
  await page.getByRole('button', { name: 'Hang the blocks as photographed' }).click();
  await expect(page.locator('.wall-area image')).toHaveCount(wanted);
  await page.getByRole('toolbar', { name: 'Undo and redo' }).getByRole('button').first().click();
  await expect(page.locator('[data-block]')).toHaveCount(0);
});

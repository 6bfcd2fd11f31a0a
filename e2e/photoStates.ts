// The screens of photographs, as states that specs go through: fabrics, blocks and walls from photographs, moves by hand, a photograph
// beside the wall. Pictures are rendered once for all.
import { expect, type Page } from '@playwright/test';
import { blockShot, wallShot } from '../tests/photo/render/shots';
import { jpegOf, photograph } from './photos';
import { goTo, press, unfold } from './room';
import type { State } from './states';

/** Reading goes on beside other tests. */
const READ = { timeout: 90_000 };

const once = <Made>(make: () => Promise<Made>): (() => Promise<Made>) => {
  let made: Promise<Made> | null = null;
  return () => {
    made ??= make();
    return made;
  };
};
const fabricPicture = once(() => photograph());
const blockPicture = once(async () => jpegOf((await blockShot(11, 320)).pixels));
const wallPicture = once(async () => jpegOf((await wallShot(3, 320, [2, 2])).pixels));

async function give(page: Page, field: string, name: string, buffer: Buffer): Promise<void> {
  await page.getByLabel(field).setInputFiles({ name, mimeType: 'image/jpeg', buffer });
}
const unfoldWork = (page: Page) => unfold(page, '.large-area details');
const doing = (page: Page, name: string) => page.getByText(name, { exact: true }).first().click();

async function openFabricPhotos(page: Page): Promise<void> {
  await goTo(page, 'Fabrics');
  await press(page, 'From a photograph');
  await expect(page.getByRole('heading', { name: 'Fabrics from photographs' })).toBeVisible();
}

export const PHOTO_STATES: readonly State[] = [
  { name: 'Fabrics: no photograph yet', open: openFabricPhotos },
  {
    name: 'Fabrics: a photograph, its frame; a file that is none',
    main: true,
    open: async (page) => {
      const files = page.getByLabel('Photographs of fabrics');
      if ((await files.count()) === 0) await openFabricPhotos(page);
      await files.setInputFiles([
        { name: 'notes.txt', mimeType: 'text/plain', buffer: Buffer.from('ten strips of plum') },
        { name: 'checks.jpg', mimeType: 'image/jpeg', buffer: await fabricPicture() },
      ]);
      await expect(page.getByRole('region', { name: 'What was read' })).toBeVisible(READ);
      await unfoldWork(page);
    },
  },
  { name: 'Fabrics: a photograph, its true size', open: (page) => doing(page, 'True size') },
  {
    name: 'Fabrics: a photograph, its light',
    open: async (page) => {
      await doing(page, 'Light');
      await press(page, /^Use the marked spot/);
      await expect(page.getByText(/^Corrected for light/)).toBeVisible(READ);
    },
  },
  {
    name: 'Fabrics: a photograph of several fabrics',
    brief: true,
    open: (page) => doing(page, 'Several fabrics'),
    close: (page) => press(page, /^Done/),
  },
  {
    name: 'Blocks: a photograph, a strip put right',
    main: true,
    open: async (page) => {
      await goTo(page, 'Blocks');
      await press(page, 'From a photograph');
      await give(page, 'Files of photographs', 'block.jpg', await blockPicture());
      await page.locator('[data-band="1 0"]').click(READ);
      await expect(page.locator('.fabrics-for-band')).toBeVisible();
      await unfoldWork(page);
    },
  },
  {
    name: 'Blocks: a block that is its picture',
    open: async (page) => {
      await press(page, 'Put on the wall as a picture');
      await expect(page.getByText(/^It is block \d+ now/).first()).toBeVisible(READ);
      await press(page, /^Close/);
      await page.locator('button.block-card').last().click();
      await expect(page.getByRole('heading', { name: 'Shown by its picture' })).toBeVisible();
      await page.getByText('Put right what was read', { exact: true }).click();
    },
    close: (page) => press(page, /All blocks/),
  },
  {
    name: 'Wall: a photograph of it, a cell open',
    main: true,
    open: async (page) => {
      await goTo(page, 'Wall');
      await press(page, 'From a photograph of the wall');
      await give(page, 'Files of photographs', 'wall.jpg', await wallPicture());
      await page.getByRole('button', { name: 'Read the blocks' }).click(READ);
      await expect(page.getByRole('heading', { name: 'Hang it here' })).toBeVisible(READ);
      await page.locator('.wall-cells button').first().click();
      await unfoldWork(page);
    },
    close: (page) => press(page, /^Close/),
  },
  {
    name: 'Wall: moves by hand',
    main: true,
    open: async (page) => {
      await goTo(page, 'Wall');
      await press(page, 'Find what a few moves can do');
      await page
        .getByRole('group', { name: 'How many blocks to move' })
        .getByRole('radio')
        .last()
        .check(READ);
      await page.getByRole('region', { name: 'List of moves' }).getByRole('checkbox').first().check(READ);
    },
    close: async (page) => {
      await page.keyboard.press('Escape');
      await expect(page.getByRole('region', { name: 'List of moves' })).toBeHidden();
    },
  },
  {
    name: 'Wall: a photograph beside it',
    open: async (page) => {
      await page
        .getByRole('button', { name: /^Ways of seeing/ })
        .filter({ visible: true })
        .first()
        .click();
      await give(page, 'Photograph of the wall', 'wall.jpg', await wallPicture());
      await page.keyboard.press('Escape');
      // The button that opened it has the focus again; in a narrow window it goes, and the one beside it would tell its name.
      await page.locator('.panel h2').first().focus();
      await expect(page.getByRole('tooltip')).toBeHidden();
      // Tops of a wanted size may lie on the large area, with the wall small beside them.
      const large = page.getByRole('button', { name: 'Show the wall large' });
      if (await large.isVisible()) await large.click();
      await expect(page.getByRole('img', { name: /^Photograph of the wall/ })).toBeVisible(READ);
    },
  },
];

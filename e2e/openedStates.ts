// What opens in the panel or on the large area of a step, and the ways to begin, as states that specs go through.
import { expect } from '@playwright/test';
import { goTo, press, undoButton, unfold } from './room';
import type { State } from './states';

/** What opens in the panel or on the large area of a step. */
export const OPENED: readonly State[] = [
  {
    name: 'Fabrics: a new fabric',
    main: true,
    open: async (page) => {
      await goTo(page, 'Fabrics');
      await press(page, 'Add a fabric');
    },
    close: (page) => press(page, 'Done'),
  },
  {
    name: 'Fabrics: a fabric, its colours',
    open: async (page) => {
      await page.locator('.laid-piece button').first().click();
      const name = page.getByRole('textbox', { name: 'Name' });
      await name.fill(
        'A name as long as a shop writes it on the bolt, third shelf from the left, second row, at the window',
      );
      await name.press('Enter');
      await expect(page.getByRole('heading', { level: 3, name: /^A name as long/ })).toBeVisible();
      await unfold(page);
    },
    close: (page) => undoButton(page).click(),
  },
  { name: 'Fabrics: the grid of strips', open: (page) => press(page, 'Change strips') },
  {
    name: 'Fabrics: the grid of strips, a bad cell, a table offered',
    brief: true,
    open: async (page) => {
      const cell = page.locator('.grid-input').first();
      await cell.fill('many');
      await cell.press('Enter');
      await page.evaluate(() => {
        const clipboardData = new DataTransfer();
        clipboardData.setData('text/plain', '\t1\nHeather\t4');
        document.activeElement!.dispatchEvent(
          new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }),
        );
      });
      await expect(page.getByRole('button', { name: 'Enter 4 strips', exact: true })).toBeVisible();
    },
  },
  {
    name: 'Strip sets: a set',
    open: async (page) => {
      await goTo(page, 'Strip sets');
      await page.locator('.lay-name').first().click();
      await unfold(page);
    },
  },
  {
    name: 'Wedges: a set',
    open: async (page) => {
      await goTo(page, 'Wedges');
      await page.locator('.cut-name').first().click();
      await unfold(page);
    },
  },
  {
    name: 'Blocks: progress updated',
    brief: true,
    open: async (page) => {
      await goTo(page, 'Blocks');
      await press(page, 'Update progress');
    },
    close: (page) => press(page, 'Done'),
  },
  {
    name: 'Blocks: a block',
    open: async (page) => {
      await goTo(page, 'Blocks');
      await page.locator('button.block-card').first().click();
      await expect(page.locator('.bench')).toBeVisible();
      await unfold(page);
    },
    close: (page) => press(page, /All blocks/),
  },
  { name: 'Blocks: sewn blocks entered', open: (page) => press(page, /Enter sewn/) },
  {
    name: 'Blocks: sewn blocks entered, their list',
    brief: true,
    open: async (page) => {
      await page.keyboard.type('ab');
      await page.getByText('From a list').click();
      await press(page, 'List the blocks entered so far');
    },
  },
  {
    name: 'Wall: a block picked, a finding open',
    open: async (page) => {
      await goTo(page, 'Wall');
      await page.locator('.finding > button').first().click();
      await expect(page.locator('.mends input').first()).toBeVisible({ timeout: 60_000 });
      await page.locator('g.block').first().press('Enter');
      await unfold(page);
    },
  },
  {
    name: 'Wall: the wall large over another step',
    open: async (page) => {
      await goTo(page, 'Fabrics');
      await press(page, 'Show the wall large');
    },
    close: (page) => press(page, /^Back to/),
  },
];

/** The ways to begin an empty quilt. */
export const BEGINNINGS: readonly State[] = [
  {
    name: 'an empty quilt: the ways to begin',
    open: async (page) => {
      await press(page, /^Quilt:/);
      await press(page, 'New quilt');
      await expect(page.locator('.beginning')).toBeVisible();
    },
  },
  ...[/^Start from strips/, /^Start from fabric/, /^Plan a size/, /^Open a roll/].map(
    (way): State => ({
      name: `an empty quilt: ${way.source.slice(1)}`,
      brief: true,
      open: (page) => press(page, way),
    }),
  ),
];

// What the tool can have on show: each step, and what opens there, as one way to get to it. Specs that hold for all of it go through them.
import { expect, type Page } from '@playwright/test';
import { PHOTO_STATES } from './photoStates';
import { firstVisit, goTo, openPart } from './room';

export interface State {
  readonly name: string;
  /** One of those that stand for the rest where a check takes long. */
  readonly main?: true;
  /** Comes to it from wherever the state before has left the page. */
  readonly open: (page: Page) => Promise<void>;
  /** Puts away what would lie over the next one. */
  readonly close?: (page: Page) => Promise<void>;
}

const press = (page: Page, name: RegExp | string) => page.getByRole('button', { name }).first().click();
const closeWithEscape = async (page: Page) => {
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog')).toBeHidden();
};
/** Opens all folds of the panel, those inside others too. */
const unfold = (page: Page) =>
  page.evaluate(() => {
    for (const fold of document.querySelectorAll('details')) fold.open = true;
  });

export const STEPS = ['Fabrics', 'Strip sets', 'Wedges', 'Blocks', 'Wall', 'Finishing'];
/** The parts of finishing. */
export const PARTS = [
  'Sizes',
  'Picture',
  'In words',
  'Pattern',
  'Fabric and cutting list',
  'Kits and cost',
  'Weight and bulk',
  'Colourways',
];

const steps = STEPS.map(
  (step): State => ({
    name: step,
    main: true,
    open: async (page) => {
      await goTo(page, step);
      await unfold(page);
    },
  }),
);

const parts = PARTS.map(
  (part): State => ({
    name: `Finishing: ${part}`,
    ...(part === 'Pattern' ? { main: true } : {}),
    open: async (page) => {
      if ((await page.getByRole('heading', { level: 2, name: 'Finishing', exact: true }).count()) === 0)
        await goTo(page, 'Finishing');
      await openPart(page, part);
      if (part === 'Pattern')
        await expect(page.getByText(/^Page 1 of \d+$/)).toBeVisible({ timeout: 30_000 });
      await unfold(page);
    },
  }),
);

/** Dialogs, and what lies over the page. */
const DIALOGS: readonly State[] = [
  { name: 'menu of quilts', main: true, open: (page) => press(page, /^Quilt:/), close: closeWithEscape },
  {
    name: 'list of keys',
    main: true,
    open: async (page) => {
      await page.locator('body').press('?');
      await expect(page.getByRole('dialog')).toBeVisible();
    },
    close: closeWithEscape,
  },
  {
    name: 'licences',
    open: async (page) => {
      await press(page, /^Quilt:/);
      await press(page, 'Licences');
      await page.locator('.help-dialog summary').first().click();
    },
    close: closeWithEscape,
  },
  {
    name: 'ways of seeing, background and units',
    main: true,
    open: async (page) => {
      const one = page.getByRole('button', { name: /^Ways of seeing/ }).filter({ visible: true });
      await one.first().click();
      await page.getByRole('radio', { name: /^Red-weak/ }).check();
      await expect(page.getByRole('slider', { name: /^How weak/ })).toBeVisible();
      await page.getByRole('radio', { name: /^Three tones/ }).check();
    },
    close: closeWithEscape,
  },
];

/** What opens in the panel or on the large area of a step. */
const opened: readonly State[] = [
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
      await unfold(page);
    },
  },
  { name: 'Fabrics: the grid of strips', open: (page) => press(page, 'Change strips') },
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
    name: 'Wall: a block picked, a finding open',
    open: async (page) => {
      await goTo(page, 'Wall');
      await page.locator('.finding > button').first().click();
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

const beginning: State = {
  name: 'an empty quilt: the ways to begin',
  open: async (page) => {
    await press(page, /^Quilt:/);
    await press(page, 'New quilt');
    await expect(page.locator('.beginning')).toBeVisible();
  },
};

/** The way of what lies over the page. */
export const OVER = 'what lies over the page, and an empty quilt';
/** All states in ways of their own, so that several can be gone at once. */
export const WAYS: Readonly<Record<string, readonly State[]>> = {
  'the steps': steps,
  [OVER]: [...DIALOGS, beginning],
  'what opens in a step': opened,
  'the parts of finishing': parts,
  'photographs and moves by hand': PHOTO_STATES,
};

/** Goes through states one after the other, on one page. */
export async function through(
  page: Page,
  states: readonly State[],
  look: (state: State) => Promise<void>,
): Promise<void> {
  await firstVisit(page);
  for (const state of states) {
    await state.open(page);
    await look(state);
    await state.close?.(page);
  }
}

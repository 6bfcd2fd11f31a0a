// What the tool can have on show: each step, and what opens there, as one way to get to it. Specs that hold for all of it go through them.
import { expect, type Page } from '@playwright/test';
import { BEGINNINGS, OPENED } from './openedStates';
import { PHOTO_STATES } from './photoStates';
import { firstVisit, goTo, openPart, press, unfold } from './room';

export interface State {
  readonly name: string;
  /** One of those that stand for the rest where a check takes long. */
  readonly main?: true;
  /** Made of parts that another state has at all sizes: it is looked at in few windows. */
  readonly brief?: true;
  /** The page is looked at whole; else what opens in a step, in its own part. */
  readonly whole?: true;
  /** Comes to it from wherever the state before has left the page. */
  readonly open: (page: Page) => Promise<void>;
  /** Puts away what would lie over the next one. */
  readonly close?: (page: Page) => Promise<void>;
}

const closeWithEscape = async (page: Page) => {
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog')).toBeHidden();
};

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
    // The step opens at its first part, which it then shows in every window.
    ...(part === 'Pattern' ? { main: true } : part === PARTS[0] ? { brief: true } : {}),
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
  {
    name: 'menu of quilts',
    main: true,
    open: async (page) => {
      await press(page, /^Quilt:/);
      // They are fetched when the menu is opened.
      await expect(page.getByRole('region', { name: 'Examples' }).getByRole('button').first()).toBeVisible();
    },
    close: closeWithEscape,
  },
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

const asWhole = (states: readonly State[]): readonly State[] =>
  states.map((state) => ({ ...state, whole: true }));

/** All states in ways of their own, so that several can be gone at once; a new quilt leaves the first one. */
export const WAYS = {
  'the steps': asWhole(steps),
  'the parts of finishing': parts,
  'what lies over the page': asWhole(DIALOGS),
  'what opens in a step': OPENED,
  'an empty quilt': asWhole(BEGINNINGS),
  'photographs and moves by hand': PHOTO_STATES,
} satisfies Readonly<Record<string, readonly State[]>>;
export type Way = keyof typeof WAYS;

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

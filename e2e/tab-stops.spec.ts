// How far it is by Tab: the main action of every step is near its heading, and from the work it is not far to the steps or to the wall.
import { expect, type Page, test } from './guarded';
import { firstVisit, foot, goTo, openExample, openPart } from './room';

const STEPS = ['Fabrics', 'Strip sets', 'Wedges', 'Blocks', 'Wall', 'Finishing'];
const MOST = 6;

/** Presses a key until an element of this kind has the focus; returns how often, or 99 where it never has. */
async function presses(page: Page, selector: string, key = 'Tab', most = 40): Promise<number> {
  for (let count = 1; count <= most; count += 1) {
    await page.keyboard.press(key);
    const there = await page.evaluate((one) => document.activeElement?.matches(one) ?? false, selector);
    if (there) return count;
  }
  return 99;
}

async function fromHeading(page: Page): Promise<number> {
  await page.locator('.panel h2').focus();
  return presses(page, '.panel .button.solid');
}

/** The main action of every step is within six stops of its heading, and of that of sewn blocks being entered. */
async function mainActionsNear(page: Page): Promise<void> {
  for (const step of STEPS) {
    await goTo(page, step);
    await expect(page.locator('.panel .button.solid').first()).toBeAttached();
    expect(await fromHeading(page), step).toBeLessThanOrEqual(MOST);
  }
  for (const part of ['Picture', 'Pattern']) {
    await openPart(page, part);
    expect(await fromHeading(page), part).toBeLessThanOrEqual(MOST);
  }
  await goTo(page, 'Blocks');
  await page.getByRole('button', { name: 'Enter sewn blocks' }).click();
  expect(await fromHeading(page)).toBeLessThanOrEqual(MOST);
}

/** Tools, values and parts of finishing are one stop each, and arrows go on within them. */
async function oneStopEach(page: Page): Promise<void> {
  await goTo(page, 'Wall');
  for (const [part, name] of [
    ['toolbar', 'How the wall is shown'],
    ['toolbar', 'View of the wall'],
    ['toolbar', 'Fabrics, light to dark'],
  ] as const) {
    const buttons = page.getByRole(part, { name }).getByRole('button');
    await buttons.first().focus();
    await page.keyboard.press('ArrowRight');
    await expect(buttons.nth(1)).toBeFocused();
    await page.keyboard.press('Tab');
    const still = await page.evaluate(
      (label) => document.activeElement?.closest('[role="toolbar"]')?.getAttribute('aria-label') === label,
      name,
    );
    expect(still, name).toBe(false);
  }
}

/** From the strips to the steps, and from a layout just used to the wall, it is a few keys. */
async function fewKeysBetween(page: Page): Promise<void> {
  await goTo(page, 'Fabrics');
  await page.getByRole('button', { name: 'Change strips' }).click();
  await expect(page.locator('.grid-input:focus')).toBeVisible();
  expect(await presses(page, '.selvedge button', 'Shift+F6')).toBeLessThanOrEqual(2);
  await page.getByRole('button', { name: /^Done/ }).click();
  await expect(page.getByRole('button', { name: 'Change strips' })).toBeFocused();
  expect(await presses(page, '.selvedge button', 'Shift+Tab')).toBeLessThanOrEqual(MOST);

  await goTo(page, 'Wall');
  await foot(page).getByRole('button', { name: 'Shuffle' }).press('Enter');
  const use = foot(page).getByRole('button', { name: 'Use this layout' });
  await expect(use).toBeVisible({ timeout: 60_000 });
  await use.press('Enter');
  await expect(foot(page).getByRole('button', { name: 'Shuffle' })).toBeFocused();
  const skip = page.getByRole('button', { name: 'Skip the choices of this step' });
  await page.keyboard.press('Tab');
  await expect(skip).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(page.locator('.wall-area [data-cell]:focus')).toBeAttached();
}

/** F6 goes from part to part of the screen and round, Shift F6 back. */
async function fromPartToPart(page: Page): Promise<void> {
  await goTo(page, 'Fabrics');
  const part = () =>
    page.evaluate(() => {
      const parts = ['.top-bar', '.selvedge', '.panel', '.work', '.wall-area', '.value-strip'];
      return parts.find((one) => document.activeElement?.closest(one)) ?? 'none';
    });
  await expect(page.locator('.large-area > .work')).toBeVisible();
  await page.locator('.panel h2').focus();
  const forth: string[] = [];
  for (let count = 0; count < 6; count += 1) {
    await page.keyboard.press('F6');
    forth.push(await part());
  }
  expect(forth).toEqual(['.work', '.wall-area', '.value-strip', '.top-bar', '.selvedge', '.panel']);
  await expect(page.locator('.panel h2')).toBeFocused();
  await page.keyboard.press('Shift+F6');
  expect(await part()).toBe('.selvedge');
  await expect(page.locator('.selvedge [aria-current]')).toBeFocused();
}

test('tools are one stop each, F6 goes from part to part, and main actions are near their headings', async ({
  page,
}) => {
  test.setTimeout(240_000);
  await firstVisit(page);
  await test.step('tools and values are one stop each', () => oneStopEach(page));
  await test.step('F6 goes from part to part and round', () => fromPartToPart(page));
  await test.step('from the strips to the steps, and from a layout to the wall', () => fewKeysBetween(page));
  await test.step('the main action of every step is within six stops', () => mainActionsNear(page));
  await test.step('so it is where nothing is sewn', async () => {
    await openExample(page, 'The kiln shed');
    await mainActionsNear(page);
  });
});

test('on a phone the main action of every step is within six stops of its heading @phone @touch', async ({
  page,
}) => {
  await firstVisit(page);
  await mainActionsNear(page);
});

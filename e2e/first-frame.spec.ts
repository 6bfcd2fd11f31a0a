// What is on the screen before the script of the page has come: the wall that the page will open, where it will be.
import { expect, type Page, test } from './guarded';

/** Holds the first script back, until the returned function is called. */
async function holdScript(page: Page): Promise<() => void> {
  let go = () => {};
  const gate = new Promise<void>((open) => {
    go = open;
  });
  await page.route('**/first-*.js', async (route) => {
    await gate;
    await route.continue();
  });
  return () => go();
}

/** The boxes of the wall, the top, and the parts of the page round it; rounded to a pixel. */
const boxes = (page: Page) =>
  page.evaluate(() =>
    ['.top-bar', '.selvedge', '.panel', '.wall', '.hung-cloth', '.standing', '.strip-row'].map((part) => {
      const { x, y, width, height } = document.querySelector(part)!.getBoundingClientRect();
      return [part, ...[x, y, width, height].map(Math.round)];
    }),
  );

/** What is drawn of fabric, whoever wrote it. */
const cloth = (page: Page) =>
  page.evaluate(() =>
    Array.from(
      document.querySelectorAll('.hung-cloth path'),
      (path) =>
        `${path.getAttribute('fill')} ${path.getAttribute('d')} ${path.parentElement?.getAttribute('transform')}`,
    ),
  );

const live = (page: Page) => page.locator('.wall [data-cell]').first().waitFor({ state: 'attached' });

/** Opens the page: the first example hangs where it stays, before the page is there. */
async function expectEarlyWall(page: Page): Promise<void> {
  const go = await holdScript(page);
  // Scripts that are held back hold back the event that goto waits for.
  await page.goto('/', { waitUntil: 'commit' });
  await expect(page.locator('.early')).toBeVisible();
  await expect(page.getByRole('button')).toHaveCount(0);
  const [early, drawn] = [await boxes(page), await cloth(page)];
  go();
  await live(page);
  expect(await boxes(page)).toEqual(early);
  expect(await cloth(page)).toEqual(drawn);
}

test('The first example hangs where it stays, before the page is there @phone @tablet @touch', ({ page }) =>
  expectEarlyWall(page));

test.describe('where the wall is noted', () => {
  // What notes it for the next visit is fetched while the page is idle.
  test.use({ ahead: true });

  test('The first example hangs where it stays; a person who comes back sees her own wall as she left it, and at another step no wall of the page to come', async ({
    page,
  }) => {
    const noting = page.waitForResponse('**/drawnWall-*.js');
    await expectEarlyWall(page);
    await (await noting).finished();
    await page.unroute('**/first-*.js');
    await page.locator('[data-cell="0"]').focus();
    await page.keyboard.press('r');
    await expect(page.getByRole('button', { name: /^Undo: turn/ })).toBeVisible();
    const go = await holdScript(page);
    await page.reload({ waitUntil: 'commit' });
    await expect(page.locator('.early')).toBeVisible();
    const drawn = await cloth(page);
    go();
    await live(page);
    await expect(page.getByRole('button', { name: /^Undo: turn/ })).toBeVisible();
    expect(await cloth(page)).toEqual(drawn);
    await page
      .getByRole('navigation', { name: 'Order of work' })
      .getByRole('button', { name: 'Blocks' })
      .click();
    await page.unroute('**/first-*.js');
    const goOn = await holdScript(page);
    const decided = page.waitForResponse('**/earlyWall-*.js');
    await page.reload({ waitUntil: 'commit' });
    await (await decided).finished();
    await page.waitForTimeout(500);
    await expect(page.locator('.early')).toBeHidden();
    goOn();
    await live(page);
  });
});

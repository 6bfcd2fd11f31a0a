// The code of a part of the screen cannot be fetched, as after a newer version was put on the server: that is said in its place with a
// way on, the rest of the page works, and nothing of the quilt is lost.
import { expect, type Page, test } from './guarded';
import { allThere, firstVisit, goTo, settled } from './room';

// Files are taken away here.
test.use({ mayBeLogged: /ERR_FAILED|A part of the page could not be fetched/ });

const SAID = 'This part of the screen could not be fetched';

/** Opens the step whose panel does not come; returns what is said in its place. */
async function openStep(page: Page, step: string) {
  const steps = page.getByRole('navigation', { name: 'Order of work' });
  await steps.getByRole('button', { name: step }).click();
  const said = page.locator('.panel').getByRole('alert');
  await expect(said).toContainText(SAID);
  return said;
}

async function turnFirstBlock(page: Page) {
  await page.locator('[data-block]').first().focus();
  await page.keyboard.press('r');
  await expect(page.getByRole('button', { name: /^Undo: turn/ })).toBeVisible();
}

test('a menu and steps that cannot be fetched say so, and come when asked again or after a reload', async ({
  page,
}) => {
  await firstVisit(page);
  const quilts = page.getByRole('button', { name: /^Quilt:/ });
  const menu = page.getByRole('dialog', { name: 'Quilts and files' });
  await test.step('Escape, before a menu has come, calls it off: it does not open when it comes', async () => {
    let come = () => {};
    const held = new Promise<void>((on) => {
      come = on;
    });
    await page.route(/QuiltMenu-/, async (route) => {
      await held;
      await route.continue();
    });
    const coming = page.waitForResponse(/QuiltMenu-/);
    await quilts.focus();
    await page.keyboard.press('Enter');
    await expect(quilts).toHaveAttribute('aria-expanded', 'true');
    await page.keyboard.press('Escape');
    await expect(quilts).toHaveAttribute('aria-expanded', 'false');
    come();
    await coming;
    await settled(page);
    await expect(menu).toBeHidden();
    await expect(quilts).toBeFocused();
    await page.unroute(/QuiltMenu-/);
    await page.keyboard.press('Enter');
    await expect(menu).toBeVisible();
    // Where the focus was lost, Escape is the menu's all the same. All in one visit: the menu takes the focus back a frame later.
    const closed = await page.evaluate(async () => {
      (document.activeElement as HTMLElement).blur();
      document.body.dispatchEvent(new KeyboardEvent('keydown', { key: 'Escape', bubbles: true }));
      await new Promise((drawn) => setTimeout(drawn, 100));
      return document.querySelector('[role="dialog"]') === null;
    });
    expect(closed).toBe(true);
    await expect(quilts).toBeFocused();
    await page.reload();
    await allThere(page);
  });
  await test.step('a menu that cannot be fetched says so over the page, and opens when asked again', async () => {
    await page.route(/QuiltMenu-/, (route) => route.abort());
    await quilts.click();
    const said = page.getByRole('alert').filter({ hasText: SAID });
    await expect(said).toBeVisible();
    await page.unroute(/QuiltMenu-/);
    await said.getByRole('button', { name: 'Try again' }).click();
    await expect(menu).toBeVisible();
  });
  await page.keyboard.press('Escape');
  await test.step('a step that cannot be fetched says so, comes when asked again, and the quilt is as it was', async () => {
    await page.route(/FinishingStep-/, (route) => route.abort());
    await turnFirstBlock(page);
    const said = await openStep(page, 'Finishing');
    await expect(said).toContainText('Your quilt is not lost');
    await page.unroute(/FinishingStep-/);
    await said.getByRole('button', { name: 'Try again' }).click();
    await expect(page.locator('.panel').getByRole('heading', { level: 2 })).toHaveText('Finishing');
    await expect(page.getByRole('button', { name: /^Undo: turn/ })).toBeVisible();
  });
  await test.step('after a reload the step is there and the change kept', async () => {
    await page.route(/FabricsStep-/, (route) => route.abort());
    const said = await openStep(page, 'Fabrics');
    await page.unroute(/FabricsStep-/);
    await said.getByRole('button', { name: 'Reload the page' }).click();
    await expect(page.locator('.panel').getByRole('heading', { level: 2 })).toHaveText('Fabrics');
    await expect(page.getByRole('button', { name: /^Undo: turn/ })).toBeVisible();
  });
});

test.describe('fetched ahead', () => {
  // Workers are fetched when they are asked for something.
  test.use({ ahead: true, mayBeLogged: /ERR_INTERNET_DISCONNECTED/ });

  test('parts that came while the page was idle open though the server is gone', async ({
    page,
    context,
  }) => {
    const last = page.waitForResponse(/WallPhotoStage-.*\.js/);
    await firstVisit(page);
    await last;
    await context.setOffline(true);
    for (const step of ['Fabrics', 'Strip sets', 'Wedges', 'Blocks', 'Wall', 'Finishing'])
      await goTo(page, step);
  });
});

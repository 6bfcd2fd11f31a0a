// The workers beside the page are taken away, or others put in their place that never say a word: what is asked of them is
// done by the next one, or that it cannot be done is said, and the quilt is as it was.
import { expect, type Page, test } from './guarded';
import { firstVisit, foot, goTo } from './room';

// Files are taken away here.
test.use({ mayBeLogged: /ERR_FAILED/ });

async function shuffle(page: Page) {
  const part = page.getByRole('region', { name: 'Shuffle for balance' });
  await foot(page).getByRole('button', { name: 'Shuffle', exact: true }).click();
  return part;
}

test('what is asked of workers that cannot be fetched, or hang, is done by the next or said', async ({
  page,
}) => {
  let asked = 0;
  const arranging = /arrangeWorker/;
  await page.clock.install();
  await page.route(/analysisWorker/, (route) => route.abort());
  await page.route(arranging, (route) => {
    asked += 1;
    return route.abort();
  });
  await firstVisit(page);
  await test.step('clashes are found in the page itself where no worker can be fetched', async () => {
    await goTo(page, 'Wall');
    const findings = page.getByRole('region', { name: 'What clashes' });
    await expect(findings.getByRole('button').first()).toBeVisible();
  });
  await test.step('the list of moves takes the focus from its button, which goes, also where its code is there at once', async () => {
    for (const _ of ['fetched', 'there']) {
      await page.getByRole('button', { name: 'Find what a few moves can do' }).click();
      await expect(page.getByRole('heading', { name: 'Moves by hand', level: 2 })).toBeFocused();
      await page.keyboard.press('Escape');
      await expect(page.getByText('its helper did not start')).toBeVisible();
    }
  });
  await test.step('a shuffle whose workers cannot be fetched says so', async () => {
    asked = 0;
    const part = await shuffle(page);
    await expect(part.getByText('The shuffle could not run: its helper did not start.')).toBeVisible();
    expect(asked).toBe(4);
  });
  await page.unroute(arranging);
  await test.step('a shuffle whose first workers hang before they have begun is done by the next', async () => {
    asked = 0;
    await page.route(arranging, (route) => {
      asked += 1;
      const hangs = { contentType: 'text/javascript', body: 'for (;;);' };
      return asked <= 2 ? route.fulfill(hangs) : route.continue();
    });
    await shuffle(page);
    await expect.poll(() => asked).toBe(2);
    // As long as a worker has to begin (workerClient.ts).
    await page.clock.runFor(10_000);
    await expect(foot(page).getByRole('button', { name: 'Use this layout' })).toBeVisible({
      timeout: 50_000,
    });
    expect(asked).toBe(4);
  });
});

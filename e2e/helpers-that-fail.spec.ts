// The workers beside the page are taken away, or others put in their place that never say a word: what is asked of them is
// done by the next one, or that it cannot be done is said, and the quilt is as it was.
import { expect, type Page, test } from './guarded';
import { firstVisit, foot, goTo } from './room';

// Files are taken away here.
test.use({ mayBeLogged: /ERR_FAILED/ });

async function shuffle(page: Page) {
  await goTo(page, 'Wall');
  const part = page.getByRole('region', { name: 'Shuffle for balance' });
  await foot(page).getByRole('button', { name: 'Shuffle', exact: true }).click();
  return part;
}

test('a shuffle whose workers cannot be fetched says so', async ({ page }) => {
  let asked = 0;
  await page.route(/arrangeWorker/, (route) => {
    asked += 1;
    return route.abort();
  });
  await firstVisit(page);
  const part = await shuffle(page);
  await expect(part.getByText('The shuffle could not run: its helper did not start.')).toBeVisible();
  expect(asked).toBe(4);
});

test('a shuffle whose first workers hang before they have begun is done by the next', async ({ page }) => {
  let asked = 0;
  await page.route(/arrangeWorker/, (route) => {
    asked += 1;
    const hangs = { contentType: 'text/javascript', body: 'for (;;);' };
    return asked <= 2 ? route.fulfill(hangs) : route.continue();
  });
  await firstVisit(page);
  await shuffle(page);
  await expect(foot(page).getByRole('button', { name: 'Use this layout' })).toBeVisible({ timeout: 50_000 });
  expect(asked).toBe(4);
});

test('clashes are found in the page itself where no worker can be fetched', async ({ page }) => {
  await page.route(/analysisWorker/, (route) => route.abort());
  await firstVisit(page);
  await goTo(page, 'Wall');
  await expect(page.getByRole('region', { name: 'What clashes' }).getByRole('button').first()).toBeVisible();
});

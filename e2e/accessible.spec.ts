// The tool worked by keyboard alone, and with less motion. whatever-is-on-show.spec.ts holds all that can be on show against WCAG 2.2 AA.
import { expect, test } from './guarded';
import { firstVisit, goTo } from './room';

test('the steps, the undo and a finding are reached by Tab and Enter alone', async ({ page }) => {
  await firstVisit(page);
  const reach = async (name: RegExp) => {
    for (let tabs = 0; tabs < 80; tabs += 1) {
      await page.keyboard.press('Tab');
      const focused = await page.evaluate(
        () => document.activeElement?.getAttribute('aria-label') ?? document.activeElement?.textContent ?? '',
      );
      if (name.test(focused)) return;
    }
    throw new Error(`Tab never came to ${name}`);
  };
  await reach(/^Wall/);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 2, name: 'Wall' })).toBeVisible();
  await reach(/^Blocks \d+ and \d+ meet with/);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('checkbox').first()).toBeVisible();
  await reach(/^Block 1, row/);
  await page.keyboard.press('r');
  await expect(page.getByRole('button', { name: 'Undo: turn block 1' })).toBeEnabled();
});

test('one part of finishing is on show in the panel, its main action in sight, and what it makes beside it @phone', async ({
  page,
}) => {
  await firstVisit(page);
  await goTo(page, 'Finishing');
  const parts = page.getByRole('navigation', { name: 'Parts of finishing' });
  const work = page.getByRole('region', { name: 'To save or print' });
  const made: [part: string, action: RegExp | null, picture: string][] = [
    ['Sizes', /^Copy the sizes/, 'The top with its sizes'],
    ['Picture', /^Save the picture/, 'The picture as it will be saved'],
    ['In words', /^Copy the words/, 'The quilt as it is'],
    ['Fabric and cutting list', /^Print the list/, 'Backing of'],
    ['Kits and cost', /^Save the order/, ''],
    ['Weight and bulk', null, 'The seams of block'],
    ['Colourways', /^Make a colourway/, 'The quilt as it is'],
  ];
  for (const [part, action, picture] of made) {
    const entry = parts.getByRole('button', { name: part, exact: true });
    await entry.focus();
    await page.keyboard.press('Enter');
    await expect(entry).toHaveAttribute('aria-current', 'true');
    await expect(page.locator('.panel h3')).toHaveText([part]);
    if (action) await expect(page.getByRole('button', { name: action })).toBeInViewport({ ratio: 1 });
    if (picture) await expect(work.getByRole('img', { name: picture }).first()).toBeVisible();
  }
});

test('a button of icons tells its name on keyboard focus, and Escape takes it away', async ({ page }) => {
  await firstVisit(page);
  const looks = page.getByRole('toolbar', { name: 'How the wall is shown' });
  await looks.getByRole('button', { name: /^Grey/ }).focus();
  await page.keyboard.press('ArrowRight');
  const hint = page.getByRole('tooltip');
  await expect(hint).toHaveText('Clashes: mark them on the wall');
  await page.keyboard.press('Escape');
  await expect(hint).toBeHidden();
  await page.setViewportSize({ width: 1440, height: 900 });
  for (const word of ['Grey', 'Clashes', 'Numbers', 'Ways of seeing', 'Units'])
    await expect(looks.getByText(word, { exact: true })).toBeVisible();
});

test('with less motion wanted nothing sews along or slides', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await firstVisit(page);
  await page.getByRole('button', { name: /^Block 1, row/ }).click();
  const moving = await page.evaluate(
    () => document.getAnimations().filter((one) => one.playState === 'running').length,
  );
  expect(moving).toBe(0);
});

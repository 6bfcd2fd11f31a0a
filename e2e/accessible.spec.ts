// The tool worked by keyboard alone, with less motion, and in colours of the person's own (forced colours). whatever-is-on-show.spec.ts
// holds all that can be on show against WCAG 2.2 AA, and that what is chosen differs by its shape.
import { expect, type Page, test } from './guarded';
import { firstVisit, goTo } from './room';

/** The steps, the undo and a finding are reached by Tab and Enter alone. */
async function reachedByTab(page: Page): Promise<void> {
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
}

/** A button of icons tells its name on keyboard focus, and Escape takes it away. */
async function namesTold(page: Page): Promise<void> {
  const looks = page.getByRole('toolbar', { name: 'How the wall is shown' });
  for (const word of ['Grey', 'Clashes', 'Numbers', 'Ways of seeing', 'Units'])
    await expect(looks.getByText(word, { exact: true })).toBeVisible();
  await looks.getByRole('button', { name: /^Grey/ }).focus();
  await page.keyboard.press('ArrowRight');
  const hint = page.getByRole('tooltip');
  await expect(hint).toHaveText('Clashes: mark them on the wall');
  await page.keyboard.press('Escape');
  await expect(hint).toBeHidden();
}

/** A block that is picked has a ring in forced colours, and the step a weight of its own; nothing sews along or slides where less motion is wanted. */
async function pickedInForcedColours(page: Page): Promise<void> {
  await page.emulateMedia({ forcedColors: 'active' });
  const ring = page.locator('.wall .stitch');
  await page.getByRole('button', { name: /^Block 2, row/ }).press('Escape');
  await expect(ring).toHaveCount(0);
  await page.getByRole('button', { name: /^Block 2, row/ }).press('Enter');
  await expect(ring.first()).toBeVisible();
  await expect(page.getByRole('button', { name: /^Wall/ }).first()).toHaveAttribute('aria-current', 'step');
  const moving = await page.evaluate(
    () => document.getAnimations().filter((one) => one.playState === 'running').length,
  );
  expect(moving).toBe(0);
}

test('by Tab alone, names of buttons of icons, the ring of a picked block in forced colours, and no motion', async ({
  page,
}) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await firstVisit(page);
  await test.step('the steps, the undo and a finding are reached by Tab and Enter alone', () =>
    reachedByTab(page));
  await test.step('a button of icons tells its name on keyboard focus', () => namesTold(page));
  await test.step('in forced colours a picked block has a ring, which does not move', () =>
    pickedInForcedColours(page));
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

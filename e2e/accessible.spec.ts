// Every step held against WCAG 2.2 AA by axe-core, light and dark, and the tool worked by keyboard alone.
import AxeBuilder from '@axe-core/playwright';
import { expect, type Page, test } from '@playwright/test';
import { firstVisit, goTo } from './room';

const STEPS = ['Fabrics', 'Strip sets', 'Wedges', 'Blocks', 'Wall', 'Finishing'];
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

async function faults(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page }).withTags(TAGS).analyze();
  return violations.map(
    ({ id, nodes }) =>
      `${id}: ${nodes.map((node) => `${node.target.join(' ')} ${node.failureSummary ?? ''}`).join(' | ')}`,
  );
}

for (const scheme of ['light', 'dark'] as const) {
  test(`no step has a fault against WCAG 2.2 AA, ${scheme} @phone`, async ({ page }) => {
    test.setTimeout(120_000);
    await page.emulateMedia({ colorScheme: scheme, reducedMotion: 'reduce' });
    await firstVisit(page);
    for (const step of STEPS) {
      await goTo(page, step);
      expect(await faults(page), step).toEqual([]);
    }
    await page.getByRole('button', { name: /^Quilt:/ }).click();
    expect(await faults(page), 'quilts and files').toEqual([]);
  });
}

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

test('the parts of finishing are listed at its top; an entry goes there and back by keyboard @phone', async ({
  page,
}) => {
  await firstVisit(page);
  await goTo(page, 'Finishing');
  const parts = page.getByRole('navigation', { name: 'Parts of finishing' });
  const names = await parts.getByRole('button').allTextContents();
  expect(names).toEqual(await page.locator('.panel h3').allTextContents());
  for (const name of names) {
    await parts.getByRole('button', { name, exact: true }).focus();
    await page.keyboard.press('Enter');
    const heading = page.getByRole('heading', { level: 3, name, exact: true });
    await expect(heading).toBeFocused();
    await expect(heading).toBeInViewport({ ratio: 1 });
    await page.keyboard.press('Tab');
    await expect(page.getByRole('button', { name: `From ${name} back to the parts` })).toBeFocused();
    await page.keyboard.press('Enter');
    await expect(parts.getByRole('button').first()).toBeFocused();
    await expect(parts.getByRole('button').first()).toBeInViewport({ ratio: 1 });
  }
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

// With colours of the person's own (forced colours): what is picked shows. whatever-is-on-show.spec.ts holds that what is chosen differs by
// its shape.
import { expect, test } from './guarded';
import { goTo } from './room';

test('a block that is picked has a ring, and the step a weight of its own', async ({ page }) => {
  await page.emulateMedia({ forcedColors: 'active' });
  await page.goto('/');
  await goTo(page, 'Wall');
  await expect(page.locator('.wall .stitch')).toHaveCount(0);
  await page.locator('g.block').first().press('Enter');
  await expect(page.locator('.wall .stitch').first()).toBeVisible();
  await expect(page.getByRole('button', { name: /^Wall/ }).first()).toHaveAttribute('aria-current', 'step');
});

// Where the focus is once all has settled.
import { expect, type Locator, type Page } from '@playwright/test';
import { settled } from './room';

/** Presses a control by key, and holds that the focus is then on something in sight, in the panel or what is named. */
export async function press(page: Page, control: Locator, within = '.panel'): Promise<void> {
  await control.press('Enter');
  await holdsFocus(page, String(control), within);
}

/** Holds that the focus is on something in sight, in the panel or what is named. */
export async function holdsFocus(page: Page, after: string, within = '.panel'): Promise<void> {
  await settled(page);
  await expect
    .poll(
      () =>
        page.evaluate((part) => {
          const at = document.activeElement;
          if (!at || at === document.body) return 'on the body';
          if (!at.checkVisibility({ visibilityProperty: true })) return 'out of sight';
          return at.closest(part) ? 'near' : `elsewhere: ${at.textContent?.slice(0, 40)}`;
        }, within),
      { message: `the focus after ${after}`, timeout: 5_000 },
    )
    .toBe('near');
}

/** Opens things in order, then holds that each Escape closes the last one that is left and no other. */
export async function opensAndCloses(
  page: Page,
  things: readonly { open: Locator; there: Locator }[],
): Promise<void> {
  for (const { open, there } of things) {
    await open.focus();
    await page.keyboard.press('Enter');
    await expect(there).toBeVisible({ timeout: 60_000 });
  }
  // The hint of a button that has the focus would be what was opened last.
  await settled(page);
  await page.locator('.panel h2').focus();
  for (let left = things.length; left > 0; left -= 1) {
    await page.keyboard.press('Escape');
    await expect(things[left - 1]!.there).toBeHidden();
    for (const { there } of things.slice(0, left - 1)) await expect(there).toBeVisible();
    await expect.poll(() => page.evaluate(() => document.activeElement === document.body)).toBe(false);
    // What closed may still give its focus on, to a button with a hint.
    await settled(page);
    await page.locator('.panel h2').focus();
  }
}

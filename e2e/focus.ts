// Where the focus is once all has settled.
import { expect, type Locator, type Page } from '@playwright/test';
import { still } from './room';

/** Presses a control by key, and holds that the focus is then on something in sight, in the panel or what is named. */
export async function press(page: Page, control: Locator, within = '.panel'): Promise<void> {
  const name = (await control.textContent()) ?? '';
  await control.focus();
  await page.keyboard.press('Enter');
  await holdsFocus(page, name, within);
}

/** Holds that the focus is on something in sight, in the panel or what is named. */
export async function holdsFocus(page: Page, after: string, within = '.panel'): Promise<void> {
  // Longer than a part takes that moves the focus (keepFocus.ts).
  await still(page, 200);
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

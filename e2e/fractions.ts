// Fractions on screen, which are set as fractions wherever they stand.
import type { Page } from '@playwright/test';

/** What is written plain beside a fraction that is not set as one; an empty list where all are. */
export async function plainFractions(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const found: string[] = [];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const holder = node.parentElement!;
      if (!/\d\/\d/.test(node.textContent ?? '')) continue;
      // Counts such as 48/55 beside the steps are no fractions; options of a list hold text only.
      if (holder.closest('.fraction, .figure, option, .hidden-text, [hidden], script, style, code')) continue;
      if (holder.closest('details:not([open])') && !holder.closest('summary')) continue;
      found.push(node.textContent!);
    }
    return found;
  });
}

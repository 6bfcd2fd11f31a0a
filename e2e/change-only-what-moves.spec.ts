// What an edit of one block changes on the page. A wall of 400 printed blocks takes most of a second to paint, so nothing of it may be
// touched that the edit is not about; nothing is timed here.
import { scrappyTop } from '../tests/balance/tops';
import { expect, type Page, test } from './guarded';
import { block, firstVisit, still } from './room';

/** Opens a wall of 5 by 6 blocks. */
async function openWall(page: Page): Promise<void> {
  await firstVisit(page);
  await page.getByRole('button', { name: /^Quilt:/ }).click();
  const buffer = Buffer.from(JSON.stringify(scrappyTop({ rows: 5, columns: 6, seed: 2 })));
  await page.setInputFiles('input[type=file]', { name: 'top.json', mimeType: 'application/json', buffer });
  await expect(page.getByRole('dialog')).toBeHidden();
  await expect(page.locator('[data-cell="29"][aria-label*="clash"]')).toBeAttached();
  await still(page);
}

/** Watches the page from now on: every element that changes, and what it listens to anew. */
async function watch(page: Page): Promise<void> {
  await page.evaluate(() => {
    const changed: string[] = [];
    Object.assign(globalThis, { changed });
    const nameOf = (node: Node): string => {
      const element = node instanceof Element ? node : node.parentElement!;
      const cell = element.closest('[data-cell]')?.getAttribute('data-cell');
      const svg = element.closest('svg')?.getAttribute('class') ?? '';
      const part = element.closest('.standing, .side-table, .panel, .top-bar, .selvedge, [role=status]');
      if (cell != null) return `cell ${cell}`;
      if (part && !svg) return 'beside the wall';
      return `${element.tagName.toLowerCase()} ${element.getAttribute('class') ?? ''} in ${svg || 'the page'}`;
    };
    new MutationObserver((records) => {
      for (const { target, attributeName } of records)
        changed.push(`${nameOf(target)}${attributeName ? `: ${attributeName}` : ''}`);
    }).observe(document, { subtree: true, childList: true, attributes: true, characterData: true });
    const { value: listen } = Object.getOwnPropertyDescriptor(EventTarget.prototype, 'addEventListener')!;
    Element.prototype.addEventListener = function added(
      this: Element,
      ...given: [type: string, ...unknown[]]
    ) {
      if (/^(wheel|touch)/.test(given[0])) changed.push(`${nameOf(this)} listens to ${given[0]}`);
      Reflect.apply(listen as () => void, this, given);
    };
  });
}

/** What has changed since it was last asked, each once. */
async function changed(page: Page): Promise<string[]> {
  const all = await page.evaluate(() => (globalThis as unknown as { changed: string[] }).changed.splice(0));
  return [...new Set(all)].toSorted();
}

const cellsOf = (changes: readonly string[], what: RegExp) =>
  changes
    .flatMap((one) => (what.test(one) ? [Number(/cell (\d+)/.exec(one)![1])] : []))
    .toSorted((a, b) => a - b);

test('an edit of one block changes only what it is about', async ({ page }) => {
  await openWall(page);
  await watch(page);
  await test.step('nothing of the top changes while a hand carries the block', async () => {
    const box = (await block(page, 9).boundingBox())!;
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await changed(page);
    await page.mouse.move(x + box.width * 2, y + box.height, { steps: 12 });
    await expect(page.locator('.carried')).toBeAttached();
    await page.mouse.move(x, y, { steps: 12 });
    await page.mouse.up();
    await expect(page.locator('.carried')).toHaveCount(0);
    const changes = await changed(page);
    const beside = /^(beside the wall|section wall-area in the page$|span grow in the page$|.* in hand\b)/;
    expect(changes.filter((one) => !beside.test(one))).toEqual([]);
    expect(changes.filter((one) => one.startsWith('g block carried in hand'))).not.toEqual([]);
  });
  await test.step('those blocks are named again that it may concern, and no other is laid anew', async () => {
    await block(page, 15).focus();
    const cell = Number(await block(page, 15).getAttribute('data-cell'));
    const named = (await block(page, 15).getAttribute('aria-label'))!;
    await changed(page);
    await page.keyboard.press('r');
    await expect(block(page, 15)).not.toHaveAttribute('aria-label', named);
    await expect(block(page, 15)).toHaveAttribute('aria-label', /clash/);
    await expect(page.getByRole('region', { name: 'What clashes' })).toHaveAttribute('aria-busy', 'false');
    const changes = await changed(page);
    const near = [cell - 6, cell - 1, cell, cell + 1, cell + 6];
    for (const other of cellsOf(changes, /^cell \d+: aria-label/)) expect(near).toContain(other);
    expect(new Set(cellsOf(changes, /^cell \d+: transform/))).toEqual(new Set([cell]));
    expect(
      changes.filter((one) => / in the page/.test(one) && /^(html|body|div (room|wall|sheet))/.test(one)),
    ).toEqual([]);
  });
});

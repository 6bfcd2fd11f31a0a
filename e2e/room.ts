// What the specs share: opening the tool, steps, blocks on the wall.
import { expect, type Locator, type Page } from '@playwright/test';
import type { Asking, Unpainted } from './guarded';

/** Opens the tool as a newcomer finds it: on the first example. */
export async function firstVisit(page: Page): Promise<void> {
  await page.goto('/');
  await expect(page.getByRole('navigation', { name: 'Order of work' })).toBeVisible();
}

export async function goTo(page: Page, step: string): Promise<void> {
  await page.getByRole('navigation', { name: 'Order of work' }).getByRole('button', { name: step }).click();
  await expect(page.getByRole('heading', { level: 2, name: step, exact: true })).toBeVisible();
  await allThere(page);
}

/** Waits for the parts of the page whose code still comes, so that what is counted or read next is all there. */
export async function allThere(page: Page): Promise<void> {
  await expect(page.locator('[hidden][aria-busy="true"]')).toHaveCount(0);
}

/** Waits until nothing of the page has changed, and the focus has not moved, for so many milliseconds. */
export async function still(page: Page, milliseconds = 150): Promise<void> {
  await page.evaluate(unchanged, { atRest: milliseconds, toCome: milliseconds });
}

/**
 * Waits until the page has settled: nothing of it has changed for three frames; or, where the focus is lost, a worker has not answered or a
 * part's code still comes, for longer than a part takes that moves the focus itself (keepFocus.ts).
 */
export async function settled(page: Page): Promise<void> {
  await page.evaluate(unchanged, { atRest: 50, toCome: 200 });
}

/** Resolves when nothing has changed for `atRest` milliseconds, `toCome` where more may come by itself. Runs in the page. */
function unchanged({ atRest, toCome }: { atRest: number; toCome: number }): Promise<void> {
  return new Promise((done) => {
    const begun = performance.now();
    let changed = begun;
    const again = () => (changed = performance.now());
    const changes = new MutationObserver(again);
    changes.observe(document.body, { subtree: true, childList: true, attributes: true, characterData: true });
    document.addEventListener('focusin', again);
    const { asking } = globalThis as unknown as Asking;
    const look = () => {
      const lost = document.activeElement === document.body;
      const busy = lost || asking.size > 0 || document.querySelector('[aria-busy="true"]');
      const now = performance.now();
      // What goes on by itself, as a bar of progress does, is not waited for.
      if (now - changed < (busy ? toCome : atRest) && now - begun < 10 * toCome) next();
      else {
        changes.disconnect();
        document.removeEventListener('focusin', again);
        done();
      }
    };
    // A page with work to do, such as a drawing in parts, is not idle.
    const next = () => requestAnimationFrame(() => requestIdleCallback(look, { timeout: 100 }));
    next();
  });
}

/** Chooses a part of finishing; the step Finishing must be on show. */
export async function openPart(page: Page, part: string): Promise<void> {
  const parts = page.getByRole('navigation', { name: 'Parts of finishing' });
  await parts.getByRole('button', { name: part, exact: true }).click();
  await expect(page.getByRole('heading', { level: 3, name: part, exact: true })).toBeVisible();
  await allThere(page);
}

/** The foot of the step: what is missing, and its main action. */
export function foot(page: Page): Locator {
  return page.locator('.step-foot');
}

/** The first button of a name. */
export function button(page: Page, name: string | RegExp): Locator {
  return page.getByRole('button', { name }).first();
}

/** Presses the first button of that name. */
export async function press(page: Page, name: string | RegExp): Promise<void> {
  await button(page, name).click();
}

/** Opens all folds, those inside others too. */
export async function unfold(page: Page, folds = 'details'): Promise<void> {
  await page.evaluate((selector) => {
    for (const fold of document.querySelectorAll<HTMLDetailsElement>(selector)) fold.open = true;
  }, folds);
}

/** A block on the wall by its number. */
export function block(page: Page, number: number): Locator {
  return page
    .getByRole('region', { name: 'Design wall' })
    .getByRole('button', { name: new RegExp(`^Block ${number}, row`) });
}

/** Where a block hangs, from its name: "row 1, column 2". */
export async function hangsAt(page: Page, number: number): Promise<string> {
  const name = (await block(page, number).getAttribute('aria-label')) ?? '';
  return /row \d+, column \d+/.exec(name)?.[0] ?? '';
}

/** Opens an example by the start of its name. */
export async function openExample(page: Page, name: string): Promise<void> {
  await page.getByRole('button', { name: /^Quilt:/ }).click();
  const examples = page.getByRole('region', { name: 'Examples' });
  await examples.getByRole('button', { name: new RegExp(`^${name}`) }).click();
  await expect(page.getByRole('dialog')).toBeHidden();
}

/** Opens a project file through the menu; the menu stays open when it is refused. */
export async function openFile(page: Page, text: string): Promise<void> {
  await page.getByRole('button', { name: /^Quilt:/ }).click();
  await chooseFile(page, text);
}

/** Gives a project file to the open menu. */
export async function chooseFile(page: Page, text: string): Promise<void> {
  const file = { name: 'quilt.wedgewall.json', mimeType: 'application/json', buffer: Buffer.from(text) };
  await page.getByLabel('Quilt file').setInputFiles(file);
}

export function undoButton(page: Page): Locator {
  return page.getByRole('toolbar', { name: 'Undo and redo' }).getByRole('button').first();
}

/**
 * Takes back all that was changed, so that the next part of a test begins with the quilt as it was opened; `until` is the name of the
 * button then. All in one visit to the page; it is drawn between two presses.
 */
export async function undoAll(page: Page, until = 'Nothing to undo'): Promise<void> {
  await undoButton(page).evaluate(async (undo: HTMLElement, name) => {
    while (undo.ariaLabel !== name) {
      if (undo.ariaDisabled === 'true') throw new Error(`undoAll: the button never says "${name}"`);
      undo.click();
      await new Promise((drawn) => setTimeout(drawn));
    }
  }, until);
}

/**
 * From now on, how often the layout moves something; scrolling is no such move. It is told once. The browser tells moves of what it
 * paints, so until then the page is painted.
 */
export async function layoutMoves(page: Page, what: string): Promise<() => Promise<number>> {
  const counted = await page.evaluateHandle(async (selector) => {
    const { unpainted } = globalThis as Unpainted;
    if (unpainted) unpainted.disabled = true;
    const painted = () => new Promise((done) => requestAnimationFrame(done));
    await painted();
    await painted();
    const moves = { count: 0 };
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries() as (PerformanceEntry & { sources: { node: Node | null }[] })[])
        for (const { node } of entry.sources)
          if (node instanceof Element && (node.matches(selector) || node.querySelector(selector)))
            moves.count += 1;
    }).observe({ type: 'layout-shift' });
    return moves;
  }, what);
  return () =>
    counted.evaluate(({ count }) => {
      const { unpainted } = globalThis as Unpainted;
      if (unpainted) unpainted.disabled = false;
      return count;
    });
}

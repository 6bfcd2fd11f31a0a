// The wall in the hand: on a phone, upright and on its side, by fingers alone.
import { type CDPSession, expect, type Page, test } from './guarded';
import { tooSmall } from './measure';
import { block, firstVisit, foot, goTo, hangsAt, openExample, undoAll, undoButton } from './room';

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** One finger from a spot to another, in small steps, on a page whose fingers are the protocol's. */
async function drag(fingers: CDPSession, from: Spot, to: Spot, lift = true): Promise<void> {
  const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', at?: Spot) =>
    fingers.send('Input.dispatchTouchEvent', { type, touchPoints: at ? [at] : [] });
  await send('touchStart', from);
  for (let part = 1; part <= 8; part += 1)
    await send('touchMove', {
      x: from.x + ((to.x - from.x) * part) / 8,
      y: from.y + ((to.y - from.y) * part) / 8,
    });
  if (!lift) return;
  await send('touchEnd');
}

/** A tap within a tenth of a second of a drag as quick as these is no click to the browser; no hand is so fast. */
const restOfTheHand = () => new Promise((after) => setTimeout(after, 300));

async function middleOf(page: Page, number: number): Promise<Spot & { width: number }> {
  const { x, y, width, height } = (await block(page, number).boundingBox())!;
  return { x: x + width / 2, y: y + height / 2, width };
}

/** The view has come to rest: a block is where it was a moment ago. */
async function atRest(page: Page, number: number): Promise<Spot & { width: number }> {
  let last = await middleOf(page, number);
  await expect
    .poll(async () => {
      const now = await middleOf(page, number);
      const moved = Math.hypot(now.x - last.x, now.y - last.y) + Math.abs(now.width - last.width);
      last = now;
      return moved;
    })
    .toBeLessThan(0.01);
  return last;
}

const tool = (page: Page, name: string) => page.getByRole('button', { name, exact: true });

/** Marks of clashes are wide enough to be seen on a wall of eighty blocks. */
async function marksAreWide(page: Page): Promise<void> {
  const marks = page.locator('.wall .mark line:first-child');
  await expect(marks.first()).toBeAttached();
  const narrowest = () =>
    marks.evaluateAll((lines) => {
      const widths = lines.map((line) => {
        const { a, b } = (line as SVGLineElement).getScreenCTM()!;
        return Number.parseFloat(getComputedStyle(line).strokeWidth) * Math.hypot(a, b);
      });
      return widths.length > 0 ? Math.min(...widths) : 0;
    });
  // The wall is measured when it is there, and drawn for its size after that.
  await expect.poll(narrowest).toBeGreaterThanOrEqual(4.9);
}

/** No tool of the wall lies over another or is under 44 px, at any width of a phone. */
async function toolsLieApart(page: Page): Promise<void> {
  for (const [width, height] of [
    [320, 720],
    [360, 740],
    [390, 844],
    [844, 390],
  ] as const) {
    await page.setViewportSize({ width, height });
    const { x, y } = await atRest(page, 44);
    if ((await block(page, 44).getAttribute('aria-pressed')) === 'false') await page.touchscreen.tap(x, y);
    for (const full of [false, true]) {
      if (full) await tool(page, 'Full screen').tap();
      const tools = page.locator('.wall-tools button, .block-tools button');
      await expect(tools).toHaveCount(full ? 12 : 10);
      const boxes = await tools.evaluateAll((all) =>
        all.map((one) => one.getBoundingClientRect().toJSON() as DOMRect),
      );
      expect(await tooSmall(page), `${width}, ${full ? 'full screen' : 'beside the list'}`).toEqual([]);
      const frame = (await page.locator('.wall').boundingBox())!;
      for (const [at, one] of boxes.entries()) {
        expect(one.left >= frame.x && one.right <= frame.x + frame.width, `${width} ${at}`).toBe(true);
        expect(one.top >= frame.y && one.bottom <= frame.y + frame.height, `${width} ${at}`).toBe(true);
        for (const other of boxes.slice(at + 1)) {
          const apart =
            one.right <= other.left + 1 ||
            other.right <= one.left + 1 ||
            one.bottom <= other.top + 1 ||
            other.bottom <= one.top + 1;
          expect(apart, `${width}: ${at}`).toBe(true);
        }
      }
      if (full) await tool(page, 'Full screen').tap();
    }
  }
}

/** Two blocks change places by taps alone, also where one can see only the whole top. */
async function swappedByTaps(page: Page): Promise<void> {
  const [first, second] = [await hangsAt(page, 12), await hangsAt(page, 47)];
  const at = await atRest(page, 12);
  await page.touchscreen.tap(at.x, at.y);
  const swap = tool(page, 'Swap with the block chosen next');
  await swap.tap();
  await expect(swap).toHaveAttribute('aria-pressed', 'true');
  const to = await middleOf(page, 47);
  await page.touchscreen.tap(to.x, to.y);
  await expect.poll(() => hangsAt(page, 12)).toBe(second);
  await expect.poll(() => hangsAt(page, 47)).toBe(first);
  await expect(swap).toHaveAttribute('aria-pressed', 'false');
  await swap.tap();
  await page.keyboard.press('Escape');
  await expect(swap).toHaveAttribute('aria-pressed', 'false');
  await undoAll(page);
}

/** Zoom, move, pick, carry, turn, full screen, undo. */
async function arrangedByOneFinger(page: Page, fingers: CDPSession): Promise<void> {
  const before = new Map<number, string>();
  for (const number of [20, 21, 28, 29]) before.set(number, await hangsAt(page, number));

  // Small cells: a tap picks, and no handle lies over the neighbours.
  const small = await atRest(page, 20);
  expect(small.width).toBeLessThan(60);
  await page.touchscreen.tap(small.x, small.y);
  await expect(block(page, 20)).toHaveAttribute('aria-pressed', 'true');
  await expect(page.locator('.turn-handle')).toHaveCount(0);

  // Closer, to the block that is picked.
  await tool(page, 'Zoom in').tap();
  const close = await atRest(page, 20);
  expect(close.width).toBeGreaterThan(60);
  await expect(page.locator('.turn-handle')).toBeVisible();

  // Another block under the finger: the wall moves, and nothing hangs otherwise.
  const other = await middleOf(page, 21);
  await drag(fingers, other, { x: other.x - 70, y: other.y + 12 });
  await expect.poll(async () => (await middleOf(page, 20)).x).toBeLessThan(close.x - 60);
  await atRest(page, 20);
  await expect(undoButton(page)).toHaveAccessibleName('Nothing to undo');
  await restOfTheHand();

  // The picked block is carried to the next cell.
  await tool(page, 'Full screen').tap();
  await expect(page.getByRole('navigation', { name: 'Order of work' })).toBeHidden();
  const [from, to] = [await atRest(page, 20), await middleOf(page, 21)];
  await drag(fingers, from, to);
  await expect.poll(() => hangsAt(page, 20)).toBe(before.get(21));
  await expect.poll(() => hangsAt(page, 21)).toBe(before.get(20));
  await restOfTheHand();

  // It is turned by its button, and everything is taken back in the full screen.
  const tools = page.getByRole('toolbar', { name: 'Block 20' });
  await tools.getByRole('button', { name: /^Turn a quarter clockwise/ }).tap();
  await page.getByRole('button', { name: /^Undo: turn block 20/ }).tap();
  await page.getByRole('button', { name: /^Undo: swap blocks 20 and 21/ }).tap();
  await expect.poll(() => hangsAt(page, 20)).toBe(before.get(20));
  await tool(page, 'Full screen').tap();
  await expect(page.getByRole('navigation', { name: 'Order of work' })).toBeVisible();
  for (const [number, cell] of before) expect(await hangsAt(page, number)).toBe(cell);
}

test('eighty blocks: marks, tools, swaps by taps, and all the rest by one finger @phone @touch', async ({
  page,
  context,
}) => {
  await firstVisit(page);
  await openExample(page, 'The plum orchard');
  await goTo(page, 'Wall');
  const fingers = await context.newCDPSession(page);
  await test.step('marks of clashes are wide enough to be seen', () => marksAreWide(page));
  await test.step('no tool of the wall lies over another or is under 44 px', () => toolsLieApart(page));
  await test.step('two blocks change places by taps alone', () => swappedByTaps(page));
  await test.step('they are arranged by one finger', () => arrangedByOneFinger(page, fingers));
});

/** A block let go low on the wall hangs there, and the words for taking down lie under the wall. */
async function letGoLow(page: Page, fingers: CDPSession): Promise<void> {
  const from = await atRest(page, 1);
  const frame = (await page.locator('.wall').boundingBox())!;
  await drag(fingers, from, { x: from.x, y: frame.y + frame.height - 3 }, false);
  const table = page.getByRole('region', { name: 'Side table' });
  await expect(table).toBeVisible();
  expect((await table.boundingBox())!.y).toBeGreaterThanOrEqual(frame.y + frame.height - 0.5);
  await fingers.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  await expect(undoButton(page)).toHaveAccessibleName('Nothing to undo');
  await expect(block(page, 1)).toBeVisible();
}

/** No swipe pushes the wall out of sight, and what was moved is forgotten at another step. */
async function neverOutOfSight(page: Page, fingers: CDPSession): Promise<void> {
  const fitted = await atRest(page, 1);
  for (const _ of [1, 2, 3]) await tool(page, 'Zoom in').tap();
  await atRest(page, 1);
  const frame = (await page.locator('.wall').boundingBox())!;
  for (const _ of [1, 2, 3, 4])
    await drag(
      fingers,
      { x: frame.x + 30, y: frame.y + 20 },
      { x: frame.x + frame.width - 10, y: frame.y + frame.height - 5 },
    );
  await atRest(page, 1);
  const seen = await page.evaluate(() => {
    const frame = document.querySelector('.wall')!.getBoundingClientRect();
    const boxes = [...document.querySelectorAll('.wall [data-block]')].map((one) =>
      one.getBoundingClientRect(),
    );
    const left = Math.max(frame.left, Math.min(...boxes.map((box) => box.left)));
    const top = Math.max(frame.top, Math.min(...boxes.map((box) => box.top)));
    return [(frame.right - left) / frame.width, (frame.bottom - top) / frame.height];
  });
  for (const part of seen) expect(part).toBeGreaterThan(0.3);
  await goTo(page, 'Blocks');
  await goTo(page, 'Wall');
  const again = await atRest(page, 1);
  expect(again.x).toBeCloseTo(fitted.x, 0);
  expect(again.width).toBeCloseTo(fitted.width, 0);
}

/** A finger that slides along the strip of values lights one fabric after another, and its name is told. */
async function valuesUnderAFinger(page: Page, fingers: CDPSession): Promise<void> {
  const strip = page.getByRole('region', { name: 'Fabrics in the top, light to dark' });
  const { x, y, width, height } = (await strip.boundingBox())!;
  expect(height).toBeGreaterThanOrEqual(44);
  const lit = strip.locator('[aria-pressed="true"]');
  const seen = new Set<string | null>();
  for (const part of [0.1, 0.5, 0.9]) {
    await drag(fingers, { x: x + 12, y: y + 20 }, { x: x + width * part, y: y + 20 });
    await expect(lit).toHaveCount(1);
    const name = await lit.getAttribute('aria-label');
    await expect(strip.locator('.strip-words')).toContainText(name!.split(':')[0]!);
    await expect(strip.locator('.strip-words')).toBeInViewport();
    seen.add(name);
  }
  expect(seen.size).toBe(3);
}

/** Full screen fills the window, keeps the focus and the main action, and Escape or Back leaves it. */
async function fullScreen(page: Page): Promise<void> {
  const full = tool(page, 'Full screen');
  await expect(full).toHaveAttribute('aria-pressed', 'false');
  for (const leave of ['button', 'Escape', 'Back']) {
    await full.click();
    await expect(full).toHaveAttribute('aria-pressed', 'true');
    await expect(full).toBeFocused();
    const { width, height } = await page.evaluate(() => ({ width: innerWidth, height: innerHeight }));
    const wall = (await page.getByRole('region', { name: 'Design wall' }).boundingBox())!;
    expect([wall.x, wall.y, wall.width]).toEqual([0, 0, width]);
    const action = foot(page).getByRole('button', { name: 'Shuffle', exact: true });
    await expect(action).toBeInViewport({ ratio: 1 });
    expect(wall.height + (await foot(page).boundingBox())!.height).toBeCloseTo(height, 0);
    if (leave === 'button') await full.click();
    else if (leave === 'Escape') await page.keyboard.press('Escape');
    else await page.goBack();
    await expect(page.getByRole('navigation', { name: 'Order of work' })).toBeVisible();
    await expect(full).toHaveAttribute('aria-pressed', 'false');
    await expect(page.getByRole('heading', { level: 2, name: 'Wall' })).toBeVisible();
    await expect(full).toBeFocused();
  }
}

/** Apply is in sight as soon as a mend is ticked, and the list stays where it was. */
async function applyInSight(page: Page): Promise<void> {
  const rows = page.getByRole('region', { name: 'What clashes' }).locator('.finding > button');
  await expect(rows.first()).toBeVisible();
  const at = Math.min(1, (await rows.count()) - 1);
  await rows.nth(at).tap();
  const mends = page.locator('.mends');
  await mends.getByRole('checkbox').first().check();
  const apply = mends.getByRole('button', { name: 'Apply' });
  await expect(apply).toBeInViewport({ ratio: 1 });
  const [button, bar] = [(await apply.boundingBox())!, (await foot(page).boundingBox())!];
  expect(button.y + button.height).toBeLessThanOrEqual(bar.y + 1);
  await apply.tap();
  await expect(mends).toHaveCount(0);
  await expect(page.getByRole('region', { name: 'What clashes' })).toHaveAttribute('aria-busy', 'false');
  await expect(rows.nth(Math.min(at, (await rows.count()) - 1))).toBeInViewport();
}

/** Folded away, the wall leaves its height to the list, at that step and after a reload of a quilt that was changed. */
async function foldedAway(page: Page): Promise<void> {
  const list = page.getByRole('main');
  const before = (await list.boundingBox())!.height;
  const fold = tool(page, 'Design wall');
  await expect(fold).toHaveAttribute('aria-expanded', 'true');
  await fold.tap();
  await expect(fold).toHaveAttribute('aria-expanded', 'false');
  await expect(page.getByRole('region', { name: 'Design wall' })).toBeHidden();
  expect((await list.boundingBox())!.height).toBeGreaterThan(before * 1.5);
  await goTo(page, 'Strip sets');
  await expect(tool(page, 'Strip sets laid out')).toHaveAttribute('aria-expanded', 'true');
  await goTo(page, 'Wall');
  await page.reload();
  await expect(fold).toHaveAttribute('aria-expanded', 'false');
  await fold.tap();
  await expect(page.getByRole('region', { name: 'Design wall' })).toBeVisible();
}

test('the first quilt: a block carried low, swipes, the strip of values, full screen, a mend, and the wall folded away @phone @touch', async ({
  page,
  context,
}) => {
  await firstVisit(page);
  await goTo(page, 'Wall');
  const fingers = await context.newCDPSession(page);
  await test.step('a block let go low on the wall hangs there', () => letGoLow(page, fingers));
  await test.step('no swipe pushes the wall out of sight', () => neverOutOfSight(page, fingers));
  await test.step('a finger along the strip of values lights fabrics', () =>
    valuesUnderAFinger(page, fingers));
  await test.step('full screen', () => fullScreen(page));
  await test.step('Apply is in sight as soon as a mend is ticked', () => applyInSight(page));
  await test.step('folded away, the wall leaves its height to the list', () => foldedAway(page));
});

test('full screen fills the window, keeps the focus and the main action, and Escape or Back leaves it @tablet', async ({
  page,
}) => {
  await firstVisit(page);
  await goTo(page, 'Wall');
  await fullScreen(page);
});

import { readFileSync } from 'node:fs';
import { scrappyTop } from '../tests/balance/tops';
import { expect, type Page, test } from './guarded';
import { block, firstVisit, foot, goTo, hangsAt, openFile, still, undoAll, undoButton } from './room';
import { byFinger } from './within-reach';

/** What hands can do is told under the wall, never over it, and changes with what is in hand. */
async function gesturesTold(page: Page): Promise<void> {
  const line = page.locator('.gesture-line');
  await expect(line).toContainText('Drag a block onto another to swap them');
  const wall = (await page.locator('.wall').boundingBox())!;
  const told = (await line.boundingBox())!;
  expect(told.y).toBeGreaterThanOrEqual(wall.y + wall.height - 0.5);
  await block(page, 1).focus();
  await page.keyboard.press('Space');
  await expect(line).toContainText('Let go over a block to swap');
  await page.keyboard.press('Escape');
}

/** Put away, the line stays away when the page is loaded anew. */
async function putAwayForGood(page: Page): Promise<void> {
  const line = page.locator('.gesture-line');
  await line.getByRole('button', { name: 'Do not show this line again' }).click();
  await expect(line).toBeHidden();
  await page.reload();
  await expect(block(page, 1)).toBeVisible();
  await expect(line).toBeHidden();
}

async function mainActionInSight(page: Page): Promise<void> {
  await expect(foot(page).getByRole('button', { name: 'Shuffle', exact: true })).toBeInViewport({ ratio: 1 });
}

/** Keeps workers that arrange from being fetched until what is returned is called. */
async function holdWorkers(page: Page): Promise<() => void> {
  let goOn = () => {};
  const held = new Promise<void>((resolve) => {
    goOn = resolve;
  });
  await page.route(/arrangeWorker/, async (route) => {
    await held;
    await route.continue();
  });
  return goOn;
}

/** The panel of the step: findings, the size of the wall, and sashing; the quilt is as before in the end. */
async function atTheStep(page: Page): Promise<void> {
  await test.step('the main action is in sight on a tablet too', async () => {
    const desk = page.viewportSize()!;
    await page.setViewportSize({ width: 1024, height: 768 });
    await byFinger(page, true);
    await mainActionInSight(page);
    await byFinger(page, false);
    await page.setViewportSize(desk);
  });
  await test.step('an open finding has its numbers and marks on the wall though both are switched off', async () => {
    await page.getByRole('button', { name: 'Clashes: mark them on the wall' }).click();
    const marks = page.locator('svg.top .mark');
    await expect(marks).toHaveCount(0);
    await expect(page.locator('svg.top .block-number')).toHaveCount(0);
    const finding = page.locator('.finding > button').first();
    await finding.click();
    await expect(marks.first()).toBeAttached();
    await expect(page.locator('svg.top .block-number').first()).toBeAttached();
    await finding.click();
    await expect(marks).toHaveCount(0);
    await expect(page.locator('svg.top .block-number')).toHaveCount(0);
  });
  await test.step('a finding shows ways to mend it, and undo brings it back', async () => {
    const findings = page.getByRole('region', { name: 'What clashes' });
    const meeting = findings.getByRole('button', { name: /^Blocks \d+ and \d+ meet with the same/ }).first();
    const words = (await meeting.textContent())!;
    await meeting.click();
    await findings.getByRole('checkbox').first().check();
    await expect(undoButton(page)).toBeDisabled();
    await findings.getByRole('button', { name: 'Apply' }).click();
    await expect(undoButton(page)).toBeEnabled();
    await expect(findings.getByRole('button', { name: words })).toHaveCount(0);
    await undoButton(page).click();
    await expect(findings.getByRole('button', { name: words })).toBeVisible();
  });
  await undoAll(page);
  await test.step('a smaller wall sends blocks to the side table; Hang all brings them back', async () => {
    await page.getByRole('button', { name: 'Rows: one less' }).click();
    const table = page.getByRole('region', { name: 'Side table' });
    await expect(table.getByRole('button', { name: /on the side table/ })).toHaveCount(2);
    await page.getByRole('button', { name: 'Rows: one more' }).click();
    await table.getByRole('button', { name: 'Hang all' }).click();
    await expect(table).toBeHidden();
  });
  await test.step('sashing with width and fabric changes the size of the top; a bad width is refused in place', async () => {
    const size = page.getByRole('region', { name: 'Size of the wall' });
    await expect(size).toContainText('28" × 42"');
    await page.locator('summary').filter({ hasText: 'Sashing' }).click();
    await page.getByText('Between and around').click();
    await expect(size).toContainText('32 1/2" × 48"'.replace(' ', '\u00a0'));
    const width = page.getByRole('textbox', { name: /^Finished width/ });
    await width.fill('wide');
    await width.press('Enter');
    await expect(page.getByText('Write a length such as 7 1/2 or 7.5.')).toBeVisible();
    await expect(size).toContainText('48"');
    await width.fill('2 1/2');
    await width.press('Enter');
    await expect(size).toContainText('52"');
  });
  await undoAll(page);
}

test('findings and the size of the wall; by mouse, fingers and keys blocks are swapped, turned, pinned, taken down and hung, and the wall comes closer', async ({
  page,
}) => {
  await firstVisit(page);
  await test.step('the main action is in sight without scrolling', () => mainActionInSight(page));
  await test.step('what hands can do is told under the wall until it is put away for good', async () => {
    await gesturesTold(page);
    await putAwayForGood(page);
  });
  await atTheStep(page);
  await test.step('by keyboard alone: walk, turn, lift and put down, pin, take down, hang again', async () => {
    const start = await hangsAt(page, 1);
    await block(page, 1).focus();
    await page.keyboard.press('r');
    await expect(undoButton(page)).toHaveAccessibleName('Undo: turn block 1');
    await page.keyboard.press('Space');
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Space');
    await expect(block(page, 1)).toBeFocused();
    await expect.poll(() => hangsAt(page, 1)).toBe('row 1, column 2');
    expect(start).toBe('row 1, column 1');
    await page.keyboard.press('p');
    await expect(block(page, 1)).toHaveAccessibleName(/, pinned\b/);
    await page.keyboard.press('r');
    await expect(page.locator('[data-words="Block 1 is pinned. Unpin it to move it."]')).toBeVisible();
    await page.keyboard.press('p');
    // What held no longer does, and is no longer said.
    await expect(page.locator('[data-words*="is pinned"]')).toHaveCount(0);
    await page.keyboard.press('Delete');
    await expect(page.getByRole('region', { name: 'Side table' })).toContainText('1');
    const emptied = page.getByRole('button', { name: 'Empty cell, row 1, column 2' });
    await expect(emptied).toBeFocused();
    await page.getByRole('button', { name: 'Block 1, on the side table' }).focus();
    await page.keyboard.press('Enter');
    await emptied.focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => hangsAt(page, 1)).toBe('row 1, column 2');
    await expect(block(page, 1)).toBeFocused();
  });
  await undoAll(page);
  // What hangs again stays picked until it is pressed.
  await block(page, 1).click();
  await expect(block(page, 1)).toHaveAttribute('aria-pressed', 'false');
  await test.step('a block dragged onto another swaps with it, and undo says so', async () => {
    const [first, second] = [await hangsAt(page, 1), await hangsAt(page, 2)];
    await block(page, 1).dragTo(block(page, 2));
    await expect.poll(() => hangsAt(page, 1)).toBe(second);
    await expect.poll(() => hangsAt(page, 2)).toBe(first);
    await expect(undoButton(page)).toHaveAccessibleName('Undo: swap blocks 1 and 2');
    await undoButton(page).click();
    await expect.poll(() => hangsAt(page, 1)).toBe(first);
    await page.keyboard.press('Control+y');
    await expect.poll(() => hangsAt(page, 1)).toBe(second);
    await undoButton(page).click();
    await expect.poll(() => hangsAt(page, 1)).toBe(first);
  });
  await test.step('Escape drops a drag without a change', async () => {
    const before = await hangsAt(page, 1);
    const box = (await block(page, 1).boundingBox())!;
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width * 1.5, box.y + box.height / 2, { steps: 6 });
    await page.keyboard.press('Escape');
    await page.mouse.up();
    await expect.poll(() => hangsAt(page, 1)).toBe(before);
    await expect(undoButton(page)).toBeDisabled();
  });
  await test.step('the wheel comes closer and the whole top comes back', async () => {
    const before = (await block(page, 1).boundingBox())!.width;
    await block(page, 1).hover();
    await page.mouse.wheel(0, -400);
    await expect.poll(async () => (await block(page, 1).boundingBox())!.width).toBeGreaterThan(before * 1.3);
    await page.getByRole('button', { name: 'Whole top' }).click();
    await expect.poll(async () => (await block(page, 1).boundingBox())!.width).toBeCloseTo(before, 0);
  });
  await test.step('a pinch as Safari tells it zooms the wall about the fingers, and not the page', async () => {
    const before = (await block(page, 4).boundingBox())!;
    const middle = (box: typeof before) => [box.x + box.width / 2, box.y + box.height / 2];
    const prevented = await page.evaluate(([clientX, clientY]) => {
      const pinch = (name: string, scale: number) => {
        const event = new Event(name, { bubbles: true, cancelable: true });
        Object.assign(event, { scale, clientX, clientY });
        return !document.elementFromPoint(clientX!, clientY!)!.dispatchEvent(event);
      };
      return [pinch('gesturestart', 1), pinch('gesturechange', 1.2), pinch('gesturechange', 1.5)];
    }, middle(before));
    expect(prevented).toEqual([true, true, true]);
    const now = async () => (await block(page, 4).boundingBox())!;
    await expect.poll(async () => (await now()).width / before.width).toBeCloseTo(1.5, 1);
    const [across, down] = middle(await now()).map((at, axis) => at - middle(before)[axis]!);
    expect(Math.hypot(across!, down!)).toBeLessThan(6);
    await page.getByRole('button', { name: 'Whole top' }).click();
    await expect.poll(async () => (await now()).width / before.width).toBeCloseTo(1, 1);
  });
  await test.step('the round handle turns the picked block by quarters', async () => {
    await block(page, 1).click();
    const box = (await block(page, 1).boundingBox())!;
    await page.mouse.move(box.x + box.width, box.y);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width * 1.02, box.y + box.height * 0.5, { steps: 8 });
    await page.mouse.move(box.x + box.width, box.y + box.height, { steps: 8 });
    await page.mouse.up();
    await expect(undoButton(page)).toHaveAccessibleName('Undo: turn block 1');
    await undoButton(page).click();
    await expect(undoButton(page)).toBeDisabled();
  });
  await test.step('a pinned block stays when another is dragged onto it', async () => {
    await block(page, 2).focus();
    await page.keyboard.press('p');
    const before = await hangsAt(page, 1);
    await block(page, 1).dragTo(block(page, 2));
    await expect.poll(() => hangsAt(page, 1)).toBe(before);
    await expect(page.getByRole('status').filter({ hasText: 'is pinned' })).toBeAttached();
  });
  await undoAll(page);
  await test.step('the line under the wall says what a swap would do before it is done, and is right', async () => {
    const line = page.locator('.standing p');
    await expect(line).toHaveText(/^\d+ clashes.*score \d+\s*$/);
    const from = (await block(page, 1).boundingBox())!;
    const to = (await block(page, 4).boundingBox())!;
    await page.mouse.move(from.x + from.width / 2, from.y + from.height / 2);
    await page.mouse.down();
    // In two moves, so that what a cell on the way would do is never told.
    await page.mouse.move(from.x + from.width / 2 + 12, from.y + from.height / 2);
    await page.mouse.move(to.x + to.width / 2, to.y + to.height / 2);
    await expect(line).toHaveText(/^(\d+) → \d+ clash(es)?.*score [\d.]+ → [\d.]+\s*$/);
    const would = (await line.textContent())!.match(/→ [\d.]+/g)!.map((one) => Number(one.slice(2)));
    await page.mouse.up();
    await expect(line).not.toHaveText(/→/);
    const after = (await line.textContent())!.match(/\d+/g)!.map(Number);
    await expect(page.getByRole('region', { name: 'What clashes' })).toHaveAttribute('aria-busy', 'false');
    expect((await line.textContent())!.match(/\d+/g)!.map(Number)).toEqual(after);
    expect(after).toEqual([would[0], Math.round(would[1]!)]);
    // By keys it is told once for each cell.
    await block(page, 1).focus();
    await page.keyboard.press('Space');
    await page.keyboard.press('ArrowUp');
    await expect(
      page
        .getByRole('status')
        .filter({ hasText: /^Over row \d, column \d: \d+ clash(es)? instead of \d+, score/ }),
    ).toBeAttached();
    await page.keyboard.press('Escape');
    await expect(line).not.toHaveText(/→/);
  });
  await undoAll(page);
  await test.step('two fingers come closer, and the one lifted last moves no block', async () => {
    const before = [await hangsAt(page, 1), await hangsAt(page, 2)];
    const box = (await block(page, 1).boundingBox())!;
    // By events of our own: the browser's protocol for tests lifts two fingers only together.
    const finger = (number: number, type: string, pointerId: number, across: number) =>
      block(page, number).evaluate(
        (element, { type, pointerId, across }) => {
          const { left, top, width, height } = element.getBoundingClientRect();
          const at = { clientX: left + width / 2 + across, clientY: top + height / 2 };
          const kind = { pointerType: 'touch', button: 0, buttons: type === 'pointerup' ? 0 : 1 };
          element.dispatchEvent(new PointerEvent(type, { ...at, ...kind, pointerId, bubbles: true }));
        },
        { type, pointerId, across },
      );
    await finger(1, 'pointerdown', 11, 0);
    await finger(2, 'pointerdown', 12, 0);
    await finger(1, 'pointermove', 11, -20);
    await finger(2, 'pointermove', 12, 20);
    await expect
      .poll(async () => (await block(page, 1).boundingBox())!.width)
      .toBeGreaterThan(box.width * 1.05);
    await finger(1, 'pointerup', 11, 0);
    await finger(2, 'pointermove', 12, 5);
    await finger(2, 'pointerup', 12, 5);
    await expect(undoButton(page)).toHaveAccessibleName('Nothing to undo');
    expect([await hangsAt(page, 1), await hangsAt(page, 2)]).toEqual(before);
  });
  await page.getByRole('button', { name: 'Whole top' }).click();
  await test.step('an animation that is interrupted ends where the block hangs', async () => {
    await page.emulateMedia({ reducedMotion: 'no-preference' });
    const place = (number: number) => block(page, number).locator('> g').getAttribute('transform');
    const before = await place(1);
    await block(page, 1).focus();
    await page.keyboard.press('Space');
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Space');
    const after = await place(1);
    expect(after).not.toBe(before);
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+y');
    await page.keyboard.press('Control+z');
    // The top has it in its place at once; what was played over it goes.
    expect(await place(1)).toBe(before);
    await expect(page.locator('.flights')).toHaveCount(0);
    await page.emulateMedia({ reducedMotion: 'reduce' });
    await page.evaluate(() => {
      const seen: Element[] = [];
      Object.assign(globalThis, { seen });
      new MutationObserver(() => seen.push(...document.querySelectorAll('.flights'))).observe(document.body, {
        childList: true,
        subtree: true,
      });
    });
    await page.keyboard.press('Control+y');
    await expect.poll(() => place(1)).toBe(after);
    expect(await page.evaluate(() => (Reflect.get(globalThis, 'seen') as Element[]).length)).toBe(0);
  });
  await undoAll(page);
  await test.step('where frames are slow the top is shown in flat colours while it is zoomed, and in fabrics after', async () => {
    await page.evaluate(() => {
      const stutter = () => {
        const until = performance.now() + 60;
        while (performance.now() < until);
        requestAnimationFrame(stutter);
      };
      requestAnimationFrame(stutter);
    });
    const light = page.locator('.light-top');
    await block(page, 4).hover();
    await expect(light).toBeHidden();
    await expect(async () => {
      await page.mouse.wheel(0, -8);
      expect(await light.isVisible()).toBe(true);
    }).toPass({ intervals: [30] });
    await expect(light).toBeHidden();
    await expect(block(page, 4)).toBeVisible();
  });
});

test('a shuffle is stopped, put aside, goes on behind another step, comes out the same again, and is searched on', async ({
  page,
}) => {
  test.setTimeout(240_000);
  await firstVisit(page);
  const part = page.getByRole('region', { name: 'Shuffle for balance' });
  const shuffle = async () => {
    await foot(page).getByRole('button', { name: 'Shuffle', exact: true }).click();
    await expect(foot(page).getByRole('progressbar')).toBeVisible();
  };
  const use = async () => {
    await foot(page).getByRole('button', { name: 'Use this layout' }).click();
    await expect(undoButton(page)).toHaveAccessibleName(/^Undo: shuffle/);
  };
  // Wedges may be traded too, so that it goes on until it is stopped.
  await part.getByText('Shuffle options').click();
  await part.getByRole('checkbox', { name: /Trade wedges/ }).check();
  await part.getByLabel('Search time').selectOption('longer');
  await test.step('the shuffle can be stopped, and its order kept', async () => {
    await shuffle();
    await foot(page).getByRole('button', { name: 'Stop' }).click();
    await use();
    await undoButton(page).click();
  });
  await test.step('a change by hand puts a running shuffle aside, in words', async () => {
    await shuffle();
    await block(page, 1).focus();
    await page.keyboard.press('r');
    await expect(part).toContainText('was changed while the shuffle ran');
    // The shuffle may have hung another block in the focused cell by the time the key is heard.
    await expect(undoButton(page)).toHaveAccessibleName(/^Undo: turn block \d$/);
    await undoButton(page).click();
  });
  // What follows is shuffled to its end; that one that trades wedges comes out the same again is held in tests/arrange/shuffle.test.ts.
  await part.getByLabel('Search time').selectOption('short');
  await part.getByRole('checkbox', { name: /Trade wedges/ }).uncheck();
  const wish = page.locator('.value-wish [role=status]');
  await test.step('of a wish for values it is said that a shuffle is still to follow', async () => {
    await page.locator('.value-wish select').first().selectOption('light middle');
    await expect(wish).toContainText('until a shuffle follows');
  });
  const wall = page.getByRole('region', { name: 'Design wall' });
  const order = () =>
    wall
      .getByRole('button', { name: /^Block \d+, row/ })
      // Their clashes are counted a moment later.
      .evaluateAll((blocks) => blocks.map((one) => one.getAttribute('aria-label')?.split(';')[0]));
  const start = await order();
  await test.step('the shuffle goes on while another step is on show, and its order waits under Wall', async () => {
    const goOn = await holdWorkers(page);
    await shuffle();
    await goTo(page, 'Fabrics');
    await expect(page.locator('[data-words*="goes on"]')).toBeVisible();
    goOn();
    await expect(
      page.locator('[data-words="The shuffle is done. Its layout waits under Wall."]'),
    ).toBeVisible({ timeout: 120_000 });
    await expect(undoButton(page)).not.toHaveAccessibleName(/^Undo: shuffle/);
    await goTo(page, 'Wall');
    await expect(part.getByText('Shuffle options', { exact: true })).toBeVisible();
    await use();
  });
  await test.step('once the wish shows, the panel no longer says so', async () => {
    await expect(wish).toContainText('It shows');
    await expect(wish).not.toContainText('until a shuffle follows');
  });
  await test.step('two shuffles with the same shuffle number give the same layout', async () => {
    const first = await order();
    expect(first).not.toEqual(start);
    await undoButton(page).click();
    expect(await order()).toEqual(start);
    await shuffle();
    await foot(page).getByRole('button', { name: 'Use this layout' }).waitFor({ timeout: 80_000 });
    await use();
    expect(await order()).toEqual(first);
  });
  await test.step('a search of all layouts is begun, stopped and taken up again, with how far the best is told', async () => {
    await openFile(page, JSON.stringify(scrappyTop({ rows: 4, columns: 4, seed: 2 })));
    await expect(page.getByRole('dialog')).toBeHidden();
    await goTo(page, 'Wall');
    await shuffle();
    // What a stop leaves to search is offered as what a whole shuffle leaves.
    await foot(page).getByRole('button', { name: 'Stop' }).click();
    const searchOn = part.getByRole('button', { name: 'Search on' });
    await expect(searchOn).toBeVisible({ timeout: 30_000 });
    await expect(part.getByText('as long as this page stays open')).toBeVisible();
    for (const way of ['keys', 'mouse']) {
      await searchOn.press('Enter');
      const stop = foot(page).getByRole('button', { name: 'Stop' });
      await expect(stop).toBeFocused();
      await expect(foot(page).getByRole('progressbar', { name: 'Searching all layouts' })).toBeVisible();
      await expect(foot(page)).toContainText(
        /At most [\d.]+ points above the best possible, [\d.]+ at the start/,
      );
      if (way === 'keys') await stop.press('Enter');
      else await stop.click();
      await expect(part.getByText(/^At most [\d.]+ points above the best possible/)).toBeVisible();
      await expect(foot(page).getByRole('button', { name: 'Use this layout' })).toBeFocused();
    }
  });
  await test.step('blocks without wedges are not shuffled, and the way to their wedges is shown', async () => {
    const quilt = JSON.parse(readFileSync('demo-data/harbour-reading-corner.json', 'utf8'));
    for (const one of quilt.blocks) {
      one.places.fill(null);
      one.progress = 'planned';
    }
    await openFile(page, JSON.stringify({ ...quilt, id: 'bare-blocks' }));
    await goTo(page, 'Wall');
    await expect(part).toContainText('The blocks have no wedges yet');
    await expect(foot(page).getByRole('button', { name: 'Shuffle', exact: true })).toBeDisabled();
    await part.getByRole('button', { name: 'Choose wedges' }).click();
    await expect(page.getByRole('heading', { level: 2, name: 'Blocks', exact: true })).toBeVisible();
  });
});

test('in the hand the main action is in sight, gestures are told under the wall, a finger carries a block, and a shuffle shows its verdict @phone @touch', async ({
  page,
  context,
}) => {
  await firstVisit(page);
  await mainActionInSight(page);
  await gesturesTold(page);
  await page.keyboard.press('Escape');
  const target = await hangsAt(page, 2);
  const from = (await block(page, 1).boundingBox())!;
  const to = (await block(page, 2).boundingBox())!;
  const client = await context.newCDPSession(page);
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', x?: number, y?: number) =>
    client.send('Input.dispatchTouchEvent', { type, touchPoints: x === undefined ? [] : [{ x, y: y! }] });
  const middle = (box: { x: number; y: number; width: number; height: number }) =>
    [box.x + box.width / 2, box.y + box.height / 2] as const;
  const [fromX, fromY] = middle(from);
  const [toX, toY] = middle(to);
  await touch('touchStart', fromX, fromY);
  for (let step = 1; step <= 8; step += 1) {
    await touch('touchMove', fromX + ((toX - fromX) * step) / 8, fromY + ((toY - fromY) * step) / 8);
  }
  await touch('touchEnd');
  await expect.poll(() => hangsAt(page, 1)).toBe(target);
  await test.step('the answer of a shuffle opens with its verdict in sight', async () => {
    // A tap within a tenth of a second of a drag as quick as this one is no click to the browser; no hand is so fast.
    await page.waitForTimeout(300);
    await foot(page).getByRole('button', { name: 'Shuffle', exact: true }).tap();
    // It takes the focus over from what stopped the shuffle, and is brought into sight where it is not.
    await expect(foot(page).getByRole('button', { name: 'Use this layout' })).toBeFocused();
    await still(page);
    await expect(page.locator('.answer strong').first()).toBeInViewport({ ratio: 1 });
    const panel = (await page.getByRole('main').boundingBox())!;
    expect((await page.locator('.answer').boundingBox())!.y).toBeGreaterThanOrEqual(panel.y);
  });
});

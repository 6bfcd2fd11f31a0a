// Step 4: the wedges of the blocks: chosen by the tool, taken, carried and traded by hand; and what is said of each block.
import { expect, type Locator, type Page, test } from './guarded';
import { nextUndo, openExample } from './quilt';
import { undoAll } from './room';

const place = (page: Page, number: number) =>
  page.getByRole('radio', { name: new RegExp(`^Place ${number}:`) });

async function openBlock(page: Page, number: number): Promise<void> {
  await page.getByRole('button', { name: new RegExp(`^Block ${number}: `) }).click();
  await expect(page.getByRole('heading', { name: `Block ${number}`, exact: true })).toBeVisible();
}

async function wedgeIn(place: Locator): Promise<string> {
  return ((await place.getAttribute('aria-label')) ?? '').replace(/^Place \d+: /, '');
}

/** The middle of the number of a place, in the window. */
async function middle(place: Locator): Promise<{ x: number; y: number }> {
  const box = await place.locator('.place-disc').boundingBox();
  return { x: box!.x + box!.width / 2, y: box!.y + box!.height / 2 };
}

/** A wedge on offer goes into its place and one fewer is left. */
async function takeOffer(page: Page): Promise<void> {
  // Offers of before can be read, not taken, until those of the present block are there.
  await expect(page.locator('.stale')).toHaveCount(0);
  const offer = page.locator('.offer').first();
  const words = (await offer.locator('.offer-words').textContent()) ?? '';
  const [, set, tip, left] = /^Set (\w+), tip (\w+)\s+(\d+) left/.exec(words) ?? [];
  await offer.click();
  await expect.poll(() => wedgeIn(place(page, 1))).toBe(`set ${set}, tip ${tip}`);
  await page.getByRole('button', { name: 'Take it out' }).click();
  await expect(page.locator('.offer', { hasText: `Set ${set}, tip ${tip}` }).first()).toContainText(
    `${left} left`,
  );
}

test('wedges are chosen, blocks added, marked and opened; wedges carried, traded and taken by mouse and keys', async ({
  page,
  context,
}) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await openExample(page, 'Blocks');
  await test.step('a block that is added is filled at once, and the others stay as they are', async () => {
    const first = page.getByRole('button', { name: /^Block 1: / });
    // Seams are drawn once a block stays in sight.
    await expect(first.locator('.seams')).toBeVisible();
    const kept = await first.innerHTML();
    await page.getByRole('button', { name: /^Add 1 block$/ }).click();
    await expect(page.getByText('1 block added; it has 1 empty place.')).toBeVisible();
    await expect(page.getByRole('button', { name: /^Block 7: / })).toBeVisible();
    await expect.poll(() => first.innerHTML()).toBe(kept);
  });
  await undoAll(page);
  await test.step('several blocks are marked and said to be sewn at once; a sewn block keeps its wedges', async () => {
    await page.getByRole('button', { name: 'Update progress' }).click();
    await page.getByRole('button', { name: /^Block 2: / }).click();
    await page.getByRole('button', { name: /^Block 4: / }).click({ modifiers: ['Shift'] });
    await expect(page.getByText('3 chosen')).toBeVisible();
    await page.getByRole('button', { name: 'Wedges joined' }).click();
    await expect.poll(() => nextUndo(page)).toBe('Undo: update the progress of 3 blocks');
    await page.getByRole('button', { name: 'Done' }).click();
    await page.getByRole('button', { name: /^Block 3: / }).click();
    await expect(page.locator('.place-panel')).toContainText('Block 3 is sewn; its wedges stay as they are.');
    await expect(page.locator('.offer')).toHaveCount(0);
    await page.getByRole('button', { name: 'Remove block 3' }).click();
    await expect(page.getByRole('alert').filter({ hasText: 'Block 3 is sewn' })).toBeVisible();
  });
  await undoAll(page);
  await page.getByRole('button', { name: 'All blocks' }).click();
  await test.step('a block with an empty place cannot be sewn, and the reason stands beside the control', async () => {
    await page.getByRole('button', { name: /^Block 1: / }).click();
    await page.getByRole('button', { name: 'Take it out' }).click();
    await page.getByRole('button', { name: 'Wedges joined' }).click();
    await expect(page.getByRole('alert').filter({ hasText: 'Block 1 has an empty place' })).toBeVisible();
  });
  await undoAll(page);
  await test.step('the block card names every place and copies as text', async () => {
    await page.getByText('Block card').click();
    await page.locator('.leaf').getByRole('button', { name: 'Copy' }).click();
    await expect(page.getByText('Copied.')).toBeVisible();
    const text = await page.evaluate(() => navigator.clipboard.readText());
    for (let number = 1; number <= 8; number += 1)
      expect(text).toMatch(new RegExp(`^Place ${number}: set [A-Z]+, tip (up|down); seams`, 'm'));
  });
  await undoAll(page);
  await page.getByRole('button', { name: 'All blocks' }).click();
  await test.step('the tool chooses wedges for every block and says what was proved', async () => {
    await page.getByRole('button', { name: 'Start over' }).click();
    const proof = page.locator('.proof');
    await expect(proof).toContainText('No fabric meets itself on a rim.');
    await expect.poll(() => nextUndo(page)).toMatch(/^Undo: choose the wedges/);
    await page.getByText('Clashing').click();
    // What is still listed once the choice has been looked through: look-alikes at most, never a fabric and itself.
    const listed = page.locator('.block-card');
    const names = () =>
      listed.evaluateAll((cards) => cards.map((card) => card.getAttribute('aria-label') ?? ''));
    await expect
      .poll(async () => (await names()).filter((name) => !name.includes('look-alikes meet')))
      .toEqual([]);
  });
  await undoAll(page);
  await openBlock(page, 4);
  await test.step('a wedge that is taken stays pictured in its place while the hand rests, and each offer tells of the whole top', async () => {
    const offer = page.locator('.offer').first();
    await expect(offer).toContainText(/(Better|Worse) for the whole top: [\d.]+ → [\d.]+\./);
    await offer.click();
    await expect(page.getByRole('heading', { name: 'Place 1: set E, tip up' })).toBeVisible();
    await expect(page.locator('.stale')).toHaveCount(0);
    const pictured = () => page.locator('.block-face').first().innerHTML();
    const settled = await pictured();
    await page.mouse.move(1200, 40);
    expect(await pictured()).toBe(settled);
  });
  await undoAll(page);
  await test.step('a wedge on offer goes into its place and one fewer is left', () => takeOffer(page));
  await undoAll(page);
  await test.step('a wedge carried to another place trades the two, and undo puts both back', async () => {
    const [one, five] = [await wedgeIn(place(page, 1)), await wedgeIn(place(page, 4))];
    expect(one).not.toBe(five);
    const from = await middle(place(page, 1));
    const to = await middle(place(page, 4));
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move(to.x, to.y, { steps: 6 });
    await expect(page.getByText('Clashes on the rims of these blocks')).toBeVisible();
    await page.mouse.up();
    await expect.poll(() => wedgeIn(place(page, 1))).toBe(five);
    await expect.poll(() => wedgeIn(place(page, 4))).toBe(one);
    await expect.poll(() => nextUndo(page)).toBe('Undo: trade two wedges in block 4');
    await page.keyboard.press('Control+z');
    await expect.poll(() => wedgeIn(place(page, 1))).toBe(one);
  });
  await undoAll(page);
  await test.step('a wedge carried and dropped with Escape stays where it was', async () => {
    const before = await wedgeIn(place(page, 1));
    const from = await middle(place(page, 1));
    const to = await middle(place(page, 4));
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move(to.x, to.y, { steps: 6 });
    await page.keyboard.press('Escape');
    await page.mouse.up();
    await expect.poll(() => wedgeIn(place(page, 1))).toBe(before);
    await expect.poll(() => nextUndo(page)).toBe('Nothing to undo');
  });
  await undoAll(page);
  await test.step('a wedge left over is carried from the tray to a place, and one carried to the tray is left over', async () => {
    const spare = page.getByRole('button', { name: /^Set \w+, tip \w+: \d+ left$/ }).first();
    const [, wedge] = /^(.*): \d+ left$/.exec((await spare.getAttribute('aria-label'))!)!;
    const box = (await spare.boundingBox())!;
    const from = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    const to = await middle(place(page, 3));
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move(to.x, to.y, { steps: 6 });
    await page.mouse.up();
    await expect.poll(async () => (await wedgeIn(place(page, 3))).toLowerCase()).toBe(wedge!.toLowerCase());
    await expect.poll(() => nextUndo(page)).toBe('Undo: put a wedge in place 3 of block 4');
    const back = await middle(place(page, 3));
    await page.mouse.move(back.x, back.y);
    await page.mouse.down();
    await page.mouse.move(from.x, from.y, { steps: 6 });
    await page.mouse.up();
    await expect.poll(() => wedgeIn(place(page, 3))).toBe('no wedge yet');
  });
  await undoAll(page);
  await test.step('by keys alone a wedge is held with T, traded with Enter, and taken out with Delete', async () => {
    const [one, four] = [await wedgeIn(place(page, 1)), await wedgeIn(place(page, 4))];
    await place(page, 1).focus();
    await page.keyboard.press('t');
    for (let step = 0; step < 3; step += 1) await page.keyboard.press('ArrowRight');
    await expect(place(page, 4)).toBeFocused();
    await page.keyboard.press('Enter');
    await expect.poll(() => wedgeIn(place(page, 4))).toBe(one);
    await expect.poll(() => wedgeIn(place(page, 1))).toBe(four);
    await page.keyboard.press('Delete');
    await expect.poll(() => wedgeIn(place(page, 4))).toBe('no wedge yet');
  });
  await undoAll(page);
  await test.step('wedges are traded between two blocks laid side by side', async () => {
    await page.getByLabel('Compare with another block').selectOption('Block 1');
    const mine = page.getByRole('radiogroup', { name: 'Places of block 4' }).getByRole('radio').first();
    const other = page.getByRole('radiogroup', { name: 'Places of block 1' }).getByRole('radio').first();
    const [here, there] = [await wedgeIn(mine), await wedgeIn(other)];
    expect(here).not.toBe(there);
    await other.click();
    await expect(page.getByText('The wedge from block 1, place 1 is in hand')).toBeVisible();
    await mine.click();
    await expect.poll(() => wedgeIn(mine)).toBe(there);
    await expect.poll(() => wedgeIn(other)).toBe(here);
    await expect.poll(() => nextUndo(page)).toBe('Undo: trade wedges between blocks 1 and 4');
  });
  await undoAll(page);
  await test.step('a wedge is carried from one block to the other', async () => {
    const mine = page.getByRole('radiogroup', { name: 'Places of block 4' }).getByRole('radio').first();
    const other = page.getByRole('radiogroup', { name: 'Places of block 1' }).getByRole('radio').first();
    const [here, there] = [await wedgeIn(mine), await wedgeIn(other)];
    expect(here).not.toBe(there);
    const from = (await other.locator('.place-disc').boundingBox())!;
    const to = (await mine.locator('.place-disc').boundingBox())!;
    await page.mouse.move(from.x + from.width / 2, from.y + from.height / 2);
    await page.mouse.down();
    await page.mouse.move(to.x + to.width / 2, to.y + to.height / 2, { steps: 8 });
    await page.mouse.up();
    await expect.poll(() => wedgeIn(mine)).toBe(there);
    await expect.poll(() => wedgeIn(other)).toBe(here);
    await expect.poll(() => nextUndo(page)).toBe('Undo: trade wedges between blocks 1 and 4');
  });
});

test('by finger a wedge on offer is taken; one that rests on a wedge carries it, one that moves at once scrolls @touch @phone', async ({
  page,
}) => {
  await openExample(page, 'Blocks');
  await openBlock(page, 4);
  await takeOffer(page);
  await undoAll(page);
  const touch = await page.context().newCDPSession(page);
  const finger = (type: 'touchStart' | 'touchMove' | 'touchEnd', at?: { x: number; y: number }) =>
    touch.send('Input.dispatchTouchEvent', { type, touchPoints: at ? [at] : [] });
  const [one, three] = [await wedgeIn(place(page, 1)), await wedgeIn(place(page, 4))];
  const from = await middle(place(page, 1));
  const to = await middle(place(page, 4));
  await finger('touchStart', from);
  await expect(page.locator('.carried-wedge')).toBeVisible();
  await finger('touchMove', { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 });
  await finger('touchMove', to);
  await finger('touchEnd');
  await expect.poll(() => wedgeIn(place(page, 1))).toBe(three);
  await expect.poll(() => wedgeIn(place(page, 4))).toBe(one);
  const undo = await nextUndo(page);
  const start = await middle(place(page, 4));
  await finger('touchStart', start);
  for (let step = 1; step <= 6; step += 1) await finger('touchMove', { x: start.x, y: start.y - 15 * step });
  await finger('touchEnd');
  await expect.poll(() => page.locator('.work').evaluate((area) => area.scrollTop)).toBeGreaterThan(20);
  await expect.poll(() => nextUndo(page)).toBe(undo);
});

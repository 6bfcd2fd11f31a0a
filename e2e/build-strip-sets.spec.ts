// Step 2: strip sets made at random or by hand, put in order, mended and marked.
import { expect, type Locator, type Page, test } from './guarded';
import { openDemo, planned, setsFromStrips } from './quilt';
import { goTo, undoAll, undoButton } from './room';
import { openSaved } from './stored';

const sets = (page: Page) => page.getByRole('region', { name: 'The sets' });
const rows = (page: Page) => sets(page).getByRole('button', { name: /^Set \w+: / });
/** The strips of a set as they are laid out, the last one on top. */
const laid = (page: Page, set: string) =>
  page.getByRole('group', { name: `Strips of set ${set}` }).getByRole('button');
const left = (page: Page) => page.getByRole('region', { name: 'Left over' });
const lines = (page: Page) => page.getByRole('main').getByRole('button', { name: /^Strip \d+: / });

/** Fabric and width of every strip of a set that is laid out, from the top. */
async function order(page: Page, set = 'A'): Promise<string[]> {
  return laid(page, set).evaluateAll((all) =>
    all.map((one) => (one.getAttribute('aria-label') ?? '').replace(/^.*?: /, '')),
  );
}

/** The whole first set as text. */
async function make(page: Page, button: string): Promise<string> {
  await page.getByRole('button', { name: button }).click();
  await expect(page.getByText(/\d+ sets made, /)).toBeVisible();
  await expect(page.getByRole('button', { name: 'Make sets' })).toBeEnabled();
  return (await order(page)).join(' | ');
}

async function carry(page: Page, from: Locator, to: Locator): Promise<void> {
  const [start, end] = [(await from.boundingBox())!, (await to.boundingBox())!];
  await page.mouse.move(start.x + 20, start.y + start.height / 2);
  await page.mouse.down();
  await page.mouse.move(end.x + 20, end.y + end.height / 2 + 1, { steps: 8 });
}

test('strip sets are made by hand and at random, and strips carried on the table by mouse and keys', async ({
  page,
}) => {
  await openDemo(page, 'kiln-shed', 'Strip sets');
  await test.step('is as long as the left-overs, and a press lays one of them on it', async () => {
    await expect(page.getByText(/left-overs are 40" long/)).toBeVisible();
    await page.getByRole('button', { name: 'Add a set by hand' }).click();
    await expect(page.getByRole('textbox', { name: /^Usable length/ })).toHaveValue('40');
    await expect(left(page)).toContainText('Press one to add it to set A.');
    for (const at of [0, 3, 6]) await left(page).getByRole('button').nth(at).click();
    await expect(laid(page, 'A')).toHaveCount(3);
    await expect(undoButton(page)).toHaveAccessibleName('Undo: lay a strip on set A');
  });
  await undoAll(page);
  await test.step('a short set says what is missing, and one press adds the strips that mend it', async () => {
    await page.getByRole('button', { name: 'Add a set by hand' }).click();
    for (const width of ['2', '2', '2']) {
      await page.getByRole('button', { name: /Another strip of/ }).click();
      await page.getByRole('option').nth(2).click();
      const cut = page.locator('.set-strip-new').getByRole('textbox', { name: /Cut width/ });
      await cut.fill(width);
      await page.getByRole('button', { name: /^Add the strip to set/ }).click();
    }
    await expect(rows(page).first()).toHaveAccessibleName('Set A: 5" high, short by 2 1/2"; planned');
    await expect(page.getByText(/Set A is 2.1\/2" short/)).toBeVisible();
    await page.getByRole('button', { name: /^Add (the .* strip of|strips of)/ }).click();
    await expect(rows(page).first()).toHaveAccessibleName(/high, (.* to spare|just enough); planned$/);
  });
  await undoAll(page);
  await expect(page.getByText('No sets yet.')).toBeVisible();
  const mix = page.getByRole('textbox', { name: 'Mix number' });
  const number = await mix.inputValue();
  const first = await make(page, 'Make sets');
  await test.step('the next number of the draw makes other sets, and a locked set stays when others are made', async () => {
    expect(first).not.toBe('');
    await expect(rows(page).first()).toHaveAccessibleName(/high, (.* to spare|just enough); planned$/);
    const other = await make(page, 'Try another mix');
    expect(other).not.toBe(first);
    await rows(page).first().click();
    await page.getByRole('button', { name: 'Lock', exact: true }).click();
    await rows(page).first().click();
    expect(await make(page, 'Try another mix')).toBe(other);
  });
  await undoAll(page);
  await test.step('the same number makes the same sets', async () => {
    await mix.fill(number);
    await mix.press('Enter');
    expect(await make(page, 'Make sets')).toBe(first);
  });
  const before = await order(page);
  const made = (await undoButton(page).getAttribute('aria-label'))!;
  await test.step('a strip goes where it is let go in its set, in one undo', async () => {
    const [top, ...rest] = before;
    await carry(page, laid(page, 'A').first(), laid(page, 'A').nth(2));
    await page.mouse.up();
    await expect.poll(() => order(page)).toEqual([rest[0], rest[1], top, ...rest.slice(2)]);
    await expect(undoButton(page)).toHaveAccessibleName('Undo: move a strip within set A');
    await undoButton(page).click();
    await expect.poll(() => order(page)).toEqual([top, ...rest]);
  });
  await undoAll(page, made);
  await test.step('over another set the height that the drop would give is told before it, and it comes', async () => {
    const other = await order(page, 'B');
    await carry(page, laid(page, 'A').nth(1), laid(page, 'B').nth(2));
    const said = await page.locator('.lay-says p').allTextContents();
    expect(said).toHaveLength(2);
    const heights = said.map((words) => /^Set \w+: (.* high)/.exec(words.replaceAll('\u00a0', ' '))?.[1]);
    await page.mouse.up();
    await expect.poll(async () => (await order(page, 'B')).length).toBe(other.length + 1);
    expect((await order(page)).length).toBe(before.length - 1);
    await expect(sets(page).getByRole('button', { name: /^Set B: / })).toContainText(heights[0] ?? 'none');
    await expect(sets(page).getByRole('button', { name: /^Set A: / })).toContainText(heights[1] ?? 'none');
  });
  await undoAll(page, made);
  await test.step('to the left-overs and back into the set', async () => {
    const count = async () => Number(/(\d+) strip/.exec((await left(page).textContent()) ?? '')?.[1]);
    const there = await count();
    await carry(page, laid(page, 'A').first(), left(page).getByRole('heading'));
    await page.mouse.up();
    await expect.poll(count).toBe(there + 1);
    await expect.poll(() => order(page)).toEqual(before.slice(1));
    const [name, width] = before[0]!.split(/, cut /);
    const row = left(page).getByRole('button', { name: new RegExp(`^${name}, cut ${width?.split(' ')[0]}`) }); // biome-ignore format: short
    await carry(page, row.first(), laid(page, 'A').first());
    await page.mouse.up();
    await expect.poll(count).toBe(there);
    await expect.poll(async () => (await order(page)).length).toBe(before.length);
  });
  await undoAll(page, made);
  await test.step('keys lift a strip, carry it to another set and put it down, and the focus goes with it', async () => {
    const other = await order(page, 'B');
    await laid(page, 'A').last().focus();
    await page.keyboard.press('Space');
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('Space');
    await expect.poll(() => order(page, 'B')).toEqual([...other.slice(0, -1), before.at(-1), other.at(-1)]);
    await expect(laid(page, 'B').nth(other.length - 1)).toBeFocused();
    await page.keyboard.press('Delete');
    await expect.poll(() => order(page, 'B')).toEqual(other);
  });
  await undoAll(page, made);
  await test.step('Alt and an arrow key moves a strip in the list of the open set, and the focus goes with it', async () => {
    await rows(page).first().click();
    await lines(page).first().focus();
    await page.keyboard.press('Alt+ArrowDown');
    await page.keyboard.press('Alt+ArrowDown');
    await expect.poll(async () => (await order(page))[2]).toBe(before[0]);
    await expect(lines(page).nth(2)).toBeFocused();
    await page.keyboard.press('Alt+ArrowUp');
    await expect.poll(async () => (await order(page))[1]).toBe(before[0]);
    await expect(page.getByText(/Now strip \d+ of \d+ in set A/)).toBeAttached();
  });
  await undoAll(page, made);
  await test.step('a locked set refuses a strip where it was to go, with the way round; both in one undo', async () => {
    await rows(page).nth(1).click();
    await page.getByRole('button', { name: 'Lock', exact: true }).click();
    await carry(page, laid(page, 'A').first(), laid(page, 'B').nth(1));
    await page.mouse.up();
    const card = page.getByRole('alert').filter({ hasText: 'Set B is locked; its strips stay as they are.' });
    await expect(card).toBeVisible();
    expect(await order(page)).toEqual(before);
    await card.getByRole('button', { name: 'Unlock, and move it' }).click();
    await expect(card).toBeHidden();
    await expect.poll(() => order(page)).toEqual(before.slice(1));
    await undoButton(page).click();
    await expect.poll(() => order(page)).toEqual(before);
  });
  await undoAll(page, made);
  await test.step('Escape gives a carried strip up, and an undo under the hand puts nothing down', async () => {
    await carry(page, laid(page, 'A').first(), laid(page, 'B').first());
    await page.keyboard.press('Escape');
    await page.mouse.up();
    await expect.poll(() => order(page)).toEqual(before);
    await carry(page, laid(page, 'A').first(), laid(page, 'B').first());
    await page.keyboard.press('Control+z');
    await page.mouse.up();
    await expect(page.getByText('No sets yet.')).toBeVisible();
  });
});

test('a finger that rests on a strip carries it @phone @touch', async ({ page }) => {
  await setsFromStrips(page);
  const before = await order(page);
  const box = (await laid(page, 'A').first().boundingBox())!;
  const goal = (await laid(page, 'B').nth(1).boundingBox())!;
  const client = await page.context().newCDPSession(page);
  const point = (part: number) => [
    {
      x: box.x + 30 + part * (goal.x - box.x),
      y: box.y + box.height / 2 + part * (goal.y - box.y),
    },
  ];
  await client.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: point(0) });
  await page.waitForTimeout(400);
  for (const part of [0.25, 0.5, 0.75, 1])
    await client.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: point(part) });
  await client.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  await expect.poll(() => order(page)).toEqual(before.slice(1));
});

test('sewing and pressing is told; sewn sets keep their strips, and a set in blocks says what goes with it', async ({
  page,
}) => {
  await openSaved(page, planned());
  await goTo(page, 'Strip sets');
  await test.step('an open set shows from which end each seam is sewn and which way it is pressed @phone', async () => {
    await rows(page).first().click();
    const arrows = sets(page).locator('.set-arrows');
    const seams = (await order(page)).length - 1;
    await expect(arrows).toHaveAttribute(
      'data-sewing',
      Array.from({ length: seams }, (_, index) => (index % 2 === 0 ? 'left' : 'right')).join(' '),
    );
    const before = await arrows.getAttribute('data-pressed');
    const drawing = await arrows.locator('path').first().getAttribute('d');
    const pressing = page.getByRole('group', { name: 'All seams pressed' });
    await pressing.getByRole('radio', { checked: false }).first().check({ force: true });
    await expect(arrows).toHaveAttribute('data-pressed', before === 'up' ? 'down' : 'up');
    expect(await arrows.locator('path').first().getAttribute('d')).not.toBe(drawing);
    await undoButton(page).click();
    await expect(arrows).toHaveAttribute('data-pressed', before!);
  });
  await test.step('the length of the stitch, the alternate ends and the cautions are told', async () => {
    const aids = page.getByRole('region', { name: 'At the machine' });
    await expect(aids).toContainText('10 to 12 stitches to the inch');
    await expect(aids).toContainText('from opposite ends in turn');
    await expect(aids).toContainText('Before you sew');
  });
  await undoAll(page);
  await test.step('sets marked as sewn keep their strips, many at once', async () => {
    await page.getByRole('button', { name: 'sewn', exact: true }).click();
    await expect(undoButton(page)).toHaveAccessibleName(/^Undo: update the progress of \d+ strip sets$/);
    await expect(page.getByRole('button', { name: /^Move strip/ })).toHaveCount(0);
    await expect(rows(page).first()).toHaveAccessibleName(/; sewn$/);
  });
  await undoAll(page);
  await test.step('removing a set whose wedges lie in blocks says what goes first', async () => {
    await page.getByRole('button', { name: 'Remove set A' }).click();
    await expect(
      page.getByText(/\d+ wedges of set A are in blocks; their places will be empty\./),
    ).toBeVisible();
    await page.getByRole('button', { name: 'Remove it anyway' }).click();
    await expect(undoButton(page)).toHaveAccessibleName('Undo: remove strip set A');
    await expect(sets(page).getByRole('button', { name: /^Set A: / })).toHaveCount(0);
  });
});

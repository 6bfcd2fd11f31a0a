// Step 2: strip sets made at random or by hand, put in order, mended and marked.
import { AxeBuilder } from '@axe-core/playwright';
import { expect, type Locator, type Page, test } from '@playwright/test';
import { firstVisit, goTo, undoButton } from './room';

async function openDemo(page: Page, file: string): Promise<void> {
  await firstVisit(page);
  await page.getByRole('button', { name: /^Quilt:/ }).click();
  await page.setInputFiles('input[type=file]', `demo-data/${file}.json`);
  await expect(page.getByRole('dialog')).toBeHidden({ timeout: 15_000 });
  await goTo(page, 'Strip sets');
}

const sets = (page: Page) => page.getByRole('region', { name: 'The sets' });
const rows = (page: Page) => sets(page).getByRole('button', { name: /^Set \w+: / });
const grips = (page: Page) => sets(page).getByRole('button', { name: /drag it, or press Alt/ });

/** Fabric and width of every strip of the open set, from the top of the list. */
async function order(page: Page): Promise<string[]> {
  const lines = sets(page).getByRole('button', { name: /^Strip \d+: / });
  return lines.evaluateAll((all) =>
    all.map((one) => (one.getAttribute('aria-label') ?? '').replace(/^.*?: /, '')),
  );
}

/** The whole first set as text: strips of the set when opened. */
async function make(page: Page, button: string): Promise<string> {
  await page.getByRole('button', { name: button }).click();
  await expect(page.getByText(/\d+ sets made, /)).toBeVisible();
  await expect(page.getByRole('button', { name: 'Make sets' })).toBeEnabled();
  await rows(page).first().click();
  const strips = (await order(page)).join(' | ');
  await rows(page).first().click();
  return strips;
}

test.describe('making sets at random', () => {
  test('the same number of the draw makes the same sets, the next one others', async ({ page }) => {
    await openDemo(page, 'kiln-shed');
    await expect(page.getByText('No sets yet.')).toBeVisible();
    const first = await make(page, 'Make sets');
    expect(first).not.toBe('');
    await expect(rows(page).first()).toHaveAccessibleName(/high, (.* to spare|just enough); planned$/);
    const other = await make(page, 'Others, by the next number');
    expect(other).not.toBe(first);
    const seed = page.getByRole('textbox', { name: 'Number of the draw' });
    await seed.fill(String(Number(await seed.inputValue()) - 1));
    await seed.press('Enter');
    expect(await make(page, 'Make sets')).toBe(first);
  });

  test('a locked set stays when others are made', async ({ page }) => {
    await openDemo(page, 'kiln-shed');
    const first = await make(page, 'Make sets');
    await rows(page).first().click();
    await page.getByRole('button', { name: 'Lock', exact: true }).click();
    await rows(page).first().click();
    expect(await make(page, 'Others, by the next number')).toBe(first);
  });
});

test.describe('strips in the order they are sewn', () => {
  async function openFirst(page: Page): Promise<string[]> {
    await openDemo(page, 'plum-orchard');
    await rows(page).first().click();
    return order(page);
  }

  async function drag(page: Page, from: Locator, by: number): Promise<void> {
    const box = (await from.boundingBox())!;
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2 + by, { steps: 8 });
  }

  test('a strip dragged by its grip goes where it is let go, in one undo', async ({ page }) => {
    const before = await openFirst(page);
    const step = (await grips(page).nth(1).boundingBox())!.y - (await grips(page).nth(0).boundingBox())!.y;
    await drag(page, grips(page).first(), 2.2 * step);
    await page.mouse.up();
    const [moved, ...rest] = before;
    await expect.poll(() => order(page)).toEqual([rest[0], rest[1], moved, ...rest.slice(2)]);
    await undoButton(page).click();
    await expect.poll(() => order(page)).toEqual(before);
  });

  test('Escape drops a drag, and nothing has changed', async ({ page }) => {
    const before = await openFirst(page);
    await drag(page, grips(page).first(), 150);
    await page.keyboard.press('Escape');
    await page.mouse.up();
    await expect.poll(() => order(page)).toEqual(before);
    await expect(undoButton(page)).toBeDisabled();
  });

  test('Alt and an arrow key moves a strip and the focus goes with it', async ({ page }) => {
    const before = await openFirst(page);
    await grips(page).first().focus();
    await page.keyboard.press('Alt+ArrowDown');
    await page.keyboard.press('Alt+ArrowDown');
    await expect.poll(async () => (await order(page))[2]).toBe(before[0]);
    await expect(grips(page).nth(2)).toBeFocused();
    await page.keyboard.press('Alt+ArrowUp');
    await expect.poll(async () => (await order(page))[1]).toBe(before[0]);
    await expect(page.getByText(/Now strip \d+ of \d+ in set A/)).toBeAttached();
  });

  test('a finger drags a strip too @phone @touch', async ({ page }) => {
    const before = await openFirst(page);
    await grips(page).nth(1).scrollIntoViewIfNeeded();
    const box = (await grips(page).first().boundingBox())!;
    const step = (await grips(page).nth(1).boundingBox())!.y - box.y;
    const client = await page.context().newCDPSession(page);
    const point = (y: number) => [{ x: box.x + box.width / 2, y }];
    const middle = box.y + box.height / 2;
    await client.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: point(middle) });
    for (const part of [0.3, 0.6, 0.9, 1.2]) {
      await client.send('Input.dispatchTouchEvent', {
        type: 'touchMove',
        touchPoints: point(middle + part * step),
      });
    }
    await client.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
    await expect.poll(async () => (await order(page)).slice(0, 2)).toEqual([before[1], before[0]]);
  });
});

test('an undo while a strip is carried puts it back, and letting go moves no other', async ({ page }) => {
  await openDemo(page, 'harbour-reading-corner');
  await page.getByRole('button', { name: 'Add a set by hand' }).click();
  const form = page.getByRole('form', { name: /^Another strip for set/ });
  for (const [at, width] of ['2', '1', '1 1/2', '1 3/4'].entries()) {
    await form.getByRole('button', { name: /Another strip of/ }).click();
    await page.getByRole('option').nth(at).click();
    await form.getByRole('textbox', { name: /^Cut width/ }).fill(width);
    await form.getByRole('button', { name: /^Add the strip/ }).click();
    await expect(grips(page)).toHaveCount(at + 1);
  }
  const laid = await order(page);
  const box = (await grips(page).first().boundingBox())!;
  await page.mouse.move(box.x + 5, box.y + 8);
  await page.mouse.down();
  await page.mouse.move(box.x + 5, box.y + 70, { steps: 4 });
  await page.keyboard.press('Control+z');
  await expect(grips(page)).toHaveCount(3);
  await page.mouse.move(box.x + 5, box.y + 80);
  await page.mouse.up();
  expect(await order(page)).toEqual(laid.slice(1));
});

test.describe('a set by hand', () => {
  test('a short set says what is missing, and one press adds the strips that mend it', async ({ page }) => {
    await openDemo(page, 'kiln-shed');
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

  test('sets marked as sewn keep their strips, many at once', async ({ page }) => {
    await openDemo(page, 'plum-orchard');
    await sets(page).getByRole('button', { name: 'sewn', exact: true }).click();
    await expect(undoButton(page)).toHaveAccessibleName(/^Undo: set how far \d+ strip sets are$/);
    await rows(page).first().click();
    await expect(grips(page)).toHaveCount(0);
    await expect(rows(page).first()).toHaveAccessibleName(/; sewn$/);
  });

  test('removing a set whose wedges lie in blocks says what goes first', async ({ page }) => {
    await openDemo(page, 'plum-orchard');
    await rows(page).first().click();
    await page.getByRole('button', { name: 'Remove set A' }).click();
    await expect(
      page.getByText(/\d+ wedges of set A lie in blocks; their places will stand empty\./),
    ).toBeVisible();
    await page.getByRole('button', { name: 'Remove it all the same' }).click();
    await expect(undoButton(page)).toHaveAccessibleName('Undo: remove strip set A');
    await expect(sets(page).getByRole('button', { name: /^Set A: / })).toHaveCount(0);
  });
});

test('the strip set step has no barrier that axe finds, and nothing sticks out of the panel @phone @tablet', async ({
  page,
}) => {
  await openDemo(page, 'harbour-reading-corner');
  await rows(page).first().click();
  const { violations } = await new AxeBuilder({ page }).include('.panel').analyze();
  expect(violations.map((one) => `${one.id}: ${one.nodes[0]?.html}`)).toEqual([]);
  const over = await page.locator('.panel').evaluate((panel) => panel.scrollWidth - panel.clientWidth);
  expect(over).toBeLessThanOrEqual(0);
});

test.describe('sewing and pressing', () => {
  test('an open set shows from which end each seam is sewn and which way it is pressed @phone', async ({
    page,
  }) => {
    await openDemo(page, 'harbour-reading-corner');
    await rows(page).first().click();
    const arrows = sets(page).locator('.set-arrows');
    const seams = (await order(page)).length - 1;
    await expect(arrows).toHaveAttribute(
      'data-sewing',
      Array.from({ length: seams }, (_, index) => (index % 2 === 0 ? 'left' : 'right')).join(' '),
    );
    const before = await arrows.getAttribute('data-pressed');
    const drawing = await arrows.locator('path').first().getAttribute('d');
    const pressing = sets(page).getByRole('group', { name: 'All seams pressed' });
    await pressing.getByRole('radio', { checked: false }).first().check({ force: true });
    await expect(arrows).toHaveAttribute('data-pressed', before === 'up' ? 'down' : 'up');
    expect(await arrows.locator('path').first().getAttribute('d')).not.toBe(drawing);
    await undoButton(page).click();
    await expect(arrows).toHaveAttribute('data-pressed', before!);
  });

  test('the length of the stitch, the alternate ends and the cautions are told', async ({ page }) => {
    await openDemo(page, 'harbour-reading-corner');
    const aids = page.getByRole('region', { name: 'At the machine' });
    await expect(aids).toContainText('10 to 12 stitches to the inch');
    await expect(aids).toContainText('from opposite ends in turn');
    await expect(aids).toContainText('Before you sew');
  });
});

// An empty quilt begins with the few ways to begin; each ends in a whole top after so many actions: a press, or one field filled in.
import { AA, faultsOf } from './axe';
import { expect, type Locator, type Page, test } from './guarded';
import { emptyQuilt, openDemo } from './quilt';
import { block, goTo, undoAll, undoButton } from './room';

/** Counts what a person does: one for a press, one for a field. */
function hands(page: Page) {
  let actions = 0;
  return {
    press: async (name: string | RegExp, inside: Page | Locator = page) => {
      actions += 1;
      await inside.getByRole('button', { name }).click();
    },
    fill: async (name: string, text: string) => {
      actions += 1;
      await page.getByRole('textbox', { name }).fill(text);
    },
    count: () => actions,
  };
}

const cells = (page: Page) => page.getByRole('region', { name: 'Design wall' }).locator('[data-cell]');
const laid = (page: Page) => page.getByRole('region', { name: 'The quilt laid out' });

/** The wall is full of blocks without an empty place, and it was said. Returns the number of blocks. */
async function wholeTop(page: Page): Promise<number> {
  await expect(laid(page)).toBeVisible({ timeout: 60_000 });
  await expect(laid(page)).toContainText(/\d+ blocks hung in \d+ rows of \d+/);
  const said = (await laid(page).textContent()) ?? '';
  const count = Number(/(\d+) blocks hung/.exec(said)![1]);
  const hung = () =>
    cells(page).evaluateAll((all) =>
      all.map((one) => Number(/^Block (\d+), row/.exec(one.getAttribute('aria-label') ?? '')?.[1])),
    );
  const all = Array.from({ length: count }, (_, at) => at + 1);
  await expect.poll(async () => (await hung()).toSorted((one, other) => one - other)).toEqual(all);
  expect(said).not.toContain('empty places');
  return count;
}

/** Ends the last part of laying out a quilt, the shuffle: the top is hung in the order found so far. */
async function stopShuffle(page: Page): Promise<void> {
  // In one look at the page, so that it is not over before it is stopped.
  await page.waitForFunction(
    () => {
      if (!document.querySelector('main')!.textContent!.includes('Shuffling the blocks …')) return false;
      const buttons = [...document.querySelectorAll('button')];
      buttons.find(({ textContent }) => textContent?.trim() === 'Stop')!.click();
      return true;
    },
    undefined,
    { timeout: 60_000 },
  );
}

/** Listens to the line under the wall and the heading of what clashes; gives what they have said since, each once. */
async function saidOfClashes(page: Page): Promise<() => Promise<readonly string[]>> {
  const said = await page.evaluateHandle(() => {
    const heard = new Set<string>();
    const hear = () => {
      for (const { textContent } of document.querySelectorAll(
        '.standing > p, [aria-label="What clashes"] h3',
      ))
        heard.add(textContent.trim());
    };
    hear();
    new MutationObserver(hear).observe(document.body, {
      subtree: true,
      childList: true,
      characterData: true,
    });
    return heard;
  });
  return async () => said.evaluate((heard) => [...heard].filter((words) => words !== ''));
}

test('the ways to begin each end in a whole top, after two to four actions', async ({ page }) => {
  await emptyQuilt(page);
  await test.step('blocks already sewn and fabrics entered one by one lead to their steps; the ways come back at the others', async () => {
    await page.getByRole('button', { name: /^Enter blocks already sewn/ }).click();
    await expect(page.getByRole('heading', { level: 2, name: 'Blocks', exact: true })).toBeVisible();
    await expect(page.getByRole('heading', { level: 2, name: 'Enter sewn blocks' })).toBeVisible();
    await expect(page.getByRole('heading', { name: 'Begin the quilt' })).toBeHidden();
    await page
      .getByRole('navigation', { name: 'Order of work' })
      .getByRole('button', { name: 'Wall' })
      .click();
    await expect(page.getByRole('heading', { name: 'Begin the quilt' })).toBeVisible();
    await page.getByRole('button', { name: /^Start from fabric I have/ }).click();
    await page.getByRole('button', { name: 'Enter each fabric instead' }).click();
    await expect(page.getByRole('heading', { level: 2, name: 'Fabrics' })).toBeVisible();
    await expect(page.getByRole('heading', { name: 'Begin the quilt' })).toBeHidden();
  });
  await page.getByRole('navigation', { name: 'Order of work' }).getByRole('button', { name: 'Wall' }).click();
  await test.step('strips I have: two actions as they usually are', async () => {
    const { press, count } = hands(page);
    await press(/^Start from strips I have/);
    await press('Lay out the whole quilt', page.getByRole('form', { name: 'Strips I have' }));
    expect(await wholeTop(page)).toBeGreaterThanOrEqual(4);
    expect(count()).toBe(2);
  });
  await undoAll(page);
  await test.step('fabric I have: three actions', async () => {
    const { press, fill, count } = hands(page);
    await press(/^Start from fabric I have/);
    await fill('Fabrics', '10');
    await press('Lay out the whole quilt', page.getByRole('form', { name: 'Fabric I have' }));
    await wholeTop(page);
    await expect(laid(page)).toContainText(/Cut \d+ strips from the fabric on hand/);
    expect(count()).toBe(3);
  });
  await undoAll(page);
  const desk = page.viewportSize()!;
  await page.setViewportSize({ width: 390, height: 844 });
  await test.step('strips I have: four actions with other numbers, on a phone, and one undo takes the layout back', async () => {
    const { press, fill, count } = hands(page);
    await press(/^Start from strips I have/);
    await fill('Fabrics', '12');
    await fill('Length of the strips', '42');
    await press('Lay out the whole quilt', page.getByRole('form', { name: 'Strips I have' }));
    expect(await wholeTop(page)).toBeGreaterThanOrEqual(6);
    expect(count()).toBe(4);
    await expect(undoButton(page)).toHaveAccessibleName(/lay out the whole quilt/);
    await laid(page).getByRole('button', { name: 'Undo' }).click();
    await expect(laid(page)).toBeHidden();
    await expect(undoButton(page)).toHaveAccessibleName(/begin with 12 fabrics/);
  });
  await page.setViewportSize(desk);
  await undoAll(page);
  await test.step('a size I want: by keys alone, four actions with what was written wrong, and the top has it', async () => {
    const form = page.getByRole('form', { name: 'A size I want' });
    const height = page.getByRole('textbox', { name: 'Height' });
    await page.getByRole('button', { name: /^Plan a size I want/ }).press('Enter');
    await expect(page.getByRole('textbox', { name: 'Width' })).toBeFocused();
    await page.keyboard.type('28');
    await page.keyboard.press('Tab');
    await expect(form).toContainText(/\d+ rows? of \d+/);
    // The name of a button that the focus comes to leaves what the fields come to in sight.
    const sums = form.getByText(/\d+ rows? of \d+/);
    const fewer = page.getByRole('tooltip', { name: 'Fabrics: one less' });
    await page.keyboard.press('Tab');
    await expect(fewer).toBeVisible();
    const [hint, told] = [(await fewer.boundingBox())!, (await sums.boundingBox())!];
    expect(hint.y + hint.height <= told.y || hint.y >= told.y + told.height).toBe(true);
    await height.fill('very high');
    await page.keyboard.press('Enter');
    await expect(page.getByText('Write a length such as 7 1/2 or 7.5.')).toBeVisible();
    await form.getByRole('button', { name: 'Lay out the whole quilt' }).click();
    await expect(height).toBeFocused();
    await height.fill('28');
    // The fourth, after opening it and filling in two fields.
    await page.keyboard.press('Enter');
    expect(await wholeTop(page)).toBe(4);
  });
  await undoAll(page);
  await test.step('a roll of precut strips: three actions; what is filled in is there after a reload, and the shuffle is stopped with the order found so far', async () => {
    const { press, fill, count } = hands(page);
    await press(/^Open a roll of precut strips/);
    await fill('Fabrics', '10');
    await page.keyboard.press('Tab');
    await page.reload();
    await expect(page.getByRole('textbox', { name: 'Fabrics' })).toHaveValue('10');
    await press('Lay out the whole quilt', page.getByRole('form', { name: 'A roll of precut strips' }));
    expect(count()).toBe(3);
    await stopShuffle(page);
    expect(await wholeTop(page)).toBeGreaterThanOrEqual(9);
  });
  await undoAll(page);
  await test.step('an example: two actions', async () => {
    const { press, count } = hands(page);
    await press(/^Look at an example/);
    await press(/Harbour library/, page.getByRole('list', { name: 'Examples' }));
    await expect(block(page, 6)).toBeVisible();
    await expect(cells(page)).toHaveCount(6);
    expect(count()).toBe(2);
  });
});

test('strips that are listed are laid out in one mix and another, and the bar has a number only where one is known', async ({
  page,
}) => {
  await openDemo(page, 'kiln-shed', 'Fabrics');
  await test.step('strips that are listed already are laid out from the Fabrics step by one press, and in another mix by a second', async () => {
    const said = await saidOfClashes(page);
    await page.getByRole('main').getByRole('button', { name: 'Lay out the whole quilt' }).click();
    await stopShuffle(page);
    await wholeTop(page);
    const wall = page.getByRole('region', { name: 'Design wall' });
    const drawn = await wall.locator('svg.top').innerHTML();
    await laid(page).getByRole('button', { name: 'Try another mix' }).click();
    await stopShuffle(page);
    await wholeTop(page);
    expect(await wall.locator('svg.top').innerHTML()).not.toBe(drawn);
    // Nothing hung before, or another layout: that nothing clashed then says nothing of this one.
    const early = /^No clashes score 0$|^Nothing (clashes|pulls the eye) looking again/;
    expect((await said()).filter((words) => early.test(words))).toEqual([]);
    expect((await said()).length).toBeGreaterThan(3);
    await undoButton(page).click();
    await expect(undoButton(page)).toHaveAccessibleName('Nothing to undo');
    await goTo(page, 'Strip sets');
    await expect(page.getByText('No sets yet.')).toBeVisible();
  });
  await goTo(page, 'Fabrics');
  // A worker that tells a stage when the test says so.
  const body = `self.onmessage = ({ data: { number } }) => {
    self.postMessage({ kind: 'heard', number });
    new BroadcastChannel('stages').onmessage = ({ data: progress }) =>
      self.postMessage({ kind: 'progress', number, progress });
    new BroadcastChannel('heard').postMessage(null);
  };`;
  const tell = (stage: string, share: number | null) =>
    page.evaluate((progress) => new BroadcastChannel('stages').postMessage(progress), { stage, share });
  await page.route(/arrangeWorker/, (route) => route.fulfill({ contentType: 'text/javascript', body }));
  const heard = page.evaluate(
    () =>
      new Promise((resolve) => {
        new BroadcastChannel('heard').onmessage = () => resolve(null);
      }),
  );
  await page.getByRole('main').getByRole('button', { name: 'Lay out the whole quilt' }).click();
  await heard;
  const bar = page.getByRole('progressbar', { name: 'Laying out the quilt' });
  await tell('sets', null);
  await expect(page.getByText('Making strip sets …')).toBeVisible();
  await expect(bar).not.toHaveAttribute('aria-valuenow');
  expect(await faultsOf(page, { only: AA })).toEqual([]);
  await tell('sets', 0.4);
  await expect(bar).toHaveAttribute('aria-valuenow', '40');
  await tell('blocks', null);
  await expect(page.getByText('Choosing wedges for the blocks …')).toBeVisible();
  await expect(bar).not.toHaveAttribute('aria-valuenow');
  await tell('shuffle', 0.25);
  await expect(page.getByText('Shuffling the blocks …')).toBeVisible();
  await expect(bar).toHaveAttribute('aria-valuenow', '25');
  await page.getByRole('button', { name: 'Stop' }).click();
});

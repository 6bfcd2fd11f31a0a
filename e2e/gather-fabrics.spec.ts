// Step 1: fabrics laid out as pieces of cloth, added and changed; what to cut from them. Strips are entered in
// enter-strips.spec.ts.
import { expect, type Page, test } from './guarded';
import { tooSmall } from './measure';
import { emptyQuilt } from './quilt';
import { firstVisit, goTo, openExample, undoAll, undoButton } from './room';
import { byFinger, resize } from './within-reach';

const laid = (page: Page) => page.getByRole('region', { name: 'Fabrics laid out' });
const pieces = (page: Page) => laid(page).locator('.laid-piece');
const strips = (page: Page) => page.getByRole('region', { name: 'Strips on hand' });

test('fabrics laid out: look-alikes, order, tones, found, lit, as large as they say, and what to cut of them', async ({
  page,
}) => {
  await firstVisit(page);
  await goTo(page, 'Fabrics');
  await test.step('look-alikes are pointed out in pairs and opened from there by keyboard', async () => {
    const summary = laid(page).getByText(/^Look-alikes: \d+ pairs?$/);
    await summary.press('Enter');
    const pairs = laid(page).locator('.lookalikes li');
    await expect(pairs).toHaveCount(Number(/\d+/.exec((await summary.textContent()) ?? '')?.[0]));
    await expect(pairs.first()).toContainText(/difference \d+\.\d, limit 10/);
    const one = pairs.first().getByRole('button').first();
    const name = (await one.textContent())!;
    await one.press('Enter');
    await expect(page.getByRole('heading', { level: 3, name })).toBeFocused();
    await expect(page.getByRole('region', { name: `The fabric ${name}` })).toContainText(
      /sets? .* · blocks? \d/,
    );
    await page.keyboard.press('Escape');
  });
  await test.step('by value they lie in light, medium and dark of this quilt, the limits are told, and each says its tone', async () => {
    const told = await laid(page)
      .getByText(/^(light|dark): value/)
      .allTextContents();
    const [light, dark] = told.map((one) => Number(/\d+/.exec(one)?.[0]));
    let all = 0;
    for (const tone of ['Light', 'Medium', 'Dark']) {
      const group = laid(page).getByRole('region', { name: tone, exact: true });
      const words = await group.getByText(/^Value \d+/).allTextContents();
      all += words.length;
      for (const word of words) {
        expect(word).toContain(tone.toLowerCase());
        const value = Number(/\d+/.exec(word)?.[0]);
        if (tone === 'Light') expect(value).toBeGreaterThanOrEqual(light! - 1);
        if (tone === 'Dark') expect(value).toBeLessThanOrEqual(dark! + 1);
      }
    }
    await expect(pieces(page)).toHaveCount(all);
    await laid(page).getByText('Hue', { exact: true }).click();
    await expect(laid(page).getByRole('region', { name: 'Light', exact: true })).toHaveCount(0);
  });
  await test.step('they lie light to dark, by hue, amount or name, and one is found by its name', async () => {
    await laid(page).getByText('Value', { exact: true }).click();
    await expect(pieces(page).nth(12)).toBeVisible();
    const values = await laid(page)
      .getByText(/^Value \d+/)
      .evaluateAll((all) => all.map((one) => Number(/\d+/.exec(one.textContent ?? '')?.[0])));
    expect(values.length).toBeGreaterThan(12);
    expect(values).toEqual(values.toSorted((one, other) => other - one));
    await laid(page).getByText('Amount', { exact: true }).click();
    const shares = await laid(page)
      .getByText(/^\d+% of the top/)
      .evaluateAll((all) => all.map((one) => Number.parseInt(one.textContent ?? '', 10)));
    expect(shares.length).toBeGreaterThan(12);
    expect(shares).toEqual(shares.toSorted((one, other) => other - one));
    await laid(page).getByText('Name', { exact: true }).click();
    const names = await pieces(page).locator('bdi').allTextContents();
    expect(names).toEqual(names.toSorted((one, other) => one.localeCompare(other)));
    await laid(page).getByRole('searchbox', { name: 'Find by name' }).fill('stripe');
    await expect(laid(page).getByRole('status')).toHaveText('2 fabrics found');
    await expect(pieces(page)).toHaveCount(2);
    await laid(page).getByRole('searchbox').fill('STRIPE sand');
    await expect(laid(page).getByRole('status')).toHaveText('1 fabric found');
    await laid(page).getByRole('searchbox').fill('tartan');
    await expect(laid(page).getByRole('status')).toHaveText('No fabric has “tartan” in its name.');
  });
  await test.step('a fabric is lit on the small wall while it is pointed at or has the focus, and picked to be changed', async () => {
    await laid(page).getByRole('searchbox').fill('');
    const piece = laid(page).getByRole('button', { name: /^Night ink, tiny stars/ });
    const lit = page.locator('.wall-area.small svg.top path[opacity="0.13"]');
    await expect(lit).toHaveCount(0);
    await piece.hover();
    await expect(lit).not.toHaveCount(0);
    await page.mouse.move(700, 5);
    await expect(lit).toHaveCount(0);
    await piece.focus();
    await expect(lit).not.toHaveCount(0);
    await page.keyboard.press('Enter');
    await expect(page.getByRole('heading', { level: 3, name: 'Night ink, tiny stars' })).toBeFocused();
    await expect(lit).not.toHaveCount(0);
    await page.getByRole('textbox', { name: 'Name' }).fill('Night');
    await page.getByRole('textbox', { name: 'Name' }).press('Enter');
    await expect(laid(page).getByRole('button', { name: /^Night Value/ })).toHaveAttribute(
      'aria-pressed',
      'true',
    );
    await page.getByRole('button', { name: 'Close' }).press('Enter');
    await expect(laid(page).getByRole('button', { name: /^Night Value/ })).toBeFocused();
  });
  await test.step('what to cut for six blocks is worked out and written down', async () => {
    const shown = await strips(page)
      .getByText(/^\d+ strips$/)
      .textContent();
    const before = Number(/\d+/.exec(shown ?? '')?.[0]);
    await page.getByRole('button', { name: 'Work out what to cut' }).click();
    const cut = page.getByRole('button', { name: /^Add these \d+ strips$/ });
    const planned = Number(/\d+/.exec((await cut.textContent()) ?? '')?.[0]);
    expect(planned).toBeGreaterThan(10);
    await cut.click();
    await expect(strips(page).getByText(`${before + planned} strips`)).toBeVisible();
  });
  await test.step('a piece is as large as it says, its figures too, and turns grey with the view', async () => {
    await expect(laid(page).getByText(/^True size: each piece is 1.3\/4" × 1.1\/4"/)).toBeVisible();
    const cloth = pieces(page).first().locator('svg');
    // CSS Values and Units 4, 6.2: 1in is 96px.
    expect(await cloth.boundingBox()).toMatchObject({ width: 1.75 * 96, height: 1.25 * 96 });
    const matrix = await cloth
      .locator('path')
      .last()
      .evaluate((path) => (path as SVGPathElement).getScreenCTM()!.a);
    expect(matrix).toBeCloseTo(96, 6);
    await page.getByRole('button', { name: /^Grey: / }).click();
    await expect(cloth.locator('.seen')).toHaveCSS('filter', 'url("#way-of-seeing")');
  });
});

test('a newcomer adds fabrics; in a quilt one is replaced everywhere, and only then removed', async ({
  page,
}) => {
  await emptyQuilt(page);
  await goTo(page, 'Fabrics');
  await test.step('a newcomer is told what comes first, and adds two fabrics by keyboard alone', async () => {
    await expect(page.getByText('Start here: add the fabrics you want to sew with.')).toBeVisible();
    await page.getByRole('button', { name: 'Add fabrics' }).press('Enter');
    await expect(page.getByRole('textbox', { name: 'Name' })).toBeFocused();
    await page.keyboard.type('Rust');
    await page.keyboard.press('Enter');
    await expect(laid(page).getByRole('button', { name: /^Rust Value \d+/ })).toBeVisible();
    await expect(page.getByRole('textbox', { name: 'Name' })).toBeFocused();
    await page.keyboard.type('Slate');
    await page.keyboard.press('Enter');
    await expect(undoButton(page)).toHaveAccessibleName('Undo: add the fabric Slate');
    await page.getByRole('button', { name: 'Done' }).focus();
    await page.keyboard.press('Enter');
    await expect(page.getByRole('button', { name: 'Add a fabric' })).toBeFocused();
    await expect(pieces(page)).toHaveCount(3);
    await expect(page.getByRole('button', { name: 'Enter strips' })).toBeInViewport();
  });
  await test.step('a colour that is none is refused where it was written, and what was written stays', async () => {
    await undoAll(page);
    await page.getByRole('button', { name: 'Add fabrics' }).click();
    const colour = page.getByRole('textbox', { name: 'Colour', exact: true });
    await colour.fill('rusty');
    await page.getByRole('textbox', { name: 'Name' }).fill('Rust');
    await expect(page.getByText('Write a colour as # and six figures or letters a to f')).toBeVisible();
    await expect(colour).toHaveValue('rusty');
    await colour.fill('a53');
    await colour.press('Tab');
    await expect(colour).toHaveValue('#aa5533');
    await expect(page.getByText('Write a colour as #')).toBeHidden();
  });
  await test.step('a print is chosen from cloth and drawn with the colours it is printed with', async () => {
    await page.getByText('printed', { exact: true }).click();
    await page.getByRole('radio', { name: 'Gingham' }).check({ force: true });
    const desk = page.viewportSize()!;
    await byFinger(page, true);
    await resize(page, [1024, 768]);
    expect(await tooSmall(page), 'on a tablet').toEqual([]);
    await byFinger(page, false);
    await resize(page, [desk.width, desk.height]);
    await page.getByRole('textbox', { name: 'Printed with', exact: true }).fill('#123456');
    await page.getByRole('textbox', { name: 'Name' }).fill('Kitchen check');
    await page.getByRole('button', { name: 'Add this fabric' }).click();
    await expect(laid(page).getByRole('button', { name: /Kitchen check/ })).toBeVisible();
    await expect(
      page
        .locator('defs pattern')
        .filter({ has: page.locator('[fill="#123456"], [stroke="#123456"]') })
        .first(),
    ).toBeAttached();
  });
  await test.step('one is replaced everywhere, colourways too, told in how many places and taken back at once', async () => {
    await openExample(page, 'The kiln shed');
    await goTo(page, 'Strip sets');
    await page.getByRole('button', { name: 'Make sets' }).click();
    await expect(page.getByText(/\d+ sets made, /)).toBeVisible();
    await goTo(page, 'Fabrics');
    const piece = pieces(page).nth(2).getByRole('button');
    const name = (await piece.locator('bdi').textContent())!;
    await piece.click();
    const form = page.getByRole('region', { name: `The fabric ${name}` });
    const told = await form.getByText(/^In \d+ places? of the quilt/).textContent();
    const places = /\d+ places?/.exec(told!)![0];
    await form.getByRole('button', { name: /Replace with/ }).click();
    await page.getByRole('option').filter({ hasNotText: name }).last().click();
    await form.getByRole('button', { name: 'Replace everywhere' }).click();
    await expect(undoButton(page)).toHaveAccessibleName(new RegExp(`^Undo: replace .* in ${places}$`));
    await expect(page.getByText(new RegExp(`^Replaced .* in ${places}`))).toBeAttached();
    await expect(form.getByText(/^In \d+ places? of the quilt/)).toHaveCount(0);
    await undoButton(page).click();
    await expect(form.getByText(told!)).toBeVisible();
  });
  await test.step('a fabric in use is not removed; another takes its place everywhere, then it goes', async () => {
    await expect(pieces(page).first()).toBeVisible();
    const count = await pieces(page).count();
    await pieces(page).filter({ hasNotText: 'background' }).first().getByRole('button').click();
    const name = await page.getByRole('textbox', { name: 'Name' }).inputValue();
    await page.getByRole('button', { name: 'Remove', exact: true }).click();
    await expect(page.getByRole('alert').filter({ hasText: `${name} is sewn into strip set` })).toBeVisible();
    await page.getByRole('button', { name: /Replace with/ }).click();
    await page.getByRole('option').filter({ hasNotText: name }).last().click();
    await page.getByRole('button', { name: 'Replace everywhere' }).click();
    await expect(undoButton(page)).toHaveAccessibleName(new RegExp(`Undo: replace ${name} with `));
    await page.getByRole('button', { name: 'Remove', exact: true }).click();
    await expect(pieces(page)).toHaveCount(count - 1);
    await expect(page.getByRole('textbox', { name: 'Name' })).toBeHidden();
  });
});

// Step 3: the wedge and what it makes, the first sewn block, and the cutting table.
import { expect, type Page, test } from './guarded';
import { openDemo, planned, setsFromStrips } from './quilt';
import { goTo, openFile, undoAll, undoButton } from './room';

const table = (page: Page) => page.getByRole('region', { name: 'On the cutting table' });
const rows = (page: Page) => table(page).getByRole('button', { name: /^Set \w+: / });
const card = (page: Page, at: number) => table(page).getByRole('listitem').nth(at);
const pool = (page: Page, set: string, tip: string) =>
  table(page).getByRole('button', { name: new RegExp(`^Set ${set}, tip ${tip}: `) });
const figure = (page: Page, name: string) => page.locator('dl > div').filter({ hasText: name }).locator('dd');

test('on the cutting table, each from the quilt as it was opened', async ({ page }) => {
  await openDemo(page, 'harbour-reading-corner', 'Wedges');
  await test.step('the diagram shows as many wedges as the set is said to give', async () => {
    for (const at of [0, 1, 2]) {
      const name = (await rows(page).nth(at).getAttribute('aria-label')) ?? '';
      const [up, down] = [/Up (\d+)/, /down (\d+)/].map((one) => Number(one.exec(name)?.[1]));
      const numbers = await card(page, at).locator('.wdg-number').allTextContents();
      expect(numbers.at(-1)).toBe(String(up! + down!));
      expect(numbers).toHaveLength(up! + down!);
    }
  });
  await undoAll(page);
  await test.step('keeps its height once a set is cut, and the reason stands beside it', async () => {
    const height = page.getByRole('textbox', { name: /^Cut height/ });
    await height.fill('12');
    await height.press('Enter');
    await expect(
      page.getByRole('alert').filter({ hasText: 'Set A is cut; its wedges are 7 1/2" high.' }),
    ).toBeVisible();
    await expect(undoButton(page)).toBeDisabled();
  });
  await undoAll(page);
  await test.step('a set higher than wedge and trim says where the next pair begins, and draws its cuts as far as they run', async () => {
    await page.keyboard.press('Escape');
    await rows(page).first().click();
    // Sets 8" high for a wedge of 7 1/2": above h + t, 7.90".
    await expect(page.getByText(/begin the next pair with the left corner of its rim/)).toContainText(
      'lies about 1/16" off the cut before',
    );
    await expect(page.getByText(/^Cut all other sides along the template only/)).toBeVisible();
    const cuts = await card(page, 0).locator('.wdg-cut-heart').getAttribute('d');
    // Eleven wedges: five pairs share their cut, each tip is trimmed; 22 sides less 5 and 11 tips.
    expect(cuts?.match(/M/g)).toHaveLength(28);
  });
  await undoAll(page);
  await test.step('a lost wedge that a block uses shows what changes before it does, in one undo', async () => {
    const lost = page.getByRole('button', { name: 'One tip-up wedge of set A is lost' });
    const line = page.getByRole('row', { name: /Tip up/ });
    const [there, , left] = (await line.getByRole('cell').allInnerTexts()).map(Number) as [
      number,
      number,
      number,
    ];
    for (let spare = 0; spare < left; spare += 1) await lost.click();
    await expect(line.getByRole('cell').nth(2)).toHaveText('0');
    await lost.click();
    await expect(page.getByText(/\d places? (changes?|stays? empty)/)).toBeVisible();
    await expect(line.getByRole('cell').first()).toHaveText(String(there - left));
    await page.getByRole('button', { name: 'It is lost; change the plan' }).click();
    await expect(line.getByRole('cell').first()).toHaveText(String(there - left - 1));
    await expect(undoButton(page)).toHaveAccessibleName('Undo: count one wedge fewer of set A');
    await undoButton(page).click();
    await expect(line.getByRole('cell').first()).toHaveText(String(there - left));
  });
  await undoAll(page);
  await test.step('one wedge more is counted, and the count can go back to what the set gives', async () => {
    const there = page
      .getByRole('row', { name: /Tip down/ })
      .getByRole('cell')
      .first();
    const before = Number(await there.textContent());
    await page.getByRole('button', { name: 'One tip-down wedge of set A more' }).click();
    await expect(there).toHaveText(String(before + 1));
    const more = card(page, 0).getByText('Not drawn: 1 tip down more than fit on set A.');
    await expect(more).toBeVisible();
    await page.getByRole('button', { name: 'Count as the set gives' }).click();
    await expect(there).toHaveText(String(before));
    await expect(more).toHaveCount(0);
  });
  await undoAll(page);
  await test.step('a block of 14 1/4 where 14 1/2 was planned gives the seam, and block, corners, sashing and top follow', async () => {
    const field = (label: RegExp) => page.getByRole('textbox', { name: label });
    const figures = async () => {
      await goTo(page, 'Finishing');
      const top = (await figure(page, 'Top, finished').textContent()) ?? '';
      const made = (await figure(page, 'Block, unfinished').textContent()) ?? '';
      await goTo(page, 'Wedges');
      const leg = (await figure(page, 'Corner triangle, finished leg').textContent()) ?? '';
      return { top, made, leg };
    };
    await field(/^Cut height/).fill('7 1/2');
    await field(/^Between wedges/).fill('1/4');
    await field(/^Between wedges/).press('Tab');
    await expect(figure(page, 'Block, before it is sewn in')).toHaveText(/14.1\/2" square/);
    const before = await figures();
    expect(before.made).toMatch(/^14.1\/2" × 14.1\/2"$/);
    await page.getByText('Check against your test block').click();
    await field(/^It measures/).fill('14-1/4');
    await field(/^It measures/).press('Enter');
    // A (14 1/4 − 1/2) / 2 apothem: sa = (7 1/2 + 0.4033 − 1/4 − 6 7/8) sin 22.5° = 0.2978 (trade notes 3, plane geometry).
    await expect(page.getByText(/a seam of about 0\.298" between the wedges/)).toBeVisible();
    await expect(page.getByText(/A ruler read to a sixteenth leaves .* either way\./)).toBeVisible();
    await page.getByRole('button', { name: 'Plan with this seam' }).click();
    await expect(figure(page, 'Block, finished')).toHaveText(/13.3\/4" square/);
    await expect(page.getByText(/is as planned/)).toBeVisible();
    const after = await figures();
    expect(after.made).toMatch(/^14.1\/4" × 14.1\/4"$/);
    expect(after.leg).not.toBe(before.leg);
    expect(after.top).not.toBe(before.top);
    await undoButton(page).click();
    await expect(figure(page, 'Block, finished')).toHaveText('14" square');
  });
  await undoAll(page);
  await test.step('a measure that no seam explains is refused with the reason', async () => {
    await page.getByText('Check against your test block').click();
    const measures = page.getByRole('textbox', { name: /^It measures/ });
    await measures.fill('16');
    await measures.press('Enter');
    await expect(
      page.getByRole('alert').filter({ hasText: /No seam explains a block of 16"/ }),
    ).toBeVisible();
    await expect(measures).toHaveValue('16');
    await expect(page.getByRole('button', { name: 'Plan with this seam' })).toBeHidden();
  });
  await undoAll(page);
  await test.step('a press on the wedges of one tip lights them on the wall, and says in which blocks they are', async () => {
    const lit = page.locator('.wall-area .lit-wedges');
    await pool(page, 'B', 'up').click();
    await expect(pool(page, 'B', 'up')).toHaveAttribute('aria-pressed', 'true');
    await expect(pool(page, 'B', 'up')).toContainText(/In blocks? \d/);
    await expect(lit).toHaveCount(1);
    await pool(page, 'B', 'up').click();
    await expect(lit).toHaveCount(0);
    await pool(page, 'A', 'down').click();
    await goTo(page, 'Blocks');
    await expect(lit).toHaveCount(0);
  });
  await openFile(page, planned());
  await expect(page.getByRole('dialog')).toBeHidden();
  await goTo(page, 'Wedges');
  await test.step('a height that the sets do not give is refused once, with its limit and the ways out', async () => {
    const height = page.getByRole('textbox', { name: /^Cut height/ });
    const refusal = page.getByText(
      /^A wedge 9" high does not fit on set A, which blocks use: it is 8" high\./,
    );
    const refuse = async () => {
      await height.fill('9');
      await height.press('Enter');
      await expect(refusal).toHaveCount(1);
    };
    await refuse();
    const lower = page.getByRole('button', { name: /^Use 7/ });
    const limit = /^Use (.*)"$/.exec(((await lower.textContent()) ?? '').replaceAll('\u00a0', ' '))?.[1];
    await lower.click();
    await expect(refusal).toHaveCount(0);
    await expect(height).toHaveValue(limit ?? '');
    await undoButton(page).click();
    await refuse();
    // All six blocks of this quilt hold wedges of sets that are only planned.
    await expect(page.getByRole('button', { name: 'Make new sets for 9" and empty 6 blocks' })).toBeVisible();
    await page.getByRole('button', { name: 'Empty the blocks and use 9"' }).click();
    await expect(refusal).toHaveCount(0);
    await expect(height).toHaveValue('9');
    await undoButton(page).click();
    await refuse();
    // Other text that is refused takes the ways out of the first with it.
    await height.fill('banana');
    await height.press('Enter');
    await expect(page.getByText('Write a length such as 7 1/2 or 7.5.')).toBeVisible();
    await expect(page.getByRole('button', { name: 'Cancel' })).toBeHidden();
    await height.fill('9');
    await height.press('Enter');
    await page.getByRole('button', { name: 'Cancel' }).click();
    await expect(refusal).toHaveCount(0);
    await expect(height).toHaveValue('7 1/2');
  });
});

test('sets that are made are numbered anew for another height, and cut one after the other', async ({
  page,
}) => {
  await setsFromStrips(page);
  await goTo(page, 'Wedges');
  await test.step('wedges are numbered anew for another height, with no number of before left on the fabric', async () => {
    const height = page.getByRole('textbox', { name: /^Cut height/ });
    const numbers = () => card(page, 0).locator('.wdg-number').allTextContents();
    const was = await height.inputValue();
    const before = await numbers();
    // On a set twice as high as the wedge, wedges lie in two rows and begin in pairs at one place.
    await height.fill('3');
    await height.press('Enter');
    await expect.poll(async () => (await numbers()).length).toBeGreaterThan(before.length);
    await height.fill(was);
    await height.press('Enter');
    await expect.poll(numbers).toEqual(before);
  });
  await test.step('the set to cut next opens from the foot, is marked as cut, and the next one opens', async () => {
    await page.getByRole('button', { name: 'Cut set A next' }).click();
    await expect(page.getByRole('region', { name: 'Set A', exact: true })).toContainText(
      'Straighten the left end',
    );
    await page.getByRole('button', { name: 'Mark set A as cut' }).click();
    await expect(page.getByRole('region', { name: 'Set B', exact: true })).toBeVisible();
    await expect(undoButton(page)).toHaveAccessibleName('Undo: update the progress of a strip set');
  });
});

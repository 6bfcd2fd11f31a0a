// From the cloth on hand to strips: cloth written down, the largest top it makes, what to buy; and forwards from blocks to
// strips. Strips that are locked keep their places.
import { faultsOf } from './axe';
import { expect, type Page, test } from './guarded';
import { openDemo } from './quilt';
import { goTo, undoAll, undoButton } from './room';
import { byFinger, resize } from './within-reach';

const cloth = (page: Page) => page.getByRole('region', { name: 'Fabric on hand' });
const strips = (page: Page) => page.getByRole('region', { name: 'Strips on hand' });
const top = (page: Page) => page.getByRole('region', { name: 'The largest top' });

/** Adds one row of cloth of the fabric that stands at this place in the list, as the kind is usually bought. */
async function addCloth(page: Page, fabric: number, kind: string, pieces: number): Promise<void> {
  await cloth(page)
    .getByRole('button', { name: /Fabric/ })
    .click();
  await page.getByRole('option').nth(fabric).click();
  await cloth(page).getByText(kind, { exact: true }).click();
  const count = cloth(page).getByRole('textbox', { name: 'Pieces' });
  await count.fill(String(pieces));
  await cloth(page).getByRole('button', { name: 'Add this piece' }).click();
}

test('fabric on hand is written down, what to cut is worked out from blocks, and an empty quilt asks for fabric', async ({
  page,
}) => {
  await openDemo(page, 'harbour-reading-corner', 'Fabrics');
  await test.step('yardage, fat quarters and precut strips are written down, changed and taken off, each in one undo', async () => {
    await cloth(page).getByRole('button', { name: 'Add fabric on hand' }).click();
    await cloth(page).getByRole('button', { name: 'Add this piece' }).click();
    await expect(page.getByText('Choose the fabric of this piece.')).toBeVisible();
    await addCloth(page, 1, 'Fat quarter', 3);
    await addCloth(page, 2, 'Precut strips', 10);
    await addCloth(page, 3, 'Yardage', 1);
    await cloth(page).getByRole('button', { name: 'Done' }).click();
    await expect(cloth(page).getByText('14 pieces')).toBeVisible();
    await expect(cloth(page).getByText(/3 times: fat quarter, 18" × 20"/)).toBeVisible();
    await expect(cloth(page).getByText(/10 times: precut strip, 2.1\/2" × /)).toBeVisible();
    await cloth(page)
      .getByRole('button', { name: /^Change the .* on hand, off the bolt/ })
      .click();
    const length = cloth(page).getByRole('textbox', { name: /^Length/ });
    await length.fill('27');
    await length.press('Enter');
    await expect(undoButton(page)).toHaveAccessibleName(/^Undo: change .* on hand$/);
    await cloth(page).getByRole('button', { name: 'Remove this piece' }).click();
    await expect(cloth(page).getByText('13 pieces')).toBeVisible();
    await expect(undoButton(page)).toHaveAccessibleName(/^Undo: remove .* from the fabric on hand$/);
    await undoButton(page).click();
    await expect(cloth(page).getByText(/off the bolt, 27" × /)).toBeVisible();
  });
  await test.step('fabric on hand and a plan of it have no barrier that axe finds, and nothing sticks out of the panel, on a phone too', async () => {
    await cloth(page).getByRole('button', { name: 'Add fabric on hand' }).click();
    await page.getByRole('button', { name: 'How large a top it makes' }).click();
    await top(page).getByText('own', { exact: true }).click();
    await expect(
      top(page)
        .getByText(/strip sets?/)
        .first(),
    ).toBeVisible();
    const faults = async () => {
      const over = await page.locator('.panel').evaluate((panel) => panel.scrollWidth - panel.clientWidth);
      expect(over).toBeLessThanOrEqual(0);
      return faultsOf(page, { within: ['.panel'] });
    };
    expect(await faults()).toEqual([]);
    const desk = page.viewportSize()!;
    await byFinger(page, true);
    await resize(page, [390, 844]);
    expect(await faults()).toEqual([]);
    await byFinger(page, false);
    await resize(page, [desk.width, desk.height]);
    await top(page).getByRole('button', { name: 'Done' }).click();
    await cloth(page).getByRole('button', { name: 'Done' }).click();
  });
  await undoAll(page);
  await test.step('from blocks to strips: another look and fewer fabrics give another list, and it goes on hand in one undo', async () => {
    await page.getByRole('button', { name: 'Work out what to cut' }).click();
    const plan = page.getByRole('region', { name: 'What to cut' });
    const cut = plan.getByRole('button', { name: /^Add these \d+ strips$/ });
    const usual = await plan.getByRole('table').textContent();
    await plan.getByText('own', { exact: true }).click();
    const wide = plan.getByRole('group', { name: 'Wide' });
    await wide.getByRole('textbox', { name: /^Wide/ }).fill('2 1/2');
    await wide.getByRole('textbox', { name: /^Wide/ }).press('Enter');
    await wide.getByRole('textbox', { name: 'Parts' }).fill('3');
    await wide.getByRole('textbox', { name: 'Parts' }).press('Enter');
    await expect(plan.getByRole('columnheader', { name: /2.1\/2"/ })).toBeVisible();
    expect(await plan.getByRole('table').textContent()).not.toBe(usual);
    await plan.getByText(/^From \d+ of \d+ fabrics$/).click();
    await plan.getByRole('checkbox').first().uncheck();
    const rows = await plan.getByRole('rowheader').count();
    expect(rows).toBe((await plan.getByRole('checkbox').count()) - 1);
    // A size instead of a number of blocks: ways to come near it, with the cloth to buy.
    await plan.getByText('A size', { exact: true }).click();
    await plan.getByRole('textbox', { name: /^Width/ }).fill('60');
    await plan.getByRole('textbox', { name: /^Width/ }).press('Enter');
    await plan.getByRole('textbox', { name: /^Height/ }).fill('72');
    await plan.getByRole('textbox', { name: /^Height/ }).press('Enter');
    const ways = plan.getByRole('group', { name: 'Ways to get close to it' }).getByRole('radio');
    await expect(ways.first()).toBeChecked();
    const first = await plan.getByText(/^Around the blocks, for /).textContent();
    await ways.nth(1).check();
    await expect(plan.getByText(/^Around the blocks, for /)).not.toHaveText(first ?? '');
    await expect(plan.getByRole('cell', { name: / yd$/ }).first()).toBeVisible();
    await expect(plan.getByText(/ yd for corners/)).toBeVisible();
    await expect(
      plan.getByText(/takes less fabric with this mix of widths|might take a little less fabric/),
    ).toBeVisible();
    const planned = Number(/\d+/.exec((await cut.textContent()) ?? '')?.[0]);
    await cut.click();
    await expect(undoButton(page)).toHaveAccessibleName(`Undo: add ${planned} strips`);
  });
  await test.step('asks for the fabric again in an empty quilt, and nothing is planned from nothing', async () => {
    await page.getByRole('button', { name: /^Quilt:/ }).click();
    await page.getByRole('button', { name: 'New quilt' }).click();
    await expect(page.getByRole('dialog')).toBeHidden();
    await goTo(page, 'Fabrics');
    await expect(cloth(page).getByText(/Add what is not cut into strips yet/)).toBeVisible();
    await expect(page.getByRole('button', { name: 'How large a top it makes' })).toBeHidden();
  });
});

test('how large a top strips and fabric make, and sets of strips of which one is locked', async ({
  page,
}) => {
  await openDemo(page, 'kiln-shed', 'Fabrics');
  await test.step('it says how large a top the strips make as they are and with cloth cut, and all of it is used in one undo', async () => {
    const written = strips(page).getByText(/^\d+ strips$/);
    const before = Number(/\d+/.exec((await written.textContent()) ?? '')?.[0]);
    await cloth(page).getByRole('button', { name: 'Add fabric on hand' }).click();
    await addCloth(page, 1, 'Yardage', 1);
    await addCloth(page, 2, 'Fat quarter', 2);
    await cloth(page).getByRole('button', { name: 'Done' }).click();
    await page.getByRole('button', { name: 'How large a top it makes' }).click();
    await expect(top(page).getByText(/^With your strips as they are: \d+ sets, \d+ wedges, /)).toBeVisible();
    await expect(top(page).getByText(/once those sets are laid: \d+ blocks, \d+ more\.$/)).toBeVisible();
    await expect(top(page).getByText(/makes \d+ (more )?strip sets/)).toBeVisible();
    await expect(
      top(page).getByText(/No more blocks can be cut from it|A cut that gives more blocks may exist/),
    ).toBeVisible();
    await top(page).getByRole('button', { name: 'What to buy' }).click();
    await expect(top(page).getByText(/^For \d+ blocks buy, of fabric .* wide:$/)).toBeVisible();
    await expect(top(page).getByRole('status').getByRole('listitem').first()).toHaveText(/: [\d\s/]+ yd$/);
    // The size of the top, and whether the background cloth is enough for it.
    await expect(top(page).getByText(/a top of \d+ rows of \d+: .* finished\./)).toBeVisible();
    await expect(
      top(page)
        .getByText(/ for corners.*: (there is enough|none is on hand|.* more to buy)\.$/)
        .first(),
    ).toBeVisible();
    const cut = top(page).getByRole('button', { name: /^Lay \d+ sets\. Cut and add \d+ strips$/ });
    const [sets, planned] = ((await cut.textContent()) ?? '').match(/\d+/g)!.map(Number);
    expect(planned).toBeGreaterThan(4);
    await cut.click();
    await expect(undoButton(page)).toHaveAccessibleName(
      `Undo: lay ${sets} strip sets, cut ${planned} strips from the fabric`,
    );
    const after = Number(/\d+/.exec((await written.textContent()) ?? '')?.[0]);
    expect(after).toBeGreaterThan(before);
    await undoButton(page).click();
    await expect(written).toHaveText(`${before} strips`);
  });
  await test.step('a locked strip keeps its place when sets are made anew', async () => {
    await goTo(page, 'Strip sets');
    await page.getByRole('button', { name: 'Make sets' }).click();
    await expect(page.getByText(/\d+ sets made, /)).toBeVisible();
    const sets = page.getByRole('region', { name: 'The sets' });
    await sets.getByRole('button', { name: /^Set A: / }).click();
    const open = page.getByRole('region', { name: 'Set A', exact: true });
    const lines = open.getByRole('button', { name: /^Strip \d+: / });
    const strip = async (number: number) =>
      (await open
        .getByRole('button', { name: new RegExp(`^Strip ${number}: `) })
        .getAttribute('aria-label')) ?? '';
    const kept = await strip(1);
    const others = async () => (await lines.evaluateAll((all) => all.map((one) => one.ariaLabel))).join('|');
    const before = await others();
    await open.getByRole('button', { name: /^Strip 1: / }).click();
    await open.getByRole('button', { name: 'Lock strip 1' }).click();
    await open.getByRole('button', { name: /^Strip 1: / }).click();
    await expect.poll(() => strip(1)).toBe(`${kept}, locked`);
    await page.getByRole('button', { name: 'Try another mix' }).click();
    await expect.poll(others).not.toBe(before.replace(kept, `${kept}, locked`));
    await expect.poll(() => strip(1)).toBe(`${kept}, locked`);
  });
});

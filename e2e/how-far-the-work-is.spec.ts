// How far the work is, for many at once, and what can no longer change; another number of wedges to the block; the block's card.
import { readFileSync } from 'node:fs';
import { expect, type Page, test } from './guarded';
import { openDemo } from './quilt';
import { block, goTo, hangsAt, openFile, openPart, undoAll, undoButton } from './room';

const stage = (page: Page, name: string) => page.locator('.marking').getByRole('button', { name });

/** A quilt without blocks gets another number of wedges to the block. All numbers: tests/editing/otherWedgeCounts.test.ts. */
async function otherCount(page: Page, count: number): Promise<void> {
  await goTo(page, 'Wedges');
  await page.getByText(String(count), { exact: true }).first().click();
  await page.getByText(/^It makes a block/).click();
  await expect(page.getByText(/^Setting piece, cut: /)).toBeVisible();
  await goTo(page, 'Strip sets');
  await page.getByText('a number of sets', { exact: true }).click();
  await page.getByRole('textbox', { name: 'Number of sets' }).fill('3');
  await page.getByRole('button', { name: 'Make sets' }).click();
  await expect(page.getByText(/\d+ sets made, /)).toBeVisible();
  await goTo(page, 'Wedges');
  await expect(page.getByRole('button', { name: /^Set A: Up \d+/ })).toBeVisible();
  await goTo(page, 'Blocks');
  await page
    .locator('.step-foot')
    .getByRole('button', { name: /^Add \d+ blocks?$/ })
    .click();
  await expect(page.getByText(/^\d+ blocks added and filled\.$/)).toBeVisible();
  await page.getByRole('button', { name: /^Block 1: / }).click();
  await expect(page.getByRole('radio', { name: /^Place \d+: set/ })).toHaveCount(count);
  await page.getByText('Block card').click();
  await expect(page.getByText(/^The four setting pieces go on at places/)).toBeVisible();
  await goTo(page, 'Wall');
  await block(page, 1).focus();
  await page.keyboard.press('r');
  await expect(undoButton(page)).toHaveAccessibleName('Undo: turn block 1');
}

test('the block card, what can no longer change once it is sewn, the weight, and another number of wedges', async ({
  page,
}) => {
  await openDemo(page, 'harbour-reading-corner', 'Blocks');
  await test.step('the block card lists place by place what to lay, and goes to the printer', async () => {
    await page.evaluate(() => {
      globalThis.print = () =>
        document.body.setAttribute('data-printed', document.documentElement.dataset.print ?? '');
    });
    await page.getByRole('button', { name: /^Block 5: / }).click();
    await page.getByText('Block card').click();
    await expect(
      page.getByText(/^Place 1: set \w+, tip (up|down); seams towards the (rim|middle)/),
    ).toBeVisible();
    await expect(page.getByText(/^Corner triangles on places /)).toBeVisible();
    await page.getByRole('button', { name: 'Print', exact: true }).click();
    await expect(page.locator('body')).toHaveAttribute('data-printed', 'block-sheet');
  });
  await test.step('the card numbers its drawing clockwise from the dark disc, and corners lie on the places it names', async () => {
    const card = page.locator('.block-sheet');
    /** Eighths clockwise from the top at which the numbers lie, in the order 1 to 8. */
    const standing = () =>
      card.locator('.block-figure > g[transform^="translate"]').evaluateAll((discs) =>
        discs
          .map((disc) => {
            const { e, f } = (disc as SVGGElement).transform.baseVal.consolidate()!.matrix;
            const eighths = (Math.round((Math.atan2(e, -f) * 4) / Math.PI) + 8) % 8;
            return { number: Number(disc.textContent), eighths };
          })
          .sort((one, other) => one.number - other.number)
          .map(({ eighths }) => eighths),
      );
    const corners = async () => {
      const words = await card.getByText(/^Corner triangles on places /).textContent();
      return (words?.match(/\d+/g) ?? []).map(Number);
    };
    const carrying = (at: number[]) => at.flatMap((eighths, place) => (eighths % 2 === 1 ? [place + 1] : []));
    await expect(card.locator('.place-first')).toHaveText('1');
    const before = await standing();
    expect(before).toEqual(before.map((_, place) => (before[0]! + place) % 8));
    expect(await corners()).toEqual(carrying(before));
    await page.getByRole('button', { name: 'Corners one wedge forward' }).click();
    await expect.poll(standing).toEqual(before.map((eighths) => (eighths + 1) % 8));
    expect(await corners()).toEqual(carrying(before.map((eighths) => eighths + 1)));
  });
  await undoAll(page);
  await page.getByRole('button', { name: 'All blocks' }).click();
  await test.step('a row sewn together is marked at once, stays where it hangs, and can be set back', async () => {
    await page.getByRole('button', { name: 'Start over' }).click();
    await page.getByRole('button', { name: 'Update progress' }).click();
    await page.getByLabel('Choose a row of the wall').selectOption('Row 1');
    await expect(page.getByText('2 chosen')).toBeVisible();
    await stage(page, 'In its row').click();
    await expect(undoButton(page)).toHaveAccessibleName('Undo: update the progress of 2 blocks');
    const sewn = page.getByRole('button', { name: /^Block \d+: .*, In its row$/ });
    await expect(sewn).toHaveCount(2);
    const number = Number(/\d+/.exec((await sewn.first().getAttribute('aria-label')) ?? '')?.[0]);
    await page.getByRole('button', { name: 'Done' }).click();
    await goTo(page, 'Wall');
    const place = await hangsAt(page, number);
    await block(page, number).focus();
    await page.keyboard.press('r');
    await expect(
      page.getByText(`Block ${number} is sewn into its row; it stays where it is.`).first(),
    ).toBeAttached();
    await expect.poll(() => hangsAt(page, number)).toBe(place);
    await expect(undoButton(page)).toHaveAccessibleName('Undo: update the progress of 2 blocks');
    await undoButton(page).click();
    await block(page, number).focus();
    await page.keyboard.press('r');
    await expect(undoButton(page)).toHaveAccessibleName(`Undo: turn block ${number}`);
  });
  await undoAll(page);
  await goTo(page, 'Blocks');
  await test.step('a sewn block keeps its wedges, and the sets they came from are cut', async () => {
    await page.getByRole('button', { name: 'Update progress' }).click();
    await page.getByRole('button', { name: 'Choose all shown' }).click();
    await stage(page, 'Wedges joined').click();
    await page.getByRole('button', { name: 'Done' }).click();
    await expect(page.getByRole('button', { name: /^Block \d+: .*, Wedges joined$/ }).first()).toBeVisible();
    await expect(page.getByRole('button', { name: 'Start over' })).toBeDisabled();
    await goTo(page, 'Strip sets');
    const sets = page.getByRole('region', { name: 'The sets' });
    await sets.getByRole('button', { name: /^Set A: .*; cut$/ }).click();
    await expect(page.getByRole('button', { name: /^Move strip/ })).toHaveCount(0);
    const length = page.getByRole('textbox', { name: /^Usable length/ });
    await length.fill('39');
    await length.press('Enter');
    await expect(page.getByText('Set A is cut; count its wedges instead.').first()).toBeVisible();
    await goTo(page, 'Wedges');
    const height = page.getByRole('textbox', { name: /^Cut height/ });
    await height.fill('7');
    await height.press('Enter');
    await expect(
      page.getByRole('alert').filter({ hasText: /is cut; its wedges are .* high\./ }),
    ).toBeVisible();
  });
  await undoAll(page);
  await test.step('weight and bulk: seams, layers, the weight with and without sashing, and what follows', async () => {
    await goTo(page, 'Finishing');
    await openPart(page, 'Weight and bulk');
    const weight = page.getByRole('region', { name: 'Weight and bulk' });
    await expect(weight.getByText(/^\d+ \+ 8 \+ 4$/)).toBeVisible();
    await expect(weight.getByText(/^about \d+ to \d+ oz$/).first()).toBeVisible();
    await expect(weight.getByText(/a typical figure/)).toBeVisible();
    await expect(weight.getByRole('listitem').first()).toContainText('layers of fabric');
  });
  await openFile(page, readFileSync('demo-data/kiln-shed.json', 'utf8'));
  await expect(page.getByRole('dialog')).toBeHidden();
  await test.step('6 wedges to the block: sets, wedges, blocks and wall', () => otherCount(page, 6));
});

// The tool worked by keys: '?' lists them, Escape closes what was opened last, one thing at a time, Back what lies over the page; and undo in
// a field and of the quilt agree, in every field of a number or a length.
import { NO_PICTURES } from '../src/model/picture/picture';
import { writeProject } from '../src/model/reading/read';
import { demo } from '../tests/demo';
import { holdsFocus, opensAndCloses, press } from './focus';
import { expect, type Locator, type Page, test } from './guarded';
import { button, foot, goTo, openPart, settled, undoAll, undoButton, unfold } from './room';
import { openSaved } from './stored';

/** Another value than the one that stands in the field, of its kind. */
function another(text: string): string {
  const whole = /^\d+$/.test(text);
  if (text === '') return '2';
  return whole
    ? String(Number(text) + 1)
    : `${text.split(' ')[0]!.replace(/\/.*$/, '')} 3/4`.replace(/^\d+ /, (n) => `${Number(n) + 1} `);
}

interface Field {
  readonly name: string;
  readonly before: string;
  readonly typed: string;
}

/** What stands in the fields that can be typed into, and what to type there; null for others. */
async function fieldsOf(fields: Locator): Promise<readonly (Field | null)[]> {
  const found = await fields.evaluateAll((all) =>
    (all as HTMLInputElement[]).map((one) => {
      const { value: before, labels, ariaLabel, readOnly, disabled } = one;
      const open = !readOnly && !disabled && one.checkVisibility({ visibilityProperty: true });
      return { before, name: labels?.[0]?.textContent ?? ariaLabel ?? '', open };
    }),
  );
  return found.map(({ before, name, open }) =>
    open && /^[\d ./,]*$/.test(before) ? { before, name, typed: another(before) } : null,
  );
}

/** Text that is not taken yet goes by Ctrl Z, and the quilt stays: that is the browser's own, and the same in each field. */
async function undoBeforeTaken(page: Page, selector: string): Promise<void> {
  const fields = await fieldsOf(page.locator(selector));
  const first = fields.findIndex((one) => one !== null);
  const { name, before, typed } = fields[first]!;
  const field = page.locator(selector).nth(first);
  const undo = await undoButton(page).getAttribute('aria-label');
  await field.focus();
  await page.keyboard.press('Control+a');
  await page.keyboard.type(typed);
  for (let letter = 0; letter < 6 && (await field.inputValue()) !== before; letter += 1)
    await page.keyboard.press('Control+z');
  expect(await field.inputValue(), `${name}, before it is taken`).toBe(before);
  expect(await undoButton(page).getAttribute('aria-label'), name).toBe(undo);
}

/**
 * Types into every field of a number or length in turn, takes it by Enter, and takes that back by Ctrl Z. Returns how many took what was
 * typed. All in one visit to the page, which is asked some hundred things here: keys are events that the tool is given.
 */
async function undoInEach(page: Page, selector: string): Promise<number> {
  await settled(page);
  const fields = await fieldsOf(page.locator(selector));
  const { taken, faults } = await undoButton(page).evaluate(
    async (undo, [selector, fields]) => {
      const key = (to: HTMLElement, key: string, ctrlKey = false) =>
        to.dispatchEvent(new KeyboardEvent('keydown', { key, ctrlKey, bubbles: true, cancelable: true }));
      const drawn = () => new Promise((on) => setTimeout(on, 10));
      const until = async (reached: () => boolean) => {
        for (let wait = 0; wait < 500 && !reached(); wait += 1) await drawn();
      };
      const faults: string[] = [];
      let taken = 0;
      for (const [at, field] of fields.entries()) {
        if (!field) continue;
        const { name, before, typed } = field;
        const input = () => document.querySelectorAll<HTMLInputElement>(selector)[at]!;
        const label = undo.ariaLabel;
        input().focus();
        input().select();
        document.execCommand('insertText', false, typed);
        await drawn();
        key(input(), 'Enter');
        // Taken, or refused with the reason; what is the same in other words is neither.
        await until(() => input().value === input().dataset.shown || input().ariaInvalid === 'true');
        if (input().ariaInvalid === 'true' || input().value === before) {
          key(input(), 'Escape');
          continue;
        }
        // Enter may go on to the next cell of a grid.
        input().focus();
        await drawn();
        if (key(input(), 'z', true)) faults.push(`${name}: Ctrl Z is left to the browser`);
        await until(() => input().value === before);
        if (input().value !== before)
          faults.push(`${name}, once it is taken: ${input().value}, not ${before}`);
        if (undo.ariaLabel !== label) faults.push(`${name}: ${undo.ariaLabel}, not ${label}`);
        taken += 1;
      }
      return { taken, faults };
    },
    [selector, fields] as const,
  );
  expect(faults).toEqual([]);
  return taken;
}

/** The first example with sashing and a border, so that their fields are there. */
function sashed(): string {
  const project = demo('harbour-reading-corner');
  const sashing = { ...project.setting.sashing, where: 'between' as const };
  const setting = { ...project.setting, sashing, borders: [{ fabric: 'oar', width: 3 }] };
  return writeProject({ ...project, setting }, NO_PICTURES);
}

test('by keys: the wall, lists of keys and words, Back; on every step Escape, and undo in every field of a number or length', async ({
  page,
}) => {
  await openSaved(page, sashed());
  await test.step('after a block was taken down and the undo the focus is on its place of the wall', async () => {
    const block = page.getByRole('button', { name: /^Block 1, row/ });
    await block.focus();
    await page.keyboard.press('Delete');
    await expect(block).toBeHidden();
    await holdsFocus(page, 'Delete', '.wall-area');
    await page.keyboard.press('Control+z');
    await expect(block).toBeVisible();
    await expect(block).toBeFocused();
  });
  await test.step('undo in a field takes back letters until they are taken, then the change of the quilt', async () => {
    const rows = page.getByRole('textbox', { name: 'Rows' });
    const before = await rows.inputValue();
    const label = await undoButton(page).getAttribute('aria-label');
    await rows.focus();
    await rows.press('Control+a');
    await rows.pressSequentially('8');
    await rows.press('Control+z');
    await expect(rows).toHaveValue(before);
    await expect(undoButton(page)).toHaveAccessibleName(label!);
    await rows.press('Control+a');
    await rows.pressSequentially('8');
    await rows.press('Enter');
    await expect(page.getByRole('group', { name: /^8 down/ })).toBeAttached();
    await rows.press('Control+z');
    await expect(rows).toHaveValue(before);
    await expect(page.getByRole('group', { name: new RegExp(`^${before} down`) })).toBeAttached();
    await rows.press('Control+y');
    await expect(rows).toHaveValue('8');
    await expect(page.getByRole('group', { name: /^8 down/ })).toBeAttached();
  });
  await undoAll(page);
  await test.step('a question mark lists all keys, the menu too, and Escape closes the list', async () => {
    const list = page.getByRole('dialog', { name: 'Keys' });
    await page.locator('[data-cell][tabindex="0"]').focus();
    await page.keyboard.press('?');
    await expect(list).toBeFocused();
    await expect(list).toContainText('F6');
    for (const part of ['Everywhere', 'Design wall', 'Strip sets', 'Grid of strips', 'Opened block'])
      await expect(list.getByRole('heading', { name: part })).toBeAttached();
    await expect(list.getByText('Ctrl Z', { exact: true })).toBeAttached();
    await page.keyboard.press('Escape');
    await expect(list).toBeHidden();
    await expect(page.locator('[data-cell]:focus')).toBeAttached();
    await button(page, /^Quilt:/).focus();
    await page.keyboard.press('Enter');
    await press(page, button(page, 'Keys'), '[role="dialog"]');
    await expect(list).toBeVisible();
    await page.keyboard.press('Escape');
    await expect(list).toBeHidden();
    await holdsFocus(page, 'the keys', '.top-bar');
    // In a field it is a letter.
    const rows = page.getByRole('textbox', { name: 'Rows' });
    await rows.focus();
    await page.keyboard.press('?');
    await expect(list).toBeHidden();
    await page.keyboard.press('Escape');
  });
  await test.step('the words of the trade are in the menu, found by typing; Escape closes them and the focus goes back', async () => {
    const quilt = button(page, /^Quilt:/);
    await quilt.focus();
    await page.keyboard.press('Enter');
    await press(page, button(page, 'Words'), '[role="dialog"]');
    const list = page.getByRole('dialog', { name: 'Words of the trade' });
    await expect(list.getByRole('status')).toHaveText(/^\d+ words$/);
    await expect(list.getByRole('searchbox', { name: 'Find a word' })).toBeFocused();
    await page.keyboard.type('Corners');
    await expect(list.getByRole('term').first()).toHaveText('cornerstone');
    await expect(list.getByRole('definition').first()).toHaveText(
      'A square where two strips of sashing cross.',
    );
    await page.keyboard.press('Escape');
    await expect(list).toBeHidden();
    await expect(quilt).toBeFocused();
  });
  await test.step('Back closes a dialog first, then goes a step back and forth without loading the page anew', async () => {
    await page.evaluate(() => Object.assign(window, { stays: true }));
    await goTo(page, 'Fabrics');
    await goTo(page, 'Strip sets');
    await button(page, /^Quilt:/).click();
    const menu = page.getByRole('dialog', { name: 'Quilts and files' });
    await expect(menu).toBeVisible();
    await page.goBack();
    await expect(menu).toBeHidden();
    await expect(page.getByRole('heading', { level: 2, name: 'Strip sets', exact: true })).toBeVisible();
    await page.goBack();
    await expect(page.getByRole('heading', { level: 2, name: 'Fabrics', exact: true })).toBeVisible();
    await page.goBack();
    await expect(page.getByRole('heading', { level: 2, name: 'Wall', exact: true })).toBeVisible();
    await page.goForward();
    await expect(page.getByRole('heading', { level: 2, name: 'Fabrics', exact: true })).toBeVisible();
    expect(await page.evaluate(() => 'stays' in window)).toBe(true);
  });
  const fields = '.panel input[data-shown]';
  let taken = 0;
  await test.step('Fabrics: Escape closes the strips, a plan, a fold, what to cut, a new one; undo in the fields of plans', async () => {
    await goTo(page, 'Fabrics');
    const cutting = page.getByRole('region', { name: 'What to cut' });
    await opensAndCloses(page, [
      { open: button(page, 'Add a fabric'), there: page.getByRole('form', { name: 'A new fabric' }) },
      { open: button(page, 'Work out what to cut'), there: cutting },
      {
        open: cutting.locator('summary', { hasText: 'fabrics' }).first(),
        there: cutting.getByRole('checkbox').first(),
      },
      {
        open: button(page, 'How large a top it makes'),
        there: page.getByRole('region', { name: 'The largest top' }),
      },
      { open: button(page, 'Change strips'), there: page.getByRole('region', { name: 'Enter strips' }) },
    ]);
    for (const name of ['Work out what to cut', 'How large a top']) await button(page, name).click();
    await unfold(page);
    await undoBeforeTaken(page, fields);
    taken += await undoInEach(page, fields);
  });
  await test.step('the grid of strips: undo in its cells', async () => {
    await button(page, 'Change strips').click();
    await undoBeforeTaken(page, '.grid-input[data-line="0"]');
    taken += await undoInEach(page, '.grid-input[data-line="0"]');
  });
  await test.step('Strip sets, Wedges and Blocks: Escape closes the question before a set goes, a set, progress, a block; undo in fields', async () => {
    await goTo(page, 'Strip sets');
    await opensAndCloses(page, [
      { open: button(page, /^Set A:/), there: page.getByRole('region', { name: 'Set A' }).first() },
      { open: button(page, /^Remove set A/), there: button(page, 'Remove it anyway') },
    ]);
    await button(page, /^Set A:/).click();
    await unfold(page);
    taken += await undoInEach(page, fields);
    await goTo(page, 'Wedges');
    await unfold(page);
    taken += await undoInEach(page, fields);
    await goTo(page, 'Blocks');
    await opensAndCloses(page, [
      { open: button(page, 'Update progress'), there: button(page, 'Choose all shown') },
    ]);
    await opensAndCloses(page, [
      { open: button(page, /^Block 1:/), there: page.getByRole('heading', { level: 2, name: 'Block 1' }) },
    ]);
    await opensAndCloses(page, [
      { open: button(page, 'Show the wall large'), there: button(page, 'Back to the blocks') },
    ]);
    await unfold(page);
    taken += await undoInEach(page, fields);
  });
  await test.step('Wall: Escape closes the answer of a shuffle, a fold, a finding; undo in fields', async () => {
    await goTo(page, 'Wall');
    const shuffle = foot(page).getByRole('button', { name: 'Shuffle' });
    await opensAndCloses(page, [
      { open: page.locator('.finding > button').first(), there: page.locator('.mends').first() },
      { open: page.locator('summary', { hasText: /^Sashing/ }), there: page.getByText('Between and around') },
      { open: shuffle, there: foot(page).getByRole('button', { name: /^(Cancel|Close)$/ }) },
    ]);
    await expect(shuffle).toBeVisible();
    await unfold(page);
    taken += await undoInEach(page, fields);
  });
  await test.step('Finishing: undo in fields', async () => {
    await goTo(page, 'Finishing');
    for (const part of ['Fabric and cutting list', 'Kits and cost', 'Weight and bulk']) {
      await openPart(page, part);
      taken += await undoInEach(page, fields);
    }
  });
  expect(taken).toBeGreaterThan(20);
});

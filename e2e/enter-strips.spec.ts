// Strips entered in the grid: by keys alone, the same for all, pasted, and as CSV both ways.
import { readFileSync } from 'node:fs';
import type { Project } from '../src/model/project';
import { expect, type Page, test } from './guarded';
import { firstVisit, goTo, openFile, undoAll, undoButton } from './room';
import { openSaved } from './stored';

/** A quilt of so many fabrics and a background, with no strips yet. */
function fabricsOnly(cloths: number, from = 'kiln-shed'): Project {
  const project = JSON.parse(readFileSync(`demo-data/${from}.json`, 'utf8')) as Project;
  const own = project.fabrics.filter((fabric) => !fabric.background).slice(0, cloths);
  const made = Array.from({ length: cloths - own.length }, (_, at) => ({
    ...own[at % own.length]!,
    id: `made${at}`,
    name: `${own[at % own.length]!.name}, bolt ${at}`,
  }));
  const fabrics = [...project.fabrics.filter((fabric) => fabric.background), ...own, ...made];
  return { ...project, fabrics, stripsOnHand: [], clothOnHand: [] };
}

const grid = (page: Page) => page.getByRole('region', { name: 'Enter strips' });
const total = (page: Page) => grid(page).locator('output');
const cell = (page: Page, fabric: string, width: string) =>
  grid(page).getByRole('textbox', { name: `${fabric}: strips ${width} wide` });
const width = (page: Page, column: number) =>
  grid(page).getByRole('textbox', { name: `Cut width of column ${column}` });

/** Types by keys alone, and counts those that are no digits. */
function typist(page: Page) {
  let keys = 0;
  return {
    keys: () => keys,
    async type(text: string): Promise<void> {
      keys += text.replace(/\d/g, '').length;
      await page.keyboard.type(text);
    },
    async press(key: string): Promise<void> {
      keys += 1;
      await page.keyboard.press(key);
    },
  };
}

async function paste(page: Page, text: string): Promise<void> {
  await page.evaluate((plain) => {
    const data = new DataTransfer();
    data.setData('text/plain', plain);
    const event = new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true });
    document.activeElement!.dispatchEvent(event);
  }, text);
}

/** Twelve fabrics have so many lines more than the grid that is filled here. */
const FURTHER_LINES = 8;

test('the grid of four fabrics: by keys alone, the same for all, refused numbers, widths and lengths changed, tables pasted', async ({
  page,
}) => {
  const quilt = fabricsOnly(4);
  const { fabrics } = quilt;
  await openSaved(page, JSON.stringify(quilt));
  await goTo(page, 'Fabrics');
  await test.step('line by line, Enter after Tabs goes to where they began, and nothing typed is lost on leaving', async () => {
    const hands = typist(page);
    await page.getByRole('button', { name: 'Enter strips' }).click();
    // The usual widths stand there; over them and 'Same for all' to the first fabric.
    await hands.press('Enter');
    await hands.press('Enter');
    for (let line = 0; line < 4; line += 1) {
      await hands.type('4');
      await hands.press('Tab');
      await hands.type('4');
      await hands.press('Tab');
      await hands.type('2');
      if (line < 3) await hands.press('Enter');
    }
    // The last number is in the sum while it is typed, and on hand once the grid is closed.
    await expect(total(page)).toHaveText('40');
    // A further line takes two Tabs and Enter.
    expect(hands.keys() + 3 * FURTHER_LINES).toBeLessThan(60);
    await page.getByRole('button', { name: 'Done' }).click();
    await expect(page.getByRole('button', { name: 'Change strips' })).toBeFocused();
    await expect(page.getByRole('region', { name: 'Strips on hand' })).toContainText('40 strips');
    await expect(undoButton(page)).toHaveAccessibleName(
      `Undo: enter 2 strips of ${fabrics[4]!.name}, 2" wide`,
    );
    test.info().annotations.push({ type: 'keys, by lines', description: String(hands.keys()) });
  });
  await test.step('12 fabrics × 3 widths of their own would take fewer than 60 keys besides digits, column by column', async () => {
    await undoAll(page);
    const hands = typist(page);
    await page.getByRole('button', { name: 'Enter strips' }).focus();
    await hands.press('Enter');
    await expect(width(page, 1)).toBeFocused();
    for (const [at, text] of ['1 1/4', '1 3/8', '2.2'].entries()) {
      await hands.type(text);
      await hands.press(at < 2 ? 'Tab' : 'Enter');
    }
    // Over the line 'Same for all' to the first fabric.
    await hands.press('Enter');
    let sum = 0;
    for (let column = 0; column < 3; column += 1) {
      for (let line = 0; line < 4; line += 1) {
        const count = 10 * column + line + 1;
        sum += count;
        await hands.type(String(count));
        await hands.press('Enter');
      }
    }
    // A further line takes Enter in each column.
    expect(hands.keys() + 3 * FURTHER_LINES).toBeLessThan(60);
    await expect(total(page)).toHaveText(String(sum));
    expect(sum).toBe(3 * 10 + 4 * 30);
    await expect(cell(page, fabrics[1]!.name, '1 1/4"')).toHaveValue('1');
    await expect(cell(page, fabrics[4]!.name, '2 3/16"')).toHaveValue('24');
    await expect(page.getByRole('region', { name: 'Strips on hand' })).toContainText(`${sum} strips`);
    test.info().annotations.push({ type: 'keys, by columns', description: String(hands.keys()) });
  });
  await test.step('the same for all fills a column in one undo, a bad cell says why and keeps its text, Ctrl+Z takes back', async () => {
    await page.getByRole('button', { name: 'Done' }).click();
    await undoAll(page);
    await page.getByRole('button', { name: 'Enter strips' }).click();
    const all = grid(page).getByRole('textbox', { name: 'Strips 1 1/2" wide, the same for all fabrics' });
    await all.fill('3');
    await all.press('Enter');
    await expect(total(page)).toHaveText('12');
    await expect(undoButton(page)).toHaveAccessibleName('Undo: enter strips in 4 cells');
    const second = cell(page, fabrics[2]!.name, '1 1/2"');
    await second.fill('a few');
    await second.press('Enter');
    await expect(grid(page).getByText('Write a whole number up to 10,000.')).toBeVisible();
    await expect(second).toHaveValue('a few');
    await expect(second).toBeFocused();
    await expect(all).toHaveValue('3');
    await page.getByRole('button', { name: 'Done' }).click();
    await expect(second).toBeFocused();
    await second.press('Escape');
    await expect(grid(page).getByText('Write a whole number')).toBeHidden();
    await second.fill('5');
    await second.press('Enter');
    await expect(all).toHaveValue('');
    await page.keyboard.press('Control+z');
    await expect(second).toHaveValue('3');
    await page.keyboard.press('Control+z');
    await expect(total(page)).toHaveText('0');
    // Another length for all, one of its own for a line, and a second line for odd strips.
    await grid(page).getByRole('textbox', { name: 'Length of all strips' }).fill('36');
    await page.keyboard.press('Enter');
    await all.fill('2');
    await all.press('Enter');
    await second.focus();
    await page.getByRole('button', { name: 'Add a length' }).click();
    const odd = grid(page).getByRole('textbox', {
      name: `${fabrics[2]!.name}: strips 1 1/2" wide, 18" long`,
    });
    await odd.fill('7');
    await odd.press('Enter');
    await expect(total(page)).toHaveText('15');
    await expect(page.getByRole('region', { name: 'Strips on hand' })).toContainText('from 18" to 36" long');
  });
  await page.getByRole('button', { name: 'Done' }).click();
  await undoAll(page);
  await test.step('a refused number is there again, with its reason, after another step', async () => {
    await page.getByRole('button', { name: 'Enter strips', exact: true }).click();
    const one = cell(page, fabrics[1]!.name, '1"');
    await one.fill('many');
    await goTo(page, 'Wedges');
    await goTo(page, 'Fabrics');
    await expect(one).toHaveValue('many');
    await expect(grid(page).getByText(/^Write a whole number up to/)).toBeVisible();
    await one.fill('4');
    await one.press('Enter');
    await goTo(page, 'Wedges');
    await goTo(page, 'Fabrics');
    await expect(one).toHaveValue('4');
    await expect(grid(page).getByText(/^Write a whole number up to/)).toBeHidden();
  });
  await page.getByRole('button', { name: 'Done' }).click();
  await undoAll(page);
  await test.step('a width or a length that is changed and taken back leaves no empty column or line', async () => {
    await page.getByRole('button', { name: 'Enter strips', exact: true }).click();
    const all = grid(page).getByRole('textbox', { name: 'Strips 1" wide, the same for all fabrics' });
    await all.fill('3');
    await all.press('Enter');
    const cells = grid(page).locator('.grid-input');
    const count = await cells.count();
    const length = grid(page).getByRole('textbox', { name: 'Length of all strips' });
    for (const [field, to] of [
      [width(page, 1), '1 1/4'],
      [length, '36'],
    ] as const) {
      const shown = await field.inputValue();
      await field.fill(to);
      await field.press('Enter');
      await expect(cells).toHaveCount(count);
      await undoButton(page).click();
      await expect(field).toHaveValue(shown);
      await expect(cells).toHaveCount(count);
      await page.getByRole('button', { name: /^Redo: / }).click();
      await expect(field).toHaveValue(to);
      await expect(cells).toHaveCount(count);
    }
    await expect(cell(page, fabrics[1]!.name, '1 1/4"')).toHaveValue('3');
  });
  await page.getByRole('button', { name: 'Done' }).click();
  await undoAll(page);
  await test.step('widths: a column of its own, a width changed with its strips, one there already, and precuts split', async () => {
    await page.getByRole('button', { name: 'Enter strips', exact: true }).click();
    const another = grid(page).getByRole('textbox', { name: 'Another cut width' });
    await another.fill('2 1/2');
    await another.press('Enter');
    await page.keyboard.press('Enter');
    const name = fabrics[1]!.name;
    await cell(page, name, '2 1/2"').fill('8');
    await page.keyboard.press('Enter');
    await width(page, 4).fill('2');
    await page.keyboard.press('Enter');
    await expect(grid(page).getByText('There is a column of this width already.')).toBeVisible();
    await page.keyboard.press('Escape');
    await cell(page, name, '2 1/2"').focus();
    await page.getByRole('button', { name: 'Split lengthwise' }).click();
    await page.getByRole('textbox', { name: 'How many' }).fill('6');
    await page.getByRole('textbox', { name: 'How many' }).press('Enter');
    await page.getByRole('button', { name: /Split 6 strips into 1.1\/2" \+ 1"/ }).click();
    await expect(undoButton(page)).toHaveAccessibleName('Undo: split 6 strips lengthwise');
    await expect(cell(page, name, '1 1/2"')).toHaveValue('6');
    await expect(cell(page, name, '2 1/2"')).toHaveValue('2');
    await another.fill('3/8');
    await another.press('Enter');
    await expect(grid(page).getByText('A strip cut 3/8" wide vanishes in its two seams')).toBeVisible();
    await page.keyboard.press('Escape');
    await width(page, 4).fill('2.25');
    await page.keyboard.press('Enter');
    await expect(undoButton(page)).toHaveAccessibleName('Undo: make the strips 2 1/2" wide 2 1/4" wide');
    await expect(cell(page, name, '2 1/4"')).toHaveValue('2');
  });
  await page.getByRole('button', { name: 'Done' }).click();
  await undoAll(page);
  await test.step('a pasted table shows what is new before it is entered, fills the grid, and is one undo', async () => {
    await page.getByRole('button', { name: 'Enter strips', exact: true }).click();
    const rows = [
      `\t1 1/4\t2.5`,
      `${fabrics[1]!.name.toUpperCase()}\t4\t2`,
      'Heather\t3\t',
      '"Rust, washed"\t\t1',
    ];
    await paste(page, rows.join('\r\n'));
    const offer = page.getByRole('region', { name: 'A table of strips' });
    await expect(offer).toContainText('The table holds 10 strips.');
    await expect(offer.getByRole('listitem')).toHaveText(['Heather', 'Rust, washed']);
    await expect(undoButton(page)).toBeDisabled();
    await offer.getByRole('button', { name: 'Enter 10 strips' }).click();
    await expect(width(page, 1)).toBeFocused();
    await expect(total(page)).toHaveText('10');
    await expect(cell(page, fabrics[1]!.name, '1 1/4"')).toHaveValue('4');
    await expect(cell(page, 'Rust, washed', '2 1/2"')).toHaveValue('1');
    await undoButton(page).click();
    await expect(total(page)).toHaveText('0');
    await expect(cell(page, 'Heather', '1 1/4"')).toHaveCount(0);
  });
  await page.getByRole('button', { name: 'Done' }).click();
  await undoAll(page);
  await test.step('a block of numbers goes into the cells from where it is pasted; one that is too wide is refused', async () => {
    await page.getByRole('button', { name: 'Enter strips', exact: true }).click();
    const first = cell(page, fabrics[1]!.name, '1 1/2"');
    await first.focus();
    await paste(page, '4\t2\n\t3\n1\t');
    await expect(total(page)).toHaveText('10');
    await expect(cell(page, fabrics[2]!.name, '2"')).toHaveValue('3');
    await first.focus();
    await paste(page, '4\t2\t5');
    await expect(grid(page).getByRole('alert').first()).toContainText(
      'What is pasted is 1 down and 3 across; from here the grid has 5 down and 2 across.',
    );
    await expect(total(page)).toHaveText('10');
    await paste(page, '\t1\nRust\tfour');
    await expect(grid(page).getByRole('alert').first()).toContainText('Row 2, column 2 is “four”');
  });
});

test('strips as CSV, and fabrics that are typed into the grid', async ({ page }) => {
  await firstVisit(page);
  await goTo(page, 'Fabrics');
  await test.step('what is saved as CSV and opened again is the same, in another quilt too', async () => {
    await page.getByRole('button', { name: 'Change strips' }).click();
    const sum = await total(page).textContent();
    const saving = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save CSV' }).click();
    const file = await (await saving).path();
    const text = readFileSync(file, 'utf8');
    expect(text).toMatch(/^\uFEFFFabric,Length,1 in,1.5 in,2 in\r\n/);
    await openFile(page, JSON.stringify(fabricsOnly(16, 'harbour-reading-corner')));
    await expect(page.getByRole('dialog')).toBeHidden();
    await page.getByRole('button', { name: 'Enter strips' }).click();
    const open = async (name: string, content: string) =>
      page
        .getByLabel('CSV file of strips')
        .setInputFiles({ name, mimeType: 'text/csv', buffer: Buffer.from(content) });
    await open('strips.csv', text);
    await expect(total(page)).toHaveText(sum!);
    await open('large.csv', `Fabric,1\n${'x'.repeat(1_000_001)},2`);
    await expect(grid(page).getByText('The file is larger than 1 MB.')).toBeVisible();
    await expect(total(page)).toHaveText(sum!);
  });
  await test.step('fabrics can be typed too: a name, Tab, its strips, Enter, the next name', async () => {
    await page.getByRole('button', { name: /^Quilt:/ }).click();
    await page.getByRole('button', { name: 'New quilt' }).click();
    await expect(page.getByRole('dialog')).toBeHidden();
    await goTo(page, 'Fabrics');
    await page.getByRole('button', { name: 'Enter strips' }).click();
    await expect(grid(page).locator('input:focus')).toBeVisible();
    // From the widths by Enter, with the new one or without, to where fabrics are named.
    await page.keyboard.press('Enter');
    await expect(grid(page).getByRole('textbox', { name: 'Name of a new fabric' })).toBeFocused();
    await grid(page).getByRole('textbox', { name: 'Another cut width' }).focus();
    await page.keyboard.press('Enter');
    for (const name of ['Rust', 'Slate', 'Heather']) {
      await page.keyboard.type(name);
      await page.keyboard.press('Tab');
      await page.keyboard.type('4');
      await page.keyboard.press('Tab');
      await page.keyboard.type('2');
      await page.keyboard.press('Enter');
      await expect(grid(page).getByRole('textbox', { name: 'Name of a new fabric' })).toBeFocused();
    }
    await expect(total(page)).toHaveText('18');
    await page.keyboard.type('rust');
    await page.keyboard.press('Enter');
    await expect(grid(page).getByText('There is a fabric called rust.')).toBeVisible();
  });
});

test('60 fabrics in centimetres fit in every window, and the cell with the focus is in sight @phone @touch', async ({
  page,
}) => {
  const quilt = fabricsOnly(60);
  const { fabrics } = quilt;
  await openSaved(page, JSON.stringify(quilt), 'cm');
  await goTo(page, 'Fabrics');
  await page.getByRole('button', { name: 'Enter strips' }).click();
  await cell(page, fabrics[1]!.name, '2.5 cm').fill('4');
  await page.keyboard.press('Enter');
  const last = cell(page, fabrics[60]!.name, '5.0 cm');
  await last.fill('4');
  for (const [width, height] of [
    [390, 844],
    [1024, 768],
    [1440, 900],
  ] as const) {
    await page.setViewportSize({ width, height });
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('ArrowDown');
    await expect(last).toBeFocused();
    await expect(total(page)).toHaveText('8');
    const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(over, `${width} wide`).toBeLessThanOrEqual(0);
    // Nothing lies over the cell: neither heads nor names nor foot.
    const hit = await last.evaluate((input) => {
      const { left, top, width, height } = input.getBoundingClientRect();
      return document.elementFromPoint(left + width / 2, top + height / 2) === input;
    });
    expect(hit, `${width} wide`).toBe(true);
  }
  await expect(page.getByRole('button', { name: 'Done' })).toBeAttached();
});

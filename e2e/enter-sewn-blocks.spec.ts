// Blocks that are sewn already, entered as they are: by keys, by taps and from a list, with actions counted.
import { expect, type Page, test } from './guarded';
import { nextUndo } from './quilt';
import { goTo, undoAll } from './room';
import { openSaved } from './stored';

/** Twelve blocks of eight wedges from nine sets, as they lie sewn: the sets clockwise from the top, up and down in turn. */
const SEWN = Array.from({ length: 12 }, (_, block) =>
  Array.from({ length: 8 }, (_wedge, place) => 'ABCDEFGHI'[(block * 2 + place * (1 + (block % 3))) % 9]!),
);

/** A quilt of nine sets, each with wedges enough, and no blocks. */
function quilt(): string {
  const tones = [
    '#7a2f2a',
    '#c9862e',
    '#2d4a5b',
    '#5b7a4a',
    '#d9c9a0',
    '#463a5e',
    '#9a4a68',
    '#3f6f78',
    '#b8a07a',
  ];
  const fabrics = tones.map((colour, at) => ({
    id: `f${at}`,
    name: `Plain ${at + 1}`,
    colour,
    cloth: { kind: 'plain' },
    background: false,
  }));
  const stripSets = tones.map((_, at) => ({
    id: `s${at}`,
    label: 'ABCDEFGHI'[at],
    strips: [0, 2, 4, 6].map((by) => ({ fabric: `f${(at + by) % 9}`, width: 2.5 })),
    length: 40,
    pressing: 'last',
    firstTip: 'up',
    progress: 'cut',
    cut: { up: 9, down: 9 },
    locked: false,
  }));
  return JSON.stringify({
    format: 'wedgewall-project',
    version: 1,
    id: 'sewn',
    name: 'Sewn already',
    notes: '',
    fabrics,
    stripsOnHand: [],
    stripSets,
    wedge: { perBlock: 8, cutHeight: 7.5, seam: 0.25, assemblySeam: 0.25, outerSeam: 0.25 },
    blocks: [],
    wall: { rows: 4, columns: 3, cells: Array.from({ length: 12 }, () => null) },
    setting: {
      layout: { kind: 'straight' },
      plain: null,
      cornerFabric: 'f4',
      cornerRule: null,
      sashing: { where: 'none', width: 1.5, fabric: 'f4' },
      borders: [],
      binding: null,
    },
    preferences: { unit: 'in', wallLightness: 62, usableWidth: 40, seed: 1 },
  });
}

async function enterSewn(page: Page): Promise<void> {
  await openSaved(page, quilt());
  await goTo(page, 'Blocks');
  await page.getByRole('button', { name: 'Enter sewn blocks' }).click();
  await expect(page.getByRole('heading', { name: 'Enter sewn blocks' })).toBeAttached();
}

const wedges = (page: Page) => page.locator('.block-card .state');
const places = (page: Page) =>
  page.locator('.entry-place').evaluateAll((found) => found.map((one) => one.getAttribute('aria-label')));

/** Takes back the wedges entered so far. */
async function takeBack(page: Page, wedges: number): Promise<void> {
  for (let wedge = 0; wedge < wedges; wedge += 1) await page.keyboard.press('Backspace');
  await expect(page.locator('.entry-place').first()).toHaveAccessibleName('Place 1: no wedge yet');
}

test('by finger a wedge is one tap, and a block one more @touch @phone', async ({ page }) => {
  await enterSewn(page);
  let taps = 0;
  const tap = async (name: string | RegExp) => {
    taps += 1;
    await page.getByRole('button', { name }).tap();
  };
  for (const [at, block] of SEWN.slice(0, 2).entries()) {
    for (const [place, set] of block.entries())
      await tap(new RegExp(`^Set ${set}, tip ${place % 2 === 0 ? 'up' : 'down'}: `));
    await tap('Next block');
    await expect(page.locator('.entry-name')).toContainText(`Block ${at + 2}`);
  }
  expect((taps / 2) * 12).toBeLessThan(200);
  const box = (await page.getByRole('button', { name: /^Set A, tip up: / }).boundingBox())!;
  expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(44);
});

test('sewn blocks are entered by keys and from a list, with sets that are on record and without', async ({
  page,
}) => {
  await enterSewn(page);
  await test.step('a tip out of turn, a wedge taken back, and a block taken back, by keys alone', async () => {
    await page.keyboard.type('ab');
    await page.keyboard.press('ArrowUp');
    await page.keyboard.type('cx');
    await expect(page.getByRole('alert').filter({ hasText: 'There is no set X.' })).toBeVisible();
    expect((await places(page)).slice(0, 4)).toEqual([
      'Place 1: set A, tip up',
      'Place 2: set B, tip up',
      'Place 3: set C, tip down',
      'Place 4: no wedge yet',
    ]);
    await page.keyboard.press('Backspace');
    await page.keyboard.type('defghi');
    expect((await places(page))[2]).toBe('Place 3: set D, tip down');
    await page.keyboard.press('Enter');
    await expect(page.locator('.entry-name')).toContainText('Block 2');
    await page.keyboard.press('Backspace');
    await expect(page.locator('.entry-name')).toContainText('Block 1');
    expect((await places(page))[7]).toBe('Place 8: set I, tip up');
    await expect.poll(() => nextUndo(page)).toBe('Nothing to undo');
  });
  await takeBack(page, 8);
  await test.step('what is half entered is there again after another step, and after the tab is loaded anew', async () => {
    await page.keyboard.type('abc');
    await goTo(page, 'Wedges');
    await goTo(page, 'Blocks');
    expect((await places(page))[2]).toBe('Place 3: set C, tip up');
    await page.reload();
    await page.getByRole('button', { name: 'Enter sewn blocks' }).click();
    expect((await places(page))[2]).toBe('Place 3: set C, tip up');
  });
  await takeBack(page, 3);
  await test.step('ninety-six sewn wedges are entered in under two hundred keystrokes, one undo to a block', async () => {
    let strokes = 0;
    const key = async (name: string) => {
      strokes += 1;
      await page.keyboard.press(name);
    };
    for (const [at, block] of SEWN.entries()) {
      for (const set of block) await key(set.toLowerCase());
      // A set that gave more wedges than were counted.
      while (await page.locator('.lack').count()) await key('+');
      await key('Enter');
      await expect(page.locator('.entry-name')).toContainText(`Block ${at + 2}`);
    }
    expect(strokes).toBeLessThan(200);
    expect(await nextUndo(page)).toMatch(/^Undo: enter /);
    await page.getByRole('button', { name: 'Done', exact: true }).click();
    await expect(page.locator('.block-card')).toHaveCount(12);
    await expect(page.getByRole('button', { name: /^Block 12: .*Wedges joined$/ })).toBeVisible();
    await page.keyboard.press('Control+z');
    await expect(page.locator('.block-card')).toHaveCount(11);
    await expect(wedges(page).first()).not.toHaveText('no wedges yet');
  });
  await undoAll(page);
  await page.getByRole('button', { name: 'Enter sewn blocks' }).click();
  await test.step('a wedge whose set is not on record gets a set from the fabrics it shows, and is entered', async () => {
    await page.getByRole('button', { name: 'Another fabric' }).click();
    for (const [label, fabric] of [
      ['On the rim', 'Plain 3'],
      ['Then', 'Plain 7'],
    ] as const) {
      await page.getByRole('button', { name: new RegExp(label) }).click();
      await page.getByRole('option', { name: fabric }).click();
    }
    await page.getByRole('button', { name: 'Add set J' }).click();
    await page.keyboard.type('j');
    await expect(page.locator('.lack')).toHaveCount(0);
    expect((await places(page))[0]).toBe('Place 1: set J, tip up');
  });
  await takeBack(page, 1);
  await undoAll(page);
  await test.step('a list is entered as one change; its faults are named by line and place, and nothing typed is lost', async () => {
    await page.getByText('From a list').click();
    const list = page.getByLabel('One block per line');
    const lines = SEWN.slice(0, 3).map((block) =>
      block.map((set, at) => `${set}${at % 2 === 0 ? '↑' : 'd'}`).join(' '),
    );
    await list.fill([...lines, 'A↑ Q↓ A↑ A↓ A↑ A↓ A↑'].join('\n'));
    await expect(page.getByText('Line 4, place 2: There is no set Q.')).toBeVisible();
    await expect(page.getByText('Line 4: It has 7 wedges; a block has 8.')).toBeVisible();
    await expect(page.getByRole('button', { name: 'Enter 3 blocks' })).toBeDisabled();
    await expect(page.getByRole('list', { name: 'Blocks read from the list' }).getByRole('img')).toHaveCount(
      3,
    );
    await list.fill(lines.join('\n'));
    await page.getByRole('button', { name: 'Enter 3 blocks' }).click();
    await expect.poll(() => nextUndo(page)).toBe('Undo: enter 3 blocks');
    await page.getByRole('button', { name: 'List the blocks entered so far' }).click();
    await expect(list).toHaveValue(
      new RegExp(`^1: ${SEWN[0]![0]}↑ ${SEWN[0]![1]}↓ .*\\(Wedges joined\\)$`, 'm'),
    );
  });
  await test.step('someone with sewn blocks and nothing else says of how many sets they are, and enters them by letters', async () => {
    let actions = 0;
    const press = async (name: RegExp) => {
      actions += 1;
      await page.getByRole('button', { name }).click();
    };
    await press(/^Quilt:/);
    await press(/^New quilt$/);
    await press(/^Enter blocks already sewn/);
    await press(/^Enter the wedges$/);
    for (let block = 1; block <= 3; block += 1) {
      for (let place = 0; place < 8; place += 1)
        await page.keyboard.press('abcde'.charAt((block + place * 2) % 5));
      await expect(page.locator('.lack')).toHaveCount(0);
      await page.keyboard.press('Enter');
      await expect(page.locator('.entry-name')).toContainText(`Block ${block + 1}`);
      actions += 9;
    }
    // As many for twelve blocks.
    expect(actions + 9 * 9).toBeLessThan(120);
    await page.getByRole('button', { name: 'Done', exact: true }).click();
    await expect(page.locator('.block-card')).toHaveCount(3);
  });
});

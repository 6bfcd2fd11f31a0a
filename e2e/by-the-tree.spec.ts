// The whole way from an empty quilt to the pattern by the accessibility tree alone: everything is found by role and name, all is done by
// keys, and each change is heard in one sentence, with the clashes once blocks hang.
import { expect, test } from './guarded';
import { firstVisit } from './room';
import { atTheKeys } from './tree';

const FABRICS = ['Ash', 'Birch', 'Cedar', 'Dogwood'];
const SETS = ['A', 'B', 'C', 'D', 'E'];
/** The clashes there are, at the end of a sentence. */
const CLASHES = /(\d+ clash(es)?|No clashes)(, \d+ (fewer|more))?\.$/;

test('from an empty quilt to the pattern by the tree alone', async ({ page }) => {
  test.setTimeout(300_000);
  await firstVisit(page);
  const person = await atTheKeys(page);
  const { voice, reach, press, write, type, key, toStep } = person;
  const focusIs = (name: RegExp) => expect.poll(async () => (await person.tree.focused()).name).toMatch(name);
  const heard: string[] = [];
  const says = async (words: RegExp) => {
    heard.push(await voice.says(words));
  };

  await press(/^Quilt:/);
  await press('New quilt');

  // Fabrics, and strips of three widths.
  await toStep('Fabrics');
  await press('Add fabrics');
  for (const name of FABRICS) {
    await reach('textbox', 'Name');
    await type(name);
    await press('Add this fabric');
    await says(new RegExp(`^${name} is in the list\\.$`));
  }
  await key('Escape');
  await press('Enter strips');
  for (const [width, count] of [
    ['2"', 4],
    ['1 1/2"', 4],
    ['1"', 3],
  ] as const) {
    await reach('textbox', `Strips ${width} wide, the same for all fabrics`);
    await type(String(count));
    await key('Enter');
    await says(new RegExp(`^${count} strips in each of 4 rows$`));
  }
  await press(/^Done/);

  await toStep('Strip sets');
  await press('Make sets');
  await says(/^Made 5 sets\.$/);

  // The wedges, set by set; the next set opens by itself, and the focus stays on the button.
  await toStep('Wedges');
  await press('Cut set A next');
  for (const set of SETS) {
    await press(`Mark set ${set} as cut`);
    await says(/^Updated the progress of a strip set\.$/);
  }

  await toStep('Blocks');
  await press(/^Add \d+ blocks$/);
  await says(/^Added \d+ blocks\. \d+ clash(es)?(, \d+ more)?\.$/);

  // The wall: what a block is called tells where it hangs, how it lies and what clashes.
  await toStep('Wall');
  await reach('button', /^Block 1, row 1, column 1; \d+ clash/);
  await key('r');
  await says(/^Turned block 1\. /);
  expect(heard.at(-1)).toMatch(CLASHES);
  await focusIs(/^Block 1, row 1, column 1, turned 90°; /);
  await key('ArrowRight');
  await focusIs(/^Block 2, row 1, column 2; /);
  await key('Shift+F6');
  await press('Shuffle');
  await says(/The wall shows the new layout; nothing is changed yet\.$/);
  await press('Use this layout');
  await says(/^Shuffled for balance\. /);
  expect(heard.at(-1)).toMatch(CLASHES);

  // The setting: sashing and a border.
  await reach('DisclosureTriangle', /^Sashing/);
  await key('Enter');
  await reach('radio', 'None');
  await key('ArrowRight');
  await says(/sashing/i);
  expect(heard.at(-1)).toMatch(CLASHES);
  await reach('DisclosureTriangle', /^Borders/);
  await key('Enter');
  await press('Add a border');
  await says(/border/i);
  await write(/^Border 1/, '3 1/2');
  await says(/border/i);
  await key('Control+z');
  await says(/^Undone: /);

  // The pattern.
  await toStep('Finishing');
  await reach('button', 'Sizes');
  for (let part = 0; part < 3; part += 1) await key('ArrowRight');
  await focusIs(/^Pattern$/);
  await key('Enter');
  const saved = page.waitForEvent('download', { timeout: 90_000 });
  await press(/^Make the pattern/);
  expect((await saved).suggestedFilename()).toMatch(/\.pdf$/);
  await says(/\.pdf/);
  test.info().annotations.push(...heard.map((description) => ({ type: 'heard', description })));
  console.log(heard.join('\n'));
});

// Whatever can be on show, opened once and looked at in every way: at browser zoom, in narrow windows and with larger text everything is
// reached and nothing lies under anything (WCAG 2.2, 1.4.10, 1.4.4, 1.4.12); axe finds no fault; every control has a name of its own; in
// colours of the person's own a chosen control is of another shape than one that is not.
import type { RunOnly } from 'axe-core';
import { AA, faultsInBoth, faultsOf, RULES_OF_COLOUR } from './axe';
import { alike } from './chosen';
import { expect, type Page, test } from './guarded';
import { nameFaults } from './nameFaults';
import { still } from './room';
import { OVER, type State, through, WAYS } from './states';
import { readTree } from './tree';
import { outOfReach, resize, SIZES, type Size, TEXT_SPACED, TEXT_TWICE, withRules } from './within-reach';

const DESK: Size = [1440, 900];
/** The size of WCAG 2.2, 1.4.10 Reflow: 400 % zoom. */
const SMALLEST: Size = [320, 256];
const RULES_OF_SIZE: RunOnly = { type: 'rule', values: ['target-size', 'scrollable-region-focusable'] };
/** What sticks would lie half over something wherever the page happens to be scrolled; `outOfReach` holds that all comes clear. */
const NOTHING_STICKS = '.step-foot, .grid-line, .entry-side, .strip-grid * { position: static !important; }';

/** One window of each layout between a phone under a finger, the smallest and the desk, at which all rules are held. */
const BETWEEN: readonly Size[] = [
  [640, 400],
  [844, 390],
];

/**
 * One window of each layout: the style sheets change at widths of 380 to 420, 720 and 1,100 px. What opens in a step that is held at all
 * sizes is held at these.
 */
const LAYOUTS: readonly Size[] = [SMALLEST, [390, 844], [640, 400], [844, 390], [820, 1180], DESK];

const isOneOf = (sizes: readonly Size[], size: Size) =>
  sizes.some((one) => one.every((side, at) => side === size[at]));

/** Everything is in reach at every size, and where axe looks closely it finds nothing there that depends on the size. */
async function faultsAtSizes(page: Page, closely: boolean): Promise<string[]> {
  const faults: string[] = [];
  for (const size of closely ? SIZES : LAYOUTS) {
    await resize(page, size);
    const found = await outOfReach(page);
    if (closely && isOneOf([SMALLEST], size)) found.push(...(await faultsInAllColours(page)));
    if (closely && isOneOf(BETWEEN, size)) {
      const away = await withRules(page, NOTHING_STICKS);
      found.push(...(await faultsOf(page, { only: RULES_OF_SIZE })));
      await away();
    }
    faults.push(...found.map((fault) => `${size.join(' × ')}: ${fault}`));
  }
  return faults;
}

/** All rules of axe in light, those of colour in dark and in colours of the person's own. */
async function faultsInAllColours(page: Page): Promise<string[]> {
  const faults = await faultsInBoth(page, { only: AA });
  await page.emulateMedia({ forcedColors: 'active' });
  const forced = await faultsOf(page, { only: RULES_OF_COLOUR });
  await page.emulateMedia({ forcedColors: 'none' });
  return [...faults, ...forced.map((fault) => `forced colours: ${fault}`)];
}

async function faultsOfText(page: Page, closely: boolean): Promise<string[]> {
  const faults: string[] = [];
  const spaced: readonly Size[] = closely ? [SMALLEST, [390, 844]] : [SMALLEST];
  for (const [words, rules, sizes] of [
    ['twice as large', TEXT_TWICE, [[1280, 800]]],
    ['spaced out', TEXT_SPACED, spaced],
  ] as const) {
    const away = await withRules(page, rules);
    for (const size of sizes) {
      await resize(page, size);
      for (const fault of await outOfReach(page)) faults.push(`${words}, ${size.join(' × ')}: ${fault}`);
    }
    await away();
  }
  return faults;
}

/** Kinds of controls of which a chosen one looks like one that is not, and those met. */
async function alikeInForcedColours(page: Page): Promise<{ faults: string[]; met: string[] }> {
  await page.emulateMedia({ forcedColors: 'active' });
  const kinds = await page.evaluate(alike);
  await page.emulateMedia({ forcedColors: 'none' });
  return { faults: Object.keys(kinds).filter((kind) => kinds[kind]), met: Object.keys(kinds) };
}

/** At the desk the steps and what lies over the page are held to WCAG whole; what opens in them to all that axe knows, in its own part. */
function askedOf(way: string) {
  return way === 'the steps' || way === OVER ? { only: AA } : { within: ['.panel', '.work'] };
}

/** Kinds of controls that must be met on a way, so that the comparison is one. */
const MET: Record<string, readonly string[]> = {
  'the steps': ['button.button', 'label.'],
  'what opens in a step': ['button.dot-step'],
};

for (const [way, states] of Object.entries(WAYS))
  test(`${way}: in reach at every size, without a fault for axe, chosen by shape`, async ({ page }) => {
    test.setTimeout(600_000);
    const met = new Set<string>();
    const look = async ({ name, main }: State) => {
      expect.soft(await faultsInBoth(page, askedOf(way)), `${name} at the desk`).toEqual([]);
      await still(page);
      expect.soft(nameFaults(await readTree(page)), `${name}: names`).toEqual([]);
      const chosen = await alikeInForcedColours(page);
      for (const kind of chosen.met) met.add(kind);
      expect.soft(chosen.faults, `${name}: chosen, but shaped alike`).toEqual([]);
      expect.soft(await faultsAtSizes(page, main ?? false), name).toEqual([]);
      expect.soft(await faultsOfText(page, main ?? false), `${name}: text`).toEqual([]);
      await resize(page, DESK);
    };
    await through(page, states, look);
    expect([...met]).toEqual(expect.arrayContaining([...(MET[way] ?? [])]));
  });

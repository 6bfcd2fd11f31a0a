// Whatever can be on show, opened once and looked at in every way: at browser zoom, in narrow windows, under a finger and with larger text
// everything is reached and nothing lies under anything (WCAG 2.2, 1.4.10, 1.4.4, 1.4.12), and under a finger it is 44 px; axe finds no
// fault; every control has a name of its own and every fraction is set as one; in colours of the person's own a chosen control is of another
// shape than one that is not.
import type { RunOnly } from 'axe-core';
import { AA, faultsInBoth, faultsOf, RULES_OF_COLOUR } from './axe';
import { alike } from './chosen';
import { plainFractions } from './fractions';
import { expect, type Page, test } from './guarded';
import { tooSmall } from './measure';
import { nameFaults } from './nameFaults';
import { still } from './room';
import { OVER, type State, through, WAYS } from './states';
import { readTree } from './tree';
import {
  BY_MOUSE,
  byFinger,
  outOfReach,
  resize,
  type Size,
  SMALLEST,
  TEXT_SPACED,
  TEXT_TWICE,
  UNDER_A_FINGER,
  withRules,
} from './within-reach';

const DESK: Size = [1440, 900];
const PHONE: Size = [390, 844];
const RULES_OF_SIZE: RunOnly = { type: 'rule', values: ['target-size', 'scrollable-region-focusable'] };
/** What sticks would lie half over something wherever the page happens to be scrolled; `outOfReach` holds that all comes clear. */
const NOTHING_STICKS = '.step-foot, .grid-line, .entry-side, .strip-grid * { position: static !important; }';

/** Where a state is looked at: one that stands for others at all sizes, most at one of each layout (the style sheets change at 380 to 420, 720 and 1,100 px). */
function windowsOf({ main, brief }: State) {
  if (main) return { byMouse: BY_MOUSE, fingers: UNDER_A_FINGER, smallest: true };
  if (brief) return { byMouse: [], fingers: [PHONE], smallest: false };
  return { byMouse: BY_MOUSE.slice(0, 2), fingers: UNDER_A_FINGER.slice(2), smallest: true };
}

type Faults = string[];
const at = (where: string, faults: Faults): Faults => faults.map((fault) => `${where}: ${fault}`);

/** Worked by a mouse. Under a finger, where all is larger, axe finds nothing more that depends on the size. */
async function faultsByMouse(page: Page, state: State): Promise<Faults> {
  const faults: Faults = [];
  for (const size of windowsOf(state).byMouse) {
    await resize(page, size);
    faults.push(...at(size.join(' × '), await outOfReach(page)));
    if (!state.main || size !== BY_MOUSE[0]) continue;
    const away = await withRules(page, NOTHING_STICKS);
    faults.push(...at(size.join(' × '), await faultsOf(page, { only: RULES_OF_SIZE })));
    await away();
  }
  return faults;
}

/** In the smallest window also with text spaced out, which takes the more room; where all rules are held there, they are in the dark. */
async function faultsAtSmallest(page: Page, { main }: State): Promise<Faults> {
  await resize(page, SMALLEST);
  const faults: Faults = [];
  if (main) {
    faults.push(...(await outOfReach(page)));
    await page.emulateMedia({ colorScheme: 'dark' });
    faults.push(...(await faultsOf(page, { only: AA })));
    await page.emulateMedia({ colorScheme: 'light' });
  }
  return [...at('smallest', faults), ...(await faultsSpaced(page))];
}

async function faultsSpaced(page: Page): Promise<Faults> {
  const away = await withRules(page, TEXT_SPACED);
  const faults = await outOfReach(page);
  await away();
  return at('spaced out', faults);
}

async function faultsUnderFinger(page: Page, state: State): Promise<Faults> {
  const faults: Faults = [];
  await byFinger(page, true);
  for (const size of windowsOf(state).fingers) {
    await resize(page, size);
    faults.push(...at(size.join(' × '), [...(await outOfReach(page)), ...(await tooSmall(page))]));
    if (state.main && String(size) === String(PHONE))
      faults.push(...at('axe on a phone', await faultsOf(page, { only: AA })));
  }
  await byFinger(page, false);
  return faults;
}

async function faultsTwiceAsLarge(page: Page): Promise<Faults> {
  const away = await withRules(page, TEXT_TWICE);
  await resize(page, [1280, 800]);
  const faults = await outOfReach(page);
  await away();
  return at('twice as large', faults);
}

/** At the desk the steps and what lies over the page are held to WCAG whole; what opens in them to all that axe knows, in its own part. */
function askedOf(way: string) {
  return way === 'the steps' || way === OVER ? { only: AA } : { within: ['.panel', '.work'] };
}

/** What is the same in every window. */
async function faultsAtDesk(page: Page, way: string): Promise<Faults> {
  await still(page);
  return [
    ...(await faultsInBoth(page, askedOf(way))),
    ...nameFaults(await readTree(page)),
    ...at('a plain fraction', await plainFractions(page)),
    ...(await outOfReach(page)),
  ];
}

/** In colours of the person's own: kinds of controls met, and those of which a chosen one looks like one that is not. */
async function inForcedColours(page: Page, { main }: State): Promise<{ faults: Faults; met: string[] }> {
  await page.emulateMedia({ forcedColors: 'active' });
  const kinds = await page.evaluate(alike);
  const faults = at(
    'chosen, but shaped alike',
    Object.keys(kinds).filter((kind) => kinds[kind]),
  );
  if (main) faults.push(...(await faultsOf(page, { only: RULES_OF_COLOUR })));
  await page.emulateMedia({ forcedColors: 'none' });
  return { faults: at('forced colours', faults), met: Object.keys(kinds) };
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
    const look = async (state: State) => {
      const faults = await faultsAtDesk(page, way);
      const forced = await inForcedColours(page, state);
      for (const kind of forced.met) met.add(kind);
      faults.push(...forced.faults, ...(await faultsByMouse(page, state)));
      if (state.main) {
        await resize(page, PHONE);
        faults.push(...at('phone', await faultsSpaced(page)));
      }
      if (windowsOf(state).smallest) faults.push(...(await faultsAtSmallest(page, state)));
      faults.push(...(await faultsUnderFinger(page, state)));
      if (!state.brief) faults.push(...(await faultsTwiceAsLarge(page)));
      await resize(page, DESK);
      expect.soft(faults, state.name).toEqual([]);
    };
    await through(page, states, look);
    expect([...met]).toEqual(expect.arrayContaining([...(MET[way] ?? [])]));
  });

// Whatever can be on show, opened once and looked at in every way: at browser zoom, in narrow windows, under a finger and with larger text
// everything is reached and nothing lies under anything (WCAG 2.2, 1.4.10, 1.4.4, 1.4.12), and under a finger it is 44 px; axe finds no
// fault; every control has a name of its own and every fraction is set as one; in colours of the person's own a chosen control is of another
// shape than one that is not.
import type { RunOnly } from 'axe-core';
import { AA, faultsOf, RULES_OF_COLOUR } from './axe';
import { alike } from './chosen';
import { plainFractions } from './fractions';
import { expect, type Page, test } from './guarded';
import { tooSmall } from './measure';
import { nameFaults } from './nameFaults';
import { still } from './room';
import { type State, through, WAYS, type Way } from './states';
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

/** 1280 × 800 at browser zoom of 100 %; the other sizes by mouse are of the same window zoomed. */
const DESK: Size = [1280, 800];
/** What of axe depends on the size of the window and on the scheme of colours. */
const RULES_OF_SIZE_AND_COLOUR: RunOnly = {
  type: 'rule',
  values: ['target-size', 'scrollable-region-focusable', ...RULES_OF_COLOUR.values],
};
/** What sticks would lie half over something wherever the page happens to be scrolled; `outOfReach` holds that all comes clear. */
const NOTHING_STICKS = '.step-foot, .grid-line, .entry-side, .strip-grid * { position: static !important; }';

/** Where a state is looked at: one that stands for others at all sizes, most at one of each layout (the style sheets change at 380 to 420, 720 and 1,100 px). */
function windowsOf({ main, brief }: State) {
  if (main) return { byMouse: BY_MOUSE, fingers: UNDER_A_FINGER, smallest: true };
  if (brief) return { byMouse: [], fingers: UNDER_A_FINGER.slice(-1), smallest: false };
  return { byMouse: BY_MOUSE.slice(0, 2), fingers: UNDER_A_FINGER.slice(-2), smallest: true };
}

type Faults = string[];
const at = (where: string, faults: Faults): Faults => faults.map((fault) => `${where}: ${fault}`);

/** At the desk the steps and what lies over the page are held to WCAG whole; what opens in them to all that axe knows, in its own part. */
function askedOf({ whole }: State) {
  return whole ? { only: AA } : { within: ['.panel', '.work'] };
}

/** What is the same in every window, and what is in reach with text as it is and twice as large. */
async function faultsAtDesk(page: Page, state: State): Promise<Faults> {
  await still(page, 60);
  const faults = [
    ...(await faultsOf(page, askedOf(state))),
    ...nameFaults(await readTree(page)),
    ...at('a plain fraction', await plainFractions(page)),
    ...(await outOfReach(page)),
  ];
  if (!state.brief) faults.push(...at('twice as large', await outOfReachWith(page, TEXT_TWICE)));
  return faults;
}

async function outOfReachWith(page: Page, rules: string): Promise<Faults> {
  const away = await withRules(page, rules);
  const faults = await outOfReach(page);
  await away();
  return faults;
}

/** In the dark, and in colours of the person's own: kinds of controls met, and those of which a chosen one looks like one that is not. */
async function inOtherColours(page: Page, state: State): Promise<{ faults: Faults; met: string[] }> {
  await page.emulateMedia({ colorScheme: 'dark' });
  const faults = at('dark', await faultsOf(page, { ...askedOf(state), only: RULES_OF_COLOUR }));
  await page.emulateMedia({ colorScheme: 'light', forcedColors: 'active' });
  const kinds = await page.evaluate(alike);
  const same = Object.keys(kinds).filter((kind) => kinds[kind]);
  const forced = at('chosen, but shaped alike', same);
  if (state.main) forced.push(...(await faultsOf(page, { only: RULES_OF_COLOUR })));
  await page.emulateMedia({ forcedColors: 'none' });
  return { faults: [...faults, ...at('forced colours', forced)], met: Object.keys(kinds) };
}

/** Worked by a mouse. */
async function faultsByMouse(page: Page, state: State): Promise<Faults> {
  const faults: Faults = [];
  for (const size of windowsOf(state).byMouse) {
    await resize(page, size);
    faults.push(...at(size.join(' × '), await outOfReach(page)));
  }
  return faults;
}

/**
 * In the smallest window also with text spaced out, which takes the more room. Of axe what depends on size and colour, in the dark:
 * what the page is made of depends on its width and on the pointer alone, which a desk and a phone have both.
 */
async function faultsAtSmallest(page: Page, { main }: State): Promise<Faults> {
  await resize(page, SMALLEST);
  const faults = at('spaced out', await outOfReachWith(page, TEXT_SPACED));
  if (main) {
    faults.push(...(await outOfReach(page)));
    await page.emulateMedia({ colorScheme: 'dark' });
    const away = await withRules(page, NOTHING_STICKS);
    faults.push(...(await faultsOf(page, { only: RULES_OF_SIZE_AND_COLOUR })));
    await away();
    await page.emulateMedia({ colorScheme: 'light' });
  }
  return at('smallest', faults);
}

async function faultsUnderFinger(page: Page, state: State): Promise<Faults> {
  const faults: Faults = [];
  await byFinger(page, true);
  for (const size of windowsOf(state).fingers) {
    await resize(page, size);
    faults.push(...at(size.join(' × '), [...(await outOfReach(page)), ...(await tooSmall(page))]));
  }
  // The last size is a phone upright.
  if (state.main) {
    faults.push(...at('axe on a phone', await faultsOf(page, { only: AA })));
    faults.push(...at('phone, spaced out', await outOfReachWith(page, TEXT_SPACED)));
  }
  await byFinger(page, false);
  return faults;
}

/** Kinds of controls that must be met in a test, so that the comparison is one. */
const TESTS: readonly { readonly ways: readonly Way[]; readonly met: readonly string[] }[] = [
  { ways: ['the steps', 'the parts of finishing'], met: ['button.button', 'button.dot-step', 'label.'] },
  {
    ways: ['what lies over the page', 'what opens in a step', 'an empty quilt'],
    met: ['button.dot-step'],
  },
  { ways: ['photographs and moves by hand'], met: [] },
];

for (const { ways, met } of TESTS)
  test(`${ways.join('; ')}: in reach at every size, without a fault for axe, chosen by shape`, async ({
    page,
  }) => {
    test.setTimeout(600_000);
    const compared = new Set<string>();
    const look = async (state: State) => {
      const faults = await faultsAtDesk(page, state);
      const other = await inOtherColours(page, state);
      for (const kind of other.met) compared.add(kind);
      faults.push(...other.faults, ...(await faultsByMouse(page, state)));
      if (windowsOf(state).smallest) faults.push(...(await faultsAtSmallest(page, state)));
      faults.push(...(await faultsUnderFinger(page, state)));
      await resize(page, DESK);
      expect.soft(faults, state.name).toEqual([]);
    };
    await page.setViewportSize({ width: DESK[0], height: DESK[1] });
    await through(
      page,
      ways.flatMap((way) => WAYS[way]),
      look,
    );
    expect([...compared]).toEqual(expect.arrayContaining([...met]));
  });

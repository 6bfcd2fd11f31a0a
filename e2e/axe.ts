// What axe-core finds on the page as it stands, in words. It is put into a page once, and only its faults come back: the lists of what it
// passed are long, and nobody reads them.
import type { Page } from '@playwright/test';
import axe from 'axe-core';
import type { Unpainted } from './guarded';

/** Every rule of WCAG 2.2 up to AA. */
export const AA: axe.RunOnly = {
  type: 'tag',
  values: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'],
};
/** What depends on the scheme of colours; all other rules hold in one scheme as in the other. */
export const RULES_OF_COLOUR: axe.RunOnly = {
  type: 'rule',
  values: ['color-contrast', 'link-in-text-block'],
};

interface Asked {
  /** Parts of the page, by selector; without them, all of it. */
  readonly within?: readonly string[];
  /** Some of the rules; without them, all that axe has on, its advice on good practice among them. */
  readonly only?: axe.RunOnly;
}

/** Text with its inks and grounds, told once on a page: by this mark the rest of it is passed over where colours are looked at. */
const ALIKE = 'data-alike';

/** What a page that was looked at has on its global: kinds of text whose contrast is known. */
interface LookedAt {
  contrasts?: Set<string>;
}

/** Puts axe into a page. Runs there. */
function configure(mark: string) {
  const { axe: inPage } = globalThis as unknown as { axe: typeof axe };
  inPage.configure({ rules: [{ id: 'color-contrast', selector: `*:not([${mark}])` }] });
}

/** Faults of the page, one line each. */
export async function faultsOf(page: Page, asked: Asked = {}): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in globalThis))) {
    await page.evaluate(axe.source);
    await page.evaluate(configure, ALIKE);
  }
  return page.evaluate(found, { ...asked, mark: ALIKE });
}

/** Runs in the page, so everything it needs is inside it. */
async function found({ within, only, mark }: Asked & { mark: string }): Promise<string[]> {
  const looked = globalThis as unknown as { axe: typeof axe } & Unpainted & LookedAt;
  const { axe: inPage, unpainted } = looked;
  const styleOf = globalThis.getComputedStyle;
  const root = document.documentElement;

  /** Parts of the page that are looked at; what axe is not asked about is not known afterwards. */
  const asked = within ? [...document.querySelectorAll(within.join())] : [root];

  const known = new Map<Element, string>();
  /** Of what kind a text is, in what kind of place, of what ink on what ground. */
  const placeOf = (one: Element): string => {
    let place = known.get(one);
    if (place === undefined) {
      const { color, backgroundColor, backgroundImage, opacity, position, fontSize, fontWeight } =
        styleOf(one);
      const own = [one.localName, one.getAttribute('class'), one.matches(':disabled, [aria-disabled]')];
      const drawn = [color, backgroundColor, backgroundImage, opacity, position, fontSize, fontWeight];
      place = [one.parentElement ? placeOf(one.parentElement) : '', ...own, ...drawn].join(';');
      known.set(one, place);
    }
    return place;
  };
  /** Whether axe can find a contrast in it: it has words of its own, or what is typed. */
  const hasWords = (one: Element) =>
    one.matches('input, select, textarea') ||
    [...one.childNodes].some(({ nodeType, nodeValue }) => nodeType === Node.TEXT_NODE && nodeValue?.trim());
  /** Marks what has no words, and all but the first of one such place: it has one contrast, also when it is looked at again. */
  const markAlike = (): Element[] => {
    looked.contrasts ??= new Set();
    const seen = looked.contrasts;
    return [...document.body.querySelectorAll('*')].filter((one) => {
      if (!asked.some((part) => part.contains(one))) return false;
      if (hasWords(one)) {
        if (!one.checkVisibility({ visibilityProperty: true })) return false;
        const place = placeOf(one);
        if (!seen.has(place)) {
          seen.add(place);
          return false;
        }
      }
      one.setAttribute(mark, '');
      return true;
    });
  };

  // It takes what is clear for hidden; the page is as if it were painted.
  const asPainted = (style: CSSStyleDeclaration) =>
    new Proxy(style, {
      get: (own, name) =>
        name === 'getPropertyValue'
          ? (property: string) => (property === 'opacity' ? '1' : own.getPropertyValue(property))
          : name === 'opacity'
            ? '1'
            : own[name as keyof CSSStyleDeclaration],
    });
  if (unpainted)
    globalThis.getComputedStyle = (one, part) => {
      const style = styleOf(one, part);
      return one === root ? asPainted(style) : style;
    };
  const alike = only?.type === 'rule' && !only.values.includes('color-contrast') ? [] : markAlike();
  try {
    const where = within ? { include: within.map((one) => [one]) } : document;
    const { violations, incomplete } = await inPage.run(where, {
      resultTypes: ['violations', 'incomplete'],
      elementRef: true,
      preload: false,
      ...(only ? { runOnly: only } : {}),
    });
    // A contrast it could not tell, as where something lay over the text, is not known.
    for (const { nodes } of incomplete.filter(({ id }) => id === 'color-contrast'))
      for (const { element } of nodes) if (element) looked.contrasts?.delete(placeOf(element));
    return violations.map(
      ({ id, nodes }) =>
        `${id}: ${nodes.map((node) => `${node.target.join(' ')} ${node.failureSummary ?? ''}`).join(' | ')}`,
    );
  } finally {
    for (const one of alike) one.removeAttribute(mark);
    globalThis.getComputedStyle = styleOf;
  }
}

/** Faults in light, and those of colour in dark; leaves the page light. */
export async function faultsInBoth(page: Page, asked: Asked = {}): Promise<string[]> {
  const light = await faultsOf(page, asked);
  await page.emulateMedia({ colorScheme: 'dark' });
  const dark = await faultsOf(page, { ...asked, only: RULES_OF_COLOUR });
  await page.emulateMedia({ colorScheme: 'light' });
  return [...light.map((fault) => `light: ${fault}`), ...dark.map((fault) => `dark: ${fault}`)];
}

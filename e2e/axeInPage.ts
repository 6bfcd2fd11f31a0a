// What goes round axe-core in the page: which texts it looks at for their contrast, what of the page it need not walk through, and how a
// page that is not painted is taken as if it were. axe.ts has it put into a page once.
import type axe from 'axe-core';
import type { Unpainted } from './guarded';

export interface Asked {
  /** Parts of the page, by selector; without them, all of it. */
  readonly within?: readonly string[];
  /** Some of the rules; without them, all that axe has on, its advice on good practice among them. */
  readonly only?: axe.RunOnly;
}

/** What a page that axe was put into has on its global; `ofColour` tells that no other rules are asked for. */
export interface WithAxe {
  faultsOfPage?: (asked: Asked & { ofColour: boolean }) => Promise<string[]>;
}

/** Runs in the page, so everything it needs is inside it. */
export function putRoundAxe(): void {
  const { axe: inPage, unpainted } = globalThis as unknown as { axe: typeof axe } & Unpainted;
  const styleOf = globalThis.getComputedStyle.bind(globalThis);
  const root = document.documentElement;
  /** On the texts whose contrast is looked for. */
  const MARK = 'data-contrast';
  /** What of a drawing axe has rules for. */
  const MEANS =
    '[role], [aria-label], [aria-labelledby], [aria-describedby], [tabindex], title, desc, text, tspan, a, foreignObject, foreignObject *';
  inPage.configure({ noHtml: true, rules: [{ id: 'color-contrast', selector: `[${MARK}]` }] });

  /** Places of texts whose contrast is known. */
  const told = new Set<string>();
  /** Tells of a text in what kind of place it is, of what ink on what ground. */
  const places = () => {
    const known = new Map<Element, string>();
    return function placeOf(one: Element): string {
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
  };
  /** Whether axe can find a contrast in it: it has words of its own, or what is typed. */
  const hasWords = (one: Element) =>
    one.matches('input, select, textarea') ||
    [...one.childNodes].some(({ nodeType, nodeValue }) => nodeType === Node.TEXT_NODE && nodeValue?.trim());
  /** The first text of each place that is not known yet: it has one contrast, also when it is looked at again. */
  const textsToTell = (parts: readonly Element[], placeOf: (one: Element) => string): Element[] =>
    parts
      .flatMap((part) => [...part.querySelectorAll('*')])
      .filter((one) => {
        if (!hasWords(one) || !one.checkVisibility({ visibilityProperty: true })) return false;
        const known = told.size;
        return told.add(placeOf(one)).size > known;
      });

  const withAllRound = (elements: readonly Element[]): Set<Node> => {
    const kept = new Set<Node>();
    for (const one of elements)
      for (let at: Node | null = one; at && !kept.has(at); at = at.parentNode) kept.add(at);
    return kept;
  };
  /** Pieces of drawings that mean nothing to axe, as those of a wall: half of a page. */
  const piecesOfDrawings = (): Element[] => {
    const kept = withAllRound([...document.querySelectorAll(MEANS)]);
    return [...document.querySelectorAll('svg *')].filter((one) => !kept.has(one));
  };
  /** All that neither holds nor touches any of these texts. */
  const apartFrom = (texts: readonly Element[]): Element[] => {
    const words = document.createRange();
    const boxes = texts.flatMap((one) => {
      words.selectNodeContents(one);
      return [one.getBoundingClientRect(), words.getBoundingClientRect()];
    });
    const all = [...document.body.querySelectorAll('*')];
    const touching = all.filter((one) => {
      const { left, right, top, bottom } = one.getBoundingClientRect();
      return boxes.some(
        (box) => box.left < right && left < box.right && box.top < bottom && top < box.bottom,
      );
    });
    const kept = withAllRound([...texts, ...touching]);
    return all.filter((one) => !kept.has(one));
  };
  /** A link and all of the block of text it stands in. */
  const linksInText = (parts: readonly Element[]): Element[] =>
    parts
      .flatMap((part) => [...part.querySelectorAll('a[href]')])
      .filter((one) => one.checkVisibility({ visibilityProperty: true }))
      .flatMap((one) => {
        let block = one;
        while (block.parentElement && styleOf(block).display.startsWith('inline'))
          block = block.parentElement;
        return [block, ...block.querySelectorAll('*')];
      });

  /** Until the returned function is called, whoever walks the page node by node, as axe does, does not come to these. */
  const leaveOut = (elements: readonly Element[]): (() => void) => {
    const out = new Set<Node>(elements);
    const holders = new Set(elements.map((one) => one.parentNode!));
    for (const one of holders)
      Object.defineProperty(one, 'childNodes', {
        configurable: true,
        value: [...one.childNodes].filter((node) => !out.has(node)),
      });
    const walkerOf = document.createTreeWalker.bind(document);
    document.createTreeWalker = (from, show) =>
      walkerOf(from, show, (node) => (out.has(node) ? NodeFilter.FILTER_REJECT : NodeFilter.FILTER_ACCEPT));
    return () => {
      for (const one of holders) Reflect.deleteProperty(one, 'childNodes');
      Reflect.deleteProperty(document, 'createTreeWalker');
    };
  };
  /** Axe takes what is clear for hidden; until the returned function is called, the page is as if it were painted. */
  const asPainted = (): (() => void) => {
    const own = globalThis.getComputedStyle;
    const clear = (style: CSSStyleDeclaration) =>
      new Proxy(style, {
        get: (styles, name) =>
          name === 'getPropertyValue'
            ? (property: string) => (property === 'opacity' ? '1' : styles.getPropertyValue(property))
            : name === 'opacity'
              ? '1'
              : styles[name as keyof CSSStyleDeclaration],
      });
    globalThis.getComputedStyle = (one, part) =>
      one === root ? clear(styleOf(one, part)) : styleOf(one, part);
    return () => {
      globalThis.getComputedStyle = own;
    };
  };

  const faultsOfPage: WithAxe['faultsOfPage'] = async ({ within, only, ofColour }) => {
    const parts = within ? [...document.querySelectorAll(within.join())] : [document.body];
    const looksAtContrast = ofColour || only?.type !== 'rule' || only.values.includes('color-contrast');
    const placeOf = places();
    const texts = looksAtContrast ? textsToTell(parts, placeOf) : [];
    const coloured = ofColour ? [...texts, ...linksInText(parts)] : [];
    if (ofColour && coloured.length === 0) return [];
    for (const one of texts) one.setAttribute(MARK, '');
    const away = [leaveOut(ofColour ? apartFrom(coloured) : piecesOfDrawings())];
    if (unpainted) away.push(asPainted());
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
        for (const { element } of nodes) if (element) told.delete(placeOf(element));
      return violations.map(
        ({ id, nodes }) =>
          `${id}: ${nodes.map((node) => `${node.target.join(' ')} ${node.failureSummary ?? ''}`).join(' | ')}`,
      );
    } finally {
      for (const back of away) back();
      for (const one of texts) one.removeAttribute(MARK);
    }
  };
  Object.assign(globalThis, { faultsOfPage } satisfies WithAxe);
}

// What can be measured on a page without an eye: that it does not scroll sideways, that nothing lies over what is pressed, that no two
// such things overlap, that no text is cut off, and that no frame is too low to be read in.
import type { CDPSession, Page } from '@playwright/test';

/** Width and height of the window in CSS pixels. */
export type Size = readonly [width: number, height: number];

/** The size of WCAG 2.2, 1.4.10 Reflow: 400 % zoom. */
export const SMALLEST: Size = [320, 256];
/** 1280 × 800 at 200 and 300 % of browser zoom, and as wide as a tablet. */
export const BY_MOUSE: readonly Size[] = [
  [640, 400],
  [820, 1180],
  [427, 267],
];
/** Phones upright and on their side. */
export const UNDER_A_FINGER: readonly Size[] = [
  [320, 640],
  [360, 740],
  [844, 390],
  [390, 844],
];

const fingers = new WeakMap<Page, CDPSession>();
/** From now on the page is worked by a finger, or by a mouse again. */
export async function byFinger(page: Page, enabled: boolean): Promise<void> {
  const session = fingers.get(page) ?? (await page.context().newCDPSession(page));
  fingers.set(page, session);
  await session.send('Emulation.setTouchEmulationEnabled', { enabled, maxTouchPoints: 5 });
}

/** Sets the size of the window and waits until the page has been laid out for it. */
export async function resize(page: Page, [width, height]: Size): Promise<void> {
  await page.setViewportSize({ width, height });
  await settled(page);
}

/** Three frames: sizes are measured in the first, drawn for in the second. */
async function settled(page: Page): Promise<void> {
  await page.evaluate(
    () =>
      new Promise<void>((done) =>
        requestAnimationFrame(() => requestAnimationFrame(() => requestAnimationFrame(() => done()))),
      ),
  );
}

/** All faults of the page as it stands, one line each; none on a page where everything is in reach. */
export async function outOfReach(page: Page): Promise<string[]> {
  return page.evaluate(measured);
}

/** Runs in the page, so everything it needs is inside it. */
function measured(): string[] {
  const faults: string[] = [];
  const page = document.documentElement;
  const root = document.querySelector('[role="dialog"]') ?? document.body;

  const named = (element: Element) => {
    const label = (element as HTMLInputElement).labels?.[0]?.textContent;
    const words = element.getAttribute('aria-label') ?? label ?? element.textContent;
    const kind = element.classList.length > 0 ? `.${[...element.classList].join('.')}` : '';
    return `${element.localName}${kind} "${words.trim().replace(/\s+/g, ' ').slice(0, 40)}"`;
  };
  /** Reads something of an element once; nothing of it changes while the page is measured. */
  const once = <Read>(read: (element: Element) => Read) => {
    const known = new Map<Element, Read>();
    return (element: Element): Read => {
      if (!known.has(element)) known.set(element, read(element));
      return known.get(element)!;
    };
  };
  const styleOf = once((element) => {
    const { overflowX, overflowY, position, clipPath, fontSize } = getComputedStyle(element);
    return { x: overflowX, y: overflowY, position, clipPath, fontSize: parseFloat(fontSize) };
  });
  const seen = once((element) => {
    const box = element.getBoundingClientRect();
    if (box.width < 2 || box.height < 2 || element.closest('[inert], [aria-hidden="true"]')) return false;
    return (
      element.checkVisibility({ visibilityProperty: true, contentVisibilityAuto: false }) &&
      !isHidden(element)
    );
  });
  /** Text for screen readers only, and skip links until they have the focus. */
  const isHidden = once((element): boolean => {
    const { parentElement } = element;
    return styleOf(element).clipPath === 'inset(50%)' || (parentElement !== null && isHidden(parentElement));
  });
  const scrolls = (element: Element, way: 'x' | 'y') => ['auto', 'scroll'].includes(styleOf(element)[way]);
  const hides = (element: Element, way: 'x' | 'y') => ['hidden', 'clip'].includes(styleOf(element)[way]);
  /** What is pressed: a radio or a box that is drawn by its label is its label. */
  const target = (element: Element): Element => {
    const label = element.localName === 'input' ? element.closest('label') : null;
    if (!label) return element;
    const box = element.getBoundingClientRect();
    return getComputedStyle(element).opacity === '0' || box.width < 2 ? label : element;
  };
  const frameOf = once((element): Element => {
    const at = element.parentElement;
    if (!at || at === page) return page;
    return styleOf(at).position === 'fixed' || scrolls(at, 'x') || scrolls(at, 'y') ? at : frameOf(at);
  });
  const sticksTo = once((element): Element | null => {
    if (element === page) return null;
    if (['sticky', 'fixed'].includes(styleOf(element).position)) return element;
    return element.parentElement && sticksTo(element.parentElement);
  });

  /** An element's own words. */
  const textsOf = (element: Element): Node[] =>
    [...element.childNodes].filter(
      (node) => node.nodeType === Node.TEXT_NODE && (node.nodeValue ?? '').trim() !== '',
    );
  const boxRound = (texts: readonly Node[]): DOMRect => {
    const range = document.createRange();
    range.setStartBefore(texts[0]!);
    range.setEndAfter(texts.at(-1)!);
    return range.getBoundingClientRect();
  };
  /** What holds these elements, at any depth. */
  const holdersOf = (elements: readonly Element[]): Set<Element> => {
    const holders = new Set<Element>();
    for (const one of elements)
      for (let at = one.parentElement; at && !holders.has(at); at = at.parentElement) holders.add(at);
    return holders;
  };

  if (page.scrollWidth > window.innerWidth) {
    const widest = [...document.body.querySelectorAll('*')].filter(
      (one) =>
        one.getBoundingClientRect().right > window.innerWidth + 1 && frameOf(one) === page && seen(one),
    );
    faults.push(
      `the page is ${page.scrollWidth} wide in ${window.innerWidth}: ${widest.slice(0, 3).map(named).join(', ')}`,
    );
  }

  const panel = document.querySelector('.panel');
  if (panel && scrolls(panel, 'x') && panel.scrollWidth > panel.clientWidth + 1)
    faults.push(`the panel is ${panel.scrollWidth} wide in ${panel.clientWidth}`);

  const pressed = [
    ...new Set(
      [
        ...root.querySelectorAll(
          'a[href], button, input, select, textarea, summary, [tabindex], [role="button"], [role="option"]',
        ),
      ]
        .map(target)
        .filter(seen)
        // A frame that scrolls by the keyboard, a heading that gets the focus: nothing is pressed there.
        .filter(
          (one) =>
            !(
              one.hasAttribute('tabindex') &&
              /^(div|section|h\d|main|ul|table|figure|p|span|strong|bdi)$/.test(one.localName) &&
              !one.hasAttribute('role')
            ),
        ),
    ),
  ];

  const hitOf = (one: Element) => {
    const box = one.getBoundingClientRect();
    return document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2);
  };
  for (const one of pressed) {
    // What is hit where the one before it was scrolled to is in reach.
    if (one.contains(hitOf(one))) continue;
    one.scrollIntoView({ block: 'center', inline: 'center', behavior: 'instant' });
    const hit = hitOf(one);
    if (!hit) faults.push(`${named(one)} cannot be brought into the window`);
    else if (!one.contains(hit) && !hit.contains(one)) faults.push(`${named(hit)} lies over ${named(one)}`);
    else if (!one.contains(hit) && !one.closest('svg') && hit !== one.closest('label'))
      faults.push(`${named(one)} is not hit at its middle, but ${named(hit)}`);
    for (let at = one.parentElement; at && at !== page; at = at.parentElement) {
      const moved =
        (hides(at, 'y') && !scrolls(at, 'y') && at.scrollTop > 0) ||
        (hides(at, 'x') && !scrolls(at, 'x') && at.scrollLeft > 0);
      if (!moved) continue;
      faults.push(`${named(one)} lies outside ${named(at)}, which nobody can scroll`);
      at.scrollTo(0, 0);
    }
  }
  // Only what holds what is pressed was scrolled.
  for (const one of holdersOf(pressed)) if (one.scrollTop > 0 || one.scrollLeft > 0) one.scrollTo(0, 0);

  // From the top down, so that each is compared only with what begins above its end.
  const boxes = pressed
    .filter((one) => !one.closest('svg'))
    .map((one) => ({ one, box: one.getBoundingClientRect(), frame: frameOf(one), stuck: sticksTo(one) }))
    .toSorted((a, b) => a.box.top - b.box.top);
  for (const [index, a] of boxes.entries())
    for (let at = index + 1; at < boxes.length && boxes[at]!.box.top < a.box.bottom - 1.5; at += 1) {
      const b = boxes[at]!;
      const across = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);
      if (across <= 1.5 || b.box.bottom - b.box.top <= 1.5) continue;
      if (a.frame !== b.frame || a.stuck !== b.stuck || a.one.contains(b.one) || b.one.contains(a.one))
        continue;
      // A frame on a photograph is as small as its person lays it; its numbers do the same (WCAG 2.2, 2.5.8, Equivalent).
      if (a.one.matches('.photo-handle') && b.one.matches('.photo-handle')) continue;
      faults.push(`${named(a.one)} and ${named(b.one)} overlap`);
    }

  const told = (element: Element) => element.closest('[title], [aria-label]') !== null;
  const boxOf = once((element) => element.getBoundingClientRect());
  const unread = document.createTreeWalker(root, NodeFilter.SHOW_ELEMENT, (one) =>
    (one as Element).matches('svg, [inert], [aria-hidden="true"]')
      ? NodeFilter.FILTER_REJECT
      : NodeFilter.FILTER_ACCEPT,
  );
  while (unread.nextNode()) {
    const one = unread.currentNode as HTMLElement;
    const low = one.scrollHeight > one.clientHeight + 1 && one.clientHeight < 120;
    if (low && scrolls(one, 'y') && one.localName !== 'textarea' && seen(one))
      faults.push(`${named(one)} scrolls up and down in only ${one.clientHeight} px`);
    const texts = textsOf(one);
    if (texts.length === 0 || !seen(one)) continue;
    const words = boxRound(texts);
    let cut = false;
    // Letters are lower than the box of their font.
    const above = Math.max(2.5, styleOf(one).fontSize / 4);
    for (let at: Element | null = one; at && at !== frameOf(one); at = at.parentElement) {
      const box = boxOf(at);
      const across = words.right > box.right + 1.5 || words.left < box.left - 1.5;
      const down = words.bottom > box.bottom + above || words.top < box.top - above;
      if ((across && hides(at, 'x')) || (down && hides(at, 'y'))) {
        const style = getComputedStyle(at);
        const short = style.textOverflow === 'ellipsis' || style.webkitLineClamp !== 'none';
        cut = true;
        if (!short) faults.push(`words of ${named(one)} are cut off by ${named(at)}`);
        else if (!told(at)) faults.push(`words of ${named(one)} are cut short and told nowhere`);
        break;
      }
      if ((across || down) && at.matches('button, label, summary, th, td, li, legend, dt, dd')) {
        faults.push(`words of ${named(one)} stick out of ${named(at)}`);
        break;
      }
    }
    if (!cut && frameOf(one) === page && (words.right > window.innerWidth + 1 || words.left < -1))
      faults.push(`${named(one)} stands out of the window`);
  }
  return [...new Set(faults)];
}

/** Rules laid over those of the page, as a person's own style sheet would be; returns what takes them away again. */
export async function withRules(page: Page, rules: string): Promise<() => Promise<void>> {
  await page.evaluate((text) => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(text);
    document.adoptedStyleSheets.push(sheet);
  }, rules);
  await settled(page);
  return () =>
    page.evaluate(() => {
      document.adoptedStyleSheets.pop();
    });
}

/** Text at twice its size, the page as wide as before: WCAG 2.2, 1.4.4 Resize Text. */
export const TEXT_TWICE = ':root { font-size: 200%; }';
/** The spacing that WCAG 2.2, 1.4.12 Text Spacing names. */
export const TEXT_SPACED =
  '* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important; } p { margin-block-end: 2em !important; }';

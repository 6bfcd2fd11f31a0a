// What tells a chosen control from one that is not, where colours are a person's own (forced colours): its shape, not its colour alone
// (WCAG 2.2, 1.4.1 Use of Color).

/** For each kind of control that can be chosen: whether a chosen one is of the same shape as one that is not, or blank. Runs in the page. */
export function alike(): Record<string, boolean> {
  const shape = (element: Element): string =>
    [element, ...element.querySelectorAll('*')]
      .filter((one) => one.checkVisibility({ visibilityProperty: true }))
      .slice(0, 24)
      .map((one) => {
        const style = getComputedStyle(one);
        const marks = ['::before', '::after'].map((part) => getComputedStyle(one, part).content);
        return [
          style.borderTopWidth,
          style.borderTopStyle,
          style.outlineStyle === 'none' ? '' : `${style.outlineStyle} ${style.outlineWidth}`,
          style.boxShadow.replaceAll(/rgba?\([^)]*\)/g, ''),
          style.fontWeight,
          style.textDecorationLine,
          style.strokeWidth,
          style.strokeDasharray,
          ...marks,
        ].join(' ');
      })
      .join('|');
  /** WCAG 2.2, contrast ratio; a ground that is clear shows the page, which axe looks at. */
  const contrast = (ink: string, ground: string): number => {
    const [a, b] = [ink, ground].map((colour) => {
      const [red = 0, green = 0, blue = 0, alpha = 1] = (colour.match(/[\d.]+/g) ?? []).map(Number);
      const [r = 0, g = 0, bl = 0] = [red, green, blue].map((byte) =>
        byte / 255 <= 0.04045 ? byte / 255 / 12.92 : ((byte / 255 + 0.055) / 1.055) ** 2.4,
      );
      return alpha === 0 ? null : 0.2126 * r + 0.7152 * g + 0.0722 * bl;
    });
    if (a == null || b == null) return 21;
    return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
  };
  const kindOf = (element: Element) => `${element.localName}.${element.classList[0] ?? ''}`;
  const found: Record<string, boolean> = {};
  const compare = (chosen: Element, others: readonly Element[]) => {
    // A block's ring is drawn over the wall, in a layer of its own: see below.
    if (chosen.closest('svg')) return;
    const other = others.find(
      (one) => kindOf(one) === kindOf(chosen) && one.checkVisibility() && !one.matches(':focus, :disabled'),
    );
    if (!other || !chosen.checkVisibility() || chosen.matches(':focus, :focus-within')) return;
    const ground = getComputedStyle(chosen).backgroundColor;
    const inks = [chosen, ...chosen.querySelectorAll('span, b, strong')].map(
      (one) => getComputedStyle(one).color,
    );
    const kind = kindOf(chosen);
    found[kind] ||= shape(chosen) === shape(other) || inks.some((ink) => contrast(ink, ground) < 4.5);
  };
  for (const attribute of ['aria-pressed', 'aria-checked', 'aria-selected'])
    for (const chosen of document.querySelectorAll(`[${attribute}="true"]`))
      compare(chosen, [...document.querySelectorAll(`[${attribute}="false"]`)]);
  for (const chosen of document.querySelectorAll('[aria-current]'))
    compare(chosen, [
      ...chosen.closest('ol, ul, nav')!.querySelectorAll(`${chosen.localName}:not([aria-current])`),
    ]);
  const labels = [...document.querySelectorAll('label:has(input[type="radio"])')];
  for (const chosen of labels.filter((label) => label.matches(':has(:checked)')))
    compare(
      chosen,
      labels.filter(
        (label) => !label.matches(':has(:checked)') && label.parentElement === chosen.parentElement,
      ),
    );
  return found;
}

// What is too small under a finger or for the eye, measured on the page as it is drawn.
import type { Page } from '@playwright/test';

/** The least side of what is pressed (WCAG 2.2, 2.5.5) and the least height of text, CSS pixels. */
const FINGER = 44;
const TEXT = 12;

/** Tells each visible control smaller than 44 px and each visible text smaller than 12 px; an empty list where none is. */
export async function tooSmall(page: Page): Promise<string[]> {
  return page.evaluate(
    ({ FINGER, TEXT }) => {
      const controls =
        'button, a[href], input, select, textarea, summary, [role="button"], [role="slider"], [role="option"], [role="tab"], [role="radio"], [tabindex="0"]';
      const isShown = (element: Element) => {
        const style = getComputedStyle(element);
        const { width, height } = element.getBoundingClientRect();
        return (
          element.checkVisibility({ visibilityProperty: true, opacityProperty: false }) &&
          element.closest('[inert], .hidden-text, [data-react-aria-prevent-focus]') === null &&
          !style.clipPath.startsWith('inset(50%') &&
          width > 0 &&
          height > 0
        );
      };
      /** The labels of a control are pressed as well. */
      const hitAreas = (element: Element) => {
        const labels = (element as HTMLInputElement).labels;
        return [element, ...(labels ?? [])].map((one) => one.getBoundingClientRect());
      };
      const named = (element: Element) =>
        `${element.tagName.toLowerCase()}.${element.getAttribute('class') ?? ''} "${(element.getAttribute('aria-label') ?? element.textContent ?? '').trim().slice(0, 40)}"`;
      const small: string[] = [];
      for (const element of document.querySelectorAll(controls)) {
        if (!isShown(element)) continue;
        // Links in sentences are excepted (2.5.5). Blocks are as large as one zooms, the strip is one target to slide along, and strips
        // of a set are as high as they are cut: they are chosen in the list of the open set as well.
        if (element.matches('p a, [data-cell], .value-strip button, .lay-strip, [type="file"]')) continue;
        // What only scrolls takes the focus for keys.
        if (element.matches('[tabindex="0"]') && !element.matches('button, [role]')) continue;
        const fits = hitAreas(element).some(
          ({ width, height }) => width >= FINGER - 0.5 && height >= FINGER - 0.5,
        );
        const { width, height } = element.getBoundingClientRect();
        if (!fits) small.push(`${named(element)}: ${width.toFixed(0)} × ${height.toFixed(0)}`);
      }
      const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
      for (let node = walker.nextNode(); node; node = walker.nextNode()) {
        const element = node.parentElement;
        if (!element || node.textContent?.trim() === '' || !isShown(element)) continue;
        // Pages and templates are shown smaller than they are printed, and can be enlarged.
        if (element.closest('.page-sheet, style, script, title, option')) continue;
        const matrix = element instanceof SVGGraphicsElement ? element.getScreenCTM() : null;
        const size =
          Number.parseFloat(getComputedStyle(element).fontSize) *
          (matrix ? Math.hypot(matrix.a, matrix.b) : 1);
        if (size < TEXT - 0.05)
          small.push(
            `text "${node.textContent?.trim().slice(0, 30)}" in ${named(element).slice(0, 60)}: ${size.toFixed(1)} px`,
          );
      }
      return [...new Set(small)];
    },
    { FINGER, TEXT },
  );
}

// The marks of one part of a pattern, though it shares its first and last page with other parts.
import { STYLES } from '../../../src/drawing/pattern/look';
import type { Mark, Page } from '../../../src/drawing/pattern/page';

/** From the title of the part to the title of the next one; what stands before the first title of a page goes with it. */
export function partMarks(pages: readonly Page[], part: string): Mark[] {
  const isTitle = (mark: Mark) => mark.kind === 'text' && mark.size === STYLES.part.size;
  let inPart = false;
  return pages.flatMap((page) => {
    if (!page.parts.includes(part)) return [];
    return page.marks.filter((mark) => {
      if (isTitle(mark)) inPart = mark.kind === 'text' && mark.text === part;
      return inPart;
    });
  });
}

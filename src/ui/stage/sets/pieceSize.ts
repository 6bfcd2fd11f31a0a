// Sizes in inches for the style sheet, which knows how many pixels an inch of the table is.
import type { CSSProperties } from 'react';
import type { Inches } from '../../../model/units';

/** The height of a piece, and its width or the height that it needs, as properties of the style sheet. */
export function pieceSize(sizes: { high: Inches; wide?: Inches; need?: Inches }): CSSProperties {
  const { high, wide, need } = sizes;
  return { '--high': high, '--wide': wide, '--need': need } as CSSProperties;
}

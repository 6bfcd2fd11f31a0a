// The options of the pattern. They are apart from the pages, so that the screen can offer them before it loads the pages.
import type { PaperName } from './page';

/** The parts of the pattern in their order; a person may leave each out. */
export const PATTERN_PARTS = ['cover', 'materials', 'sets', 'blocks', 'setting', 'templates'] as const;
export type PatternPart = (typeof PATTERN_PARTS)[number];

export interface PatternOptions {
  readonly paper: PaperName;
  /** Parts of the pattern; or the map of the wall alone, which is a page of the blocks. */
  readonly parts: readonly PatternPart[] | readonly ['wall map'];
}

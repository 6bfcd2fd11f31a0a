// What a person chooses about the pattern. Apart from the pages, so that the screen can offer it before they are loaded.
import type { PaperName } from './page';

/** Parts a person may leave out, in the order they come. */
export const PATTERN_PARTS = ['cover', 'materials', 'sets', 'blocks', 'setting', 'templates'] as const;
export type PatternPart = (typeof PATTERN_PARTS)[number];

export interface PatternOptions {
  readonly paper: PaperName;
  readonly parts: readonly PatternPart[];
}

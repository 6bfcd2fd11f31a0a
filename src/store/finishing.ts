// What is chosen at the step Finishing: the part on show and how it is made. Panel and large area share it; it is no part of the
// project.
import type { CuttingScope } from '../cutting/yardage/setStrips';
import type { PatternPart } from '../drawing/pattern/options';
import type { PaperName } from '../drawing/pattern/page';

/** The parts of finishing, in their order. */
export const FINISHING_PARTS = [
  'sizes',
  'picture',
  'words',
  'pattern',
  'cutting',
  'kits',
  'weight',
  'colourways',
] as const;
export type FinishingPart = (typeof FINISHING_PARTS)[number];

export interface Finishing {
  readonly part: FinishingPart;
  /** The picture: whether it has a caption and marks, and the width of its PNG in pixels. */
  readonly caption: boolean;
  readonly marked: boolean;
  readonly pixels: number;
  /** The pattern: its paper (null: the usual one of the unit), the parts left out, and the page on show, from 0. */
  readonly paper: PaperName | null;
  readonly leftOut: readonly PatternPart[];
  readonly page: number;
  /** The cutting list: of what. */
  readonly scope: CuttingScope;
  /** The colourway that is open. */
  readonly colourway: string | null;
}

export const FINISHING: Finishing = {
  part: 'sizes',
  caption: true,
  marked: false,
  pixels: 2400,
  paper: null,
  leftOut: [],
  page: 0,
  scope: 'whole',
  colourway: null,
};

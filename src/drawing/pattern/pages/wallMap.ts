// The map of the wall: the top with the number of every block and which way up it hangs, and the same in words.

import type { Inches } from '../../../model/units';
import { wallRows } from '../../wallRows';
import { topFigure } from '../clothMarks';
import type { Composer } from '../composer';
import { INK, STYLES, type Style } from '../look';
import { type Figure, type Mark, shifted } from '../page';
import { numberDisc, pointer } from '../signs';
import type { Writing } from '../writing';

const LARGEST_DISC: Inches = 0.19;
const LARGEST_SCALE = 0.5;
/** Height of a row in words and of the heading over them, and the part of a page they may take under the map. */
const ROW: Inches = 0.29;
const ROWS_HEAD: Inches = 0.95;
/** Of the sentences on rows that run aslant. */
const SLANTED_WORDS: Inches = 0.6;
const MOST_BESIDE = 0.34;
/** The map has at least this share of a page's height. */
const LEAST_MAP = 0.5;

export function wallMapPages(composer: Composer, writing: Writing): void {
  const { drawing, say } = writing;
  if (drawing.blocks.length === 0) return;
  composer.begin(
    say('Map of the wall'),
    say('Each disc has the number of its block. The point on its edge shows where the top of the block’s card goes.'),
    LEAST_MAP * composer.height,
  ); // biome-ignore format: one sentence
  const rows = wallRows(writing.project, drawing, say);
  // The rows in words stand under the map where that leaves it most of the page.
  const slanted = drawing.tilt === 45;
  const beside = rows.length * ROW + ROWS_HEAD + (slanted ? SLANTED_WORDS : 0);
  const room = composer.heightLeft - (beside < composer.height * MOST_BESIDE ? beside : 0) - 0.1;
  const scale = Math.min(
    composer.width / (drawing.width + 2 * drawing.edge),
    room / (drawing.height + 2 * drawing.edge),
    LARGEST_SCALE,
  );
  const map = mapFigure(scale, writing);
  composer.add(map, 0.05, 0, (composer.width - map.width) / 2);
  composer.heading(say('Row by row'));
  if (slanted) composer.paragraph(say('The rows run diagonally, from the upper left to the lower right; row 1 is the one in the upper right corner. Setting corners are sewn on last. Turns are given with the row held level.')); // biome-ignore format: two sentences
  composer.table(
    [
      { head: say('Row'), part: 0.6 },
      { head: say(slanted ? 'From the upper left to the lower right' : 'Blocks from the left'), part: 6.6 },
    ],
    rows.map((row, index) => [{ text: String(index + 1), style: STYLES.strong }, row.join('  ·  ')]),
    slanted ? 0.1 : 0.04,
  );
}

function mapFigure(scale: number, writing: Writing): Figure {
  const { drawing, type } = writing;
  const top = topFigure(drawing, scale, writing);
  const cell = Math.min(drawing.block.width, drawing.block.height) * scale;
  const radius = Math.min(LARGEST_DISC, cell * 0.23);
  const style: Style = { face: 'strong', size: radius * 1.02, ink: INK, leading: radius };
  const marks = drawing.blocks.flatMap((hung): Mark[] => {
    const at = {
      x: (hung.centre.x + drawing.edge) * scale,
      y: (hung.centre.y + drawing.edge) * scale,
    };
    return [pointer(at, radius, hung.quarters * 90 + hung.tilt), ...numberDisc(String(hung.number), at, style, type, radius)];
  }); // biome-ignore format: two signs
  return { ...top, marks: [...top.marks, ...shifted(marks, 0, 0)] };
}

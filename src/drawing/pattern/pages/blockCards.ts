// A card for every block: a small drawing with its places numbered, what wedge each place takes, and which places carry the
// corners. The numbers are the block's own, so place 1 lies at the top only where the corners let it.
import { seamsNotNesting } from '../../../cutting/wedges/nesting';
import { direction } from '../../../geometry/block';
import { apothem } from '../../../geometry/wedge';
import { cellIndexOf, findSet } from '../../../model/find';
import { counted, type Phrase, phrase } from '../../../model/phrase';
import type { Block } from '../../../model/project';
import type { Inches } from '../../../model/units';
import { cornerFabricOf } from '../../../model/wallCells';
import { cornerPlaceWords } from '../../cornerPlaceWords';
import { drawBlock } from '../../drawProject';
import { clothMarks } from '../clothMarks';
import type { Composer } from '../composer';
import { inRow, line, textFigure, textWidth } from '../lettering';
import { STYLES, WHITE } from '../look';
import { type Figure, type Mark, shifted, sideBySide, stacked } from '../page';
import { numberDisc, tipSign } from '../signs';
import { nameOf, type Writing } from '../writing';
import { cellPlace } from './cellPlace';

const COLUMNS = 2;
const PICTURE: Inches = 1.62;

export function blockCardPages(composer: Composer, writing: Writing): void {
  const { project, say } = writing;
  if (project.blocks.length === 0) return;
  const pieced = project.blocks.filter(({ kind }) => kind === 'pieced');
  const corners = new Set(pieced.map((block) => cornerOf(block, writing)));
  const [only] = corners;
  const sewn = project.blocks.length - pieced.length;
  composer.begin(
    say('Block cards'),
    [
      pieced.length > 0 ? say('Places are numbered clockwise from place 1, the dark disc, which need not be at the top. Beside each place stand its strip set and which way the tip points when the wedge is cut.') : '',
      corners.size === 1 && only ? say(sewn > 0 ? 'Their corners are all of {fabric}.' : 'The corners of all blocks are of {fabric}.', { fabric: only }) : '',
      sewn > 0 ? say(counted(sewn, '1 block is sewn already; its card shows its picture.', '{count} blocks are sewn already; their cards show their pictures.')) : '',
    ].filter((sentence) => sentence !== '').join(' '),
  ); // biome-ignore format: three sentences
  const step = composer.width / COLUMNS;
  const cards = project.blocks
    .toSorted((one, other) => one.number - other.number)
    .map((block) =>
      block.kind === 'pictured'
        ? sewnCard(block, step - 0.2, writing)
        : card(block, corners.size > 1, step - 0.2, writing),
    );
  for (let at = 0; at < cards.length; at += COLUMNS) {
    composer.add(sideBySide(cards.slice(at, at + COLUMNS), step), at === 0 ? 0.08 : 0.24);
  }
}

function cornerOf(block: Block, writing: Writing): string {
  const cell = cellIndexOf(writing.project, block.id);
  return nameOf(writing, cornerFabricOf(writing.project, block, cell));
}

function card(block: Block, ownCorners: boolean, width: Inches, writing: Writing): Figure {
  const { project, say, type } = writing;
  const cell = cellIndexOf(project, block.id);
  const listAt = PICTURE + 0.16;
  const listWidth = width - listAt;
  const words = [
    stacked([textFigure(say('Block {number}', { number: block.number }), STYLES.card, listWidth, type)], 0),
    textFigure(say(whereWords(cell, writing)), STYLES.label, listWidth, type),
    placeList(block, listWidth, writing),
    textFigure(say(cornerWords(block, ownCorners, writing)), STYLES.small, listWidth, type),
    ...seamsNotNesting(project, block).map(([place, next]) =>
      textFigure(say('Places {place} and {next} do not nest: press one over.', { place: place + 1, next: next + 1 }), STYLES.label, listWidth, type),
    ),
  ]; // biome-ignore format: a card
  return inRow([
    { x: 0, figure: picture(block, writing) },
    { x: listAt, figure: stacked(words, 0.015) },
  ]);
}

/** The card of a block that is sewn already: its picture, and where it hangs. */
function sewnCard(block: Block, width: Inches, writing: Writing): Figure {
  const { project, say, type } = writing;
  const listAt = PICTURE + 0.16;
  const words = [
    textFigure(say('Block {number}', { number: block.number }), STYLES.card, width - listAt, type),
    textFigure(say(whereWords(cellIndexOf(project, block.id), writing)), STYLES.label, width - listAt, type),
    textFigure(say('Sewn already, corners and all.'), STYLES.small, width - listAt, type),
  ];
  return inRow([
    { x: 0, figure: picture(block, writing) },
    { x: listAt, figure: stacked(words, 0.015) },
  ]);
}

/** Where the corners go, and of which fabric where blocks differ. */
function cornerWords(block: Block, ownCorners: boolean, writing: Writing): Phrase {
  const places = cornerPlaceWords(block, writing.project.wedge);
  if (!ownCorners) return phrase('Corners on {places}.', { places });
  return phrase('Corners on {places}: {fabric}', { places, fabric: cornerOf(block, writing) });
}

function whereWords(cell: number, { project }: Writing): Phrase {
  if (cell < 0) return phrase('not on the wall');
  return phrase('{place} of the wall', { place: cellPlace(cell, project) });
}

function picture(block: Block, writing: Writing): Figure {
  const { project, drawing, type } = writing;
  const scale = PICTURE / Math.max(drawing.block.width, drawing.block.height);
  const middle = PICTURE / 2;
  const marks: Mark[] = shifted(clothMarks(drawBlock(project, block), scale, writing), middle, middle);
  block.places.forEach((_, place) => {
    const out = direction(place + block.cornerShift, project.wedge.perBlock);
    const reach = apothem(project.wedge) * 0.8 * scale;
    const at = { x: middle + out.x * reach, y: middle + out.y * reach };
    const style = place === 0 ? { ...STYLES.labelStrong, ink: WHITE } : STYLES.labelStrong;
    marks.push(...numberDisc(String(place + 1), at, style, type));
  });
  return { width: PICTURE, height: PICTURE, marks };
}

/** Where the words of a place begin in its line, and what is free after them. */
const WORDS_AT: Inches = 0.36;
const AFTER_WORDS: Inches = 0.02;

/** One line for each place; in two columns where a block has more than eight and their words have room. */
function placeList(block: Block, width: Inches, writing: Writing): Figure {
  const room = width / 2 - WORDS_AT - AFTER_WORDS;
  const hasRoom = block.places.every((_, at) => {
    const { short } = placeWords(block, at, writing);
    return textWidth(short, STYLES.small, writing.type) <= room;
  });
  const columns = block.places.length > 8 && hasRoom ? 2 : 1;
  const inColumn = Math.ceil(block.places.length / columns);
  const step = width / columns;
  const leading = 0.148;
  const marks = block.places.flatMap((_, place) => {
    const x = Math.floor(place / inColumn) * step;
    const y = (place % inColumn) * leading;
    return shifted(placeLine(block, place, step, writing), x, y);
  });
  return { width, height: inColumn * leading + 0.03, marks };
}

function placeLine(block: Block, at: number, width: Inches, writing: Writing): Mark[] {
  const { type } = writing;
  const place = block.places[at]!;
  const y = 0.11;
  const number = line(String(at + 1), STYLES.smallStrong, 0.1, y, type, 'right');
  const { long, short } = placeWords(block, at, writing);
  if (!place) return [...number, ...line(long, STYLES.small, 0.2, y, type)];
  const room = width - WORDS_AT - AFTER_WORDS;
  const words = textWidth(long, STYLES.small, type) <= room ? long : short;
  return [
    ...number,
    tipSign(place.tip, 0.1, { x: 0.19, y: 0.02 }),
    ...line(words, STYLES.small, WORDS_AT, y, type),
  ];
}

/** The wedge of a place, in full and as short as it can be said. */
function placeWords(block: Block, at: number, { project, say }: Writing): { long: string; short: string } {
  const place = block.places[at];
  if (!place) return { long: say('empty'), short: say('empty') };
  const set = { set: findSet(project, place.set)?.label ?? '?' };
  const up = place.tip === 'up';
  return {
    long: say(up ? 'Set {set}, tip up' : 'Set {set}, tip down', set),
    short: say(up ? '{set} up' : '{set} down', set),
  };
}

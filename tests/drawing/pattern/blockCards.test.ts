// A maker with a block's card in hand: the numbers on the drawing are the places of the list, and what is laid by the card's
// words, turned as the drawing and the map of the wall show, is the block of the quilt. Read back from the pages as written.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { HungBlock, Piece } from '../../../src/drawing/drawing';
import { absoluteOutline, drawBlock, drawProject } from '../../../src/drawing/drawProject';
import type { Mark, Page } from '../../../src/drawing/pattern/page';
import { wedgeBands } from '../../../src/geometry/bands';
import { bandOutline } from '../../../src/geometry/block';
import type { Outline, Point } from '../../../src/geometry/point';
import { stepsPerTurn, turnsOf } from '../../../src/model/find';
import type { Project } from '../../../src/model/project';
import { scrappyTop } from '../../balance/tops';
import { turnedBy } from '../../geometry/clipping';
import { pictureNumber, withPictures } from '../../geometry/pictured';
import { randomProject } from '../samples';
import { written } from './makePdf';
import { partMarks } from './partMarks';

const LABELS = 'ABC';

/** One block that hangs with this turn, its sets called A, B and C. */
function oneBlock(seed: number, perBlock: 6 | 8 | 10 | 12, cornerShift: number, turn: number): Project {
  const project = randomProject(seed, perBlock);
  return {
    ...project,
    stripSets: project.stripSets.map((set, index) => ({ ...set, label: LABELS[index]! })),
    blocks: project.blocks.map((block) => ({ ...block, cornerShift })),
    wall: { rows: 1, columns: 1, cells: [{ block: project.blocks[0]!.id, turn, pinned: false }] },
  };
}

const ALL = ([6, 8, 10, 12] as const).flatMap((perBlock) =>
  Array.from({ length: stepsPerTurn(perBlock) }, (_, shift) =>
    Array.from({ length: turnsOf(perBlock) }, (__, turn) => ({ perBlock, shift, turn })),
  ).flat(),
);

function pagesOf(project: Project): readonly Page[] {
  return written(project, 'letter', ['blocks']).pages;
}

function wordsOf(marks: readonly Mark[]): string {
  return marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])).join(' ').replaceAll(/\s+/g, ' '); // biome-ignore format: one line
}

interface Disc {
  readonly number: number;
  readonly dark: boolean;
  /** Degrees clockwise from the top of the drawing. */
  readonly toward: number;
}

/** The numbered discs of the one card. */
function discsOf(marks: readonly Mark[]): Disc[] {
  const discs = marks.flatMap((mark, index) =>
    mark.kind === 'disc' ? [{ mark, text: marks[index + 1] }] : [],
  );
  const middle = {
    x: discs.reduce((sum, { mark }) => sum + mark.centre.x, 0) / discs.length,
    y: discs.reduce((sum, { mark }) => sum + mark.centre.y, 0) / discs.length,
  };
  return discs.map(({ mark, text }) => ({
    number: text?.kind === 'text' ? Number(text.text) : Number.NaN,
    dark: mark.fill?.kind === 'ink' && mark.fill.colour === '#1b1b1b',
    toward: clockwise(middle, mark.centre),
  }));
}

function clockwise(from: Point, to: Point): number {
  return ((Math.atan2(to.x - from.x, from.y - to.y) * 180) / Math.PI + 360) % 360;
}

/** The wedges of the card's list, place by place. */
function listOf(words: string): { place: number; set: string; tip: 'up' | 'down' }[] {
  const lines = words.matchAll(/(\d+) (?:Set )?([ABC]),?(?: tip)? (up|down)/g);
  return Array.from(lines, ([, place, set, tip]) => ({
    place: Number(place),
    set: set!,
    tip: tip as 'up' | 'down',
  }));
}

/** Places that the card says carry the corner pieces, each piece with the one or two it lies on. */
function cornersOf(words: string): number[][] {
  const said = /Corners on (?:places )?([\d +,and]+)/.exec(words)?.[1] ?? '';
  return said.split(/,|and/).map((group) => group.split('+').map(Number));
}

/** The wedges laid clockwise by the list, place 1 at the top: their bands, each with its fabric. */
function laidOut(list: ReturnType<typeof listOf>, project: Project): { fabric: string; outline: Outline }[] {
  return list.flatMap(({ place, set, tip }) => {
    const { strips } = project.stripSets.find((one) => one.label === set)!;
    return wedgeBands(strips, tip, project.wedge).map(({ fabric, outer, inner }) => {
      return { fabric, outline: bandOutline(place - 1, outer, inner, project.wedge.perBlock) };
    });
  });
}

/** Fabric and corners of every piece, written so that the order of pieces and corners does not matter. */
function cornersWritten(
  pieces: readonly { fabric: string | null; outline: Outline }[],
  degrees = 0,
): string[] {
  const text = (value: number) => (Math.round(value * 1e5) / 1e5 + 0).toFixed(5);
  return pieces
    .map(({ fabric, outline }) => {
      const corners = outline.map((point) => turnedBy(point, (degrees * Math.PI) / 180));
      return `${fabric}: ${corners.map(({ x, y }) => `${text(x)},${text(y)}`).sort().join(' ')}`;
    }) // biome-ignore format: a sum
    .sort();
}

const bandsOf = (pieces: readonly Piece[]) => pieces.filter((piece) => piece.part === 'band');

/** Places whose rim lies along an edge of this corner piece, by shared corners of their outlines. */
function carriedBy(corner: Piece, pieces: readonly Piece[]): number[] {
  const on = (point: Point) => corner.outline.some(({ x, y }) => Math.hypot(x - point.x, y - point.y) < 1e-6);
  return bandsOf(pieces)
    .filter((piece) => piece.band === 1 && piece.outline.filter(on).length === 2)
    .map((piece) => piece.place!);
}

function hungPieces(hung: HungBlock): { fabric: string | null; outline: Outline }[] {
  return bandsOf(hung.pieces).map((piece) => ({
    fabric: piece.fabric,
    outline: absoluteOutline(hung, piece).map(({ x, y }) => ({ x: x - hung.centre.x, y: y - hung.centre.y })),
  }));
}

describe('the card of a block', () => {
  it.each(ALL)('makes the block that is drawn: $perBlock wedges, place 1 $shift from the top, turn $turn', ({ perBlock, shift, turn }) => {
    const project = oneBlock(perBlock + shift, perBlock, shift, turn);
    const pages = pagesOf(project);
    const card = partMarks(pages, 'Block cards');
    const words = wordsOf(card);
    const discs = discsOf(card);
    const list = listOf(words);
    const [block] = project.blocks;
    const drawn = drawBlock(project, block!);

    // One disc for every line of the list, clockwise from the dark one, as the page says.
    expect(list.map(({ place }) => place)).toEqual(Array.from({ length: perBlock }, (_, at) => at + 1));
    expect(discs.map(({ number }) => number)).toEqual(list.map(({ place }) => place));
    expect(words).toContain('numbered clockwise from place 1, the dark disc');
    expect(words).not.toContain('clockwise from the top');
    expect(discs.filter(({ dark }) => dark).map(({ number }) => number)).toEqual([1]);
    const first = discs[0]!.toward;
    discs.forEach(({ number, toward }) => {
      const ahead = (toward - first + 360) % 360;
      expect(Math.abs(((ahead - ((number - 1) * 360) / perBlock + 540) % 360) - 180)).toBeLessThan(1e-6);
    });

    // Laid by the list and turned until place 1 lies where its disc is, it is the drawn block.
    const made = laidOut(list, project);
    expect(cornersWritten(made, first)).toEqual(cornersWritten(bandsOf(drawn)));

    // The corners lie on the places the card names.
    const corners = drawn.filter((piece) => piece.part === 'corner').map((piece) => carriedBy(piece, drawn));
    const named = cornersOf(words);
    const sorted = (groups: readonly (readonly number[])[]) => groups.map((group) => [...group].sort((one, other) => one - other).join('+')).sort(); // biome-ignore format: one line
    expect(corners).toHaveLength(4);
    expect(sorted(named)).toEqual(sorted(corners));

    // Hung as the map's pointer says, with the top of the card there, it is the block on the wall.
    const map = partMarks(pages, 'Map of the wall');
    const at = map.findIndex((mark) => mark.kind === 'disc');
    const [pointer, disc] = [map[at - 1], map[at]];
    if (pointer?.kind !== 'shape' || disc?.kind !== 'disc') throw new Error('no pointer on the map');
    const top = clockwise(disc.centre, pointer.outlines[0]![0]!);
    expect(cornersWritten(made, first + top)).toEqual(cornersWritten(hungPieces(drawProject(project).blocks[0]!)));
  }); // biome-ignore format: a long name

  it('names its corners for blocks of both kinds, whatever the wedges', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.constantFrom(0, 1), (seed, shift) => {
        const words = wordsOf(partMarks(pagesOf(oneBlock(seed, 8, shift, 0)), 'Block cards'));
        expect(cornersOf(words)).toEqual(shift === 0 ? [[2], [4], [6], [8]] : [[1], [3], [5], [7]]);
      }),
      { seed: 5, numRuns: 10 },
    );
  });

  it('of a block in a picture shows the picture and says that it is sewn, and nothing tells how to sew it', () => {
    for (const perBlock of [6, 8, 10, 12] as const) {
      const top = scrappyTop({ rows: 2, columns: 2, seed: perBlock, perBlock });
      const mixed = withPictures(top, 0b1010);
      const pages = pagesOf(mixed);
      const card = partMarks(pages, 'Block cards');
      const words = wordsOf(card);
      expect(words.match(/Sewn already, corners and all\./g)).toHaveLength(2);
      expect(words).toContain('2 blocks are sewn already; their cards show their pictures.');
      expect(card.flatMap((mark) => (mark.kind === 'picture' ? [mark.picture] : []))).toEqual(
        [2, 4].map(pictureNumber),
      );
      // Lists of places for the two that are pieced.
      expect(words.match(/\d+ (?:Set )?S\d+,?(?: tip)? (?:up|down)/g)).toHaveLength(2 * perBlock);
      // The block that is put together as an example is one of those.
      expect(wordsOf(partMarks(pages, 'Making a block'))).toContain('Drawn on block 1;');
      const sewn = pagesOf(withPictures(top, 0b1111));
      expect(partMarks(sewn, 'Making a block')).toEqual([]);
      expect(partMarks(sewn, 'Map of the wall').filter(({ kind }) => kind === 'picture')).toHaveLength(4);
    }
  });
});

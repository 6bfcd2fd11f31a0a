// Setting the top and adding borders: the order of sewing, the pieces, and the top drawn apart in its rows.

import { pieceWords } from '../../cutting/yardage/lineWords';
import type { CuttingStep } from '../../cutting/yardage/neededPiece';
import { area, type Outline, type Point } from '../../geometry/point';
import { layOut } from '../../geometry/setting';
import type { SettingPiece } from '../../geometry/settingPiece';
import { phrase } from '../../model/phrase';
import type { Border } from '../../model/project';
import type { Inches } from '../../model/units';
import { clothMarks } from './clothMarks';
import type { Composer } from './composer';
import type { Figure, Mark } from './page';
import { shifted } from './page';
import { nameOf, type Writing } from './writing';

/** How far rows are drawn apart on the page, inches. */
const APART = 0.13;
/** Rows drawn lower than this are hard to read. */
const LEAST_ROWS: Inches = 2.8;

export function settingPages(composer: Composer, writing: Writing): void {
  const { drawing, say, project } = writing;
  if (drawing.blocks.length === 0) return;
  composer.begin(say('Setting the top'));
  composer.steps(settingSteps(writing));
  piecesOf(['setting', 'sashing'], composer, writing);
  const layout = layOut(project);
  const room = composer.room > 3.2 ? composer.room : composer.height;
  const most = Math.max(LEAST_ROWS, room - bordersRoom(writing));
  const rows = rowsFigure(composer.width * 0.86, most - 0.4, writing);
  composer.add(rows, 0.2, 0, (composer.width - rows.width) / 2);
  if (project.setting.borders.length === 0) return;
  composer.heading(say('Borders'), 1.6);
  composer.steps([
    say('Measure the top through its middle, both ways, before cutting borders to length; it should be {width} × {height} with the seams on.', {
      width: { inches: layout.inner.width + 2 * project.wedge.outerSeam },
      height: { inches: layout.inner.height + 2 * project.wedge.outerSeam },
    }),
    ...project.setting.borders.map((border, index) => borderWords(border, index, writing)),
  ]); // biome-ignore format: a list
  piecesOf(['borders'], composer, writing);
}

/** About what the words on borders take under the drawing, so that both share a page. */
function bordersRoom({ project, yardage }: Writing): Inches {
  const { borders } = project.setting;
  if (borders.length === 0) return 0;
  const lines = yardage.fabrics.flatMap((one) => one.lines.filter((line) => line.step === 'borders'));
  const pieces = lines.reduce((sum, line) => sum + line.pieces.length, 0);
  return 0.75 + 0.43 * (borders.length + 1) + 0.24 * pieces;
}

function settingSteps({ project, say }: Writing): string[] {
  const { layout, sashing, plain } = project.setting;
  const steps: string[] = [say('Lay the whole top out by the map, each block the way up the map shows.')];
  if (plain) steps.push(say('Plain squares take their turn in the rows like blocks.'));
  if (layout.kind === 'onPoint') {
    steps.push(
      say('The rows run aslant. Begin and end each with a side triangle, its long side outwards.'),
      sashing.where === 'none'
        ? say('Sew each row; press the seams of neighbouring rows opposite ways.')
        : sashing.cornerstones === undefined
          ? say('Sew short sashing between the blocks of each row and long sashing between the rows; press towards the sashing.')
          : say('Sew sashing between the blocks of each row, and sashing and cornerstones to rows of their own; press towards the sashing.'),
      say('Sew the rows together, matching seams, and the setting corners last.'),
      say('Trim the edge a seam’s width outside the points of the blocks.'),
    ); // biome-ignore format: a list
    return steps;
  }
  if (sashing.where === 'none') {
    steps.push(
      say('Sew the blocks of each row together, matching the corners of the octagons.'),
      say('Press the seams of odd rows to the left and of even rows to the right, so that they nest.'),
      say('Sew the rows together and press these seams one way.'),
    );
    return steps;
  }
  steps.push(
    sashing.where === 'around'
      ? say('Sew upright sashing between the blocks of each row and at both its ends; press towards the sashing.')
      : say('Sew upright sashing between the blocks of each row; press towards the sashing.'),
    sashing.cornerstones === undefined
      ? say('Cut the level sashing to the length of the rows; mark on it where the upright pieces meet it.')
      : say('Sew level sashing and cornerstones to rows of their own; press towards the sashing.'),
    sashing.where === 'around'
      ? say('Sew rows and level sashing together, with sashing at the top and the foot.')
      : say('Sew the rows together with level sashing between them.'),
  ); // biome-ignore format: a list
  return steps;
}

/** What is cut for these steps, one line for each size. */
function piecesOf(steps: readonly CuttingStep[], composer: Composer, { yardage, say }: Writing): void {
  const lines = yardage.fabrics.flatMap((one) =>
    one.lines
      .filter((line) => steps.includes(line.step))
      .flatMap((line) =>
        line.pieces.map((piece) => ({ what: say(piece.what), piece, fabric: one.fabric.name })),
      ),
  );
  lines.sort((one, other) => one.what.localeCompare(other.what, 'en', { numeric: true }));
  if (lines.length === 0) return;
  composer.skip(0.08);
  composer.bullets(
    lines.map(({ what, piece, fabric }) =>
      say('{what}: {pieces} of {fabric}.', { what, pieces: pieceWords(piece), fabric }),
    ),
  );
}

function borderWords(border: Border, index: number, writing: Writing): string {
  const { say } = writing;
  const values = {
    border: index + 1,
    width: { inches: border.width },
    fabric: nameOf(writing, border.fabric),
  };
  const which = border.keys
    ? say(
        phrase('Border {border}, {width} wide, is pieced: join its pieces in the order of the map.', values),
      )
    : say(phrase('Border {border}, of {fabric}, is {width} wide finished.', values));
  return `${which} ${say(cornerWords(border))}`;
}

function cornerWords({ corners }: Border): string {
  if (corners?.kind === 'mitred') {
    return 'Sew on all four sides, stopping a seam’s width before each corner, and join the ends at 45 degrees.';
  }
  if (corners?.kind === 'cornerstones') {
    return 'Sew on the sides. Sew cornerstones to both ends of the top and bottom pieces, and sew those on.';
  }
  return 'Sew on the sides first and press outwards, then the top and the bottom across the new width.';
}

/** The part inside the borders, its rows drawn apart in the order they are joined. */
function rowsFigure(width: number, height: number, writing: Writing): Figure {
  const { project, drawing } = writing;
  const layout = layOut(project);
  const slanted = layout.tilt === 45;
  const toward: Point = slanted ? { x: -Math.SQRT1_2, y: Math.SQRT1_2 } : { x: 0, y: 1 };
  const pieces = layout.pieces.filter((piece) => piece.border === null);
  const depths = [
    ...drawing.blocks.map(({ centre }) => depthOf(centre, toward)),
    ...drawing.emptyCells.map(({ box }) =>
      depthOf({ x: box.x + box.width / 2, y: box.y + box.height / 2 }, toward),
    ),
    ...pieces.filter((piece) => piece.part === 'plain').map((piece) => depthOf(middleOf(piece), toward)),
  ];
  const rows = distinct(depths);
  const ranks = pieces.map((piece) => rankOf(depthOf(middleOf(piece), toward), rows));
  const first = Math.min(0, ...ranks);
  const gaps = Math.max(rows.length - 1, ...ranks) - first;
  const spread = { x: slanted ? gaps * APART * 0.75 : 0, y: gaps * APART * (slanted ? 0.75 : 1.6) };
  const scale = Math.min(
    (width - spread.x) / layout.inner.width,
    (height - spread.y) / layout.inner.height,
    0.35,
  );
  const left = (layout.width - layout.inner.width) / 2;
  const above = (layout.height - layout.inner.height) / 2;
  const moved = (marks: readonly Mark[], depth: number): Mark[] => {
    const by = (rankOf(depth, rows) - first) * APART;
    const x = slanted ? spread.x + toward.x * by : 0;
    const y = slanted ? toward.y * by : by * 1.6;
    return shifted(marks, x - left * scale, y - above * scale);
  };
  const marks = [
    ...pieces.flatMap((piece) => moved(pieceMarks(piece, scale, writing), depthOf(middleOf(piece), toward))),
    ...drawing.blocks.flatMap((hung) =>
      moved(clothMarks(hung.pieces, scale, writing, hung), depthOf(hung.centre, toward)),
    ),
  ];
  return {
    width: layout.inner.width * scale + spread.x,
    height: layout.inner.height * scale + spread.y,
    marks,
  };
}

function pieceMarks(piece: SettingPiece, scale: number, writing: Writing): Mark[] {
  return clothMarks([{ ...piece, place: null, band: null }], scale, writing);
}

function depthOf(point: Point, toward: Point): number {
  return point.x * toward.x + point.y * toward.y;
}

function middleOf({ outline }: { outline: Outline }): Point {
  const count = outline.length;
  const sum = outline.reduce((all, point) => ({ x: all.x + point.x, y: all.y + point.y }), { x: 0, y: 0 });
  return area(outline) > 0 ? { x: sum.x / count, y: sum.y / count } : outline[0]!;
}

function distinct(depths: readonly number[]): number[] {
  return depths.toSorted((one, other) => one - other).filter((depth, index, all) => index === 0 || depth - all[index - 1]! > 1e-6);
} // biome-ignore format: one chain

/** Which row a depth lies in, counted from 0; halves lie between two rows, as sashing does. */
function rankOf(depth: number, rows: readonly number[]): number {
  if (rows.length < 2) return 0;
  const after = rows.findIndex((row) => row >= depth - 1e-6);
  if (after === 0) return depth < rows[0]! - (rows[1]! - rows[0]!) * 0.45 ? -0.5 : 0;
  if (after < 0) {
    const last = rows.length - 1;
    return depth > rows[last]! + (rows[last]! - rows[last - 1]!) * 0.45 ? last + 0.5 : last;
  }
  const [from, to] = [rows[after - 1]!, rows[after]!];
  const part = (depth - from) / (to - from);
  if (part < 0.4) return after - 1;
  return part > 0.6 ? after : after - 0.5;
}

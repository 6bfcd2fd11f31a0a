// Setting the top and adding borders: the order of sewing, the pieces, and the top drawn apart in its rows.

import { pieceWords } from '../../../cutting/yardage/lineWords';
import type { CuttingStep } from '../../../cutting/yardage/neededPiece';
import { mitreSpare } from '../../../cutting/yardage/settingPieces';
import { sizeWithSeams } from '../../../geometry/allowance';
import { layOut } from '../../../geometry/setting';
import { phrase } from '../../../model/phrase';
import type { Border } from '../../../model/project';
import type { Inches } from '../../../model/units';
import type { Composer } from '../composer';
import { STYLES } from '../look';
import { nameOf, type Writing } from '../writing';
import { joinText } from './cuttingList';
import { piecedRuns } from './piecedRuns';
import { rowsFigure } from './rowsFigure';

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
  // The borders stand under the rows where that leaves the rows large enough, else on a page of their own.
  const left = room - bordersRoom(writing);
  const shared = left >= LEAST_ROWS;
  const rows = rowsFigure(composer.width * 0.86, (shared ? left : room) - 0.4, writing);
  composer.add(rows, 0.2, 0, (composer.width - rows.width) / 2);
  if (project.setting.borders.length === 0) return;
  if (!shared) composer.turnPage();
  composer.heading(say('Borders'), 1.6);
  const sewn = sizeWithSeams(layout.inner, project.wedge.outerSeam);
  composer.steps([
    say('Measure the top through its middle, both ways, before cutting borders to length; it should be {width} × {height} with the seams on.', {
      width: { inches: sewn.width },
      height: { inches: sewn.height },
    }),
    ...project.setting.borders.map((border, index) => borderWords(border, index, writing)),
  ]); // biome-ignore format: a list
  piecesOf(['borders'], composer, writing);
  for (const { heading, lines } of piecedRuns(writing)) {
    composer.heading(heading, 1);
    for (const line of lines) composer.paragraph(line, STYLES.small);
  }
}

/** About what the words on borders take under the drawing, so that both share a page. */
function bordersRoom({ project, yardage }: Writing): Inches {
  const { borders } = project.setting;
  if (borders.length === 0) return 0;
  const lines = yardage.fabrics.flatMap((one) => one.lines.filter((line) => line.step === 'borders'));
  const pieces = lines.flatMap((line) => line.pieces).filter((piece) => !piece.inPiecedBorder).length;
  const joined = lines.filter((line) => line.join !== null).length;
  const mitred = borders.filter((border) => (mitreSpare(border) ?? 0) > 0).length;
  return 0.75 + 0.43 * (borders.length + 1) + 0.2 * mitred + 0.24 * pieces + 0.43 * joined;
}

function settingSteps({ project, say }: Writing): string[] {
  const { layout, sashing, plain } = project.setting;
  const steps: string[] = [say('Lay the whole top out by the map, each block the way up the map shows.')];
  if (plain) steps.push(say('Plain squares take their turn in the rows like blocks.'));
  if (layout.kind === 'onPoint') {
    steps.push(
      say('The rows run aslant. Begin and end each with a side triangle, its long side outwards; an end in a corner of the top stays open for now.'),
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

/** What is cut for these steps, one line for each size, and which strips are joined for it. */
function piecesOf(steps: readonly CuttingStep[], composer: Composer, { yardage, say }: Writing): void {
  const own = yardage.fabrics.flatMap((one) =>
    one.lines.filter((line) => steps.includes(line.step)).map((line) => ({ line, fabric: one.fabric.name })),
  );
  const rows = own.flatMap(({ line, fabric }) =>
    // Those of a pieced border are written in their order instead.
    line.pieces
      .filter((piece) => !piece.inPiecedBorder)
      .map((piece) => ({ what: say(piece.what), piece, fabric })),
  );
  rows.sort((one, other) => one.what.localeCompare(other.what, 'en', { numeric: true }));
  if (rows.length === 0) return;
  composer.skip(0.08);
  composer.bullets([
    ...rows.map(({ what, piece, fabric }) =>
      say('{what}: {pieces} of {fabric}.', { what, pieces: pieceWords(piece), fabric }),
    ),
    ...own.map(({ line }) => joinText(line, say)).filter((words) => words !== ''),
  ]);
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
        phrase(
          'Border {border}, {width} wide, is pieced: join the pieces of each side in the order given below.',
          values,
        ),
      )
    : say(phrase('Border {border}, of {fabric}, is {width} wide finished.', values));
  return `${which} ${say(cornerWords(border), { spare: { inches: mitreSpare(border) ?? 0 } })}`;
}

function cornerWords(border: Border): string {
  const { corners } = border;
  if (corners?.kind === 'mitred') {
    return (mitreSpare(border) ?? 0) > 0
      ? 'Pin all four sides on by their middles; {spare} more than the finished length is to spare at each end. Sew, stopping a seam’s width before each corner, join the ends at 45 degrees, and trim what is over.'
      : 'Sew on all four sides, stopping a seam’s width before each corner, and join the ends at 45 degrees.';
  }
  if (corners?.kind === 'cornerstones') {
    return 'Sew on the sides. Sew cornerstones to both ends of the top and bottom pieces, and sew those on.';
  }
  return 'Sew on the sides first and press outwards, then the top and the bottom across the new width.';
}

// Setting the top and adding borders: the order of sewing, the pieces, and the top drawn apart in its rows.

import { sewingSteps } from '../../../cutting/sewing/sewingSteps';
import type { CuttingLine } from '../../../cutting/yardage/cuttingLine';
import { pieceWords } from '../../../cutting/yardage/lineWords';
import type { CuttingStep } from '../../../cutting/yardage/neededPiece';
import { mitreSpare } from '../../../cutting/yardage/settingGroups';
import { sizeWithSeams } from '../../../geometry/allowance';
import { layOut } from '../../../geometry/setting';
import type { Phrase } from '../../../model/phrase';
import type { Inches } from '../../../model/units';
import type { Composer } from '../composer';
import { STYLES } from '../look';
import type { Writing } from '../writing';
import { joinText } from './cuttingList';
import { piecedRuns } from './piecedRuns';
import { rowsFigure } from './rowsFigure';
import { borderWords, settingWords } from './sewingWords';

/** Rows drawn lower than this are hard to read; with less room under the steps they have a page of their own. */
const LEAST_ROWS: Inches = 2.8;
const LEAST_ROOM: Inches = 3.6;
/** The share of a page's height that is room enough for any rows. */
const MOST_ROOM = 0.62;
/** A row of blocks drawn lower than this has no room for its numbers and letters. */
const LEAST_ROW: Inches = 0.5;

const TOP_STEPS: readonly CuttingStep[] = ['setting', 'sashing', 'borders'];

export function settingPages(composer: Composer, writing: Writing): void {
  const { drawing, say, project } = writing;
  if (drawing.blocks.length === 0) return;
  const steps = sewingSteps(project);
  composer.begin(
    say('Setting the top'),
    [
      say('Every seam from here on is {seam} wide.', { seam: { seam: project.wedge.outerSeam } }),
      ...aboutPieces(writing),
    ].join(' '),
  ); // biome-ignore format: a list
  composer.steps(settingWords(steps, writing));
  piecesOf(['setting', 'sashing'], composer, writing);
  const layout = layOut(project);
  const rows = steps.reduce((sum, step) => sum + (step.does === 'rows' ? step.lines.length : 0), 0);
  const readable = Math.max(LEAST_ROOM, LEAST_ROW * rows);
  const room =
    composer.heightLeft > Math.min(readable, MOST_ROOM * composer.height)
      ? composer.heightLeft
      : composer.height;
  // The borders stand under the rows where that leaves the rows large enough, else on a page of their own.
  const left = room - bordersRoom(writing);
  const shared = left >= LEAST_ROWS;
  const drawn = rowsFigure(composer.width * 0.86, (shared ? left : room) - 0.4, steps, writing);
  composer.add(drawn, 0.2, 0, (composer.width - drawn.width) / 2);
  if (project.setting.borders.length === 0) return;
  if (!shared) composer.turnPage();
  composer.heading(say('Borders'), 1.6);
  const sewn = sizeWithSeams(layout.inner, project.wedge.outerSeam);
  composer.steps([
    say('Measure the top through its middle, both ways, before cutting borders to length; it should be {width} × {height} with the seams on.', {
      width: { inches: sewn.width },
      height: { inches: sewn.height },
    }),
    ...steps.flatMap((step) =>
      step.does === 'border' ? [borderWords(step, project.setting.borders[step.border]!, writing)] : [],
    ),
  ]); // biome-ignore format: a list
  piecesOf(['borders'], composer, writing);
  for (const { heading, lines } of piecedRuns(writing)) {
    composer.heading(heading, 1);
    for (const line of lines) composer.paragraph(line, STYLES.small);
  }
}

/** How to read letters and sizes of the pieces, as far as there are any. */
function aboutPieces({ yardage, say }: Writing): string[] {
  const cut = yardage.fabrics.flatMap((one) => one.lines).filter(({ step }) => TOP_STEPS.includes(step)).flatMap(({ pieces }) => pieces);
  return [
    ...(cut.some(({ letter }) => letter) ? [say('Letters are those of the cutting list, and stand on the drawing.')] : []),
    ...(cut.length > 0 ? [say('Sizes to cut are rounded up: they may be a hair larger than what you measure.')] : []),
  ];
} // biome-ignore format: a list

/** About what the words on borders take under the drawing, so that both share a page. */
function bordersRoom({ project, yardage }: Writing): Inches {
  const { borders } = project.setting;
  if (borders.length === 0) return 0;
  const lines = yardage.fabrics.flatMap((one) => one.lines.filter((line) => line.step === 'borders'));
  const pieces = lines.flatMap((line) => line.pieces).filter((piece) => !piece.inPiecedBorder).length;
  const joined = lines.filter((line) => line.join !== null).length;
  // Sentences of more than two lines.
  const long = borders.filter((border) => border.keys ?? (mitreSpare(border) ?? 0) > 0).length;
  return 0.75 + 0.43 * (borders.length + 1) + 0.4 * long + 0.24 * pieces + 0.43 * joined;
}

/** What is cut for these steps, one line for each size, and which strips are joined for it. */
function piecesOf(steps: readonly CuttingStep[], composer: Composer, { yardage, say }: Writing): void {
  const borderOf = ({ what }: { readonly what: Phrase }) => Number(what.with?.border ?? 0);
  const innermost = (line: CuttingLine) => Math.min(...line.pieces.map(borderOf));
  const own = yardage.fabrics
    .flatMap((one) =>
      one.lines
        .filter((line) => steps.includes(line.step))
        .map((line) => ({ line, fabric: one.fabric.name })),
    )
    .toSorted((one, other) => innermost(one.line) - innermost(other.line));
  const rows = own.flatMap(({ line, fabric }) =>
    // Those of a pieced border are written in their order instead.
    line.pieces
      .filter((piece) => !piece.inPiecedBorder)
      .map((piece) => ({ what: say(piece.what), piece, fabric })),
  );
  // By letter, then border by border from the inside out, then by name.
  const inOrder = ({ what, piece }: (typeof rows)[number]) => {
    const { letter = '' } = piece;
    return `${letter.length}${letter} ${borderOf(piece)} ${what}`;
  };
  rows.sort((one, other) => inOrder(one).localeCompare(inOrder(other), 'en', { numeric: true }));
  if (rows.length === 0) return;
  composer.skip(0.08);
  composer.bullets([
    ...rows.map(({ what, piece, fabric }) =>
      say('{what}: {pieces} of {fabric}.', { what, pieces: pieceWords(piece), fabric }),
    ),
    ...own.map(({ line }) => joinText(line, say)).filter((words) => words !== ''),
  ]);
}

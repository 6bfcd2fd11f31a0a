// The cutting list: every piece by step of the work, then how each fabric is cut up and what every strip of it is for.
import type { CuttingLine } from '../../../cutting/yardage/cuttingLine';
import type { FabricYardage } from '../../../cutting/yardage/fabricYardage';
import { pieceWords, stripsAlike, usesOfStrips } from '../../../cutting/yardage/lineWords';
import {
  CUTTING_STEPS,
  type CuttingStep,
  type NeededPiece,
  STEP_NAMES,
} from '../../../cutting/yardage/neededPiece';
import { phrase } from '../../../model/phrase';
import type { Inches } from '../../../model/units';
import { swatch } from '../clothMarks';
import type { Composer, TableCell } from '../composer';
import { inRow, textFigure } from '../lettering';
import { STYLES } from '../look';
import { type Figure, shifted, stacked } from '../page';
import type { Writing } from '../writing';
import { purchaseText } from './materials';
import { cuttingCaution } from './overview';

/** So many lines stand in one row of a table, which is never broken over two pages. */
const MOST_IN_ROW = 10;

export function cuttingPages(composer: Composer, writing: Writing): void {
  const { yardage, say } = writing;
  if (yardage.fabrics.length === 0) return;
  composer.begin(say('Cutting list'), cuttingCaution(say));
  for (const step of CUTTING_STEPS) stepTable(step, composer, writing);
  clothTable(composer, writing);
}

function stepTable(step: CuttingStep, composer: Composer, writing: Writing): void {
  const { yardage, say } = writing;
  const rows = yardage.fabrics.flatMap((one): TableCell[][] => {
    const lines = one.lines.filter((line) => line.step === step);
    return inRows(lines.flatMap((line) => lineFigures(line, composer.width, writing))).map((cells) => [
      fabricCell(one, writing),
      stacked(cells, 0),
    ]);
  });
  if (rows.length === 0) return;
  composer.heading(say(STEP_NAMES[step]));
  composer.table(
    [
      { head: say('Fabric'), part: 2.7 },
      { head: say('Cut, and what for'), part: 4.6 },
    ],
    rows,
    0.02,
  );
  if (step === 'borders') {
    composer.paragraph(
      say('Set the fabric for the borders aside, and cut them to length once the top is sewn and measured.'),
      STYLES.small,
    );
  }
}

/** A line of the list: size and use of each of its pieces, and how its strips are joined. */
function lineFigures(line: CuttingLine, width: Inches, { say, type }: Writing): Figure[] {
  const [cutWidth, forWidth] = [2.15, 2.45].map((part) => (part / 7.3) * width - 0.12) as [number, number];
  const pieces = line.pieces.map((piece) => {
    const words = [say(piece.what), shapeWords(piece, say), line.problem ? say(line.problem) : ''];
    return inRow([
      { x: 0, figure: textFigure(say(pieceWords(piece)), STYLES.strong, cutWidth, type) },
      {
        x: cutWidth + 0.12,
        figure: lowered(
          textFigure(words.filter((part) => part !== '').join('. '), STYLES.small, forWidth, type),
          STYLES.strong.size - STYLES.small.size,
        ),
      },
    ]);
  });
  if (line.join === null) return pieces;
  const join = textFigure(joinText(line, say), STYLES.small, cutWidth + forWidth, type);
  return [...pieces, { ...join, height: join.height + 0.03 }];
}

/** How the strips of a line become its pieces; nothing where they are not joined. */
export function joinText({ pieces, join }: CuttingLine, say: Writing['say']): string {
  if (join === null) return '';
  const what = [...new Set(pieces.map((piece) => say(piece.what)))].join('; ');
  return say('{what}: {join}.', { what, join });
}

/** Figures for the rows of a table. */
function inRows(figures: readonly Figure[]): Figure[][] {
  const rows: Figure[][] = [];
  for (let at = 0; at < figures.length; at += MOST_IN_ROW) rows.push(figures.slice(at, at + MOST_IN_ROW));
  return rows;
}

/** Smaller letters beside larger ones, on the same line. */
function lowered(figure: Figure, by: Inches): Figure {
  return { ...figure, height: figure.height + by, marks: shifted(figure.marks, 0, by) };
}

function fabricCell({ fabric }: FabricYardage, writing: Writing): Figure {
  return inRow(
    [
      { x: 0, figure: swatch(fabric.id, 0.3, 0.18, writing) },
      { x: 0.4, figure: textFigure(fabric.name, STYLES.body, 1.95, writing.type) },
    ],
    'middle',
  );
}

function shapeWords({ shape, width, height }: NeededPiece, say: Writing['say']): string {
  // Halves of a rectangle are of one hand on the one diagonal, of the other on the other.
  const handed = Math.abs(width - height) > 1e-9;
  if (shape === 'halved' && handed) {
    return say('Cut each once from corner to corner, half of them on one diagonal and half on the other');
  }
  if (shape === 'halved') return say('Cut each once from corner to corner');
  if (shape === 'quartered') return say('Cut each twice from corner to corner');
  return '';
}

/** How each fabric is cut up: strips right across, what comes from each, and what it is for. */
function clothTable(composer: Composer, writing: Writing): void {
  const { yardage, say } = writing;
  composer.heading(say('By fabric'), 1.1);
  composer.paragraph(
    say(phrase('Straighten the edge before the first cut and again after every few strips.')),
    STYLES.small,
  );
  if (yardage.fabrics.some(({ layout }) => stripsAlike(layout).some(({ lengths }) => lengths))) {
    composer.paragraph(
      say(
        'A strip runs across the fabric, a length along it. Cut the pieces of a length side by side along it, and those “from its end” from the fabric left beside them.',
      ),
      STYLES.small,
    );
  }
  const rows = yardage.fabrics.flatMap((one) =>
    inRows(stripFigures(one, writing)).map((strips, index): TableCell[] => [
      fabricCell(one, writing),
      stacked(strips, 0.03),
      index === 0 ? { text: purchaseText(one, writing), style: STYLES.small } : '',
    ]),
  );
  composer.table(
    [
      { head: say('Fabric'), part: 2.7 },
      { head: say('Cut in this order, and what for'), part: 3.5 },
      { head: say('From'), part: 1.1, align: 'right' },
    ],
    rows,
    0.1,
  );
}

function stripFigures({ layout, lines }: FabricYardage, { say, type }: Writing): Figure[] {
  return stripsAlike(layout).map((strips) =>
    stacked(
      [
        textFigure(say(strips.words), STYLES.smallStrong, 3.1, type),
        ...usesOfStrips(strips, lines).map((use) => textFigure(say(use), STYLES.label, 3.1, type)),
      ],
      0,
    ),
  );
}

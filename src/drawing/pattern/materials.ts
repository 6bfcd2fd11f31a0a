// What to buy, and what to cut from it: cloth by fabric, backing, batting and tools; then every piece by step of the work.

import { type BackingYardage, clothWidth } from '../../cutting/yardage/backingYardage';
import { clothText, sellingUnit } from '../../cutting/yardage/clothLength';
import type { FabricYardage } from '../../cutting/yardage/fabricYardage';
import { pieceWords, stripsAlike } from '../../cutting/yardage/lineWords';
import {
  CUTTING_STEPS,
  type CuttingStep,
  type NeededPiece,
  STEP_NAMES,
} from '../../cutting/yardage/neededPiece';
import { counted, type PhraseValue, phrase } from '../../model/phrase';
import type { Inches } from '../../model/units';
import { swatch } from './clothMarks';
import type { Composer, TableCell } from './composer';
import { inRow, textFigure } from './lettering';
import { STYLES } from './look';
import { cuttingCaution } from './overview';
import { type Figure, shifted, stacked } from './page';
import { size, type Writing } from './writing';

export function materialsPages(composer: Composer, writing: Writing): void {
  const { project, yardage, say } = writing;
  composer.begin(say('Materials'), clothRemark(writing));
  const rows = yardage.fabrics.map((one): TableCell[] => [
    swatch(one.fabric.id, 0.62, 0.26, writing),
    one.fabric.name,
    { text: usesOf(one, writing), style: STYLES.small },
    { text: purchaseText(one, writing), style: STYLES.strong },
  ]);
  composer.table(
    [
      { head: say('Cloth'), part: 0.8 },
      { head: say('Fabric'), part: 2.6 },
      { head: say('For'), part: 2.7 },
      { head: say('Buy'), part: 1.2, align: 'right' },
    ],
    rows,
  );
  for (const remark of yardage.remarks) composer.paragraph(say(remark), STYLES.small, 0.06);
  composer.heading(say('Also'));
  composer.bullets([...backingLines(writing), ...toolLines(project.wedge.perBlock, say)]);
}

function clothRemark({ project, say }: Writing): string {
  const { shrinkage } = project.buying;
  const width = { inches: project.preferences.usableWidth };
  return say(
    shrinkage > 0
      ? 'Reckoned for the whole quilt from new cloth with a usable width of {width}; {shrinkage} in the hundred lost in the wash is allowed for.'
      : 'Reckoned for the whole quilt from new cloth with a usable width of {width}, without loss in the wash.',
    { width, shrinkage },
  );
}

/** How a fabric is bought, in words. */
function purchaseText(
  { buy }: Pick<FabricYardage, 'buy'>,
  { project, say }: Pick<Writing, 'project' | 'say'>,
): string {
  if (buy.kind === 'nothing') return say('nothing');
  if (buy.kind === 'length') return clothText(buy.inches, sellingUnit(project));
  return say(counted(buy.count, '1 fat quarter', '{count} fat quarters'));
}

function usesOf({ lines }: FabricYardage, { say }: Writing): string {
  const steps = CUTTING_STEPS.filter((step) => lines.some((line) => line.step === step));
  return steps.map((step) => say(STEP_NAMES[step])).join(', ');
}

function backingLines(writing: Writing): string[] {
  const { yardage, say } = writing;
  const { backing, batting } = yardage;
  if (!backing) return [];
  const { width, height } = backing.layout.size;
  const pack = batting[0];
  return [
    backingLine(backing, { ...size(width, height), fabric: backing.fabric?.name ?? '' }, writing),
    pack
      ? say('Batting: {width} × {height} or larger; the {name} package covers it.', { ...size(width, height), name: say(pack.name) })
      : say('Batting: {width} × {height} or larger, off the roll or joined.', size(width, height)),
  ]; // biome-ignore format: a list
}

/** Its cloth is either in the table above or named here. */
function backingLine(
  { fabric, apart }: BackingYardage,
  values: Record<string, PhraseValue>,
  { project, say }: Writing,
): string {
  if (!apart) {
    return say('Backing: of {fabric}, counted above, for a back of {width} × {height}.', values);
  }
  const bought = {
    ...values,
    cloth: clothText(apart.buy.inches, sellingUnit(project)),
    wide: { inches: clothWidth(project) },
  };
  return fabric
    ? say('Backing: {cloth} of {fabric}, {wide} wide, for a back of {width} × {height}.', bought)
    : say('Backing: {cloth} of cloth {wide} wide, for a back of {width} × {height}.', bought);
}

function toolLines(perBlock: number, say: Writing['say']): string[] {
  return [
    say(
      'The wedge template of this pattern, printed at true size and glued to card or cut from clear plastic.',
    ),
    say('Rotary cutter, mat and a ruler longer than the cloth folded in half is wide; fabric scissors.'),
    say(
      'Thread for piecing, a stitch length of 10 to 12 to the inch (about 2 mm), because the seams get cut across.',
    ),
    say('Labels or bags for the sets and for {count} places of a block.', { count: perBlock }),
  ];
}

export function cuttingPages(composer: Composer, writing: Writing): void {
  const { yardage, say } = writing;
  if (yardage.fabrics.length === 0) return;
  composer.begin(say('Cutting list'), cuttingCaution(say));
  for (const step of CUTTING_STEPS) stepTable(step, composer, writing);
  clothTable(composer, writing);
}

function stepTable(step: CuttingStep, composer: Composer, writing: Writing): void {
  const { yardage, say, type } = writing;
  const [cutWidth, forWidth] = [2.15, 2.45].map((part) => (part / 7.3) * composer.width - 0.12) as [
    number,
    number,
  ];
  const rows = yardage.fabrics.flatMap((one): TableCell[][] => {
    const lines = one.lines.filter((line) => line.step === step);
    const cells = lines.flatMap((line) =>
      line.pieces.map((piece) => {
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
      }),
    );
    return cells.length === 0 ? [] : [[fabricCell(one, writing), stacked(cells, 0)]];
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

function shapeWords({ shape }: NeededPiece, say: Writing['say']): string {
  if (shape === 'halved') return say('Cut each once from corner to corner');
  if (shape === 'quartered') return say('Cut each twice from corner to corner');
  return '';
}

/** How each fabric is cut up: strips right across, and what comes from each. */
function clothTable(composer: Composer, writing: Writing): void {
  const { yardage, say, type } = writing;
  composer.heading(say('By fabric, strips across the cloth'));
  const rows = yardage.fabrics
    .filter(({ layout }) => layout.strips.length > 0)
    .map((one): TableCell[] => [
      fabricCell(one, writing),
      stacked(
        stripsAlike(one.layout).map(({ words }) => textFigure(say(words), STYLES.small, 3.1, type)),
        0.02,
      ),
      { text: purchaseText(one, writing), style: STYLES.small },
    ]);
  composer.table(
    [
      { head: say('Fabric'), part: 2.7 },
      { head: say('Cut in this order'), part: 3.5 },
      { head: say('From'), part: 1.1, align: 'right' },
    ],
    rows,
    0.02,
  );
  composer.paragraph(
    say(phrase('Straighten the edge before the first cut and again after every few strips.')),
    STYLES.small,
  );
}

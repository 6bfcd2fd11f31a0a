// What to buy: cloth by fabric, backing, batting and tools.
import { type BackingYardage, clothWidth } from '../../../cutting/yardage/backingYardage';
import { clothText } from '../../../cutting/yardage/clothLength';
import type { FabricYardage } from '../../../cutting/yardage/fabricYardage';
import { fatQuarterWords } from '../../../cutting/yardage/fatQuarter';
import { CUTTING_STEPS, STEP_NAMES } from '../../../cutting/yardage/neededPiece';
import { sellingUnit } from '../../../model/buying';
import { counted, type PhraseValue } from '../../../model/phrase';
import type { Project } from '../../../model/project';
import { swatch } from '../clothMarks';
import type { Composer, TableCell } from '../composer';
import { STYLES } from '../look';
import { size, type Writing } from '../writing';

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
      { head: say('Swatch'), part: 0.8 },
      { head: say('Fabric'), part: 2.6 },
      { head: say('For'), part: 2.7 },
      { head: say('Buy'), part: 1.2, align: 'right' },
    ],
    rows,
  );
  for (const remark of yardage.remarks) composer.paragraph(say(remark), STYLES.small, 0.06);
  composer.heading(say('Also'));
  composer.bullets([...backingLines(writing), ...toolLines(project, say)]);
}

function clothRemark({ project, yardage, say }: Writing): string {
  const { shrinkage } = project.buying;
  const width = { inches: project.preferences.usableWidth };
  const reckoned = say(
    shrinkage > 0
      ? 'For the whole quilt, from new fabric with a usable width of {width} after washing; {shrinkage}% of its length is allowed for shrinkage.'
      : 'For the whole quilt, from new fabric with a usable width of {width}, with no loss in the wash.',
    { width, shrinkage },
  );
  const quarters = yardage.fabrics.some((one) => one.buy.kind === 'fatQuarters');
  return quarters ? `${reckoned} ${say(fatQuarterWords(project))}` : reckoned;
}

/** How a fabric is bought, in words. */
export function purchaseText(
  { buy }: Pick<FabricYardage, 'buy'>,
  { project, say }: Pick<Writing, 'project' | 'say'>,
): string {
  if (buy.kind === 'nothing') return say('nothing');
  if (buy.kind === 'length') return say('{bought}', { bought: clothText(buy.inches, sellingUnit(project)) });
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
    : say('Backing: {cloth} of fabric {wide} wide, for a back of {width} × {height}.', bought);
}

function toolLines({ wedge: { perBlock }, preferences: { unit } }: Project, say: Writing['say']): string[] {
  return [
    say(
      'The wedge template of this pattern, printed at true size and glued to card or cut from clear plastic.',
    ),
    say('Rotary cutter, mat and a ruler longer than the folded fabric is wide; fabric scissors.'),
    say(
      unit === 'in'
        ? 'Thread for piecing, 10 to 12 stitches to the inch (a stitch length of 2 to {long} mm), because the seams get cut across.'
        : 'Thread for piecing, a stitch length of 2 to {long} mm, because the seams get cut across.',
      { long: 2.5 },
    ),
    say('Labels or bags for the sets and for {count} places of a block.', { count: perBlock }),
  ];
}

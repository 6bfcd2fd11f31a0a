// Kits as tables for a spreadsheet: what to order, and the strips with their labels. Lengths are decimal, in the unit the
// quilt is planned in; cloth in the unit it is sold in.

import { sellingUnit } from '../../model/buying';
import { roundedHalfUp } from '../../model/decimals';
import type { Phrase } from '../../model/phrase';
import { phrase } from '../../model/phrase';
import type { Project } from '../../model/project';
import { CENTIMETRES_PER_INCH, type Inches } from '../../model/units';
import { backingName } from '../yardage/backingYardage';
import { INCHES_IN } from '../yardage/clothLength';
import { type CsvCell, csvText } from './csv';
import type { Kits } from './kits';

type Say = (sentence: Phrase) => string;

/** One row for each fabric, the backing and the price of a kit, under a row of headings. */
export function orderCsv(project: Project, kits: Kits, say: Say): string {
  const unit = sellingUnit(project);
  const cloth = (inches: Inches) => round(inches / INCHES_IN[unit]);
  const sold = unit === 'yard' ? phrase('yd') : phrase('m');
  const inUnit = (words: string) => say(phrase(words, { unit: sold }));
  const headings: CsvCell[] = [
    say(phrase('Number')),
    say(phrase('Fabric')),
    inUnit('Per kit ({unit})'),
    say(phrase('Fat quarters per kit')),
    say(phrase('Kits')),
    inUnit('All kits ({unit})'),
    say(phrase('Fat quarters, all kits')),
    say(phrase('Bolts')),
    inUnit('Left on the last bolt ({unit})'),
    say(phrase('Price per kit')),
  ];
  const rows = kits.fabrics.map((one): CsvCell[] => [
    one.number,
    one.withBacking
      ? say(phrase('{fabric}, with the backing', { fabric: one.fabric.name }))
      : one.fabric.name,
    cloth(one.inches),
    one.fatQuarters,
    kits.count,
    cloth(one.order?.taken ?? one.inches * kits.count),
    one.fatQuarters * kits.count,
    one.order?.bolts ?? '',
    one.order ? cloth(one.order.left) : '',
    one.cost ?? '',
  ]);
  const { backing } = kits;
  if (backing) {
    rows.push([
      '', say(backingName(backing)), cloth(backing.inches), 0, kits.count, cloth(backing.order?.taken ?? backing.inches * kits.count), 0,
      backing.order?.bolts ?? '', backing.order ? cloth(backing.order.left) : '', backing.cost ?? '',
    ]); // biome-ignore format: a row
  }
  const { extra } = kits;
  if (extra > 0)
    rows.push(['', say(phrase('Other costs per kit')), '', '', kits.count, '', '', '', '', extra]);
  rows.push(['', say(phrase('One kit')), '', '', 1, '', '', '', '', kits.price ?? '']);
  return csvText([headings, ...rows]);
}

/** One row for each kind of strip in a kit, with its label. */
export function stripsCsv(project: Project, kits: Kits, say: Say): string {
  const { unit } = project.preferences;
  const size = (inches: Inches) => round(unit === 'in' ? inches : inches * CENTIMETRES_PER_INCH);
  const headings = [
    say(phrase('Label')),
    say(phrase('Fabric')),
    say(phrase('Strips per kit')),
    say(phrase('Cut width ({unit})', { unit })),
    say(phrase('Length ({unit})', { unit })),
    say(phrase('For')),
    say(phrase('Strips, all kits')),
  ];
  const rows = kits.fabrics.flatMap((one) =>
    one.strips.map((strips): CsvCell[] => [
      strips.label,
      one.fabric.name,
      strips.count,
      size(strips.width),
      size(strips.length),
      strips.uses.map(say).join('; '),
      strips.count * kits.count,
    ]),
  );
  return csvText([headings, ...rows]);
}

/** To the thousandth: finer than a shop cuts, coarse enough to read. */
function round(amount: number): number {
  return roundedHalfUp(amount, 3);
}

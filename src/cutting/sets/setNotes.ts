// What is said after strip sets were made at random: strips left aside, sets or wedges missing with the strips that would
// mend it, and neighbours that could not be helped.
import { cutWidth, finishedWidth } from '../../geometry/stripSet';
import { HAIR, isTooNarrow, upToStep } from '../../model/lengths';
import { counted, type Phrase, phrase } from '../../model/phrase';
import type { StripOnHand, StripSet, WedgePlan } from '../../model/project';
import type { Inches } from '../../model/units';
import { leastLength } from '../wedges/setKinds';
import { wedgesNeeded } from '../wedges/yield';
import { type LengthClass, USUAL_LENGTH } from './lengthClass';
import { isLongEnough } from './stripsUnused';

/** Narrower strips than this are not what one would go and cut to fill a set. */
const LEAST_USUAL_WIDTH: Inches = 1;
/** Lengths that are said are rounded up to this, so that a strip so long will do. */
const SIXTEENTH: Inches = 1 / 16;

export interface MakingOutcome {
  readonly wedge: WedgePlan;
  readonly keep: readonly StripSet[];
  readonly want: { readonly sets: number } | { readonly blocks: number } | 'most';
  /** What was on hand beside the kept sets; of that the strips wide enough; and those by length. */
  readonly rows: readonly StripOnHand[];
  readonly wide: readonly StripOnHand[];
  readonly classes: readonly LengthClass[];
  /** Sets asked for, sets made, strips left. */
  readonly wanted: number;
  readonly sets: readonly StripSet[];
  readonly left: readonly StripOnHand[];
}

/** All there is to say, most basic first; empty when all went well. */
export function setNotes(outcome: MakingOutcome): Phrase[] {
  return [
    ...tooNarrow(outcome.rows, outcome.wedge),
    ...tooShort(outcome.wide, outcome.wedge),
    ...shortage(outcome),
    ...sameNeighbours(outcome.sets),
  ];
}

function tooNarrow(rows: readonly StripOnHand[], wedge: WedgePlan): Phrase[] {
  const narrow = rows.reduce((sum, row) => sum + (isTooNarrow(row.width, wedge.seam) ? row.count : 0), 0);
  if (narrow === 0) return [];
  const one = '1 strip is left aside: cut {least} wide or less, it would vanish in its two seams.';
  const many =
    '{count} strips are left aside: cut {least} wide or less, they would vanish in their two seams.';
  return [counted(narrow, one, many, { least: { inches: cutWidth(0, wedge.seam) } })];
}

function tooShort(rows: readonly StripOnHand[], wedge: WedgePlan): Phrase[] {
  const least = leastLength(wedge);
  const short = rows.reduce((sum, row) => sum + (row.length < least - HAIR ? row.count : 0), 0);
  if (short === 0) return [];
  const one = '1 strip is left aside: a set needs strips at least {least} long to give two wedges.';
  const many = '{count} strips are left aside: a set needs strips at least {least} long to give two wedges.';
  return [counted(short, one, many, { least: { inches: upToStep(least, SIXTEENTH) } })];
}

/** Says how many sets are missing, and how many strips of which width would mend it for certain. */
function shortage(outcome: MakingOutcome): Phrase[] {
  const { wanted, sets, classes, left } = outcome;
  const missing = wanted - sets.length;
  if (outcome.want === 'most' || missing <= 0) return wedgeShortage(outcome);
  const { wedge } = outcome;
  const width = usualWidth(classes, wedge);
  const length = classes[0]?.length ?? USUAL_LENGTH;
  const gain = finishedWidth(width, wedge.seam);
  const each = finishedWidth(wedge.cutHeight, wedge.seam);
  const beside = left
    .filter((row) => !isTooNarrow(row.width, wedge.seam) && isLongEnough(row, length))
    .reduce((sum, row) => sum + row.count * finishedWidth(row.width, wedge.seam), 0);
  const first = Math.max(1, Math.ceil((each - beside) / gain - HAIR));
  const strips = first + (missing - 1) * Math.ceil(each / gain - HAIR);
  const say =
    sets.length === 0
      ? 'There are not enough strips for a set {height} high.'
      : 'There are strips for {made} of {wanted} sets.';
  const values = { made: sets.length, wanted, height: { inches: wedge.cutHeight } };
  const one = '1 more strip cut {width} wide, {length} long or longer, mends it.';
  const many = '{count} more strips cut {width} wide, {length} long or longer, mend it.';
  const mend = counted(strips, one, many, { width: { inches: width }, length: { inches: length } });
  return [phrase('{what} {mend}', { what: phrase(say, values), mend })];
}

/** The width that adds most to the heights as things are; 1 1/2 in where there are no strips of an inch or more. */
function usualWidth(classes: readonly LengthClass[], wedge: WedgePlan): Inches {
  const reach = new Map<Inches, number>();
  for (const { rows } of classes) {
    for (const { width, count } of rows) {
      if (width < LEAST_USUAL_WIDTH) continue;
      reach.set(width, (reach.get(width) ?? 0) + count * finishedWidth(width, wedge.seam));
    }
  }
  const most = [...reach].sort((one, other) => other[1] - one[1] || one[0] - other[0])[0];
  return most?.[0] ?? Math.max(1.5, 4 * wedge.seam);
}

/** The sets there were strips for, but their wedges fall short of the blocks (strips shorter than thought). */
function wedgeShortage({ want, wedge, keep, sets }: MakingOutcome): Phrase[] {
  if (want === 'most' || !('blocks' in want)) return [];
  const need = wedgesNeeded(want.blocks, [...keep, ...sets], wedge);
  if (need.up + need.down === 0) return [];
  const say = 'For all {blocks} blocks {up} wedges tip up and {down} tip down are missing.';
  return [phrase(say, { blocks: want.blocks, up: need.up, down: need.down })];
}

/** Neighbours of one fabric that could not be helped. */
function sameNeighbours(sets: readonly StripSet[]): Phrase[] {
  const held = sets.filter((set) =>
    set.strips.some((strip, at) => at > 0 && set.strips[at - 1]!.fabric === strip.fabric),
  );
  if (held.length === 0) return [];
  const one = 'In set {sets} a fabric lies beside itself; strips of more fabrics would help.';
  const many = 'In sets {sets} a fabric lies beside itself; strips of more fabrics would help.';
  return [counted(held.length, one, many, { sets: { list: held.map((set) => set.label) } })];
}

// What is said after strip sets were made at random: sets or wedges missing with the strips that would mend it, neighbours that
// could not be helped, and sets of strips of different lengths. Why strips are left: whyLeft.ts.
import { finishedWidth } from '../../geometry/stripSet';
import { HAIR, isTooNarrow, USUAL } from '../../model/lengths';
import { counted, type Phrase, phrase } from '../../model/phrase';
import type { StripOnHand, StripSet, WedgePlan } from '../../model/project';
import type { Inches, LengthUnit } from '../../model/units';
import { wedgesNeeded } from '../wedges/yield';
import type { LengthClass } from './lengthClass';
import { isLongEnough } from './stripsUnused';

export interface MakingOutcome {
  readonly wedge: WedgePlan;
  readonly unit: LengthUnit;
  readonly keep: readonly StripSet[];
  readonly want: { readonly sets: number } | { readonly blocks: number } | 'most';
  /** The strips on hand beside the kept sets that are wide enough, by length. */
  readonly classes: readonly LengthClass[];
  /** Sets asked for, sets made, strips left. */
  readonly wanted: number;
  readonly sets: readonly StripSet[];
  readonly left: readonly StripOnHand[];
  /** Those of the sets in which strips of different lengths lie. */
  readonly mixed: readonly StripSet[];
}

/** All there is to say, most basic first; empty when all went well. */
export function setNotes(outcome: MakingOutcome): Phrase[] {
  return [...shortage(outcome), ...sameNeighbours(outcome.sets), ...mixedLengths(outcome.mixed)];
}

/** Says how many sets are missing, and how many strips of which width would mend it for certain. */
function shortage(outcome: MakingOutcome): Phrase[] {
  const { wanted, sets, classes, left } = outcome;
  const missing = wanted - sets.length;
  if (outcome.want === 'most' || missing <= 0) return wedgeShortage(outcome);
  const { wedge } = outcome;
  const width = usualWidth(outcome);
  const length = classes[0]?.length ?? USUAL[outcome.unit].usableWidth;
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

/**
 * The width that adds most to the heights as things are, from the narrowest that one would go and cut; the usual middle width
 * where there are no such strips.
 */
function usualWidth({ classes, wedge, unit }: MakingOutcome): Inches {
  const [narrow, middle] = USUAL[unit].strips;
  const reach = new Map<Inches, number>();
  for (const { rows } of classes) {
    for (const { width, count } of rows) {
      if (width < narrow - HAIR) continue;
      reach.set(width, (reach.get(width) ?? 0) + count * finishedWidth(width, wedge.seam));
    }
  }
  const most = [...reach].sort((one, other) => other[1] - one[1] || one[0] - other[0])[0];
  return most?.[0] ?? Math.max(middle, 4 * wedge.seam);
}

/** The sets there were strips for, but their wedges fall short of the blocks (strips shorter than thought). */
function wedgeShortage({ want, wedge, keep, sets }: MakingOutcome): Phrase[] {
  if (want === 'most' || !('blocks' in want)) return [];
  const need = wedgesNeeded(want.blocks, [...keep, ...sets], wedge);
  if (need.up + need.down === 0) return [];
  const say = 'For {blocks} more wedges are needed: {up} tip up and {down} tip down.';
  const blocks = counted(want.blocks, '1 block', '{count} blocks');
  return [phrase(say, { blocks, up: need.up, down: need.down })];
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

/** Strips longer than their set, so that nobody wonders at what is cut off. */
function mixedLengths(sets: readonly StripSet[]): Phrase[] {
  if (sets.length === 0) return [];
  const one = 'In set {sets} strips of different lengths lie together; it is as long as the shortest.';
  const many = 'In sets {sets} strips of different lengths lie together; each is as long as its shortest.';
  return [counted(sets.length, one, many, { sets: { list: sets.map((set) => set.label) } })];
}

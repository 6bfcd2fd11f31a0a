// A strip set that is too short for its wedge: the strips that would mend it, and where in the set they go.
import { cutWidth, finishedWidth, heightShort, setHeight } from '../../geometry/stripSet';
import { HAIR, isTooNarrow, USUAL, upToStep } from '../../model/lengths';
import { counted, type Phrase, type PhraseValue, phrase } from '../../model/phrase';
import type { FabricId, Strip, StripOnHand, StripSet, WedgePlan } from '../../model/project';
import type { Inches, LengthUnit } from '../../model/units';
import { isLongEnough } from './stripsUnused';

export interface HeightMend {
  /** How much the set is short, inches, above 0. */
  readonly short: Inches;
  /** Strips on hand that mend it, fewest first choice, with the place each goes to (an index into the set as it grows). */
  readonly add: readonly { readonly strip: Strip; readonly at: number }[];
  /** The least cut width of a single strip that would mend it, rounded up to the next quarter inch or half centimetre. */
  readonly leastWidth: Inches;
  readonly words: Phrase;
}

/** More strips than this are not worth sewing in: the set wants to be planned anew. */
const MOST_STRIPS = 4;
const WIDEST_ROWS = 12;

/**
 * What a set needs to be as high as the wedge, or null when it is. `unused` is what is on hand beside all sets
 * (stripsLeftBeside). Strips go where their fabric does not lie beside itself, inside the set before at its rims.
 */
export function mendHeight(
  set: Pick<StripSet, 'label' | 'strips' | 'length'>,
  wedge: WedgePlan,
  unused: readonly StripOnHand[],
  unit: LengthUnit = 'in',
): HeightMend | null {
  const { seam } = wedge;
  const short = heightShort(setHeight(set.strips, seam), wedge);
  if (short === 0) return null;
  // What the finished widths of the new strips must come to; without strips the set has its outer seams to fill first.
  const missing = set.strips.length === 0 ? finishedWidth(wedge.cutHeight, seam) : short;
  const leastWidth = upToStep(cutWidth(missing, seam), USUAL[unit].widthStep);
  const chosen = fewestStrips(set, missing, seam, unused);
  const add = placed(set.strips, chosen);
  const values = { set: set.label, short: { atLeast: short }, width: { inches: leastWidth } };
  if (add.length === 0) {
    const say =
      'Set {set} is {short} short. A strip cut {width} wide or wider mends it; there is none on hand.';
    return { short, add, leastWidth, words: phrase(say, values) };
  }
  const one = 'Set {set} is {short} short. Add the strip cut {added} wide that is on hand.';
  const many = 'Set {set} is {short} short. Add {count} strips that are on hand, cut {added} wide.';
  const added = add
    .map(({ strip }): PhraseValue => ({ inches: strip.width }))
    .reduce((before, next) => phrase('{before} and {next}', { before, next }));
  return { short, add, leastWidth, words: counted(add.length, one, many, { ...values, added }) };
}

/** The fewest strips that reach, and of those the least height too much; of strips as wide, a fabric the set lacks comes first. */
function fewestStrips(
  set: Pick<StripSet, 'strips' | 'length'>,
  missing: Inches,
  seam: Inches,
  unused: readonly StripOnHand[],
): Strip[] {
  const inSet = new Set(set.strips.map((strip) => strip.fabric));
  const rows = unused
    .filter((row) => row.count > 0 && isLongEnough(row, set.length) && !isTooNarrow(row.width, seam))
    .toSorted(
      (one, other) =>
        one.width - other.width || Number(inSet.has(one.fabric)) - Number(inSet.has(other.fabric)),
    );
  for (let count = 1; count <= MOST_STRIPS; count += 1) {
    const found = cheapest(rows, count, missing, seam);
    if (found) return found;
  }
  return [];
}

/** Exactly `count` strips whose finished widths come to at least `wanted`, with the least over; null when no choice reaches. */
function cheapest(rows: readonly StripOnHand[], count: number, wanted: Inches, seam: Inches): Strip[] | null {
  let best: { over: number; strips: Strip[] } | null = null;
  const left = rows.map((row) => row.count);
  const gains = rows.map((row) => finishedWidth(row.width, seam));
  const widest = Math.max(0, ...gains);
  const choose = (from: number, chosen: readonly Strip[], reach: Inches) => {
    const over = reach - wanted;
    if (chosen.length === count) {
      if (over >= -HAIR && (best === null || over < best.over - HAIR)) best = { over, strips: [...chosen] };
      return;
    }
    if (reach + (count - chosen.length) * widest < wanted - HAIR) return;
    for (let at = from; at < rows.length; at += 1) {
      if (left[at] === 0) continue;
      left[at]! -= 1;
      choose(at, [...chosen, { fabric: rows[at]!.fabric, width: rows[at]!.width }], reach + gains[at]!);
      left[at]! += 1;
    }
  };
  // Three and four strips out of hundreds of rows would be millions of choices: there only the widest rows are tried.
  choose(count > 2 ? Math.max(0, rows.length - WIDEST_ROWS) : 0, [], 0);
  return (best as { strips: Strip[] } | null)?.strips ?? null;
}

function placed(strips: readonly Strip[], chosen: readonly Strip[]): { strip: Strip; at: number }[] {
  const grown = [...strips];
  return chosen.map((strip) => {
    const at = bestPlace(grown, strip.fabric);
    grown.splice(at, 0, strip);
    return { strip, at };
  });
}

/** The seam nearest the middle where the fabric does not meet itself; else an end; else the middle. */
function bestPlace(strips: readonly Strip[], fabric: FabricId): number {
  const middle = strips.length / 2;
  const free = Array.from({ length: strips.length + 1 }, (_, at) => at).filter(
    (at) => strips[at - 1]?.fabric !== fabric && strips[at]?.fabric !== fabric,
  );
  const near = free.toSorted((one, other) => Math.abs(one - middle) - Math.abs(other - middle));
  return near[0] ?? Math.floor(middle);
}

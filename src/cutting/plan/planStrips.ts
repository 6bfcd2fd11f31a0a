// Planning forwards: from wanted blocks to strips, so many of each width from each fabric, and the cloth they take.
// Turning cloth into yards to buy is yardage's; whether cloth on hand suffices is largestTop's.
import { counted, type Phrase, phrase } from '../../model/phrase';
import type { FabricId, WedgePlan } from '../../model/project';
import type { Inches } from '../../model/units';
import { HEIGHT_TO_SPARE } from '../sets/setScore';
import { wedgesOnLength } from '../wedges/yield';
import { stripTotals, type WidthPart } from './setTotals';

export interface StripsWanted {
  /** Whole blocks, 1 or more. */
  readonly blocks: number;
  readonly wedge: WedgePlan;
  /** Cut widths and their proportion; usual: 1, 1 1/2 and 2 as 2 : 2 : 1 (common practice, no source). */
  readonly widths: readonly WidthPart[];
  /** Fabrics to share the strips evenly, in the order in which a strip more falls to them. */
  readonly fabrics: readonly FabricId[];
  /** Length of the strips: the usable width of fabric. */
  readonly length: Inches;
}

/** Narrow, middle and wide strips as makers take them (common practice, no source). */
export const USUAL_WIDTHS: readonly WidthPart[] = [
  { width: 1, part: 2 },
  { width: 1.5, part: 2 },
  { width: 2, part: 1 },
];

export interface StripPlan {
  readonly sets: number;
  /** Wedges the sets give, of each tip; at least what the blocks need. */
  readonly wedges: { readonly up: number; readonly down: number };
  readonly strips: readonly { readonly fabric: FabricId; readonly width: Inches; readonly count: number }[];
  /** Width of cloth cut from each fabric, across its usable width: Σ count · width, inches. */
  readonly cloth: readonly { readonly fabric: FabricId; readonly inches: Inches }[];
  /** Strips of each width in each set, in the order of `widths`: one way to share them out. */
  readonly perSet: readonly (readonly number[])[];
  readonly exact: boolean;
  readonly words: readonly Phrase[];
}

/**
 * Sets of this length that give `blocks` whole blocks, and their wedges, counted for sets just as high as the wedge (higher
 * ones give no fewer); 0 sets when none is asked or a set is too short for two wedges.
 */
export function setsFor(
  blocks: number,
  length: Inches,
  wedge: WedgePlan,
): { sets: number; up: number; down: number } {
  const need = (blocks * wedge.perBlock) / 2;
  const each = wedgesOnLength(length, wedge.cutHeight, wedge);
  if (each < 2 || blocks <= 0) return { sets: 0, up: 0, down: 0 };
  const [more, less] = [Math.ceil(each / 2), Math.floor(each / 2)];
  // Sets start tip up and tip down in turn, so two of them give `each` of both.
  let [sets, up, down] = [0, 0, 0];
  while (up < need || down < need) {
    const upFirst = sets % 2 === 0;
    up += upFirst ? more : less;
    down += upFirst ? less : more;
    sets += 1;
  }
  return { sets, up, down };
}

/** The plan, or null when nothing is asked, no fabric is given, or no set of these strips is possible. */
export function planStrips(wanted: StripsWanted): StripPlan | null {
  const { wedge, widths, fabrics, length } = wanted;
  const { sets, up, down } = setsFor(wanted.blocks, length, wedge);
  if (sets === 0 || fabrics.length === 0) return null;
  const totals = stripTotals({ sets, widths, height: wedge.cutHeight + HEIGHT_TO_SPARE, seam: wedge.seam });
  if (!totals) return null;
  const strips = sharedOut(totals.counts, widths, fabrics);
  const cloth = fabrics.map((fabric) => ({
    fabric,
    inches: strips.reduce((sum, one) => sum + (one.fabric === fabric ? one.count * one.width : 0), 0),
  }));
  const words = [
    counted(
      sets,
      '1 strip set {height} high gives at least {wedges} wedges.',
      '{count} strip sets {height} high give at least {wedges} wedges.',
      { height: { inches: wedge.cutHeight + HEIGHT_TO_SPARE }, wedges: up + down },
    ),
    totals.exact
      ? phrase('No choice of strips for these sets takes less cloth at this proportion.')
      : phrase('The strips were worked out set by set; another choice might take a little less cloth.'),
  ];
  if (fabrics.length === 1) {
    words.push(phrase('One fabric lies beside itself in every set: choose a second one, better a third.'));
  }
  return { sets, wedges: { up, down }, strips, cloth, perSet: totals.sets, exact: totals.exact, words };
}

/**
 * Strips of each width dealt to the fabrics in turn, each width going on where the last one stopped, so that no fabric
 * has two strips more than another, in all or of one width.
 */
function sharedOut(
  counts: readonly number[],
  widths: readonly WidthPart[],
  fabrics: readonly FabricId[],
): StripPlan['strips'] {
  const dealt = new Map<string, number>();
  let next = 0;
  counts.forEach((count, at) => {
    for (let strip = 0; strip < count; strip += 1) {
      const key = `${at} ${fabrics[next % fabrics.length]}`;
      dealt.set(key, (dealt.get(key) ?? 0) + 1);
      next += 1;
    }
  });
  return fabrics.flatMap((fabric) =>
    widths.flatMap(({ width }, at) => {
      const count = dealt.get(`${at} ${fabric}`) ?? 0;
      return count > 0 ? [{ fabric, width, count }] : [];
    }),
  );
}

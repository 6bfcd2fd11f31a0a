// Planning forwards: from wanted blocks to strips, so many of each width from each fabric, and the cloth they take.
// Turning cloth into yards to buy is yardage's; whether cloth on hand suffices is largestTop's.
import { HAIR, USUAL } from '../../model/lengths';
import { counted, type Phrase, phrase } from '../../model/phrase';
import type { FabricId, WedgePlan } from '../../model/project';
import type { Inches, LengthUnit } from '../../model/units';
import { HEIGHT_TO_SPARE } from '../sets/setScore';
import { type SetKind, setKinds } from '../wedges/setKinds';
import type { WedgeCount } from '../wedges/yield';
import { needOf } from './setNeeds';
import { totalsTable, type WidthPart } from './setTotals';
import { plannedHeight, wedgesOfSets, wedgesWith, wholeBlocks } from './topGroups';

export interface StripsWanted {
  /** Whole blocks, 1 or more. */
  readonly blocks: number;
  readonly wedge: WedgePlan;
  /** Cut widths and their proportion; usual: usualWidths. */
  readonly widths: readonly WidthPart[];
  /** Fabrics to share the strips evenly, in the order in which a strip more falls to them. */
  readonly fabrics: readonly FabricId[];
  /** Length of the strips: the usable width of fabric. */
  readonly length: Inches;
}

const USUAL_PARTS = [2, 2, 1] as const;

/** Narrow, middle and wide strips as makers take them, by the unit they cut in (common practice, no source). */
export function usualWidths(unit: LengthUnit): readonly WidthPart[] {
  return USUAL[unit].strips.map((width, at) => ({ width, part: USUAL_PARTS[at]! }));
}

export interface StripPlan {
  readonly sets: number;
  /** Wedges the sets give at the heights they are planned with, of each tip; at least what the blocks need. */
  readonly wedges: { readonly up: number; readonly down: number };
  readonly strips: readonly { readonly fabric: FabricId; readonly width: Inches; readonly count: number }[];
  /** Width of cloth cut from each fabric, across its usable width: Σ count · width, inches. */
  readonly cloth: readonly { readonly fabric: FabricId; readonly inches: Inches }[];
  /** Strips of each width in each set, in the order of `widths`: one way to share them out. No set can be left out. */
  readonly perSet: readonly (readonly number[])[];
  readonly exact: boolean;
  readonly words: readonly Phrase[];
}

/** Sets so high are about half an inch higher than their wedge still: as far off as setScore's height lets pass. */
const MOST_SPARE: Inches = 0.75;

/** The plan, or null when nothing is asked, no fabric is given, or no set of these strips gives two wedges. */
export function planStrips(wanted: StripsWanted): StripPlan | null {
  const { wedge, widths, fabrics } = wanted;
  const found = wanted.blocks > 0 && fabrics.length > 0 ? leastCloth(wanted) : null;
  if (!found) return null;
  const { sets, counts, wedges, exact } = found;
  const cut = widths.map((one) => one.width);
  const strips = sharedOut(counts, widths, fabrics);
  const cloth = fabrics.map((fabric) => ({
    fabric,
    inches: strips.reduce((sum, one) => sum + (one.fabric === fabric ? one.count * one.width : 0), 0),
  }));
  const heights = sets.map((set) => plannedHeight(set, cut, wedge.seam));
  const [lowest, highest] = [Math.min(...heights), Math.max(...heights)];
  const alike = highest - lowest < HAIR;
  const words = [
    counted(
      sets.length,
      '1 strip set {lowest} high gives {wedges} wedges.',
      alike
        ? '{count} strip sets {lowest} high give {wedges} wedges.'
        : '{count} strip sets {lowest} to {highest} high give {wedges} wedges.',
      {
        lowest: { inches: lowest },
        highest: { inches: highest },
        wedges: wedges.up + wedges.down,
      },
    ),
    exact
      ? phrase('No choice of strips for these sets takes less fabric with this mix of widths.')
      : phrase('The strips were worked out set by set; another choice might take a little less fabric.'),
  ];
  if (fabrics.length === 1) {
    words.push(
      phrase('One fabric lies beside itself in every set: choose a second one, or better, a third.'),
    );
  }
  return { sets: sets.length, wedges, strips, cloth, perSet: sets, exact, words };
}

interface Chosen {
  readonly sets: readonly (readonly number[])[];
  readonly counts: readonly number[];
  readonly wedges: WedgeCount;
  readonly exact: boolean;
  readonly inches: Inches;
}

/** Sets with half an inch to spare or a little more, as many as the blocks need: of these the ones that take least cloth. */
function leastCloth({ blocks, wedge, widths, length }: StripsWanted): Chosen | null {
  const cut = widths.map((one) => one.width);
  const usual = wedge.cutHeight + HEIGHT_TO_SPARE;
  const kinds = setKinds(length, wedge, cut, usual, wedge.cutHeight + MOST_SPARE);
  const each = kinds.map((kind) => fewestSets(blocks, kind, length, wedge, widths));
  return each.reduce((best, one) => (one && (!best || one.inches < best.inches - HAIR) ? one : best), null);
}

/** The fewest sets of this height or a little higher that give so many blocks, counted at the height each has. */
function fewestSets(
  blocks: number,
  kind: SetKind,
  length: Inches,
  wedge: WedgePlan,
  widths: readonly WidthPart[],
): Chosen | null {
  const cut = widths.map((one) => one.width);
  const totals = totalsTable(widths, kind.height, wedge.seam);
  const wedgesOf = (sets: readonly (readonly number[])[]) =>
    wedgesWith(wedgesOfSets(sets, length, cut, wedge), { up: 0, down: 0 });
  const enough = (sets: readonly (readonly number[])[]) => wholeBlocks(wedgesOf(sets), wedge) >= blocks;
  let count = Math.ceil((blocks * wedge.perBlock) / kind.wedges);
  let total = totals(count);
  if (!total) return null;
  // An odd number of odd sets leaves one tip a wedge short; sets that came out higher may save one.
  while (!enough(total!.sets)) total = totals(++count);
  for (let fewer = totals(count - 1); fewer && enough(fewer.sets); fewer = totals(count - 1)) {
    total = fewer;
    count -= 1;
  }
  const { sets, exact } = total!;
  const each = new Map(wedgesOfSets(sets, length, cut, wedge).map((wedges, at) => [sets[at]!, wedges]));
  const kept = withoutSpare(sets, (set) => each.get(set)!, enough);
  const { counts, cloth } = needOf(kept, cut, wedge.seam);
  const isAll = kept.length === sets.length;
  return { sets: kept, counts, wedges: wedgesOf(kept), exact: exact && isAll, inches: cloth };
}

/** Leaves one set after another out as long as the rest is enough. Of sets alike, which give as many wedges, one is tried. */
export function withoutSpare<Sets>(
  sets: readonly Sets[],
  wedgesOf: (set: Sets) => number,
  enough: (sets: readonly Sets[]) => boolean,
): readonly Sets[] {
  const tried = new Set<number>();
  for (const set of sets) {
    const wedges = wedgesOf(set);
    if (tried.has(wedges)) continue;
    tried.add(wedges);
    const rest = sets.filter((one) => one !== set);
    if (enough(rest)) return withoutSpare(rest, wedgesOf, enough);
  }
  return sets;
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

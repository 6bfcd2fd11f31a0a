// The sets of a plan, length by length, as they are planned: how many wedges and blocks they give at their true heights, what
// else their strips could make, and which of them no block needs.
import { cutWidth, finishedWidth } from '../../geometry/stripSet';
import { total } from '../../model/lengths';
import type { FabricId, WedgePlan } from '../../model/project';
import type { Inches } from '../../model/units';
import { layMost } from '../sets/layHeights';
import { type WedgeCount, wedgesOnLength } from '../wedges/yield';

/** Sets of one length and the strips cut for them, piece by piece. */
export interface SetsOfLength {
  /** Strips of each width in each set. */
  readonly sets: readonly (readonly number[])[];
  /** As long as the shortest strip. */
  readonly length: Inches;
  /** Strips of each width from each piece, in the order of the pieces. */
  readonly cuts: readonly (readonly number[])[];
  /** So many strips of the set's length one strip from each piece gives, cut across. */
  readonly parts: readonly number[];
}

/** Height of a set of so many strips of each width, inches. */
export function plannedHeight(counts: readonly number[], widths: readonly Inches[], seam: Inches): Inches {
  return cutWidth(
    counts.reduce((sum, count, at) => sum + count * finishedWidth(widths[at]!, seam), 0),
    seam,
  );
}

/** Wedges of each set, at its own height. */
export function wedgesOfSets(
  sets: readonly (readonly number[])[],
  length: Inches,
  widths: readonly Inches[],
  wedge: WedgePlan,
): number[] {
  const known = new Map<Inches, number>();
  return sets.map((counts) => {
    const height = plannedHeight(counts, widths, wedge.seam);
    const wedges = known.get(height) ?? wedgesOnLength(length, height, wedge);
    known.set(height, wedges);
    return wedges;
  });
}

/** What sets of so many wedges give with the wedges there are: an odd one has its odd wedge of the tip there is less of. */
export function wedgesWith(sets: readonly number[], there: WedgeCount): WedgeCount {
  let { up, down } = there;
  for (const wedges of sets) {
    const [more, less] = [Math.ceil(wedges / 2), Math.floor(wedges / 2)];
    const upFirst = up <= down;
    up += upFirst ? more : less;
    down += upFirst ? less : more;
  }
  return { up, down };
}

/** Whole blocks of so many wedges, half of each tip up. */
export function wholeBlocks({ up, down }: WedgeCount, wedge: WedgePlan): number {
  return Math.floor(Math.min(up, down) / (wedge.perBlock / 2));
}

/** Whole blocks of these sets with the wedges there are. */
export function blocksOfGroups(
  groups: readonly SetsOfLength[],
  widths: readonly Inches[],
  wedge: WedgePlan,
  there: WedgeCount,
): number {
  const sets = groups.flatMap((group) => wedgesOfSets(group.sets, group.length, widths, wedge));
  return wholeBlocks(wedgesWith(sets, there), wedge);
}

/** The same cuts, their strips laid into the sets that give most wedges; the group as it is where those are no more. */
export function laidAnew(
  group: SetsOfLength,
  fabrics: readonly FabricId[],
  widths: readonly Inches[],
  wedge: WedgePlan,
  neighboursDiffer: boolean,
): SetsOfLength {
  const strips = widths.map((width, at) => ({ width, count: stripsOf(group, at) }));
  const sets = layMost(strips, group.length, wedge).map((set) => set.counts);
  const sum = (of: SetsOfLength['sets']) => total(wedgesOfSets(of, group.length, widths, wedge));
  if (sum(sets) <= sum(group.sets)) return group;
  if (neighboursDiffer && !canDiffer(sets, group, fabrics)) return group;
  return { ...group, sets };
}

/** Of every set of s strips ⌊s/2⌋ have to be of other fabrics than any one. */
function canDiffer(sets: SetsOfLength['sets'], group: SetsOfLength, fabrics: readonly FabricId[]): boolean {
  const given = new Map<FabricId, number>();
  group.cuts.forEach((row, at) => {
    given.set(fabrics[at]!, (given.get(fabrics[at]!) ?? 0) + group.parts[at]! * total(row));
  });
  const others = total([...given.values()]) - Math.max(0, ...given.values());
  return others >= sets.reduce((sum, counts) => sum + Math.floor(total(counts) / 2), 0);
}

/** The groups without the sets that no block needs, those of fewest wedges first, and without their strips. */
export function withoutUnneeded(
  groups: readonly SetsOfLength[],
  fabrics: readonly FabricId[],
  widths: readonly Inches[],
  wedge: WedgePlan,
  there: WedgeCount,
): SetsOfLength[] {
  const blocks = blocksOfGroups(groups, widths, wedge, there);
  const rows = groups.map((group) => {
    const wedges = wedgesOfSets(group.sets, group.length, widths, wedge);
    return group.sets.map((counts, at) => ({ counts, wedges: wedges[at]! }));
  });
  for (let left = true; left; ) {
    left = false;
    const order = rows.flat().sort((one, other) => one.wedges - other.wedges);
    for (const set of order) {
      const others = rows.flatMap((row) => row.filter((one) => one !== set).map((one) => one.wedges));
      if (wholeBlocks(wedgesWith(others, there), wedge) < blocks) continue;
      const row = rows.find((one) => one.includes(set))!;
      row.splice(row.indexOf(set), 1);
      left = true;
      break;
    }
  }
  return groups
    .map((group, at) => lessStrips({ ...group, sets: rows[at]!.map((one) => one.counts) }, fabrics))
    .filter((group) => group.sets.length > 0);
}

/** Cuts no strip that no set takes; the fabric that gives most strips of a width gives fewer first. */
function lessStrips(group: SetsOfLength, fabrics: readonly FabricId[]): SetsOfLength {
  const cuts = group.cuts.map((row) => [...row]);
  const { parts } = group;
  const given = new Map<FabricId, number>();
  const give = (at: number, strips: number) => {
    given.set(fabrics[at]!, (given.get(fabrics[at]!) ?? 0) + strips * parts[at]!);
  };
  for (const [at, row] of cuts.entries()) give(at, total(row));
  for (let width = 0; width < (cuts[0]?.length ?? 0); width += 1) {
    const needed = total(group.sets.map((counts) => counts[width]!));
    let there = stripsOf({ ...group, cuts }, width);
    for (;;) {
      const spare = cuts.flatMap((row, at) => (row[width]! > 0 && there - parts[at]! >= needed ? [at] : []));
      if (spare.length === 0) break;
      const at = spare.reduce((best, one) =>
        given.get(fabrics[one]!)! > given.get(fabrics[best]!)! ? one : best,
      );
      cuts[at]![width]! -= 1;
      there -= parts[at]!;
      give(at, -1);
    }
  }
  return { ...group, cuts };
}

/** Strips of one width that the cuts give, cut across. */
function stripsOf(group: SetsOfLength, width: number): number {
  return total(group.cuts.map((row, at) => row[width]! * group.parts[at]!));
}

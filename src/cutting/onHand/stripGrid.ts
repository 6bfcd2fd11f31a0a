// Strips on hand as a grid: a row for each fabric and length, a column for each cut width, a count in each cell. What is in no
// cell is not on hand. editing/commands/stripGrid.ts changes the strips by it.
import type { Fabric, FabricId, StripOnHand } from '../../model/project';
import type { Inches } from '../../model/units';
import { stripKey } from '../sets/stripsUnused';

/** One row of the grid: strips of a fabric that are equally long. */
export interface StripLine {
  readonly fabric: FabricId;
  readonly length: Inches;
}

export interface StripGrid {
  readonly widths: readonly Inches[];
  readonly lines: readonly StripLine[];
  /** counts[line][width]. */
  readonly counts: readonly (readonly number[])[];
}

type Strips = Omit<StripOnHand, 'id'>;

/** Whether two lengths or widths are one for the grid, as for stripKey: to a ten-thousandth of an inch. */
export function isSameInches(one: Inches, other: Inches): boolean {
  return stripKey('', one) === stripKey('', other);
}

/** The widths of strips, narrow ones first, each once. */
export function widthsOf(strips: readonly Pick<Strips, 'width'>[]): Inches[] {
  return distinct(strips.map((strip) => strip.width)).sort((one, other) => one - other);
}

/** The lengths of the strips of one fabric, each once, as they come in the list. */
export function lengthsOf(strips: readonly Strips[], fabric: FabricId): Inches[] {
  return distinct(strips.flatMap((strip) => (strip.fabric === fabric ? [strip.length] : [])));
}

/** The counts of strips in the cells of these lines and widths; 0 where there are none. */
export function countsIn(
  strips: readonly Strips[],
  lines: readonly StripLine[],
  widths: readonly Inches[],
): number[][] {
  const there = new Map<string, number>();
  for (const strip of strips) {
    const key = cellKey(strip, strip.width);
    there.set(key, (there.get(key) ?? 0) + strip.count);
  }
  return lines.map((line) => widths.map((width) => there.get(cellKey(line, width)) ?? 0));
}

/**
 * The grid of strips on hand: every fabric has at least one line, of the length `usual` where it has no strips; background
 * fabrics come last, because sets are seldom made of them.
 */
export function gridOf(fabrics: readonly Fabric[], strips: readonly Strips[], usual: Inches): StripGrid {
  const lines = inRows(fabrics).flatMap(({ id }) => {
    const lengths = lengthsOf(strips, id);
    return (lengths.length > 0 ? lengths : [usual]).map((length) => ({ fabric: id, length }));
  });
  const widths = widthsOf(strips);
  return { widths, lines, counts: countsIn(strips, lines, widths) };
}

/** Fabrics as they stand in the grid: background last. */
export function inRows(fabrics: readonly Fabric[]): Fabric[] {
  return fabrics.toSorted((one, other) => Number(one.background) - Number(other.background));
}

/** What two cells share when they are one: fabric, length and width. */
export function cellKey({ fabric, length }: StripLine, width: Inches): string {
  return `${stripKey('', length)}${stripKey(fabric, width)}`;
}

function distinct(lengths: readonly Inches[]): Inches[] {
  const seen = new Map<string, Inches>();
  for (const length of lengths) if (!seen.has(stripKey('', length))) seen.set(stripKey('', length), length);
  return [...seen.values()];
}

// Which columns and lines of the grid of strips are on show: those that strips are in, and those that were asked for and are empty
// still. A column or line stays where it stands while it is filled, changed and emptied.
import type { Fabric, FabricId, StripOnHand } from '../../model/project';
import type { Inches } from '../../model/units';
import { inRows, isSameInches, lengthsOf, type StripLine } from './stripGrid';

/** What was asked for beyond the strips on hand. */
export interface GridShape {
  /** Columns in their order. */
  readonly widths: readonly Inches[];
  /** Lengths of the lines of a fabric, in their order. */
  readonly lengths: ReadonlyMap<FabricId, readonly Inches[]>;
  /** Length of a line that nothing was said of. */
  readonly usual: Inches;
}

/** The widths asked for, with those that are there put among them, the narrower first. */
export function shownWidths(asked: readonly Inches[], there: readonly Inches[]): Inches[] {
  const shown = [...asked];
  for (const width of there) {
    if (shown.some((one) => isSameInches(one, width))) continue;
    const before = shown.findIndex((one) => one > width);
    shown.splice(before < 0 ? shown.length : before, 0, width);
  }
  return shown;
}

/** The lines of the grid, background fabrics last; every fabric has at least one. */
export function shownLines(
  fabrics: readonly Fabric[],
  strips: readonly StripOnHand[],
  { lengths, usual }: Pick<GridShape, 'lengths' | 'usual'>,
): StripLine[] {
  return inRows(fabrics).flatMap(({ id }) => {
    const asked = lengths.get(id) ?? [];
    const there = lengthsOf(strips, id).filter((length) => !asked.some((one) => isSameInches(one, length)));
    const own = [...asked, ...there];
    return (own.length > 0 ? own : [usual]).map((length) => ({ fabric: id, length }));
  });
}

/**
 * The shape with the lines of these fabrics as they are on show, so that none goes away when it is emptied; `lengthOf` gives
 * lines another length. Lines of one fabric that are then equally long become one.
 */
export function heldLines(
  shape: GridShape,
  lines: readonly StripLine[],
  of: ReadonlySet<FabricId>,
  lengthOf: (line: StripLine) => Inches = (line) => line.length,
): GridShape {
  const lengths = new Map(shape.lengths);
  for (const fabric of of) {
    const own = lines.filter((line) => line.fabric === fabric).map(lengthOf);
    lengths.set(
      fabric,
      own.filter((length, at) => own.findIndex((one) => isSameInches(one, length)) === at),
    );
  }
  return { ...shape, lengths };
}

/** The shape with `from` turned into `to`, as undo and redo do it; what was asked for since stays. */
export function turnedShape(now: GridShape, from: GridShape, to: GridShape): GridShape {
  const since = now.widths.filter((width) => !from.widths.some((one) => isSameInches(one, width)));
  const widths = [
    ...to.widths,
    ...since.filter((width) => !to.widths.some((one) => isSameInches(one, width))),
  ];
  const lengths = new Map(now.lengths);
  for (const fabric of new Set([...from.lengths.keys(), ...to.lengths.keys()])) {
    if (!isSameLengths(now.lengths.get(fabric), from.lengths.get(fabric))) continue;
    const back = to.lengths.get(fabric);
    if (back) lengths.set(fabric, back);
    else lengths.delete(fabric);
  }
  return { widths, lengths, usual: now.usual === from.usual ? to.usual : now.usual };
}

function isSameLengths(one: readonly Inches[] = [], other: readonly Inches[] = []): boolean {
  return one.length === other.length && one.every((length, at) => isSameInches(length, other[at]!));
}

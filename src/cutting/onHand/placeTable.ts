// Where the lines of a table of strips go: to the fabrics they name, or to fabrics that are new. Nothing is changed here; the person
// looks first where something would be new or overwritten.
import { LONGEST_NAME } from '../../model/name';
import { phrase } from '../../model/phrase';
import type { Fabric, FabricId, StripOnHand } from '../../model/project';
import { failed, ok, type Result } from '../../model/result';
import type { Inches } from '../../model/units';
import { cellKey, countsIn, lengthsOf } from './stripGrid';
import type { StripTable } from './stripTable';

/** A count for one cell; `fabric` is an id, or the place of a name in the list of new names. */
export interface CellCount {
  readonly fabric: FabricId | number;
  readonly length: Inches;
  readonly width: Inches;
  readonly count: number;
}

export interface PlacedTable {
  readonly cells: readonly CellCount[];
  /** Names that no fabric has, each once, in order. */
  readonly fresh: readonly string[];
  /** Strips in all cells of the table. */
  readonly strips: number;
  /** Cells whose strips on hand would be another number. */
  readonly overwritten: number;
}

/**
 * Finds the fabrics of a table by their names: letter by letter first, then without regard to capitals and blanks at the ends.
 * A line without a length goes to the first line of its fabric, one of a fabric without strips is `usual` long. Refused where
 * a name stands for two fabrics, is too long, or two cells of the table are one.
 */
export function placeTable(
  table: StripTable,
  fabrics: readonly Fabric[],
  strips: readonly StripOnHand[],
  usual: Inches,
): Result<PlacedTable> {
  const fresh: string[] = [];
  const cells: CellCount[] = [];
  const taken = new Set<string>();
  for (const line of table.lines) {
    const found = fabricNamed(line.name, fabrics);
    if (found === 'two') {
      const say = 'Two fabrics are called {name}. Give them different names first.';
      return failed('two-fabrics', '', phrase(say, { name: line.name.trim() }));
    }
    if (found === null && line.name.trim().length > LONGEST_NAME) {
      const say = 'The name {name}… is longer than {most} characters.';
      return failed(
        'long-name',
        '',
        phrase(say, { name: line.name.trim().slice(0, 30), most: LONGEST_NAME }),
      );
    }
    const fabric = found?.id ?? placeOf(line.name.trim(), fresh);
    const length = line.length ?? (found ? lengthsOf(strips, found.id)[0] : undefined) ?? usual;
    for (const [column, count] of line.counts.entries()) {
      if (count === null) continue;
      const width = table.widths[column]!;
      const key = cellKey({ fabric: String(fabric), length }, width);
      if (taken.has(key)) {
        const values = { name: line.name.trim(), width: { inches: width } };
        return failed('twice', '', phrase('The table holds {name}, {width} wide, twice.', values));
      }
      taken.add(key);
      cells.push({ fabric, length, width, count });
    }
  }
  const sum = cells.reduce((all, cell) => all + cell.count, 0);
  return ok({ cells, fresh, strips: sum, overwritten: overwrittenBy(cells, strips) });
}

function fabricNamed(name: string, fabrics: readonly Fabric[]): Fabric | 'two' | null {
  for (const same of [(one: string) => one, (one: string) => one.trim().toLowerCase()]) {
    const alike = fabrics.filter((fabric) => same(fabric.name) === same(name));
    if (alike.length > 1) return 'two';
    if (alike[0]) return alike[0];
  }
  return null;
}

/** The place of a new name in the list, to which it is added at its first mention. */
function placeOf(name: string, fresh: string[]): number {
  const at = fresh.findIndex((one) => one.toLowerCase() === name.toLowerCase());
  return at >= 0 ? at : fresh.push(name) - 1;
}

function overwrittenBy(cells: readonly CellCount[], strips: readonly StripOnHand[]): number {
  return cells.filter(({ fabric, length, width, count }) => {
    if (typeof fabric === 'number') return false;
    const there = countsIn(strips, [{ fabric, length }], [width])[0]![0]!;
    return there > 0 && there !== count;
  }).length;
}

// Commands on the strips on hand as a grid: counts entered in its cells, another width for a column, another length for lines.

import type { CellCount } from '../../cutting/onHand/placeTable';
import { cellKey, isSameInches, type StripLine } from '../../cutting/onHand/stripGrid';
import { everyCloth } from '../../model/colourway';
import { findFabric, freshId } from '../../model/find';
import { counted, type Phrase, phrase } from '../../model/phrase';
import {
  type Fabric,
  type FabricId,
  MOST_FABRICS,
  MOST_OF_A_KIND,
  MOST_STRIP_ROWS,
  type Project,
  type StripOnHand,
} from '../../model/project';
import type { Inches } from '../../model/units';
import { type Command, Refusal } from '../apply';

/**
 * Sets the counts of cells; what is in other cells stays. `fresh` are fabrics that are added first; a cell names one by its
 * place in that list.
 */
export function enterStrips(
  project: Project,
  cells: readonly CellCount[],
  fresh: readonly Omit<Fabric, 'id'>[] = [],
): Command {
  return {
    label: labelOf(project, cells),
    change: (draft) => {
      const added = fresh.map((fabric) => {
        const id = freshId('f', everyCloth(draft));
        draft.fabrics.push({ ...fabric, id });
        return id;
      });
      if (draft.fabrics.length > MOST_FABRICS) {
        const message = phrase('A quilt holds at most {most} fabrics.', { most: MOST_FABRICS });
        throw new Refusal('too-many-fabrics', 'fabrics', message);
      }
      rewrite(draft, [
        ...draft.stripsOnHand,
        ...cells.map((cell) => ({
          ...cell,
          fabric: typeof cell.fabric === 'number' ? added[cell.fabric]! : cell.fabric,
          entered: true,
        })),
      ]);
    },
  };
}

/** Gives all strips of one width another width; strips that are then alike are counted together. */
export function changeWidth(from: Inches, to: Inches): Command {
  const values = { from: { inches: from }, to: { inches: to } };
  return {
    label: phrase('make the strips {from} wide {to} wide', values),
    change: (draft) => {
      rewrite(
        draft,
        draft.stripsOnHand.map((row) => (isSameInches(row.width, from) ? { ...row, width: to } : row)),
      );
    },
  };
}

/** Gives the strips of these lines another length; strips that are then alike are counted together. */
export function changeLengths(lines: readonly StripLine[], to: Inches): Command {
  const is = (row: StripLine) =>
    lines.some((line) => line.fabric === row.fabric && isSameInches(line.length, row.length));
  return {
    label: phrase('make strips {to} long', { to: { inches: to } }),
    change: (draft) => {
      rewrite(
        draft,
        draft.stripsOnHand.map((row) => (is(row) ? { ...row, length: to } : row)),
      );
    },
  };
}

function labelOf(project: Project, cells: readonly CellCount[]): Phrase {
  const [only] = cells;
  if (cells.length !== 1 || typeof only?.fabric !== 'string')
    return counted(cells.length, 'enter strips in 1 cell', 'enter strips in {count} cells');
  const name = findFabric(project, only.fabric)?.name ?? '';
  return counted(
    only.count,
    'enter 1 strip of {name}, {width} wide',
    'enter {count} strips of {name}, {width} wide',
    { name, width: { inches: only.width } },
  );
}

interface Row {
  readonly id?: string;
  readonly fabric: FabricId;
  readonly width: Inches;
  readonly length: Inches;
  readonly count: number;
  /** Whether the count stands for all strips of the cell, instead of being added to them. */
  readonly entered?: boolean;
}

/** Puts rows on hand: those of one cell as one row, in the order of the first; empty ones go. */
function rewrite(draft: Project, rows: readonly Row[]): void {
  const cells = new Map<string, StripOnHand>();
  const ids = draft.stripsOnHand.map(({ id }) => ({ id }));
  for (const row of rows) {
    const key = cellKey(row, row.width);
    const there = cells.get(key);
    if (there) {
      cells.set(key, { ...there, count: row.entered ? row.count : there.count + row.count });
    } else if (row.count > 0) {
      const id = row.id ?? freshId('h', ids);
      if (row.id === undefined) ids.push({ id });
      const { fabric, width, length, count } = row;
      cells.set(key, { id, fabric, width, length, count });
    }
  }
  const left = [...cells.values()].filter((row) => row.count > 0);
  if (left.length > MOST_STRIP_ROWS) {
    const message = phrase('A quilt holds strips of at most {most} kinds.', { most: MOST_STRIP_ROWS });
    throw new Refusal('too-many-rows', 'stripsOnHand', message);
  }
  if (left.some((row) => row.count > MOST_OF_A_KIND)) {
    const message = phrase('These would be more than {most} strips of one kind.', { most: MOST_OF_A_KIND });
    throw new Refusal('too-many-strips', 'stripsOnHand', message);
  }
  draft.stripsOnHand = left;
}

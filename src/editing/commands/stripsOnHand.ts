// Commands on many strips on hand at once: listing the strips of a plan, and splitting strips lengthwise (2 1/2" precuts).

import { freshId } from '../../model/find';
import { isTooNarrow } from '../../model/lengths';
import { counted, phrase } from '../../model/phrase';
import type { Project, StripOnHand } from '../../model/project';
import type { Inches } from '../../model/units';
import { type Command, Refusal } from '../apply';

/** Adds strips to the list on hand; strips of equal fabric, width and length share a row. */
export function writeDownStrips(rows: readonly Omit<StripOnHand, 'id'>[]): Command {
  const count = rows.reduce((sum, row) => sum + row.count, 0);
  return {
    label: counted(count, 'add 1 strip', 'add {count} strips'),
    change: (draft) => {
      for (const row of rows) lay(draft, row);
    },
  };
}

/** Splits `count` strips of one row lengthwise into strips of width `first` and of the width that is left. Joins equal rows. */
export function splitStrips(project: Project, id: string, count: number, first: Inches): Command {
  const label = counted(count, 'split 1 strip lengthwise', 'split {count} strips lengthwise');
  return {
    label,
    change: (draft) => {
      const row = draft.stripsOnHand.find((one) => one.id === id);
      if (!row) throw new Error(`splitStrips: no strips ${id}`);
      if (count > row.count) {
        const message = phrase('There are only {there} of these strips.', { there: row.count });
        throw new Refusal('too-few-strips', 'stripsOnHand', message);
      }
      const second = row.width - first;
      if (isTooNarrow(Math.min(first, second), project.wedge.seam)) {
        const message = phrase(
          'Split like that, one of the two would be {narrow} wide and vanish in its two seams.',
          { narrow: { inches: Math.max(0, Math.min(first, second)) } },
        );
        throw new Refusal('strip-too-narrow', 'stripsOnHand', message);
      }
      row.count -= count;
      for (const width of [first, second])
        lay(draft, { fabric: row.fabric, width, length: row.length, count });
      draft.stripsOnHand = draft.stripsOnHand.filter((one) => one.count > 0 || one.id !== id);
    },
  };
}

function lay(draft: Project, strips: Omit<StripOnHand, 'id'>): void {
  const same = draft.stripsOnHand.find(
    (one) =>
      one.fabric === strips.fabric &&
      Math.abs(one.width - strips.width) < 1e-9 &&
      Math.abs(one.length - strips.length) < 1e-9,
  );
  if (same) same.count += strips.count;
  else draft.stripsOnHand.push({ ...strips, id: freshId('h', draft.stripsOnHand) });
}

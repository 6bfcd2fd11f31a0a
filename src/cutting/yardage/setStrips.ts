// The strips that go into strip sets, as rows to cut: one for each fabric, width and length, with those already on hand.

import { counted, type Phrase, phrase } from '../../model/phrase';
import type { FabricId, Project, StripOnHand, StripSet } from '../../model/project';
import type { Inches } from '../../model/units';
import { isLongEnough, stripKey, stripsLeftBeside } from '../sets/stripsUnused';
import { growsWithUse } from '../wedges/ledger';
import type { NeededPiece } from './neededPiece';

/** The whole quilt from uncut cloth, or what is still to cut as far as the work is. */
export type CuttingScope = 'whole' | 'left';

interface Row {
  fabric: FabricId;
  width: Inches;
  length: Inches;
  count: number;
  onHand: number;
  /** Labels, each once; in the order of the document once the row is done. */
  sets: Set<string>;
}

/**
 * Rows for the strips of all sets, fabrics in document order, wide strips first. Sets that are sewn are done: of what is
 * left they are left out, and of the whole those known from sewn wedges alone, as nobody knows how long their strips were. A strip
 * on hand counts where it is at least as long as its set.
 */
export function setStrips(project: Project, scope: CuttingScope): NeededPiece[] {
  const sewn = project.stripSets.filter((set) => set.progress !== 'planned');
  const planned = project.stripSets.filter((set) => set.progress === 'planned');
  const rows = new Map<string, Row>();
  // Longest sets choose first among the strips on hand, so that a long strip is not spent on a short set.
  const unused = stripsLeftBeside(project.stripsOnHand, sewn);
  for (const set of planned.toSorted((one, other) => other.length - one.length)) {
    for (const strip of set.strips) {
      const row = rowOf(rows, set, strip.fabric, strip.width);
      row.count += 1;
      if (takeStrip(unused, strip.fabric, strip.width, set.length)) row.onHand += 1;
    }
  }
  if (scope === 'whole') {
    for (const set of sewn) {
      if (growsWithUse(set)) continue;
      for (const strip of set.strips) {
        const row = rowOf(rows, set, strip.fabric, strip.width);
        row.count += 1;
        row.onHand += 1;
      }
    }
  }
  const order = new Map(project.fabrics.map((fabric, index) => [fabric.id, index]));
  return Array.from(rows.values())
    .sort(
      (one, other) =>
        (order.get(one.fabric) ?? 0) - (order.get(other.fabric) ?? 0) ||
        other.width - one.width ||
        other.length - one.length,
    )
    .map((row) => stripPiece(row, project, scope))
    .filter((piece) => piece.count > 0);
}

function rowOf(rows: Map<string, Row>, set: StripSet, fabric: FabricId, width: Inches): Row {
  const key = `${stripKey(fabric, width)} ${Math.round(set.length * 10_000)}`;
  const row = rows.get(key) ?? { fabric, width, length: set.length, count: 0, onHand: 0, sets: new Set() };
  row.sets.add(set.label);
  rows.set(key, row);
  return row;
}

/** Takes the shortest strip that is long enough; false when there is none. */
function takeStrip(unused: StripOnHand[], fabric: FabricId, width: Inches, length: Inches): boolean {
  const key = stripKey(fabric, width);
  const fits = unused
    .filter((row) => row.count > 0 && isLongEnough(row, length) && stripKey(row.fabric, row.width) === key)
    .toSorted((one, other) => one.length - other.length)[0];
  if (!fits) return false;
  fits.count -= 1;
  return true;
}

function stripPiece(row: Row, project: Project, scope: CuttingScope): NeededPiece {
  const onHand = scope === 'whole' ? row.onHand : 0;
  const count = scope === 'whole' ? row.count : row.count - row.onHand;
  return {
    step: 'sets',
    fabric: row.fabric,
    what: forSets(project.stripSets.map(({ label }) => label).filter((label) => row.sets.has(label))),
    shape: 'rectangle',
    width: row.length,
    height: row.width,
    count,
    onHand,
    upright: false,
    why: workings(row, scope),
  };
}

function forSets(labels: readonly string[]): Phrase {
  const sets = { list: labels };
  return counted(labels.length, 'Strips for strip set {sets}', 'Strips for strip sets {sets}', { sets });
}

function workings(row: Row, scope: CuttingScope): Phrase[] {
  const size = { width: { inches: row.width }, length: { inches: row.length } };
  const needed = counted(
    row.count,
    'The sets take 1 strip {width} wide and {length} long.',
    'The sets take {count} strips {width} wide and {length} long.',
    size,
  );
  if (scope === 'whole' || row.onHand === 0) return [needed];
  const values = { have: row.onHand, rest: row.count - row.onHand };
  return [needed, phrase('{have} of them are on hand; {rest} are to cut.', values)];
}

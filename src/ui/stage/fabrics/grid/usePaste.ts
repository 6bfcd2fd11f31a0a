// Takes tables that are pasted or opened. A block of numbers goes into the cells from where it is pasted; a table with names and
// widths goes to the fabrics it names. Where fabrics are new or numbers would be overwritten the person looks first.
import { type ClipboardEvent, useState } from 'react';
import { type CellCount, type PlacedTable, placeTable } from '../../../../cutting/onHand/placeTable';
import { isTable, readCounts, readStripTable } from '../../../../cutting/onHand/stripTable';
import { enterStrips } from '../../../../editing/commands/stripGrid';
import { counted, phrase } from '../../../../model/phrase';
import type { Problem } from '../../../../model/result';
import { useAppStore } from '../../../app';
import { firstFabrics } from '../../../steps/fabrics/AddFabric';
import { useUnit } from '../../../words';
import type { Place } from './GridCell';
import type { useStripGrid } from './useStripGrid';

export function usePaste({ lines, widths, usual }: ReturnType<typeof useStripGrid>) {
  const store = useAppStore();
  const unit = useUnit();
  const [placed, setPlaced] = useState<PlacedTable | null>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const refuse = (refused: readonly Problem[]) => {
    setPlaced(null);
    setProblems(refused);
  };
  const enter = (cells: readonly CellCount[], fresh: readonly string[], strips: number) => {
    const { project, run, announce } = store.getState();
    const refused = run(enterStrips(project, cells, firstFabrics(project.fabrics, fresh)));
    refuse(refused);
    if (refused.length === 0) announce(counted(strips, '1 strip entered', '{count} strips entered'));
  };
  /** A table with names and widths. */
  const take = (text: string) => {
    const { project } = store.getState();
    const table = readStripTable(text, unit);
    const found = table.ok ? placeTable(table.value, project.fabrics, project.stripsOnHand, usual) : table;
    if (!found.ok) refuse(found.problems);
    else if (found.value.fresh.length === 0 && found.value.overwritten === 0)
      enter(found.value.cells, [], found.value.strips);
    else {
      setProblems([]);
      setPlaced(found.value);
    }
  };
  /** A block of numbers, from a cell to the right and down. */
  const fill = (block: readonly (readonly (number | null)[])[], from: Place) => {
    const wide = Math.max(...block.map((row) => row.length));
    const room = { lines: lines.length - from.line, columns: widths.length - from.column + 1 };
    if (block.length > room.lines || wide > room.columns) {
      const say =
        'What is pasted is {rows} down and {columns} across; from here the grid has {lines} down and {wide} across.';
      const values = { rows: block.length, columns: wide, lines: room.lines, wide: room.columns };
      refuse([{ code: 'no-room', path: '', message: phrase(say, values) }]);
      return;
    }
    const cells = block.flatMap((row, down) =>
      row.flatMap((count, across) => {
        if (count === null) return [];
        return [{ ...lines[from.line + down]!, width: widths[from.column - 1 + across]!, count }];
      }),
    );
    enter(
      cells,
      [],
      cells.reduce((sum, cell) => sum + cell.count, 0),
    );
  };
  const onPaste = (event: ClipboardEvent, at: Place | null) => {
    const text = event.clipboardData.getData('text/plain');
    if (!isTable(text, unit)) return;
    event.preventDefault();
    const block = at && at.line >= 0 && at.column > 0 ? readCounts(text) : null;
    if (block && at) fill(block, at);
    else take(text);
  };
  const accept = () => {
    if (placed) enter(placed.cells, placed.fresh, placed.strips);
  };
  return { onPaste, take, refuse, accept, placed, problems };
}

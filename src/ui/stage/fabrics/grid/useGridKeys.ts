// The keys of the grid. Enter goes down, at the last fabric to the top of the next column; after a run of Tabs it goes down to
// where the run began, as in a spreadsheet. Arrows go up and down. A cell that is left is taken; a refused one is not left by Enter.
import { type KeyboardEvent, useRef } from 'react';
import { flushSync } from 'react-dom';
import { isKey } from '../../../keys';
import { HEADS, NEW_FABRIC, type Place, SAME_FOR_ALL } from './GridCell';

interface Extent {
  /** Lines of fabrics that are no background; they come first. */
  readonly cloths: number;
  readonly lines: number;
  readonly columns: number;
}

export function useGridKeys(extent: Extent) {
  /** The column in which the run of Tabs began; null outside one. */
  const run = useRef<number | null>(null);
  const onKeyDown = (event: KeyboardEvent<HTMLElement>) => {
    const table = event.currentTarget;
    const input = event.target as HTMLInputElement;
    const at = placeOf(input);
    if (!at) return;
    if (isKey(event, 'gridOn') && !event.shiftKey) {
      run.current ??= at.column;
      if (input.dataset.adds !== 'true' || input.value.trim() === '') return;
      event.preventDefault();
      if (!leave(input)) return;
      // The next width is typed into the same head; a new fabric's strips into its line.
      if (at.line === NEW_FABRIC) {
        run.current = 1;
        focusOn(table, { line: extent.cloths, column: 1 });
      } else focusOn(table, { line: HEADS, column: extent.columns + 2 });
    } else if (isKey(event, 'gridEnter')) {
      event.preventDefault();
      // A width that is added makes one column more.
      const columns = extent.columns + Number(at.column > extent.columns && input.value.trim() !== '');
      if (!leave(input)) return;
      focusOn(table, below(at, run.current, { ...extent, columns }));
      run.current = null;
    } else if (isKey(event, 'gridDown') || isKey(event, 'gridUp')) {
      event.preventDefault();
      run.current = null;
      focusOn(table, beside(at, isKey(event, 'gridDown') ? 1 : -1, extent));
    }
  };
  const onPointerDown = () => {
    run.current = null;
  };
  return { onKeyDown, onPointerDown };
}

/** Where a cell stands; null for anything else in the grid. */
export function placeOf(target: EventTarget): Place | null {
  const { line, column } = (target as HTMLElement).dataset ?? {};
  return line === undefined || column === undefined ? null : { line: Number(line), column: Number(column) };
}

export function focusOn(table: HTMLElement | null, { line, column }: Place): void {
  const own = table?.querySelector<HTMLElement>(`input[data-line="${line}"][data-column="${column}"]`);
  own?.focus();
  own?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
}

/** Leaves the cell, so that its text is taken; false, with the focus in it again, where it is refused. */
function leave(input: HTMLInputElement): boolean {
  flushSync(() => input.blur());
  if (input.getAttribute('aria-invalid') !== 'true') return true;
  input.focus();
  return false;
}

/** The cell that Enter goes to. */
function below({ line, column }: Place, run: number | null, extent: Extent): Place {
  const { cloths, lines, columns } = extent;
  const back = run ?? column;
  const first = cloths > 0 ? { line: 0, column: back } : { line: NEW_FABRIC, column: 0 };
  if (line === HEADS) {
    // Past the last width there is no column below.
    const under = Math.min(back, columns);
    return cloths > 1 ? { line: SAME_FOR_ALL, column: under } : { ...first, column: cloths > 0 ? under : 0 };
  }
  if (line === SAME_FOR_ALL) return first;
  if (line === NEW_FABRIC) return { line, column };
  if (line !== cloths - 1) return line + 1 < lines ? { line: line + 1, column: back } : { line, column };
  if (run !== null) return { line: NEW_FABRIC, column: 0 };
  return column < columns ? { line: 0, column: column + 1 } : { line: HEADS, column: columns + 1 };
}

/** The cell above or below. */
function beside({ line, column }: Place, by: 1 | -1, { cloths, lines, columns }: Extent): Place {
  // From top to bottom as they stand on the screen.
  const order = [
    HEADS,
    ...(cloths > 1 ? [SAME_FOR_ALL] : []),
    ...range(0, cloths),
    NEW_FABRIC,
    ...range(cloths, lines),
  ];
  const at = order.indexOf(line) + by;
  const next = order[Math.max(0, Math.min(order.length - 1, at))]!;
  if (next === NEW_FABRIC) return { line: next, column: 0 };
  if (next === HEADS) return { line: next, column: Math.max(1, column) };
  return { line: next, column: Math.min(line === NEW_FABRIC ? 1 : column, columns) };
}

function range(from: number, to: number): number[] {
  return Array.from({ length: to - from }, (_, at) => from + at);
}

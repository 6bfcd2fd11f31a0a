// The grid of strips as a table for spreadsheets, and such tables read again: names of fabrics down, cut widths across, counts in
// the cells, and perhaps a column of lengths. placeTable.ts finds the fabrics it names.
import { roundedHalfUp } from '../../model/decimals';
import { phrase } from '../../model/phrase';
import { type Fabric, MOST_OF_A_KIND, STRIP_LENGTH, STRIP_WIDTH } from '../../model/project';
import { failed, ok, type Result } from '../../model/result';
import { CENTIMETRES_PER_INCH, type Inches, type LengthUnit, parseLength } from '../../model/units';
import { type CsvCell, csvRows } from '../kits/csv';
import type { StripGrid } from './stripGrid';

/** The longest text that is read, in characters. */
export const MOST_TEXT = 1_000_000;

export interface TableLine {
  readonly name: string;
  /** Null where the table has no lengths. */
  readonly length: Inches | null;
  /** Null where a cell is empty: what is on hand there stays. */
  readonly counts: readonly (number | null)[];
}

export interface StripTable {
  readonly widths: readonly Inches[];
  readonly lines: readonly TableLine[];
}

/** The grid as rows for csvText, with its lengths and their unit; lines without strips are left out. */
export function tableRows(
  { widths, lines, counts }: StripGrid,
  fabrics: readonly Fabric[],
  unit: LengthUnit,
  heads: { readonly fabric: string; readonly length: string },
): CsvCell[][] {
  const names = new Map(fabrics.map((fabric) => [fabric.id, fabric.name]));
  const body = lines.flatMap((line, at) => {
    const own = counts[at]!;
    if (own.every((count) => count === 0)) return [];
    return [[names.get(line.fabric) ?? '', withUnit(line.length, unit), ...own]];
  });
  return [[heads.fabric, heads.length, ...widths.map((width) => withUnit(width, unit))], ...body];
}

/** A length that reads the same again: in decimals, with its unit, since a bare fraction is taken for a date. */
function withUnit(inches: Inches, unit: LengthUnit): string {
  const amount = unit === 'cm' ? inches * CENTIMETRES_PER_INCH : inches;
  return `${roundedHalfUp(amount, 6)} ${unit}`;
}

/** Whether text is a block of cells rather than one entry of a field, such as 1,5. */
export function isTable(text: string, unit: LengthUnit): boolean {
  const trimmed = text.trim();
  return /[\t\n\r]/.test(trimmed) || (/[,;]/.test(trimmed) && parseLength(trimmed, unit) === null);
}

/** A block of counts and empty cells with no names or widths; null for any other table. */
export function readCounts(text: string): (number | null)[][] | null {
  const rows = text.length > MOST_TEXT ? null : csvRows(text);
  if (!rows || rows.length === 0) return null;
  const read = rows.map((row) => row.map(countOf));
  return read.every((row) => row.every((count) => count !== 'none')) ? (read as (number | null)[][]) : null;
}

/**
 * Reads a table of strips: first row the widths, first column the fabrics; a second column whose head is no length holds the
 * lengths of the strips. Bare numbers are in `unit`. The first thing wrong is told with its row and column.
 */
export function readStripTable(text: string, unit: LengthUnit): Result<StripTable> {
  if (text.length > MOST_TEXT) {
    const longest = MOST_TEXT / 1_000_000;
    return failed('too-long', '', phrase('This is more than {longest} million characters.', { longest }));
  }
  const rows = csvRows(text);
  if (!rows) return failed('not-csv', '', phrase('A quotation mark is opened and not closed.'));
  const [head, ...body] = rows.map(withoutEmptyEnd);
  if (!head || body.length === 0 || head.length < 2) {
    const say =
      'A table has the cut widths in its first row, the fabrics in its first column, and counts in between.';
    return failed('no-table', '', phrase(say));
  }
  const first = parseLength(head[1]!, unit) === null && head.length > 2 ? 2 : 1;
  const widths: Inches[] = [];
  for (let column = first; column < head.length; column += 1) {
    const width = parseLength(head[column]!, unit);
    if (width === null || !isWithin(width, STRIP_WIDTH))
      return atCell(0, column, head[column]!, WIDTHS, STRIP_WIDTH);
    widths.push(width);
  }
  const lines: TableLine[] = [];
  for (const [index, cells] of body.entries()) {
    const line = readLine(cells, index + 1, first, head.length, unit);
    if (!line.ok) return line;
    lines.push(line.value);
  }
  return ok({ widths, lines });
}

const WIDTHS = 'a cut width from {least} to {most}';
const LENGTHS = 'a length from {least} to {most}';

function readLine(
  cells: readonly string[],
  row: number,
  first: number,
  columns: number,
  unit: LengthUnit,
): Result<TableLine> {
  const name = cells[0]!;
  if (name.trim() === '') return atCell(row, 0, name, 'the name of a fabric');
  if (cells.length > columns) return atCell(row, columns, cells[columns]!, 'empty: no width stands above it');
  const written = first === 2 ? (cells[1] ?? '') : '';
  const length = written.trim() === '' ? null : parseLength(written, unit);
  if (written.trim() !== '' && (length === null || !isWithin(length, STRIP_LENGTH)))
    return atCell(row, 1, written, LENGTHS, STRIP_LENGTH);
  const counts: (number | null)[] = [];
  for (let column = first; column < columns; column += 1) {
    const count = countOf(cells[column] ?? '');
    if (count === 'none')
      return atCell(row, column, cells[column]!, 'a whole number up to {most}', {
        least: 0,
        most: MOST_OF_A_KIND,
      });
    counts.push(count);
  }
  return ok({ name, length, counts });
}

/** A whole number that a row on hand may have; null for an empty cell. */
function countOf(cell: string): number | null | 'none' {
  const text = cell.trim();
  if (text === '') return null;
  return /^\d+$/.test(text) && Number(text) <= MOST_OF_A_KIND ? Number(text) : 'none';
}

function atCell(
  row: number,
  column: number,
  text: string,
  wanted: string,
  limits?: { readonly least: number; readonly most: number },
) {
  const lengths = wanted === WIDTHS || wanted === LENGTHS;
  const { least = 0, most = 0 } = limits ?? {};
  const want = phrase(wanted, lengths ? { least: { atLeast: least }, most: { atMost: most } } : { most });
  const values = { row: row + 1, column: column + 1, text: text.slice(0, 40), want };
  const message =
    text.trim() === ''
      ? phrase('Row {row}, column {column} is empty; it should be {want}.', values)
      : phrase('Row {row}, column {column} is “{text}”; it should be {want}.', values);
  return failed('bad-cell', `row ${row + 1}, column ${column + 1}`, message);
}

function isWithin(
  length: Inches,
  { least, most }: { readonly least: Inches; readonly most: Inches },
): boolean {
  return length >= least && length <= most;
}

/** A row without the empty cells at its end, which spreadsheets leave; its first cell stays. */
function withoutEmptyEnd(row: readonly string[]): string[] {
  const last = row.findLastIndex((cell) => cell.trim() !== '');
  return row.slice(0, Math.max(1, last + 1));
}

// Tables as text for spreadsheets: comma-separated values as RFC 4180 describes them.

/** A cell: text as it is; a number with a decimal point, whatever the language. */
export type CsvCell = string | number;

/**
 * Rows as CSV: cells parted by commas, rows ended by CR LF, cells with a comma, quote or line break in double quotes and
 * quotes inside doubled (RFC 4180, section 2). No rows give an empty text; not-a-number is left empty.
 */
export function csvText(rows: readonly (readonly CsvCell[])[]): string {
  return rows.map((row) => `${row.map(cellText).join(',')}\r\n`).join('');
}

function cellText(cell: CsvCell): string {
  if (typeof cell === 'number') return Number.isFinite(cell) ? String(Number(cell.toFixed(6))) : '';
  return /[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}

// Tables as text for spreadsheets, written and read: comma-separated values as RFC 4180 describes them, with no text that is taken
// for a formula.
import Papa from 'papaparse';
import { roundedHalfUp } from '../../model/decimals';

/** A cell: text as it is; a number with a decimal point, whatever the language. */
export type CsvCell = string | number;

/**
 * What a spreadsheet takes for the beginning of a formula, and apostrophes before it (OWASP, 'CSV Injection'; null: OWASP ASVS
 * 1.2.10; line feed and the wide signs of East Asian writing: from memory).
 */
const LIKE_A_FORMULA = /^'*[=+\-@＝＋－＠\t\r\n\0]/;

/**
 * Rows as CSV: cells parted by commas, rows ended by CR LF, cells with a comma, semicolon, tab, quote or line break in double quotes and
 * quotes inside doubled (RFC 4180, section 2). Text like a formula is quoted after an apostrophe, which spreadsheets take for
 * 'this is text'; one that stood there already is kept behind it, so that one is to be taken off when it is read. Numbers
 * stay numbers, those below 0 too. No rows give an empty text; not-a-number is left empty.
 */
export function csvText(rows: readonly (readonly CsvCell[])[]): string {
  return rows.map((row) => `${row.map(cellText).join(',')}\r\n`).join('');
}

function cellText(cell: CsvCell): string {
  if (typeof cell === 'number') return Number.isFinite(cell) ? String(roundedHalfUp(cell, 6)) : '';
  if (LIKE_A_FORMULA.test(cell)) return quoted(`'${cell}`);
  return /[",;\t\r\n]/.test(cell) ? quoted(cell) : cell;
}

function quoted(text: string): string {
  return `"${text.replaceAll('"', '""')}"`;
}

/**
 * The rows of a table as text: cells parted by tabs (what spreadsheets copy) where there is one, else by semicolons (where the comma
 * is the decimal sign), else by commas. Takes off the apostrophe that csvText puts before text like a formula. Empty lines are
 * left out. Null where a quote is not closed.
 */
export function csvRows(text: string): string[][] | null {
  const { data, errors } = Papa.parse<string[]>(text, {
    delimiter: separatorOf(text),
    skipEmptyLines: true,
  });
  if (errors.some((error) => error.type === 'Quotes')) return null;
  return data.map((row) =>
    row.map((cell) => (cell.startsWith("'") && LIKE_A_FORMULA.test(cell) ? cell.slice(1) : cell)),
  );
}

/** What parts the cells, looked for outside quoted cells; a quote within a cell is an inch mark. */
function separatorOf(text: string): string {
  const bare = text.replace(/(^|[\t,;\r\n])"(?:[^"]|"")*"/g, '$1');
  if (bare.includes('\t')) return '\t';
  return bare.includes(';') ? ';' : ',';
}

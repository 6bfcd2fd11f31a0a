// A line of the cutting list and the strips it is cut from, in words.
import { counted, type Phrase, phrase } from '../../model/phrase';
import type { ClothLayout, CutPart } from './clothLayout';
import type { NeededPiece } from './neededPiece';

/** How many of which size: 24 squares 5 1/2". */
export function pieceWords(piece: NeededPiece): Phrase {
  const { count, shape } = piece;
  const values = { width: { inches: piece.width }, height: { inches: piece.height } };
  if (shape === 'run') return phrase('{height} of strip {width} wide', values);
  if (piece.step === 'sets')
    return counted(count, '1 strip {height} × {width}', '{count} strips {height} × {width}', values);
  if (Math.abs(piece.width - piece.height) < 1e-9) {
    return counted(count, '1 square {width}', '{count} squares {width}', values);
  }
  return counted(count, '1 piece {width} × {height}', '{count} pieces {width} × {height}', values);
}

export interface StripsAlike {
  readonly count: number;
  readonly words: Phrase;
  /** Cloth on hand they are cut from, counted from 0; null for new cloth. */
  readonly stock: number | null;
}

/** Strips cut alike, in the order they are cut, with what each is cut into. */
export function stripsAlike(layout: ClothLayout): StripsAlike[] {
  const groups = new Map<string, { count: number; along: number; rows: CutPart[]; stock: number | null }>();
  for (const strip of layout.strips) {
    const rows = together(strip.rows);
    const { stock } = layout.sheets[strip.sheet]!;
    const sizes = rows.map((row) => `${row.count}×${row.across.toFixed(4)}×${row.along.toFixed(4)}`);
    const key = `${stock ?? 'new'} ${strip.along.toFixed(4)} ${sizes.join(' ')}`;
    const group = groups.get(key) ?? { count: 0, along: strip.along, rows, stock };
    group.count += 1;
    groups.set(key, group);
  }
  return Array.from(groups.values(), ({ count, along, rows, stock }) => ({
    count,
    stock,
    words: stripWords(count, along, rows),
  }));
}

/** Rows of one size in one strip, counted together. */
function together(rows: readonly CutPart[]): CutPart[] {
  const found: CutPart[] = [];
  for (const row of rows) {
    const at = found.findIndex((one) => one.across === row.across && one.along === row.along);
    if (at < 0) found.push(row);
    else found[at] = { ...row, count: row.count + found[at]!.count };
  }
  return found;
}

function stripWords(count: number, along: number, rows: readonly CutPart[]): Phrase {
  const [first] = rows;
  const values = { along: { inches: along }, long: { inches: first?.across ?? 0 } };
  if (rows.length === 1 && first?.count === 1) {
    return counted(
      count,
      '1 strip {along} wide, {long} long',
      '{count} strips {along} wide, {long} long',
      values,
    );
  }
  const cuts = rows
    .map((row) => rowWords(row, along))
    .reduce((before, next) => phrase('{before}; {next}', { before, next }));
  const one = '1 strip {along} wide, cut into {cuts}';
  return counted(count, one, '{count} strips {along} wide, each cut into {cuts}', { ...values, cuts });
}

function rowWords(row: CutPart, along: number): Phrase {
  const values = { count: row.count, across: { inches: row.across }, along: { inches: row.along } };
  const asDeep = Math.abs(row.along - along) < 1e-9;
  return asDeep
    ? phrase('{count} of {across}', values)
    : phrase('from its end {count} of {across} × {along}', values);
}

// A line of the cutting list and the strips it is cut from, in words.
import { counted, type Phrase, phrase } from '../../model/phrase';
import type { ClothLayout, CutPart } from './clothLayout';
import type { CuttingLine } from './cuttingLine';
import type { NeededPiece } from './neededPiece';

/** How many of which size: 24 squares 5 1/2". */
export function pieceWords(piece: NeededPiece): Phrase {
  const { count, shape } = piece;
  const values = { width: { inches: piece.width }, height: { inches: piece.height } };
  if (shape === 'run') return phrase('{height} of strip {width} wide', values);
  if (shape === 'length')
    return counted(
      count,
      '1 length of {height}, {width} wide',
      '{count} lengths of {height}, {width} wide',
      values,
    );
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
  /** Whether they are lengths, cut up along the cloth, and no strips across it. */
  readonly lengths: boolean;
  /** The rows they are cut into, of all of them. */
  readonly rows: readonly CutPart[];
  /** Cloth on hand they are cut from, counted from 0; null for new cloth. */
  readonly stock: number | null;
}

interface Alike {
  count: number;
  readonly along: number;
  /** Of the cloth they are cut from. */
  readonly across: number;
  readonly rows: CutPart[];
  readonly all: CutPart[];
  readonly stock: number | null;
}

/** Strips cut alike, in the order they are cut, with what each is cut into. */
export function stripsAlike(layout: ClothLayout): StripsAlike[] {
  const groups = new Map<string, Alike>();
  for (const strip of layout.strips) {
    const rows = together(strip.rows);
    const { stock, across } = layout.sheets[strip.sheet]!;
    const sizes = rows.map((row) => `${row.count}×${row.across.toFixed(4)}×${row.along.toFixed(4)}`);
    const key = `${stock ?? 'new'} ${strip.along.toFixed(4)} ${sizes.join(' ')}`;
    const group = groups.get(key) ?? { count: 0, along: strip.along, across, rows, all: [], stock };
    group.count += 1;
    group.all.push(...strip.rows);
    groups.set(key, group);
  }
  return Array.from(groups.values(), (alike) => ({
    count: alike.count,
    stock: alike.stock,
    words: stripWords(alike),
    lengths: isLength(alike),
    rows: alike.all,
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

/** As deep as half the cloth is wide, nobody calls it a strip. */
function isLength({ along, across }: Pick<Alike, 'along' | 'across'>): boolean {
  return along > across / 2;
}

function stripWords(alike: Alike): Phrase {
  const { count, along, rows } = alike;
  const [first] = rows;
  const values = { along: { inches: along }, long: { inches: first?.across ?? 0 } };
  if (isLength(alike)) return lengthWords(count, along, rows);
  if (rows.length === 1 && first?.count === 1) {
    return counted(
      count,
      '1 strip {along} wide, {long} long',
      '{count} strips {along} wide, {long} long',
      values,
    );
  }
  const cuts = cutWords(rows, along);
  const one = '1 strip {along} wide, cut into {cuts}';
  return counted(count, one, '{count} strips {along} wide, each cut into {cuts}', { ...values, cuts });
}

function lengthWords(count: number, along: number, rows: readonly CutPart[]): Phrase {
  const values = { along: { inches: along }, wide: { inches: rows[0]?.across ?? 0 } };
  if (rows.length === 1 && rows[0]!.count === 1) {
    const say = '1 length of {along}, {wide} wide';
    return counted(count, say, '{count} lengths of {along}, {wide} wide', values);
  }
  const cuts = cutWords(rows, along);
  const say = '1 length of {along}, cut into {cuts}';
  return counted(count, say, '{count} lengths of {along}, each cut into {cuts}', { ...values, cuts });
}

function cutWords(rows: readonly CutPart[], along: number): Phrase {
  return rows
    .map((row) => rowWords(row, along))
    .reduce((before, next) => phrase('{before}; {next}', { before, next }));
}

function rowWords(row: CutPart, along: number): Phrase {
  const values = { count: row.count, across: { inches: row.across }, along: { inches: row.along } };
  const asDeep = Math.abs(row.along - along) < 1e-9;
  return asDeep
    ? phrase('{count} of {across}', values)
    : phrase('from its end {count} of {across} × {along}', values);
}

/** What strips alike are cut for, in words: which pieces of which step or set, and which is only the end of a run. In the order they are cut. */
export function usesOfStrips({ rows }: Pick<StripsAlike, 'rows'>, lines: readonly CuttingLine[]): Phrase[] {
  const uses = new Map<string, Phrase>();
  for (const row of rows) {
    const line = lines[row.line]!;
    const [whole] = line.cuts;
    const rest = isJoined(line) && row.across * row.along < whole!.across * whole!.along - 1e-9;
    uses.set(`${row.line} ${rest}`, wordsOfUse(line, rest));
  }
  return [...uses.values()];
}

/** Whether its strips are sewn end to end. */
function isJoined({ join, cuts }: CuttingLine): boolean {
  return join !== null && cuts.reduce((sum, { count }) => sum + count, 0) > 1;
}

function wordsOfUse(line: CuttingLine, rest: boolean): Phrase {
  const { pieces } = line;
  const what = pieces
    .map((piece) => useOf(piece))
    .filter((one, index, all) => index === 0 || !sameWords(one, all[index - 1]!))
    .reduce((before, next) => phrase('{before}; {next}', { before, next }));
  if (!isJoined(line)) return what;
  return rest ? phrase('{what} (the rest of the run)', { what }) : phrase('{what} (to be joined)', { what });
}

/** Strips of several widths go into one set, so each says its width. */
function useOf({ step, what, height }: NeededPiece): Phrase {
  return step === 'sets' ? phrase('{what}, {width} wide', { what, width: { inches: height } }) : what;
}

function sameWords(one: Phrase, other: Phrase): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}

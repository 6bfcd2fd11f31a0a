// From a needed piece to what is cut from cloth: which way it lies, how many lie side by side, and strips joined to a run
// where the piece is longer than the cloth is wide.
import { piecesIn } from '../../model/lengths';
import { type Phrase, phrase } from '../../model/phrase';
import type { Inches, LengthUnit } from '../../model/units';
import { joinStrips, joinWords } from './binding';
import type { CutPart } from './clothLayout';
import { type CuttingStep, type NeededPiece, onRuler, withinRuler } from './neededPiece';

/** The cloth as far as cutting minds it. */
export interface Cloth {
  /** Usable width, inches. */
  readonly width: Inches;
  readonly oneWay: boolean;
  readonly longPieces: 'joined' | 'whole';
  /** Of the ruler it is cut with. */
  readonly unit: LengthUnit;
}

/** One line of the cutting list. */
export interface CuttingLine {
  readonly step: CuttingStep;
  /** The rows it covers: one, or several cut from one run of joined strips. */
  readonly pieces: readonly NeededPiece[];
  /** What is cut from the cloth for it, without what is on hand. */
  readonly cuts: readonly Omit<CutPart, 'line'>[];
  readonly why: readonly Phrase[];
  /** Whether what lies across the cloth may lie along it as well; in one-way cloth some may not. */
  readonly mayTurn: boolean;
  /** How its strips become its pieces, where they are joined to a run or one is cut into several; null where a strip is a piece. */
  readonly join: Phrase | null;
  /** Why it cannot be cut from this cloth; null when it can. */
  readonly problem: Phrase | null;
}

type Lying =
  | { readonly kind: 'cut'; readonly across: Inches; readonly along: Inches }
  | { readonly kind: 'run'; readonly strip: Inches; readonly run: Inches };

/** Lines that are cut along the cloth, by their index, and how long the cloth beside the lengths is. */
interface BesideLengths {
  readonly lines: ReadonlySet<number>;
  readonly long: Inches;
}

/** Lines for the rows of one fabric, in their order; runs of one strip width and step are joined to one. */
export function cuttingLines(
  pieces: readonly NeededPiece[],
  cloth: Cloth,
  beside: BesideLengths | null = null,
): CuttingLine[] {
  const lines: CuttingLine[] = [];
  const runs = new Map<string, { at: number; pieces: NeededPiece[]; run: Inches; strip: Inches }>();
  for (const piece of pieces) {
    const lies = lying(piece, cloth);
    if (lies.kind === 'cut') {
      lines.push(plainLine(piece, lies, cloth, beside?.lines.has(lines.length) === true));
      continue;
    }
    const key = `${piece.step} ${Math.round(lies.strip * 1e4)}`;
    const run = runs.get(key) ?? { at: lines.length, pieces: [], run: 0, strip: lies.strip };
    run.pieces.push(piece);
    run.run += lies.run * (piece.count - piece.onHand);
    runs.set(key, run);
    const long = beside?.lines.has(run.at) ? beside.long : null;
    lines[run.at] = runLine(run.pieces, run.strip, run.run, cloth, long);
  }
  return lines;
}

/** Which way a piece lies. In one-way cloth an upright piece keeps its height along the cloth. */
function lying(piece: NeededPiece, cloth: Cloth): Lying {
  const { width, height } = piece;
  if (piece.shape === 'run') return { kind: 'run', strip: width, run: height };
  if (piece.shape === 'length') return { kind: 'cut', across: width, along: height };
  if (!isFree(piece, cloth)) {
    return width <= cloth.width + 1e-9
      ? { kind: 'cut', across: width, along: height }
      : { kind: 'run', strip: height, run: width };
  }
  const [short, long] = [Math.min(width, height), Math.max(width, height)];
  if (long <= cloth.width + 1e-9) return { kind: 'cut', across: long, along: short };
  // The strips of a set are never joined: the join would land in a wedge.
  if (cloth.longPieces === 'whole' || piece.step === 'sets' || piece.shape !== 'rectangle') {
    return { kind: 'cut', across: short, along: long };
  }
  return { kind: 'run', strip: short, run: long };
}

function plainLine(
  piece: NeededPiece,
  lies: { across: Inches; along: Inches },
  cloth: Cloth,
  turned: boolean,
): CuttingLine {
  const [across, along] = turned ? [lies.along, lies.across] : [lies.across, lies.along];
  const problem = across > cloth.width + 1e-9 ? tooBroad(across, cloth) : null;
  const count = piece.count - piece.onHand;
  const why = [...piece.why];
  if (turned) why.push(BESIDE);
  else if (!problem && count > 0 && piece.shape !== 'length') {
    why.push(besideWords(piecesIn(cloth.width, across), across, cloth, piece.shape));
    if (cloth.oneWay && piece.upright)
      why.push(phrase('Its height runs along the fabric, so that the print stands upright.'));
  }
  const cuts = problem || count <= 0 ? [] : [{ across, along, count }];
  const mayTurn = piece.shape === 'rectangle' && across > along && isFree(piece, cloth);
  return { step: piece.step, pieces: [piece], cuts, why, mayTurn, join: null, problem };
}

const BESIDE = phrase('There is fabric beside the lengths: it is cut along that.');

/** Whether it may lie either way on the cloth. */
function isFree({ upright }: NeededPiece, { oneWay }: Cloth): boolean {
  return !(oneWay && upright);
}

function besideWords(fit: number, across: Inches, cloth: Cloth, shape: NeededPiece['shape']): Phrase {
  const values = { cloth: { inches: cloth.width }, across: { inches: across }, fit };
  if (fit === 1) return phrase('Each takes a strip across the full width of the fabric.');
  return shape === 'rectangle'
    ? phrase('{cloth} ÷ {across}: {fit} lie side by side across the fabric.', values)
    : phrase('{cloth} ÷ {across}: {fit} squares lie side by side across the fabric.', values);
}

/** `beside`: how long the cloth beside the lengths is, where its strips are cut along that; null where they lie across the cloth. */
function runLine(
  pieces: readonly NeededPiece[],
  strip: Inches,
  run: Inches,
  cloth: Cloth,
  beside: Inches | null,
): CuttingLine {
  const { step } = pieces[0]!;
  const why = pieces.flatMap((piece) => piece.why);
  const mayTurn = pieces.every((piece) => isFree(piece, cloth));
  const line = { step, pieces, cuts: [], why, mayTurn, join: null, problem: null };
  if (run <= 0) return line;
  // On the ruler, so that strips and joins add up as they are printed.
  const [long, loss] = [withinRuler(beside ?? cloth.width, cloth.unit), onRuler(strip, cloth.unit)];
  const joined = joinStrips(run, long, loss);
  if (!joined) return { ...line, problem: tooBroad(strip, cloth) };
  if (pieces[0]!.shape !== 'run') {
    why.push(
      phrase(
        joined.joins === 0
          ? 'They are longer than the fabric is wide: one strip is cut to length, {run} in all.'
          : 'They are longer than the fabric is wide: joined strips are cut to length, {run} in all.',
        { run: { inches: run } },
      ),
    );
  }
  if (beside !== null) why.push(BESIDE);
  why.push(joinWords(joined, run, long, loss));
  const pieceOf = (length: Inches, count: number) =>
    beside === null
      ? { across: Math.min(length, cloth.width), along: strip, count }
      : { across: strip, along: length, count };
  const whole = beside ?? cloth.width;
  const cuts = [pieceOf(whole, joined.strips - 1), pieceOf(joined.last, 1)].filter((cut) => cut.count > 0);
  const join = toJoin(pieces, joined.strips, strip, run);
  return { ...line, cuts, join };
}

function toJoin(pieces: readonly NeededPiece[], strips: number, strip: Inches, run: Inches): Phrase | null {
  const values = { strips, wide: { inches: strip }, run: { inches: run } };
  const isRun = pieces[0]!.shape === 'run';
  if (strips === 1) {
    const several = pieces.reduce((sum, { count, onHand }) => sum + count - onHand, 0) > 1;
    return several && !isRun ? phrase('cut them from 1 strip {wide} wide, {run} long', values) : null;
  }
  return phrase(
    isRun
      ? 'join {strips} strips {wide} wide end to end at 45°, {run} in all'
      : 'join {strips} strips {wide} wide end to end at 45°, {run} in all, then cut to length',
    values,
  );
}

function tooBroad(size: Inches, cloth: Cloth): Phrase {
  return phrase('{size} is more than the fabric is wide ({width}).', {
    size: { inches: size },
    width: { inches: cloth.width },
  });
}

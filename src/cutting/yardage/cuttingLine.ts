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
  /** How its strips become its pieces, where they are joined to a run; null where nothing is joined. */
  readonly join: Phrase | null;
  /** Why it cannot be cut from this cloth; null when it can. */
  readonly problem: Phrase | null;
}

type Lying =
  | { readonly kind: 'cut'; readonly across: Inches; readonly along: Inches }
  | { readonly kind: 'run'; readonly strip: Inches; readonly run: Inches };

/** Lines for the rows of one fabric, in their order; runs of one strip width and step are joined to one. */
export function cuttingLines(pieces: readonly NeededPiece[], cloth: Cloth): CuttingLine[] {
  const lines: CuttingLine[] = [];
  const runs = new Map<string, { at: number; pieces: NeededPiece[]; run: Inches; strip: Inches }>();
  for (const piece of pieces) {
    const lies = lying(piece, cloth);
    if (lies.kind === 'cut') {
      lines.push(plainLine(piece, lies, cloth));
      continue;
    }
    const key = `${piece.step} ${Math.round(lies.strip * 1e4)}`;
    const run = runs.get(key) ?? { at: lines.length, pieces: [], run: 0, strip: lies.strip };
    run.pieces.push(piece);
    run.run += lies.run * (piece.count - piece.onHand);
    runs.set(key, run);
    lines[run.at] = runLine(run.pieces, run.strip, run.run, cloth);
  }
  return lines;
}

/** Which way a piece lies. In one-way cloth an upright piece keeps its height along the cloth. */
function lying(piece: NeededPiece, cloth: Cloth): Lying {
  const { width, height } = piece;
  if (piece.shape === 'run') return { kind: 'run', strip: width, run: height };
  if (piece.shape === 'length') return { kind: 'cut', across: width, along: height };
  if (cloth.oneWay && piece.upright) {
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

function plainLine(piece: NeededPiece, lies: { across: Inches; along: Inches }, cloth: Cloth): CuttingLine {
  const { across, along } = lies;
  const problem = across > cloth.width + 1e-9 ? tooBroad(across, cloth) : null;
  const count = piece.count - piece.onHand;
  const why = [...piece.why];
  if (!problem && count > 0 && piece.shape !== 'length') {
    why.push(besideWords(piecesIn(cloth.width, across), across, cloth, piece.shape));
    if (cloth.oneWay && piece.upright)
      why.push(phrase('Its height runs along the cloth, so that the print stands upright.'));
  }
  const cuts = problem || count <= 0 ? [] : [{ across, along, count }];
  return { step: piece.step, pieces: [piece], cuts, why, join: null, problem };
}

function besideWords(fit: number, across: Inches, cloth: Cloth, shape: NeededPiece['shape']): Phrase {
  const values = { cloth: { inches: cloth.width }, across: { inches: across }, fit };
  if (fit === 1) return phrase('Each takes a strip right across the cloth.');
  return shape === 'rectangle'
    ? phrase('{cloth} ÷ {across}: {fit} lie side by side across the cloth.', values)
    : phrase('{cloth} ÷ {across}: {fit} squares lie side by side across the cloth.', values);
}

function runLine(pieces: readonly NeededPiece[], strip: Inches, run: Inches, cloth: Cloth): CuttingLine {
  const { step } = pieces[0]!;
  const why = pieces.flatMap((piece) => piece.why);
  if (run <= 0) return { step, pieces, cuts: [], why, join: null, problem: null };
  // On the ruler, so that strips and joins add up as they are printed.
  const [long, loss] = [withinRuler(cloth.width, cloth.unit), onRuler(strip, cloth.unit)];
  const joined = joinStrips(run, long, loss);
  if (!joined) return { step, pieces, cuts: [], why, join: null, problem: tooBroad(strip, cloth) };
  if (pieces[0]!.shape !== 'run') {
    why.push(
      phrase('They are longer than the cloth is wide: joined strips are cut to length, {run} in all.', {
        run: { inches: run },
      }),
    );
  }
  why.push(joinWords(joined, run, long, loss));
  const cuts = [
    { across: cloth.width, along: strip, count: joined.strips - 1 },
    { across: Math.min(joined.last, cloth.width), along: strip, count: 1 },
  ].filter((cut) => cut.count > 0);
  const join = joined.joins === 0 ? null : toJoin(pieces[0]!, joined.strips, strip, run);
  return { step, pieces, cuts, why, join, problem: null };
}

function toJoin({ shape }: NeededPiece, strips: number, strip: Inches, run: Inches): Phrase {
  return phrase(
    shape === 'run'
      ? 'join {strips} strips {wide} wide end to end at 45°, {run} in all'
      : 'join {strips} strips {wide} wide end to end at 45°, {run} in all, then cut to length',
    { strips, wide: { inches: strip }, run: { inches: run } },
  );
}

function tooBroad(size: Inches, cloth: Cloth): Phrase {
  return phrase('{size} is more than the cloth is wide ({width}).', {
    size: { inches: size },
    width: { inches: cloth.width },
  });
}

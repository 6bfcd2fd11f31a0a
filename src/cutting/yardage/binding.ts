// Binding: how long it runs, and strips joined end to end for any run too long for one strip. All lengths in its sentences are
// on the ruler, so that their sums come out as they are printed.
import { HAIR, joinedPieces } from '../../model/lengths';
import { counted, type Phrase, phrase } from '../../model/phrase';
import type { Inches, LengthUnit } from '../../model/units';
import { onRuler } from './neededPiece';

/** Strips of cloth joined end to end to one run. */
export interface JoinedStrips {
  /** Strips to cut right across the cloth. */
  readonly strips: number;
  readonly joins: number;
  /** What they give once joined, at least the run. */
  readonly gives: Inches;
  /** Of the last strip only so much is needed; the others are needed whole. */
  readonly last: Inches;
}

/**
 * Strips of `length` that give a run when every join takes `loss`: n·length − (n − 1)·loss ≥ run. A diagonal join takes the
 * strip's width, a straight one two seams (plane geometry). No run needs none; null when a join takes the whole strip.
 */
export function joinStrips(run: Inches, length: Inches, loss: Inches): JoinedStrips | null {
  if (run <= 0) return { strips: 0, joins: 0, gives: 0, last: 0 };
  if (length <= loss && run > length) return null;
  const strips = joinedPieces(run, length, loss);
  const gives = strips * length - (strips - 1) * loss;
  return { strips, joins: strips - 1, gives, last: length - (gives - run) };
}

/** The distance around a quilt, inches. */
export function perimeter(width: Inches, height: Inches): Inches {
  return 2 * (width + height);
}

/** How long the binding is, and how that comes about. */
export interface BindingRun {
  readonly run: Inches;
  readonly why: readonly Phrase[];
}

/** The binding's run: the distance round a quilt, and what is added for joins and corners. Its parts are rounded up, never short. */
export function bindingRun(width: Inches, height: Inches, extra: Inches, unit: LengthUnit): BindingRun {
  const [wide, high, more] = [onRuler(width, unit), onRuler(height, unit), onRuler(extra, unit)];
  const round = perimeter(wide, high);
  const say =
    wide + high - width - height > HAIR
      ? 'The distance around, rounded up, is 2 × ({width} + {height}) = {round}.'
      : 'The distance around is 2 × ({width} + {height}) = {round}.';
  const why = [
    phrase(say, { width: { inches: wide }, height: { inches: high }, round: { inches: round } }),
    phrase('{extra} more for corners and the last join: {run}.', {
      extra: { inches: more },
      run: { inches: round + more },
    }),
  ];
  return { run: round + more, why };
}

/** How the strips make up the run, in words. */
export function joinWords(joined: JoinedStrips, run: Inches, length: Inches, loss: Inches): Phrase {
  return counted(
    joined.joins,
    '{strips} strips of {length} with 1 diagonal join, which takes {loss}, give {gives} for {run}.',
    joined.joins === 0
      ? 'One strip of {length} is long enough for {run}.'
      : '{strips} strips of {length} with {count} diagonal joins of {loss} give {gives} for {run}.',
    {
      strips: joined.strips,
      length: { inches: length },
      loss: { inches: loss },
      gives: { inches: joined.gives },
      run: { inches: run },
    },
  );
}

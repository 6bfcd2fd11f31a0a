// Decides what a shuffle answers: the moves, the score before and after, and how far that is from the best, in words.
import type { TermScales } from '../balance/score/termScales';
import { evaluateTerms } from '../balance/score/terms';
import { TERM_NAMES, type Terms, weighted } from '../balance/score/weights';
import { type WallModel, wallModel } from '../balance/wall/wallModel';
import { type Move, moved } from '../model/moves';
import { type Phrase, phrase } from '../model/phrase';
import type { Project } from '../model/project';
import type { Part } from './branch/branchAndBound';
import type { Scopes } from './decisions';
import { type Score, scoreThen } from './score';

export type Verdict =
  | { readonly kind: 'proved' }
  /** `by` is (score − bound)/(score of a random top), 0–1: no arrangement within the scopes is better by more; `points` says it in tenths. */
  | { readonly kind: 'within'; readonly by: number; readonly points: number };

export interface ArrangeResult {
  readonly moves: readonly Move[];
  readonly before: Score;
  readonly after: Score;
  /** The terms that the wall is told after the moves; `after` is by the same random layout as the bound. */
  readonly told: Terms;
  readonly steps: number;
  /** True when the cap in milliseconds ended the search before its steps; another run may then end differently. */
  readonly capped: boolean;
  /** No arrangement within the scopes scores lower than this. */
  readonly bound: number;
  readonly verdict: Verdict;
  /** The verdict in words. */
  readonly verdictWords: Phrase;
  /** What the bound counts as 0, so that the layout may be nearer to the best than the verdict says; null where all is counted. */
  readonly notBounded: Phrase | null;
  /** What is left of the search to the end, to be taken up again; null where the wall is not for it, or all is proved. */
  readonly left: readonly Part[] | null;
}

/** What a score is made by. The project is one of pieced blocks (geometry/asPieced). */
export interface Judging {
  readonly project: Project;
  readonly model: WallModel;
  readonly scales: TermScales;
  readonly weights: Terms;
  readonly scopes: Scopes;
}

export interface Found {
  readonly moves: readonly Move[];
  /** The bound; 'reached' where nothing is better than the moves, null where none is known. */
  readonly bound: number | 'reached' | null;
  /** Whether anything is free to move at all. */
  readonly free: boolean;
  readonly steps: number;
  readonly capped: boolean;
  readonly left: readonly Part[] | null;
}

/** Points by which an arrangement may be above the best: 0–1 of the score of a random top. */
export function aboveBest(weights: Terms, score: number, bound: number): number {
  const chance = TERM_NAMES.reduce((sum, name) => sum + weights[name], 0);
  return chance > 0 ? Math.max(0, score - bound) / chance : 0;
}

/** How far that is in points, in tenths and never told as less. */
export function pointsAbove(by: number): number {
  return Math.ceil(1000 * by - 1e-6) / 10;
}

/** The score of the project after some moves. */
export function scoreAfter({ project, model, scales, weights }: Judging, moves: readonly Move[]): Score {
  const terms = evaluateTerms(scales, wallModel(moved(project, moves), model.cloths));
  return { terms, total: weighted(terms, weights) };
}

/** The answer to what was found; moves that do not make the top better, as it is told then too, are left out. */
export function resultOf(judging: Judging, found: Found): ArrangeResult {
  const { scales, model, weights, scopes } = judging;
  const terms = evaluateTerms(scales, model);
  const before = { terms, total: weighted(terms, weights) };
  const reached = scoreAfter(judging, found.moves);
  const then = scoreThen(judging, found.moves, scales.intent, weights);
  const better = Math.max(reached.total, then.total) < before.total;
  const after = better ? reached : before;
  const bound = found.bound === 'reached' ? after.total : (found.bound ?? 0);
  const by = aboveBest(weights, after.total, bound);
  return {
    moves: better ? found.moves : [],
    before,
    after,
    told: better ? then.terms : terms,
    steps: found.steps,
    capped: found.capped,
    bound,
    verdict: by < 1e-9 ? { kind: 'proved' } : { kind: 'within', by, points: pointsAbove(by) },
    verdictWords: found.free
      ? verdictWords(by, found.bound !== null, scopes)
      : phrase('Nothing is free to move'),
    notBounded: by < 1e-9 || found.bound === null ? null : notBounded(scopes),
    left: by < 1e-9 || !found.left?.length ? null : found.left,
  };
}

const WAYS: readonly (readonly [keyof Scopes, string])[] = [
  ['turn', 'turning'],
  ['swap', 'swapping'],
  ['shiftCorners', 'turning corners by one wedge'],
  ['trade', 'trading wedges'],
  ['strips', 'sewing strips in another order'],
];

/** Names the changes that a verdict is about ("turning, swapping and trading wedges"). */
function waysOf(scopes: Scopes): Phrase {
  const [last, ...before] = WAYS.filter(([scope]) => scopes[scope])
    .map(([, words]) => phrase(words))
    .toReversed();
  const [next, ...earlier] = before;
  if (!last || !next) return last ?? phrase('moving nothing');
  return earlier.reduce(
    (rest, first) => phrase('{first}, {rest}', { first, rest }),
    phrase('{first} and {last}', { first: next, last }),
  );
}

function verdictWords(by: number, known: boolean, scopes: Scopes): Phrase {
  if (by < 1e-9) return phrase('Best possible by {ways}, proved', { ways: waysOf(scopes) });
  if (!known) return phrase('Stopped early: a better layout may exist');
  return phrase('At most {points} points above the best possible; a random layout scores 100', {
    points: pointsAbove(by),
  });
}

function notBounded({ trade, strips }: Scopes): Phrase | null {
  if (strips) {
    return phrase(
      'Where strips may still be put in another order, rims that meet, seams between two such sets and how evenly value, colour and fabrics can be spread count as 0: the layout may be nearer to the best than that.',
    );
  }
  if (!trade) return null;
  return phrase(
    'While wedges may be traded, rims that meet count as 0, and little is known of how evenly value, colour and fabrics can be spread: the layout may be nearer to the best than that.',
  );
}

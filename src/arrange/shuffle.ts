// Shuffles for balance: takes a project and a wish, returns moves that improve the score, the score before and after, and how
// far the result is from the best. search/ searches; proof/ proves.

import type { Intent } from '../balance/score/intent';
import { termScales } from '../balance/score/termScales';
import { evaluateTerms } from '../balance/score/terms';
import { DEFAULT_WEIGHTS, TERM_NAMES, type Terms, weighted } from '../balance/score/weights';
import { wallModel } from '../balance/wall/wallModel';
import { clothTable } from '../cloth/cloths';
import { asPieced } from '../geometry/asPieced';
import { type Move, moved } from '../model/moves';
import { type Phrase, phrase } from '../model/phrase';
import type { Project } from '../model/project';
import { decisionsOf, type Scopes } from './decisions';
import { costTables } from './live/costTables';
import { movesBetween } from './movesBetween';
import { Proof } from './proof/howFarFromBest';
import type { Score } from './score';
import { type Kept, searchFrom } from './search/search';

/** What is asked of a shuffle. Plain data, so that it can be sent to a worker. */
export interface ShuffleWish {
  readonly seed: number;
  readonly scopes: Scopes;
  readonly weights?: Terms;
  /** The order of value wanted, and the ΔE00 from which two fabrics no longer read as one; the project's unless given. */
  readonly intent?: Intent;
  readonly lookalikes?: number;
  /**
   * Give at least one of the two. A budget in steps repeats exactly; milliseconds beside it are only a cap, at which the search
   * ends with what it has.
   */
  readonly budget: { readonly milliseconds?: number; readonly steps?: number };
}

/** A report of a running search. */
export interface ShuffleProgress {
  readonly steps: number;
  /** Share of the budget spent, 0–1. */
  readonly share: number;
  /** Weighted totals at the start and of the best so far. */
  readonly start: number;
  readonly best: number;
  /** Moves to the best so far; made only when it is new since the last progress, else null. */
  readonly moves: readonly Move[] | null;
  /** True once the search is over and only the bound is still being worked out. */
  readonly closing: boolean;
}

export type Verdict =
  | { readonly kind: 'proved' }
  /** `by` is (score − bound)/(score of a random top), 0–1: no arrangement within the scopes is better by more. */
  | { readonly kind: 'within'; readonly by: number };

export interface ArrangeResult {
  readonly moves: readonly Move[];
  readonly before: Score;
  readonly after: Score;
  readonly steps: number;
  /** True when the cap in milliseconds ended the search before its steps; another run may then end differently. */
  readonly capped: boolean;
  /** No arrangement within the scopes scores lower than this. */
  readonly bound: number;
  readonly verdict: Verdict;
  /** The verdict in words. */
  readonly verdictWords: Phrase;
}

/** Steps searched before a small wall is proved. */
const BEFORE_PROOF = 1 << 14;

/** Share of the budget after which the bound is worked out beside the search. */
const BEFORE_BOUND = 1 / 16;

/** Rounds of the search between two reports; they take some milliseconds. */
const REPORT = 16;

/**
 * Runs the shuffle in parts, so that a worker can yield: each `next(stop)` works for a few milliseconds and yields a report;
 * `next(true)` ends the shuffle with the best so far.
 */
export function* arranging(
  given: Project,
  wish: ShuffleWish,
  now: () => number = noClock,
): Generator<ShuffleProgress, ArrangeResult, boolean> {
  const project = asPieced(given);
  const model = wallModel(
    project,
    clothTable(project.fabrics, undefined, wish.lookalikes ?? project.preferences.lookalikes),
  );
  const scales = termScales(model, wish.intent ?? project.preferences.intent);
  const weights = wish.weights ?? DEFAULT_WEIGHTS;
  const decisions = decisionsOf(project, model, wish.scopes);
  const tables = costTables(model, scales, weights);
  const search = searchFrom(project, tables, decisions, wish.seed);
  const proof = new Proof(project, tables, decisions);
  const bounding = proof.bounding();
  const spent = budgetShare(wish.budget, now);
  const start = search.best.cost;
  let told = start;
  let stopped = false;
  let share = decisions.free ? 0 : 1;
  const report = (moves: ShuffleProgress['moves'], closing: boolean): ShuffleProgress => {
    return { steps: search.steps, share: Math.min(1, share), start, best: told, moves, closing };
  };
  while (!stopped && share < 1) {
    for (let part = 0; part < REPORT && share < 1; part++) {
      search.advance(share);
      share = spent(search.steps);
    }
    const better = search.best.cost < told - 1e-9;
    told = search.best.cost;
    const moves = better ? movesBetween(project, search.best) : null;
    stopped = yield report(moves, false);
    // A good order comes first; the bound starts early enough that a person who stops seldom stops before it is there.
    if (share > BEFORE_BOUND) bounding.next();
    // On a small wall the proof is quicker than the search and needs only a good score to start from.
    if (proof.isShort && search.steps >= BEFORE_PROOF) break;
  }
  const steps = wish.budget.steps ?? 0;
  const capped = !stopped && share >= 1 && decisions.free && search.steps < steps;
  let best: Kept = search.best;
  if (proof.isShort && !stopped) {
    const proving = proof.better(best);
    for (let part = proving.next(); ; part = proving.next()) {
      if (part.done) {
        best = part.value;
        break;
      }
      stopped = yield report(null, true);
      if (stopped) break;
    }
  }
  // A stop does not wait for the bound. Without one, only a score below 0 is known to be out of reach.
  while (!stopped && proof.bound === null) {
    bounding.next();
    stopped = yield report(null, true);
  }
  const before = scoreOf(evaluateTerms(scales, model), weights);
  const scoreAfter = (moves: readonly Move[]) =>
    scoreOf(evaluateTerms(scales, wallModel(moved(project, moves), model.cloths)), weights);
  const found = movesBetween(project, best);
  const moves = scoreAfter(found).total < before.total ? found : [];
  const after = scoreAfter(moves);
  const bound = proof.done ? after.total : (proof.bound ?? 0);
  const chance = TERM_NAMES.reduce((sum, name) => sum + weights[name], 0);
  const by = chance > 0 ? Math.max(0, after.total - bound) / chance : 0;
  return {
    moves,
    before,
    after,
    steps: search.steps,
    capped,
    bound,
    verdict: by < 1e-9 ? { kind: 'proved' } : { kind: 'within', by },
    verdictWords: decisions.free
      ? verdictWords(by, proof.bound !== null, wish.scopes)
      : phrase('Nothing is free to move'),
  };
}

function scoreOf(terms: Terms, weights: Terms): Score {
  return { terms, total: weighted(terms, weights) };
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
  const points = 100 * by < 1 ? Number((100 * by).toPrecision(1)) : Math.round(100 * by);
  return phrase('At most {points} points above the best possible; a random layout scores 100', { points });
}

/** Returns a meter of the budget: the share spent after so many steps, 0–1 and above. The clock starts now. */
export function budgetShare(budget: ShuffleWish['budget'], now: () => number): (steps: number) => number {
  const { milliseconds, steps: most } = budget;
  if (milliseconds === undefined && most === undefined) throw new Error('arrange: a budget needs a limit');
  const start = milliseconds === undefined ? 0 : now();
  const time = () => (milliseconds === undefined ? 0 : (now() - start) / milliseconds);
  return (steps) => {
    if (most === undefined) return time();
    return time() >= 1 ? 1 : steps / most;
  };
}

export function noClock(): never {
  throw new Error('arrange: a budget in milliseconds needs a clock');
}

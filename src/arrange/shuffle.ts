// Shuffling for balance: from a project, what may change and what is wanted, to moves that make it better, with the score
// before and after and how far the result can be from the best there is. The search itself is search's, the proof proof's.
import { clothTable } from '../balance/cloths';
import { type Intent, SCATTERED } from '../balance/intent';
import { termBasis } from '../balance/termBasis';
import { DEFAULT_WEIGHTS, evaluateTerms, type Terms, weighted } from '../balance/terms';
import { wallModel } from '../balance/wallModel';
import { type Move, moved } from '../model/moves';
import { type Phrase, phrase } from '../model/phrase';
import type { Project } from '../model/project';
import { costTables } from './costTables';
import { decisionsOf, type Scopes } from './decisions';
import { LiveWall } from './liveWall';
import { movesBetween } from './movesBetween';
import type { Score } from './score';
import { Search } from './search';

/** What is wanted of a shuffle; plain data, so that it can be sent to a worker. */
export interface ShuffleWish {
  readonly seed: number;
  readonly scopes: Scopes;
  readonly weights?: Terms;
  readonly intent?: Intent;
  /** At least one of the two; repeatable when it is in steps. */
  readonly budget: { readonly milliseconds?: number; readonly steps?: number };
  /** ΔE00 from which two cloths no longer read as one. */
  readonly lookalikes?: number;
}

/** How the search stands. */
export interface ShuffleProgress {
  readonly steps: number;
  /** Part of the budget spent, 0–1. */
  readonly share: number;
  /** Weighted totals at the start and of the best so far. */
  readonly start: number;
  readonly best: number;
  /** Moves to the best so far; made only when it is new since the last progress, else null. */
  readonly moves: readonly Move[] | null;
}

export type Verdict =
  | { readonly kind: 'proved' }
  /** `by` is (score − bound)/score: no arrangement can score lower by a larger part than that, 0–1. */
  | { readonly kind: 'within'; readonly by: number };

export interface ArrangeResult {
  readonly moves: readonly Move[];
  readonly before: Score;
  readonly after: Score;
  readonly steps: number;
  /** No arrangement within the scopes scores lower than this. */
  readonly bound: number;
  readonly verdict: Verdict;
  /** The verdict in words. */
  readonly verdictWords: Phrase;
  /** For undo: "shuffle for balance". */
  readonly label: Phrase;
}

export interface ShuffleClock {
  /** Milliseconds from any start; needed for a budget in milliseconds. */
  readonly now?: () => number;
  readonly shouldStop?: () => boolean;
  readonly onProgress?: (progress: ShuffleProgress) => void;
}

/** Shuffles a sound project to the end of the budget, or until told to stop. */
export function arrange(project: Project, wish: ShuffleWish, clock: ShuffleClock = {}): ArrangeResult {
  const going = arranging(project, wish, clock.now);
  for (;;) {
    const step = going.next(clock.shouldStop?.() ?? false);
    if (step.done) return step.value;
    clock.onProgress?.(step.value);
  }
}

/** Steps between two reports: some milliseconds' worth. */
const REPORT = 16;

/**
 * The shuffle as a generator, so that a worker can yield between its parts: each `next(stop)` works for a few
 * milliseconds and yields how it stands; `next(true)` ends it with the best so far.
 */
export function* arranging(
  project: Project,
  wish: ShuffleWish,
  now: () => number = noClock,
): Generator<ShuffleProgress, ArrangeResult, boolean> {
  const model = wallModel(project, clothTable(project.fabrics, undefined, wish.lookalikes));
  const basis = termBasis(model, wish.intent ?? SCATTERED);
  const weights = wish.weights ?? DEFAULT_WEIGHTS;
  const decisions = decisionsOf(project, model, wish.scopes);
  const wall = new LiveWall(costTables(model, basis, weights), decisions.spare);
  const search = new Search(wall, decisions, wish.seed);
  const spent = budgetShare(wish.budget, now);
  const start = wall.cost;
  let told = start;
  let stop = !decisions.free;
  let share = 0;
  while (!stop && share < 1) {
    for (let part = 0; part < REPORT && share < 1; part++) {
      search.advance(share);
      share = spent(search.steps);
    }
    const better = search.best.cost < told - 1e-9;
    told = search.best.cost;
    const moves = better ? movesBetween(project, search.best) : null;
    stop = yield { steps: search.steps, share: Math.min(1, share), start, best: told, moves };
  }
  const moves = movesBetween(project, search.best);
  const scoreOf = (terms: Terms): Score => ({ terms, total: weighted(terms, weights) });
  const before = scoreOf(evaluateTerms(basis, model));
  const after = scoreOf(evaluateTerms(basis, wallModel(moved(project, moves), model.cloths)));
  const bound = 0;
  const by = after.total > 0 ? (after.total - bound) / after.total : 0;
  return {
    moves,
    before,
    after,
    steps: search.steps,
    bound,
    verdict: by < 1e-9 ? { kind: 'proved' } : { kind: 'within', by },
    verdictWords: verdictWords(by),
    label: phrase('shuffle for balance'),
  };
}

function verdictWords(by: number): Phrase {
  if (by < 1e-9) return phrase('Best possible, proved');
  return phrase('Within {percent} % of the bound', { percent: Math.max(1, Math.round(100 * by)) });
}

function budgetShare(budget: ShuffleWish['budget'], now: () => number): (steps: number) => number {
  const { milliseconds, steps: most } = budget;
  if (milliseconds === undefined && most === undefined) throw new Error('arrange: a budget needs a limit');
  const start = milliseconds === undefined ? 0 : now();
  return (steps) =>
    Math.max(
      most === undefined ? 0 : steps / most,
      milliseconds === undefined ? 0 : (now() - start) / milliseconds,
    );
}

function noClock(): never {
  throw new Error('arrange: a budget in milliseconds needs a clock');
}

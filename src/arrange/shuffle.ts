// Shuffles for balance: takes a project and a wish, returns moves that improve the score, the score before and after, and how
// far the result is from the best. search/ searches; proof/ proves.

import type { Intent } from '../balance/score/intent';
import { termScales } from '../balance/score/termScales';
import { DEFAULT_WEIGHTS, type Terms } from '../balance/score/weights';
import { wallModel } from '../balance/wall/wallModel';
import { clothTable } from '../cloth/cloths';
import { asPieced } from '../geometry/asPieced';
import type { Move } from '../model/moves';
import type { Project } from '../model/project';
import { decisionsOf, type Scopes } from './decisions';
import { costTables } from './live/costTables';
import { movesBetween } from './movesBetween';
import { Proof } from './proof/howFarFromBest';
import { type Kept, searchFrom } from './search/search';
import { type ArrangeResult, resultOf } from './verdict';

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
  // What a stop leaves to search is told, so that it can be taken up.
  const toEnd = proof.done ? null : proof.toTheEnd(best.cost);
  while (toEnd && !stopped && !toEnd.ended && !toEnd.isLong) {
    toEnd.advance();
    stopped = yield report(null, true);
  }
  const raised = stopped || proof.done || toEnd ? null : proof.raising(search.steps);
  while (raised?.goesOn && !stopped) {
    raised.advance();
    stopped = yield report(null, true);
  }
  // None has a finite one where the stop came early.
  const bound = Math.max(...[proof.bound, toEnd?.bound, raised?.bound].map((one) => one ?? -Infinity));
  return resultOf(
    { project, model, scales, weights, scopes: wish.scopes },
    {
      moves: movesBetween(project, toEnd?.found ?? best),
      bound: proof.done || toEnd?.ended ? 'reached' : Number.isFinite(bound) ? bound : null,
      free: decisions.free,
      steps: search.steps,
      capped,
      left: toEnd ? toEnd.left : null,
    },
  );
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

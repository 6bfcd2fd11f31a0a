// Owns the errand: solve an assignment within a budget of time or iterations, stoppable, telling of every better one. The
// clock is the caller's. Where the caller must stay reachable between steps (a worker), AssignmentSearch is used directly.
import type { AssignmentProblem } from '../../../src/arrange/assignment/problem';
import { type AssignmentProof, AssignmentSearch } from '../../../src/arrange/assignment/search';

export interface AssignmentRequest extends AssignmentProblem {
  readonly seed: number;
  /** At least one of the two; repeatable when it is in iterations. */
  readonly budget: { readonly milliseconds?: number; readonly iterations?: number };
  /** A clock in milliseconds; needed for a budget in time. */
  readonly now?: () => number;
  readonly shouldStop?: () => boolean;
  /** Hears of each better arrangement; `places` is a copy. */
  readonly onBest?: (best: { places: Int32Array; cost: number; iterations: number }) => void;
  /** Stops as soon as the cost is this low. */
  readonly target?: number;
}

export interface AssignmentAnswer {
  /** Item → place. */
  readonly places: Int32Array;
  readonly cost: number;
  readonly iterations: number;
  readonly lowerBound: number;
  /** Why nothing can be better, or 'none'. */
  readonly proof: AssignmentProof;
}

/** Table entries mended between two looks at the clock: half a millisecond or so. */
const ENTRIES_PER_LOOK = 200_000;

/** The best arrangement found. Always makes at least one step, so that there is one; throws on a budget without end. */
export function solveAssignment(request: AssignmentRequest): AssignmentAnswer {
  const { budget, now, shouldStop, onBest, target } = request;
  const { milliseconds, iterations = Number.POSITIVE_INFINITY } = budget;
  if (milliseconds === undefined && budget.iterations === undefined && !shouldStop) {
    throw new RangeError('solveAssignment: neither a budget nor a way to stop');
  }
  if (milliseconds !== undefined && !now)
    throw new TypeError('solveAssignment: a budget in time needs a clock');
  const start = now ? now() : 0;
  const search = new AssignmentSearch(request, request.seed);
  const look = Math.max(1, Math.round(ENTRIES_PER_LOOK / Math.max(1, request.size ** 2)));
  let told = Number.POSITIVE_INFINITY;
  for (;;) {
    const reached = search.advance(Math.max(1, Math.min(look, iterations - search.iterations)), target);
    const { cost, places } = search;
    if (cost < told) onBest?.({ places: places.slice(), cost, iterations: search.iterations });
    told = Math.min(told, cost);
    if (reached || search.iterations >= iterations || shouldStop?.()) break;
    if (milliseconds !== undefined && now && now() - start >= milliseconds) break;
  }
  const { places, cost, lowerBound, proof } = search;
  return { places, cost, iterations: search.iterations, lowerBound, proof };
}

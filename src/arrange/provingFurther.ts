// Takes the search to the end up again where a shuffle, or a stop, has left it: for minutes, if a person likes.
import { asPieced } from '../geometry/asPieced';
import type { Move } from '../model/moves';
import type { Project } from '../model/project';
import { deskFor } from './alternatives';
import { decisionsOf } from './decisions';
import { costTables } from './live/costTables';
import { movesBetween } from './movesBetween';
import { Proof } from './proof/howFarFromBest';
import type { ShuffleWish } from './shuffle';
import { type ArrangeResult, aboveBest, type Judging, pointsAbove, resultOf, scoreAfter } from './verdict';

export interface ProvingProgress {
  /** Share of the work done, 0–1. Parts differ in length: no clock can be told from it. */
  readonly share: number;
  /** The best layout known is at most so many points above the best possible, in tenths. */
  readonly points: number;
  /** Moves to the best so far where it is new since the last progress, else null. */
  readonly moves: readonly Move[] | null;
}

/** Goes on from `before`, a shuffle's answer or this function's own, on the same project with the same wish. `next(true)` stops. */
export function* provingFurther(
  given: Project,
  wish: ShuffleWish,
  before: Pick<ArrangeResult, 'moves' | 'left' | 'bound' | 'steps' | 'capped'>,
): Generator<ProvingProgress, ArrangeResult, boolean> {
  const project = asPieced(given);
  const desk = deskFor(project, wish);
  const judging: Judging = { ...desk, project, scopes: wish.scopes };
  const decisions = decisionsOf(project, desk.model, wish.scopes);
  const tables = costTables(desk.model, desk.scales, desk.weights);
  const known = scoreAfter(judging, before.moves).total;
  const search = new Proof(project, tables, decisions).toTheEnd(known, before.left ?? undefined);
  if (!search) throw new Error('provingFurther: this wall has no search to the end');
  let told = search.found;
  const moves = () => (search.found ? movesBetween(project, search.found) : before.moves);
  const bound = () => Math.max(before.bound, search.bound);
  while (!search.ended) {
    search.advance();
    const isNew = search.found !== told;
    told = search.found;
    const points = pointsAbove(aboveBest(desk.weights, told?.cost ?? known, bound()));
    if (yield { share: search.share, points, moves: isNew ? moves() : null }) break;
  }
  return resultOf(judging, {
    moves: moves(),
    bound: search.ended ? 'reached' : bound(),
    free: decisions.free,
    steps: before.steps,
    capped: before.capped,
    left: search.left,
  });
}

// What the maker gains for each block that is touched: the best score that can be reached by turning and moving one block, two, three
// and so on, each with its list of steps. Few blocks on small walls are gone through one and all; beyond that good ones are looked for.
import { evaluateTerms } from '../../balance/score/terms';
import { weighted } from '../../balance/score/weights';
import { wallModel } from '../../balance/wall/wallModel';
import { asPieced } from '../../geometry/asPieced';
import { type Move, moved } from '../../model/moves';
import type { Project } from '../../model/project';
import { deskFor, type ScoreWish } from '../alternatives';
import { decisionsOf, type Scopes } from '../decisions';
import { costTables } from '../live/costTables';
import { LiveWall } from '../live/liveWall';
import { type Arrangement, movesBetween } from '../movesBetween';
import type { Score } from '../score';
import { bestOfAll, canTryAll } from './everyWay';
import { blocksTouched, type HandStep, handSteps, movesOfStep } from './handSteps';
import { nextTouched } from './nextTouched';
import { Hands, type Laid, NO_BETTER } from './touched';

export interface FewBlocksWish extends ScoreWish {
  /** The most blocks that are to be touched. */
  readonly most: number;
  /** Whether blocks may change places, and whether they may be turned. */
  readonly scopes: Pick<Scopes, 'swap' | 'turn'>;
}

/** The best wall found with so many blocks touched. */
export interface FewBlocksOffer {
  readonly blocks: number;
  readonly steps: readonly HandStep[];
  /** The steps as moves of the project, in their order. */
  readonly moves: readonly Move[];
  readonly score: Score;
  /** True where no way of touching so many blocks scores better, because all of them were tried. */
  readonly proved: boolean;
}

export interface FewBlocks {
  readonly before: Score;
  /** Fewest blocks first; each scores better than those before it. Empty where nothing that is free makes the wall better. */
  readonly offers: readonly FewBlocksOffer[];
}

/** Works in parts of some milliseconds and yields how far it is, 0–1; `next(true)` ends it with what was found so far. */
export function* findingFewBlocks(
  given: Project,
  wish: FewBlocksWish,
): Generator<number, FewBlocks, boolean> {
  const project = asPieced(given);
  const { model, scales, weights } = deskFor(project, wish);
  const scopes = { ...wish.scopes, shiftCorners: false, trade: false, strips: false };
  const decisions = decisionsOf(project, model, scopes);
  const hands = new Hands(new LiveWall(costTables(model, scales, weights), decisions.spare), decisions);
  const scoreAfter = (moves: readonly Move[]): Score => {
    const terms = evaluateTerms(scales, wallModel(moved(project, moves), model.cloths));
    return { terms, total: weighted(terms, weights) };
  };
  const offers: FewBlocksOffer[] = [];
  for (const { laid, proved } of yield* bestByNumber(hands, Math.min(wish.most, hands.cells.length))) {
    const wanted = moved(given, movesBetween(project, arrangementOf(hands, laid)));
    const steps = handSteps(given, wanted);
    const moves = steps.flatMap(movesOfStep);
    yield 1;
    offers.push({ blocks: blocksTouched(steps), steps, moves, score: scoreAfter(moves), proved });
  }
  return { before: scoreAfter([]), offers };
}

interface Found {
  readonly laid: Laid;
  readonly proved: boolean;
}

/** For each number of blocks from 1 the best wall, where it is better than with fewer. The living wall is left as it was. */
function* bestByNumber(hands: Hands, most: number): Generator<number, readonly Found[], boolean> {
  const start = hands.read([]);
  const kept: (readonly Laid[])[] = [[start]];
  const found: Found[] = [];
  let best = start.cost;
  let proved = true;
  for (let number = 1; number <= most; number++) {
    const share = (part: number) => (number - 1 + part) / most;
    const looked = yield* shared(nextTouched(hands, kept[number - 1]!, kept[number - 2] ?? []), share);
    kept.push(looked.value);
    proved &&= canTryAll(hands, number);
    const all = proved && !looked.stopped ? yield* shared(bestOfAll(hands, number), share) : null;
    const laid = [all?.value, looked.value[0]].reduce<Laid | null>(
      (least, one) => (one && one.cost < (least?.cost ?? best) - NO_BETTER ? one : least),
      null,
    );
    const stopped = looked.stopped || (all?.stopped ?? false);
    if (laid) {
      found.push({ laid, proved: proved && !stopped });
      best = laid.cost;
      if (all?.value) kept[number] = [all.value, ...looked.value];
    }
    if (stopped) break;
  }
  return found;
}

/** Runs a part of the work, telling how far the whole is; whether it was stopped. */
function* shared<Outcome>(
  work: Generator<number, Outcome, boolean>,
  share: (part: number) => number,
): Generator<number, { readonly value: Outcome; readonly stopped: boolean }, boolean> {
  let stopped = false;
  for (;;) {
    const step = work.next(stopped);
    if (step.done) return { value: step.value, stopped };
    stopped = yield share(step.value);
  }
}

function arrangementOf({ wall }: Hands, { cells, blocks, stands }: Laid): Arrangement {
  const orientationOf = wall.orientationOf.slice();
  const blockIn = wall.blockIn.slice();
  cells.forEach((cell, at) => {
    blockIn[cell] = blocks[at]!;
    orientationOf[blocks[at]!] = stands[at]!;
  });
  return { typeAt: wall.typeAt, orientationOf, blockIn };
}

// Lays out the whole quilt from what is on hand: sets, wedges, blocks, wall and shuffle, for one command. In parts, so that a
// worker can yield. sewSets.ts makes the sets, hangBlocks.ts the blocks, laidWords.ts says what was done.
import { shuffleWish } from '../../arrange/asked';
import { arranging, noClock, type ShuffleWish } from '../../arrange/shuffle';
import type { ArrangeResult } from '../../arrange/verdict';
import { hasWedges } from '../../model/find';
import { moved } from '../../model/moves';
import type { Phrase } from '../../model/phrase';
import type { Project } from '../../model/project';
import type { LaidParts } from '../commands/layQuilt';
import { hangingBlocks } from './hangBlocks';
import { laidWords } from './laidWords';
import { type BlocksWanted, sewingSets } from './sewSets';

/** What is asked for. Plain data, so that it can be sent to a worker. */
export interface LayingWish {
  /** The same number lays the same quilt out in the same way. */
  readonly seed: number;
  readonly want: BlocksWanted;
  /** Whether fabric on hand is cut into strips too. It is cut in any case where strips alone make no block. */
  readonly cut: boolean;
  /** How long the shuffle searches; half of what the person's shuffles do unless given, as one worker does it instead of two. */
  readonly budget?: ShuffleWish['budget'];
}

export interface LayingProgress {
  readonly stage: 'sets' | 'blocks' | 'shuffle';
  /** Share of the stage that is done, 0–1: of the trials for the sets being made, of the shuffle. Null where none is known. */
  readonly share: number | null;
}

export interface QuiltLaid {
  /** For editing/commands/layQuilt; null where nothing on hand changes anything. */
  readonly parts: LaidParts | null;
  /** What was done, then what is left and why. */
  readonly words: readonly Phrase[];
}

/**
 * Each `next(stop)` works for a moment and yields how far it is. `next(true)` ends the shuffle with the best order so far;
 * before the shuffle sets and blocks are still made to the end, for half of them is no quilt: who wants none drops it. What is
 * sewn, locked or pinned stays, and so do all sets.
 */
export function* layingQuilt(
  project: Project,
  wish: LayingWish,
  now: () => number = noClock,
): Generator<LayingProgress, QuiltLaid, boolean> {
  const sewing = yield* staged('sets', sewingSets(project, wish.want, wish.cut, wish.seed));
  const hanging = yield* staged('blocks', hangingBlocks(sewing.made.project, wish.want, wish.seed));
  const [sewn, hung] = [sewing.made, hanging.made];
  const told = yield { stage: 'shuffle', share: 0 };
  const stopped = sewing.stopped || hanging.stopped || told;
  const shuffled = stopped || !hasWedges(hung) ? null : yield* shuffling(hung, wish, now);
  const after = shuffled ? moved(hung, shuffled.moves) : hung;
  const changed = LAID.some((part) => after[part] !== project[part]);
  return {
    parts: changed ? partsOf(after, wish.seed) : null,
    words: laidWords(project, after, { ...sewn, shuffled }),
  };
}

const LAID = ['clothOnHand', 'stripsOnHand', 'stripSets', 'blocks', 'wall'] as const;

function partsOf(project: Project, seed: number): LaidParts {
  const { clothOnHand, stripsOnHand, stripSets, blocks, wall } = project;
  return { clothOnHand, stripsOnHand, stripSets, blocks, wall, seed };
}

/** Runs a stage to its end, and whether it was told to stop meanwhile. */
function* staged<Made>(
  stage: LayingProgress['stage'],
  going: Generator<number | null, Made>,
): Generator<LayingProgress, { made: Made; stopped: boolean }, boolean> {
  let stopped = yield { stage, share: null };
  for (let part = going.next(); ; part = going.next()) {
    if (part.done) return { made: part.value, stopped };
    stopped = (yield { stage, share: part.value }) || stopped;
  }
}

function* shuffling(
  project: Project,
  { budget }: LayingWish,
  now: () => number,
): Generator<LayingProgress, ArrangeResult, boolean> {
  const asked = shuffleWish(project);
  const { steps = 0, ...cap } = asked.budget;
  const going = arranging(project, { ...asked, budget: budget ?? { ...cap, steps: steps / 2 } }, now);
  let stopped = false;
  for (;;) {
    const part = going.next(stopped);
    if (part.done) return part.value;
    const told = yield { stage: 'shuffle', share: part.value.share };
    // The order is found then; how far it is from the best is a question of the Wall step.
    stopped = told || stopped || part.value.closing;
  }
}

// Lays out the whole quilt from what is on hand: sets, wedges, blocks, wall and shuffle, for one command. In parts, so that a
// worker can yield. sewSets.ts makes the sets, hangBlocks.ts the blocks, laidWords.ts says what was done.
import { shuffleWish } from '../../arrange/asked';
import { type ArrangeResult, arranging, noClock, type ShuffleWish } from '../../arrange/shuffle';
import { hasWedges } from '../../model/find';
import { moved } from '../../model/moves';
import type { Phrase } from '../../model/phrase';
import type { Project } from '../../model/project';
import type { LaidParts } from '../commands/layQuilt';
import { hangBlocks } from './hangBlocks';
import { laidWords } from './laidWords';
import { type BlocksWanted, sewSets } from './sewSets';

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
  /** Share of the shuffle that is done, 0–1; 0 before it. */
  readonly share: number;
}

export interface QuiltLaid {
  /** For editing/commands/layQuilt; null where nothing on hand changes anything. */
  readonly parts: LaidParts | null;
  /** What was done, then what is left and why. */
  readonly words: readonly Phrase[];
}

/**
 * Each `next(stop)` works for a moment and yields how far it is; sets and blocks are made in one go each. `next(true)` ends the
 * shuffle with the best order so far. What is sewn, locked or pinned stays, and so do all sets.
 */
export function* layingQuilt(
  project: Project,
  wish: LayingWish,
  now: () => number = noClock,
): Generator<LayingProgress, QuiltLaid, boolean> {
  let stopped = yield { stage: 'sets', share: 0 };
  const sewn = sewSets(project, wish.want, wish.cut, wish.seed);
  stopped = (yield { stage: 'blocks', share: 0 }) || stopped;
  const hung = hangBlocks(sewn.project, wish.want, wish.seed);
  stopped = (yield { stage: 'shuffle', share: 0 }) || stopped;
  const shuffled = stopped || !hasWedges(hung) ? null : yield* shuffling(hung, wish, now);
  const after = shuffled ? moved(hung, shuffled.moves) : hung;
  const changed = LAID.some((part) => after[part] !== project[part]);
  return {
    parts: changed ? partsOf(after, wish.seed) : null,
    words: laidWords(project, after, {
      all: wish.want === 'most',
      cut: sewn.cut,
      notes: sewn.notes,
      shuffled,
    }),
  };
}

const LAID = ['clothOnHand', 'stripsOnHand', 'stripSets', 'blocks', 'wall'] as const;

function partsOf(project: Project, seed: number): LaidParts {
  const { clothOnHand, stripsOnHand, stripSets, blocks, wall } = project;
  return { clothOnHand, stripsOnHand, stripSets, blocks, wall, seed };
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

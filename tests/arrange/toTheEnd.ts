// Runs to the end what the workers run in parts, with no pause: shuffle, several orders, best of a small wall, lower bound.
import { type Alternative, chooseAlternatives, tryingAlternatives } from '../../src/arrange/alternatives';
import type { Contacts } from '../../src/arrange/proof/contactTables';
import { type Exact, findingBest } from '../../src/arrange/proof/exactOptimum';
import { boundInParts } from '../../src/arrange/proof/lowerBound';
import type { Spread } from '../../src/arrange/proof/spreadAssignment';
import { arranging, type ShuffleProgress, type ShuffleWish } from '../../src/arrange/shuffle';
import type { ArrangeResult } from '../../src/arrange/verdict';
import type { Project } from '../../src/model/project';
import { atOnce } from '../../src/model/work/parts';

interface Watch {
  /** Milliseconds from any start; needed for a budget in milliseconds. */
  readonly now?: () => number;
  readonly shouldStop?: () => boolean;
  readonly onProgress?: (progress: ShuffleProgress) => void;
}

/** Shuffles to the end of the budget, or until told to stop. */
export function arrange(project: Project, wish: ShuffleWish, watch: Watch = {}): ArrangeResult {
  const going = arranging(project, wish, watch.now);
  for (;;) {
    const step = going.next(watch.shouldStop?.() ?? false);
    if (step.done) return step.value;
    watch.onProgress?.(step.value);
  }
}

/** Shuffles to the end of the budget and leaves it there: the bound, which is most of the work, is not waited for. */
export function searched(project: Project, wish: ShuffleWish): ArrangeResult {
  let closing = false;
  return arrange(project, wish, {
    shouldStop: () => closing,
    onProgress: (progress) => {
      closing = progress.closing;
    },
  });
}

/** `count` good arrangements at most, as one worker alone finds them. */
export function alternatives(project: Project, wish: ShuffleWish, count: number): Alternative[] {
  const going = tryingAlternatives(project, wish, count, { first: 0, of: 1 });
  for (;;) {
    const step = going.next(false);
    if (step.done) return chooseAlternatives(project, wish, count, [step.value]);
  }
}

export function bestOf(contacts: Contacts, spread: Spread): Exact | null {
  return atOnce(findingBest(contacts, spread));
}

export function lowerBound(contacts: Contacts, spread: Spread): number {
  return atOnce(boundInParts(contacts, spread));
}

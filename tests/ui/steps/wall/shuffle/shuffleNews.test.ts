import { describe, expect, it } from 'vitest';
import type { ShuffleProgress } from '../../../../../src/arrange/shuffle';
import { DEFAULT_WEIGHTS, inPoints, weighted } from '../../../../../src/balance/score/weights';
import { wedgeLedger } from '../../../../../src/cutting/wedges/ledger';
import { speak } from '../../../../../src/model/phrase';
import type { Project } from '../../../../../src/model/project';
import {
  countedWords,
  searchedShare,
  shuffleNews,
} from '../../../../../src/ui/steps/wall/shuffle/shuffleNews';
import { searched } from '../../../../arrange/toTheEnd';
import { demo, unsewn } from '../../../../demo';

/** The first example with nothing sewn, and just the wedges cut that its blocks use. */
function cutToUse(): Project {
  const project = unsewn(demo('harbour-reading-corner'));
  const used = wedgeLedger(project).map((row) => row.used);
  const stripSets = project.stripSets.map((set, at) => ({
    ...set,
    progress: 'cut' as const,
    cut: used[at]!,
  }));
  return { ...project, stripSets };
}

const progress: ShuffleProgress = { steps: 9, share: 0.5, start: 9, best: 5, moves: null, closing: false };
const closing = { ...progress, share: 1, closing: true };

describe('what a running shuffle says', () => {
  it('tells how far the search is, but claims no share of the work on the bound', () => {
    expect(searchedShare(null)).toBe(0);
    expect(searchedShare(progress)).toBe(0.5);
    expect(searchedShare(closing)).toBeNull();
  });

  it('says while the bound is worked out that the layout is there and a stop brings it', () => {
    const said = (one: ShuffleProgress) => speak(shuffleNews(one, DEFAULT_WEIGHTS, false));
    expect(said(progress)).toMatch(/^9 moves tried; score \d+, from \d+\.$/);
    expect(said(closing)).toMatch(/^Layout found: score \d+, from \d+\. .*Stop to use it now\.$/);
  });

  it('says by what it counts where the layout has other blocks than the wall', () => {
    const said = (one: ShuffleProgress) => speak(shuffleNews(one, DEFAULT_WEIGHTS, true));
    expect(said(progress)).toMatch(
      /^9 moves tried; score \d+, from \d+, against a random layout of the blocks/,
    );
    expect(said(closing)).toMatch(
      /^Layout found: score \d+, from \d+, against a random layout of the blocks/,
    );
  });

  it('tells of a layout with traded wedges both scores: that of the verdict, and that of the wall on show', () => {
    const project = cutToUse();
    const scopes = { swap: true, turn: true, shiftCorners: false, trade: true, strips: false };
    const traded = searched(project, { seed: 3, scopes, budget: { steps: 60_000 } });
    const [counted, shown] = [traded.after.total, weighted(traded.told, DEFAULT_WEIGHTS)].map((total) =>
      Math.round(inPoints(total, DEFAULT_WEIGHTS)),
    );
    // Found on this very quilt: the layout was 'at most 2.1 points above the best possible' at 27, and another had 24.
    expect(shown! - counted!).toBeGreaterThan(5);
    const words = speak(countedWords(traded, DEFAULT_WEIGHTS)!);
    expect(words).toContain(`scores ${counted}.`);
    expect(words).toContain(`Its own score, ${shown}, `);
    const moved = searched(project, {
      seed: 3,
      scopes: { ...scopes, trade: false },
      budget: { steps: 20_000 },
    });
    expect(moved.moves.length).toBeGreaterThan(0);
    expect(countedWords(moved, DEFAULT_WEIGHTS)).toBeNull();
  });
});

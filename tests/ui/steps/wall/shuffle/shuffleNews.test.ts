import { describe, expect, it } from 'vitest';
import type { ShuffleProgress } from '../../../../../src/arrange/shuffle';
import { DEFAULT_WEIGHTS } from '../../../../../src/balance/score/weights';
import { speak } from '../../../../../src/model/phrase';
import { searchedShare, shuffleNews } from '../../../../../src/ui/steps/wall/shuffle/shuffleNews';

const progress: ShuffleProgress = { steps: 9, share: 0.5, start: 9, best: 5, moves: null, closing: false };
const closing = { ...progress, share: 1, closing: true };

describe('what a running shuffle says', () => {
  it('tells how far the search is, but claims no share of the work on the bound', () => {
    expect(searchedShare(null)).toBe(0);
    expect(searchedShare(progress)).toBe(0.5);
    expect(searchedShare(closing)).toBeNull();
  });

  it('says while the bound is worked out that the layout is there and a stop brings it', () => {
    const said = (one: ShuffleProgress) => speak(shuffleNews(one, DEFAULT_WEIGHTS));
    expect(said(progress)).toMatch(/^9 moves tried; score \d+, from \d+\.$/);
    expect(said(closing)).toMatch(/^Layout found: score \d+, from \d+\. .*Stop to use it now\.$/);
  });
});

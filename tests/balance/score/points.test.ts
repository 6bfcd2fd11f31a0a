import { describe, expect, it } from 'vitest';
import { DEFAULT_WEIGHTS, inPoints, weighted } from '../../../src/balance/score/weights';

const byChance = {
  clashLength: 1,
  lookAlikes: 1,
  valueSpread: 1,
  colourSpread: 1,
  fabricSpread: 1,
  wholeTopWeight: 1,
};

describe('a score in points', () => {
  it('is 100 for a top whose every term is as by chance, whatever the weights', () => {
    for (const weights of [DEFAULT_WEIGHTS, { ...DEFAULT_WEIGHTS, clashLength: 0.5, lookAlikes: 6 }])
      expect(inPoints(weighted(byChance, weights), weights)).toBeCloseTo(100, 9);
  });

  it('is 0 where nothing counts', () => {
    const none = {
      clashLength: 0,
      lookAlikes: 0,
      valueSpread: 0,
      colourSpread: 0,
      fabricSpread: 0,
      wholeTopWeight: 0,
    };
    expect(inPoints(weighted(byChance, none), none)).toBe(0);
  });
});

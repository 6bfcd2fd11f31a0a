import { describe, expect, it } from 'vitest';
import { type ProvingProgress, provingFurther } from '../../src/arrange/provingFurther';
import type { ArrangeResult } from '../../src/arrange/verdict';
import { moved } from '../../src/model/moves';
import { speak } from '../../src/model/phrase';
import type { Project } from '../../src/model/project';
import { scrappyTop } from '../balance/tops';
import { runs } from '../runs';
import { arrange } from './toTheEnd';

const SCOPES = { swap: true, turn: true, shiftCorners: false, trade: false, strips: false } as const;
const WISH = { seed: 1, scopes: SCOPES, budget: { steps: 40_000 } } as const;
const twelve = (seed: number) => scrappyTop({ rows: 3, columns: 4, seed });

/** Goes on until so many parts are done, then stops. */
function goOn(project: Project, from: ArrangeResult, parts: number) {
  const going = provingFurther(project, WISH, structuredClone(from));
  const heard: ProvingProgress[] = [];
  for (;;) {
    const step = going.next(heard.length >= parts);
    if (step.done) return { result: step.value, heard };
    heard.push(step.value);
  }
}

describe('proving twelve blocks', () => {
  it('is part of a shuffle: the same layout is proved from any start', () => {
    for (const seed of [1, 5].slice(0, runs(1, 2))) {
      const project = twelve(seed);
      const results = [1, 2].map((other) => arrange(project, { ...WISH, seed: other }));
      for (const { verdict, verdictWords, left } of results) {
        expect(verdict).toEqual({ kind: 'proved' });
        expect(speak(verdictWords)).toBe('Best possible by turning and swapping, proved');
        expect(left).toBeNull();
      }
      expect(results[0]!.after.total).toBeCloseTo(results[1]!.after.total, 8);
      const hung = arrange(moved(project, results[0]!.moves), WISH);
      expect(hung.moves).toEqual([]);
    }
  });

  it('can be stopped and taken up again: the bound never falls, the score never rises, and the end is the same', () => {
    for (const seed of [1, 2].slice(0, runs(1, 2))) {
      const project = twelve(seed);
      const proved = arrange(project, WISH);
      let result = arrange(project, WISH, { shouldStop: () => true });
      expect(result.left).not.toBeNull();
      let stops = 0;
      while (result.left) {
        const before = result;
        const { result: after, heard } = goOn(project, before, 12);
        stops += 1;
        expect(after.bound).toBeGreaterThanOrEqual(before.bound - 1e-9);
        expect(after.after.total).toBeLessThanOrEqual(before.after.total + 1e-9);
        expect(after.bound).toBeLessThanOrEqual(proved.after.total + 1e-9);
        const points = heard.map((one) => one.points);
        expect(Math.min(...points)).toBeGreaterThanOrEqual(0);
        for (const { moves } of heard) if (moves) expect(moves.length).toBeGreaterThan(0);
        result = after;
      }
      expect(stops).toBeGreaterThan(2);
      expect(result.verdict).toEqual({ kind: 'proved' });
      expect(result.after.total).toBeCloseTo(proved.after.total, 8);
    }
  });

  it('tells a number of points, before and after, where a stop came before any bound', () => {
    const project = scrappyTop({ rows: 4, columns: 5, seed: 2 });
    const before = arrange(project, WISH, { shouldStop: () => true });
    expect(speak(before.verdictWords)).toMatch(/^Stopped early/);
    const { heard, result } = goOn(project, before, 1);
    for (const points of heard.flatMap((one) => [one.from, one.points])) expect(points).toBeLessThan(1000);
    expect(speak(result.verdictWords)).toMatch(/^At most [\d.]+ points above the best possible/);
  });

  it('is not offered where wedges may be traded, or where there are too many blocks', () => {
    const stop = { shouldStop: () => true };
    expect(arrange(twelve(1), { ...WISH, scopes: { ...SCOPES, trade: true } }, stop).left).toBeNull();
    expect(arrange(scrappyTop({ rows: 4, columns: 8, seed: 1 }), WISH, stop).left).toBeNull();
    expect(arrange(scrappyTop({ rows: 4, columns: 4, seed: 1 }), WISH, stop).left).not.toBeNull();
  });
});

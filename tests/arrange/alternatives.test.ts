import { describe, expect, it } from 'vitest';
import { alternatives, seamsOf, unlike } from '../../src/arrange/alternatives';
import { ALL_SCOPES } from '../../src/arrange/score';
import { arrange, type ShuffleWish } from '../../src/arrange/shuffle';
import { clothTable } from '../../src/balance/cloths';
import { wallModel } from '../../src/balance/wallModel';
import { moved } from '../../src/model/moves';
import { scrappyTop } from '../balance/tops';

const WISH: ShuffleWish = { seed: 3, scopes: { ...ALL_SCOPES, trade: false }, budget: { steps: 120_000 } };
const PROJECT = scrappyTop({ rows: 4, columns: 5, seed: 9 });
const MODEL = wallModel(PROJECT, clothTable(PROJECT.fabrics));

describe('alternatives', () => {
  const found = alternatives(PROJECT, WISH, 4);

  it('are several arrangements that are all good: none more than 3 points worse than the best', () => {
    expect(found).toHaveLength(4);
    const start = arrange(PROJECT, { ...WISH, budget: { steps: 1 } }).before.total;
    for (const one of found) {
      expect(one.score.total).toBeGreaterThanOrEqual(found[0]!.score.total - 1e-9);
      expect(one.score.total).toBeLessThanOrEqual(found[0]!.score.total + 0.03 * 8 + 1e-9);
      expect(one.score.total).toBeLessThan(start);
    }
  });

  it('differ in at least three seams of ten, as is measured on the walls they make', () => {
    const seams = found.map(({ moves }) => {
      const then = wallModel(moved(PROJECT, moves), MODEL.cloths);
      return seamsOf(then, then, false);
    });
    found.forEach((one, at) => {
      const nearest = Math.min(
        ...seams.filter((_, other) => other !== at).map((other) => unlike(seams[at]!, other)),
      );
      expect(one.apart).toBeCloseTo(nearest, 12);
      expect(one.apart).toBeGreaterThanOrEqual(0.3);
    });
  });

  it('are the same for the same seed', () => {
    expect(alternatives(PROJECT, WISH, 4)).toEqual(found);
  });

  it('are none where nothing may move', () => {
    const pinned = structuredClone(PROJECT);
    for (const cell of pinned.wall.cells) cell!.pinned = true;
    expect(alternatives(pinned, WISH, 4)).toEqual([]);
  });
});

describe('how unlike two arrangements are', () => {
  it('is nothing for a wall turned about as a whole, and everything for blocks that all meet others', () => {
    const about = {
      kindAt: MODEL.kindAt,
      standingOf: MODEL.standingOf.map((stands) => (stands + 4) % 8),
      blockIn: MODEL.blockIn.toReversed(),
    };
    const seams = seamsOf(MODEL, MODEL, false);
    expect(seams.size).toBe(31);
    expect(unlike(seams, seamsOf(MODEL, about, false))).toBe(0);
    const turned = {
      ...about,
      standingOf: MODEL.standingOf.map((stands) => (stands + 1) % 8),
      blockIn: MODEL.blockIn,
    };
    expect(unlike(seams, seamsOf(MODEL, turned, false))).toBe(1);
  });
});

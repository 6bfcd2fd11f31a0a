import { describe, expect, it } from 'vitest';
import { seamsOf, tryingAlternatives, unlike } from '../../src/arrange/alternatives';
import { ALL_SCOPES } from '../../src/arrange/score';
import type { ShuffleWish } from '../../src/arrange/shuffle';
import { termScales } from '../../src/balance/score/termScales';
import { evaluateTerms } from '../../src/balance/score/terms';
import { DEFAULT_WEIGHTS, weighted } from '../../src/balance/score/weights';
import { wallModel } from '../../src/balance/wall/wallModel';
import { clothTable } from '../../src/cloth/cloths';
import { turnsOf } from '../../src/model/find';
import { moved } from '../../src/model/moves';
import type { Project } from '../../src/model/project';
import { scrappyTop } from '../balance/tops';
import { alternatives } from './toTheEnd';

const WISH: ShuffleWish = {
  seed: 3,
  scopes: { ...ALL_SCOPES, trade: false, strips: false },
  budget: { steps: 120_000 },
};
const PROJECT = scrappyTop({ rows: 4, columns: 5, seed: 9 });
const MODEL = wallModel(PROJECT, clothTable(PROJECT.fabrics));

describe('alternatives', () => {
  const found = alternatives(PROJECT, WISH, 4);

  it('are several arrangements that are all good: none more than 3 points worse than the best', () => {
    expect(found).toHaveLength(4);
    const start = weighted(scoreOf(PROJECT), DEFAULT_WEIGHTS);
    for (const one of found) {
      expect(one.score.total).toBeGreaterThanOrEqual(found[0]!.score.total - 1e-9);
      expect(one.score.total).toBeLessThanOrEqual(found[0]!.score.total + 0.03 * 8 + 1e-9);
      expect(one.score.total).toBeLessThan(start);
    }
  });

  it('say what cut the search short: the person, the time, or nothing', () => {
    const cut = (wish: ShuffleWish, stopped: boolean, now?: () => number) => {
      const going = tryingAlternatives(PROJECT, wish, 4, { first: 0, of: 1 }, now);
      let step = going.next(false);
      while (!step.done) step = going.next(stopped);
      return step.value.cut;
    };
    let time = 0;
    const hurried = { ...WISH, budget: { steps: 120_000, milliseconds: 1000 } };
    expect(cut(WISH, false)).toBeNull();
    expect(cut(WISH, true)).toBe('stop');
    expect(cut(hurried, false, () => (time += 20))).toBe('time');
  });

  it('score what the wall made of them scores, the best first', () => {
    const totals = found.map(({ moves }) => weighted(scoreOf(moved(PROJECT, moves)), DEFAULT_WEIGHTS));
    found.forEach((one, at) => {
      expect(one.score.total).toBeCloseTo(totals[at]!, 10);
      // In whole points, as both scores are shown: the weights add up to 8, which is 100 points.
      const points = (total: number) => Math.round((100 * total) / 8);
      expect(one.behind).toBe(points(totals[at]!) - points(Math.min(...totals)));
    });
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

  describe('with wedges traded', () => {
    const TRADED: ShuffleWish = {
      seed: 1,
      scopes: { ...WISH.scopes, trade: true },
      budget: { steps: 60_000 },
    };
    const plenty = (seed: number) => scrappyTop({ rows: 3, columns: 3, sets: 8, seed });

    it('find choices of wedges once for all searches, each of which could not afford it', () => {
      const totals = [1, 2, 3].map((seed) => alternatives(plenty(seed), TRADED, 2)[0]!.score.total);
      // 1.25 where each search looked for them itself, 0.65 since.
      expect(totals.reduce((sum, total) => sum + total / 3, 0)).toBeLessThan(0.9);
    });

    it('are the wall as it hangs at least, where a stop comes before any search', () => {
      const going = tryingAlternatives(plenty(1), TRADED, 2, { first: 0, of: 1 });
      let step = going.next(false);
      while (!step.done) step = going.next(true);
      expect(step.value.found).toHaveLength(1);
      expect(step.value.cut).toBe('stop');
    });
  });

  it('are none where nothing may move', () => {
    const pinned = structuredClone(PROJECT);
    for (const cell of pinned.wall.cells) cell!.pinned = true;
    expect(alternatives(pinned, WISH, 4)).toEqual([]);
  });
});

/** The whole top turned a quarter clockwise (twice: half way round), block by block as it would hang then. */
function turnedRound(project: Project, quarters: 1 | 2): Project {
  const { rows, columns, cells } = project.wall;
  const turns = turnsOf(project.wedge.perBlock);
  const onWall = (row: number, column: number) =>
    quarters === 2
      ? cells[(rows - 1 - row) * columns + (columns - 1 - column)]
      : cells[(rows - 1 - column) * columns + row];
  // Points of the lattice in between, where the wall hangs on point, turn about the same middle.
  const between = cells.slice(rows * columns);
  const inBetween = (row: number, column: number) =>
    quarters === 2
      ? between[(rows - 2 - row) * (columns - 1) + (columns - 2 - column)]
      : between[(rows - 2 - column) * (columns - 1) + row];
  const grid = (height: number, width: number, at: typeof onWall) =>
    Array.from({ length: height * width }, (_, cell) => at(Math.floor(cell / width), cell % width)!);
  const next = [
    ...grid(rows, columns, onWall),
    ...(between.length > 0 ? grid(rows - 1, columns - 1, inBetween) : []),
  ];
  return {
    ...project,
    wall: {
      ...project.wall,
      cells: next.map((cell) => ({ ...cell, turn: (cell.turn + (quarters * turns) / 4) % turns })),
    },
  };
}

describe('how unlike two arrangements are', () => {
  const seamsIn = (project: Project) => {
    const model = wallModel(project, clothTable(project.fabrics));
    return seamsOf(model, model, true);
  };

  it.each([6, 8, 10, 12] as const)(
    'is nothing for a top of %i wedges to the block turned half way round',
    (perBlock) => {
      for (const corners of [0, 1]) {
        const top = scrappyTop({ rows: 3, columns: 4, seed: perBlock, perBlock });
        for (const block of top.blocks) block.cornerShift = corners;
        const about = turnedRound(top, 2);
        expect(about.wall.cells).not.toEqual(top.wall.cells);
        expect(unlike(seamsIn(top), seamsIn(about))).toBe(0);
        const scores = [top, about].map(scoreOf);
        expect(scores[1]!.clashLength).toBeCloseTo(scores[0]!.clashLength, 10);
      }
    },
  );

  it.each([8, 12] as const)(
    'is nothing for a square top of %i wedges to the block turned a quarter',
    (perBlock) => {
      const top = scrappyTop({ rows: 3, columns: 3, seed: perBlock, perBlock });
      const about = turnedRound(top, 1);
      expect(unlike(seamsIn(top), seamsIn(about))).toBe(0);
      expect(scoreOf(about).clashLength).toBeCloseTo(scoreOf(top).clashLength, 10);
      expect(unlike(seamsIn(top), seamsIn(turnedRound(about, 1)))).toBe(0);
    },
  );

  it('is nothing for a top on point turned half way round or a quarter', () => {
    const top = scrappyTop({ rows: 1, columns: 13, seed: 4 });
    top.setting.layout = { kind: 'onPoint', sides: 'c4', corners: 'c5' };
    top.wall = { ...top.wall, rows: 3, columns: 3 };
    for (const quarters of [1, 2] as const) {
      expect(unlike(seamsIn(top), seamsIn(turnedRound(top, quarters)))).toBe(0);
    }
  });

  it('is something for a top of which only the blocks, or only their places, are turned round', () => {
    const top = scrappyTop({ rows: 3, columns: 3, seed: 2 });
    const about = turnedRound(top, 2);
    const blocksOnly = top.wall.cells.map((cell) => ({ ...cell!, turn: (cell!.turn + 2) % 4 }));
    const placesOnly = about.wall.cells.map((cell) => ({ ...cell!, turn: (cell!.turn + 2) % 4 }));
    for (const cells of [blocksOnly, placesOnly]) {
      const seams = seamsIn({ ...top, wall: { ...top.wall, cells } });
      expect(unlike(seamsIn(top), seams)).toBeGreaterThan(0.1);
    }
  });

  it('tells strips in another order from the same wedges', () => {
    const turned = PROJECT.stripSets[0]!.strips.toReversed();
    const otherwise = { ...wallOf(), orders: new Map([[0, turned]]) };
    const apart = unlike(seamsOf(MODEL, wallOf(), true), seamsOf(MODEL, otherwise, true));
    expect(apart).toBeGreaterThan(0);
    expect(unlike(seamsOf(MODEL, wallOf(), false), seamsOf(MODEL, otherwise, false))).toBe(0);
  });

  it('is nothing for a wall turned about as a whole, and everything for blocks that all meet others', () => {
    const about = {
      typeAt: MODEL.typeAt,
      orientationOf: MODEL.orientationOf.map((stands) => (stands + 4) % 8),
      blockIn: MODEL.blockIn.toReversed(),
    };
    const seams = seamsOf(MODEL, MODEL, false);
    expect(seams.size).toBe(31);
    expect(unlike(seams, seamsOf(MODEL, about, false))).toBe(0);
    const turned = {
      ...about,
      orientationOf: MODEL.orientationOf.map((stands) => (stands + 1) % 8),
      blockIn: MODEL.blockIn,
    };
    expect(unlike(seams, seamsOf(MODEL, turned, false))).toBe(1);
  });
});

function wallOf() {
  const { typeAt, orientationOf, blockIn } = MODEL;
  return { typeAt, orientationOf, blockIn };
}

function scoreOf(project: Project) {
  const model = wallModel(project, clothTable(project.fabrics));
  return evaluateTerms(termScales(model), model);
}

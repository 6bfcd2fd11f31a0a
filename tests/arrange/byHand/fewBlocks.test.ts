// What each further block gains: against every way of hanging and turning the blocks of small walls, scored in full; and what holds for
// the offers on larger ones.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type FewBlocks, type FewBlocksWish, findingFewBlocks } from '../../../src/arrange/byHand/fewBlocks';
import { handSteps } from '../../../src/arrange/byHand/handSteps';
import { analyse } from '../../../src/balance/analyse';
import { evaluateTerms } from '../../../src/balance/score/terms';
import { DEFAULT_WEIGHTS, weighted } from '../../../src/balance/score/weights';
import { wallModel } from '../../../src/balance/wall/wallModel';
import { turnsOf } from '../../../src/model/find';
import { movedIfFree } from '../../../src/model/moves';
import type { Cell, Project } from '../../../src/model/project';
import { atOnce } from '../../../src/model/work/parts';
import { scrappyTop } from '../../balance/tops';
import { withPictures } from '../../geometry/pictured';
import { runs } from '../../runs';
import { awkwardTop, ruledTop } from '../awkwardTop';

const BOTH = { swap: true, turn: true };

function few(project: Project, most: number, wish: Partial<FewBlocksWish> = {}): FewBlocks {
  return atOnce(findingFewBlocks(project, { most, scopes: BOTH, ...wish }));
}

/** The score by what chance gives for the wall as it is before. */
function scorer(project: Project) {
  const { scales, model } = analyse(project);
  return (cells: readonly (Cell | null)[]) => {
    const then = { ...project, wall: { ...project.wall, cells: [...cells] } };
    return weighted(evaluateTerms(scales, wallModel(then, model.cloths)), DEFAULT_WEIGHTS);
  };
}

/** For each number of blocks touched the least score of all ways that touch no more. */
function everyWay(project: Project): number[] {
  const { cells } = project.wall;
  const score = scorer(project);
  const turns = Array.from({ length: turnsOf(project.wedge.perBlock) }, (_, turn) => turn);
  const least = cells.map(() => Number.POSITIVE_INFINITY).concat(Number.POSITIVE_INFINITY);
  const hang = (left: readonly Cell[], hung: readonly Cell[]) => {
    if (left.length === 0) {
      const touched = hung.filter((cell, at) => cell.block !== cells[at]!.block || cell.turn !== cells[at]!.turn);
      least[touched.length] = Math.min(least[touched.length]!, score(hung));
      return;
    }
    for (const cell of left)
      for (const turn of turns) hang(left.filter((one) => one !== cell), [...hung, { ...cell, turn }]);
  };
  hang(cells as Cell[], []);
  return least.map((_, touched) => Math.min(...least.slice(0, touched + 1)));
} // biome-ignore format: short

const SMALL: readonly [rows: number, columns: number, perBlock: 6 | 8 | 10 | 12][] = [
  [2, 2, 6], [1, 3, 8], [1, 4, 10], [3, 1, 12], [1, 5, 6], [1, 3, 8],
]; // biome-ignore format: a table

describe('the best that few blocks can do', () => {
  it.each(SMALL)('is found and proved on %i × %i blocks of %i wedges', (rows, columns, perBlock) => {
    // One of each two is of blocks in pictures every day, both in the long run.
    for (const seed of [1, 2].slice(0, runs(1, 2)).map((one) => (columns % 2 === 0 ? 3 - one : one))) {
      const top = scrappyTop({ rows, columns, perBlock, seed, fabrics: 5 });
      const project = seed === 1 ? top : withPictures(top, 0b10);
      const least = everyWay(project);
      const { before, offers } = few(project, rows * columns);
      expect(before.total).toBeCloseTo(least[0]!, 9);
      // With one block more each time, only what is better is offered.
      const best = least.map((_, touched) =>
        Math.min(before.total, ...offers.filter(({ blocks }) => blocks <= touched).map(({ score }) => score.total)),
      );
      for (const [touched, one] of best.entries()) expect(one).toBeCloseTo(least[touched]!, 9);
      expect(offers.every(({ proved }) => proved)).toBe(true);
    }
  }); // biome-ignore format: short

  it('is offered as steps that touch so many blocks, may be made, and score as told; each gains on the one before', () => {
    fc.assert(
      fc.property(
        fc.nat(400),
        fc.constantFrom(6 as const, 8 as const, 10 as const, 12 as const),
        fc.boolean(),
        fc.nat(2 ** 20 - 1),
        fc.nat(2 ** 20 - 1),
        (seed, perBlock, ruled, pictures, pins) => {
          const project = withPictures((ruled ? ruledTop : awkwardTop)(seed, perBlock), pictures);
          const cells = project.wall.cells.map((cell, at) =>
            cell ? { ...cell, pinned: ((pins >> (at % 20)) & 3) === 3 } : null,
          );
          const pinned = { ...project, wall: { ...project.wall, cells } };
          const score = scorer(pinned);
          let last = few(pinned, 0).before.total;
          let count = 0;
          for (const { blocks, steps, moves, score: told } of few(pinned, 4).offers) {
            const { project: then, reason } = movedIfFree(pinned, moves);
            if (!then) throw new Error(reason.say);
            expect(handSteps(pinned, then)).toEqual(steps);
            expect(steps.flatMap(({ carries }) => carries).length).toBe(blocks);
            expect(blocks).toBeGreaterThan(count);
            expect(blocks).toBeLessThanOrEqual(4);
            expect(told.total).toBeCloseTo(score(then.wall.cells), 9);
            expect(told.total).toBeLessThan(last);
            [last, count] = [told.total, blocks];
          }
        },
      ),
      { numRuns: runs(1, 25), seed: 1215 },
    );
  });

  it('only turns, or only moves, where no more is allowed', () => {
    const project = scrappyTop({ rows: 3, columns: 4, seed: 6 });
    const kinds = (wish: Partial<FewBlocksWish>) =>
      few(project, 4, wish).offers.flatMap(({ steps }) => steps.flatMap(({ carries }) => carries));
    const turned = kinds({ scopes: { swap: false, turn: true } });
    expect(turned.length).toBeGreaterThan(0);
    expect(turned.every(({ from, to }) => from === to)).toBe(true);
    const moved = kinds({ scopes: { swap: true, turn: false } });
    expect(moved.length).toBeGreaterThan(0);
    expect(moved.every(({ turn, turned: after }) => turn === after)).toBe(true);
  });

  it('has no offers for a wall on which nothing is free, and is the same every time', () => {
    const project = scrappyTop({ rows: 2, columns: 3, seed: 4 });
    const pinned = project.wall.cells.map((cell) => cell && { ...cell, pinned: true });
    expect(few({ ...project, wall: { ...project.wall, cells: pinned } }, 4).offers).toEqual([]);
    const large = scrappyTop({ rows: 6, columns: 7, seed: 4 });
    expect(few(large, 5)).toEqual(few(large, 5));
  });

  it('ends with what it has when it is stopped, and tells how far it is', () => {
    const project = scrappyTop({ rows: 6, columns: 8, seed: 9 });
    const going = findingFewBlocks(project, { most: 6, scopes: BOTH });
    const told: number[] = [];
    let step = going.next(false);
    while (!step.done) {
      told.push(step.value);
      step = going.next(told.length >= 45);
    }
    // After the stop only the offers there are get written out.
    expect(told.length).toBeLessThanOrEqual(45 + step.value.offers.length);
    expect(told.every((share) => share >= 0 && share <= 1)).toBe(true);
    expect(step.value.offers.length).toBeLessThan(few(project, 6).offers.length);
    for (const { proved, score } of step.value.offers) {
      expect(score.total).toBeLessThan(step.value.before.total);
      expect(typeof proved).toBe('boolean');
    }
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { movesBetween } from '../../src/arrange/movesBetween';
import { ALL_SCOPES } from '../../src/arrange/score';
import { arranging, type ShuffleProgress, type ShuffleWish } from '../../src/arrange/shuffle';
import { analyse } from '../../src/balance/analyse';
import { wallModel } from '../../src/balance/wall/wallModel';
import { clothTable } from '../../src/cloth/cloths';
import { checkWedges, wedgeLedger } from '../../src/cutting/wedges/ledger';
import { apply } from '../../src/editing/apply';
import { keepShuffle } from '../../src/editing/commands/wall';
import { turnsOf } from '../../src/model/find';
import { moved } from '../../src/model/moves';
import type { Project } from '../../src/model/project';
import { dice, scrappyTop } from '../balance/tops';
import { demo } from '../demo';
import { runs } from '../runs';
import { awkwardTop } from './awkwardTop';
import { arrange, searched } from './toTheEnd';

const WISH: ShuffleWish = { seed: 7, scopes: ALL_SCOPES, budget: { steps: 4_000 } };

describe('a shuffle for balance', () => {
  it('ends with the same moves for the same seed and steps, and with others for another seed', () => {
    const project = scrappyTop({ rows: 4, columns: 5, seed: 2 });
    const first = arrange(project, WISH);
    expect(arrange(project, WISH)).toEqual(first);
    expect(searched(project, { ...WISH, seed: 8 }).moves).not.toEqual(first.moves);
  });

  it('ends alike with a cap of time it does not come to, and says so when it does', () => {
    const project = scrappyTop({ rows: 4, columns: 5, seed: 2 });
    const first = arrange(project, { ...WISH, budget: { steps: 20_000 } });
    const budget = { steps: 20_000, milliseconds: 1000 };
    let time = 0;
    // A clock that runs unevenly must not be felt before the cap.
    const unhurried = { now: () => (time += time % 2 === 0 ? 1 : 0) };
    expect(arrange(project, { ...WISH, budget }, unhurried)).toEqual(first);
    expect(first.capped).toBe(false);
    const hurried = arrange(project, { ...WISH, budget }, { now: () => (time += 20) });
    expect(hurried.capped).toBe(true);
    expect(hurried.steps).toBeLessThan(20_000);
  });

  it('mends every clash of the six-block demo that wedges not yet sewn can mend', () => {
    const project = demo('harbour-reading-corner');
    const before = analyse(project);
    const result = arrange(project, { ...WISH, budget: { steps: 60_000 } });
    const after = analyse(moved(project, result.moves));
    expect(before.findings.length).toBeGreaterThan(2);
    expect(after.findings.filter((one) => one.kind === 'rim')).toEqual([]);
    expect(after.findings.length).toBeLessThan(before.findings.length);
    expect(result.after.total).toBeLessThan(result.before.total / 2);
  });

  it('is one command that nothing pinned or sewn refuses, and uses no wedge twice', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e6 }), fc.constantFrom(6, 8, 10, 12), (seed, perBlock) => {
        const project = partlySewn(seed, perBlock as 8);
        const result = searched(project, { ...WISH, seed, budget: { steps: 3000 } });
        const outcome = apply(project, keepShuffle(result.moves));
        if (!outcome.ok) throw new Error(outcome.problems[0]!.message.say);
        expect(checkWedges(outcome.project)).toEqual([]);
        for (const [cell, held] of project.wall.cells.entries()) {
          const now = outcome.project.wall.cells[cell];
          expect(now === null).toBe(held === null);
          if (!held) continue;
          const block = project.blocks.find((one) => one.id === held.block)!;
          const then = outcome.project.blocks.find((one) => one.id === held.block)!;
          if (held.pinned) expect([now, then]).toEqual([held, block]);
          if (block.progress === 'joined') expect([now, then]).toEqual([held, block]);
          if (block.progress === 'squared') expect(then).toEqual(block);
          if (block.progress === 'octagon') expect(then.places).toEqual(block.places);
          expect(now!.turn).toBeLessThan(turnsOf(perBlock));
          expect(then.places.map((place) => place?.tip)).toEqual(block.places.map((place) => place?.tip));
        }
      }),
      { numRuns: runs(5, 25) },
    );
  });

  it('does only what it is asked to', () => {
    const project = scrappyTop({ rows: 3, columns: 4, seed: 5 });
    const kinds = (scopes: Partial<ShuffleWish['scopes']>) => {
      const none = { swap: false, turn: false, shiftCorners: false, trade: false, strips: false };
      const result = searched(project, { ...WISH, scopes: { ...none, ...scopes } });
      return new Set(result.moves.map((move) => move.kind));
    };
    expect(kinds({})).toEqual(new Set());
    expect(kinds({ turn: true })).toEqual(new Set(['turn']));
    expect(kinds({ swap: true })).toEqual(new Set(['swap']));
    expect(kinds({ shiftCorners: true })).toEqual(new Set(['shift']));
    expect(kinds({ trade: true })).toEqual(new Set(['place']));
    expect(kinds({ strips: true })).toEqual(new Set(['strips']));
  });

  it('says when the search is over and the bound is still to come, and a stop ends that at once', () => {
    const project = scrappyTop({ rows: 20, columns: 20, seed: 3 });
    const wish = {
      seed: 1,
      scopes: { ...ALL_SCOPES, trade: false, strips: false },
      budget: { steps: 40_000 },
    };
    const going = arranging(project, wish);
    let step = going.next(false);
    while (!step.done && !step.value.closing) step = going.next(false);
    if (step.done) throw new Error('the bound was not worked out in parts');
    expect(step.value.share).toBe(1);
    const stopped = going.next(true);
    if (!stopped.done) throw new Error('it went on after the stop');
    expect(stopped.value.after.total).toBeLessThan(stopped.value.before.total);
    expect(stopped.value.verdictWords.say).toMatch(/^Stopped early/);
    expect(arrange(project, wish).moves).toEqual(stopped.value.moves);
  });

  it('stops when told to, with the best it has found', () => {
    const project = scrappyTop({ rows: 8, columns: 10, seed: 3 });
    const told: ShuffleProgress[] = [];
    const result = arrange(
      project,
      { ...WISH, budget: { steps: 1e9 } },
      { shouldStop: () => told.length >= 3, onProgress: (progress) => told.push(progress) },
    );
    expect(told).toHaveLength(3);
    expect(result.after.total).toBeCloseTo(told.at(-1)!.best, 8);
    expect(result.after.total).toBeLessThan(result.before.total);
    expect(told.map((one) => one.best)).toEqual(told.map((one) => one.best).toSorted((a, b) => b - a));
    expect(told.some((one) => one.moves !== null)).toBe(true);
  });

  it('ends when its time is over by the clock it is given', () => {
    let time = 0;
    const clock = { now: () => (time += 1) };
    const result = arrange(
      scrappyTop({ rows: 4, columns: 5, seed: 3 }),
      { ...WISH, budget: { milliseconds: 50 } },
      clock,
    );
    expect(time).toBe(51);
    expect(result.steps).toBeGreaterThan(0);
  });

  it('says how far it can be from the best there is, and that bound is below the score', () => {
    const scopes = { ...ALL_SCOPES, trade: false, strips: false };
    const result = arrange(scrappyTop({ rows: 3, columns: 5, seed: 4 }), { ...WISH, scopes });
    expect(result.bound).toBeGreaterThan(0);
    expect(result.bound).toBeLessThanOrEqual(result.after.total);
    expect(result.verdict.kind).toBe('within');
    expect(result.verdictWords.say).toContain('At most {points} points above the best possible');
  });

  it('of a wall that is pinned all over changes nothing, which is the best possible', () => {
    const project = scrappyTop({ rows: 4, columns: 5, seed: 4 });
    for (const cell of project.wall.cells) cell!.pinned = true;
    const result = arrange(project, WISH);
    expect(result.moves).toEqual([]);
    expect(result.verdict.kind).toBe('proved');
  });

  it('of an empty wall changes nothing', () => {
    const project = scrappyTop({ rows: 2, columns: 2, seed: 4 });
    project.wall.cells.fill(null);
    expect(arrange(project, WISH).moves).toEqual([]);
  });
});

describe('the moves from one arrangement to another', () => {
  it('lead exactly there, with no more exchanges than blocks that hang elsewhere', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e6 }), (seed) => {
        const project = awkwardTop(seed, 8);
        const model = wallModel(project, clothTable(project.fabrics));
        const random = dice(seed);
        const blockIn = model.blockIn.slice();
        for (let at = blockIn.length - 1; at > 0; at--) {
          const other = random.below(at + 1);
          [blockIn[at], blockIn[other]] = [blockIn[other]!, blockIn[at]!];
        }
        const hung = new Set(blockIn);
        const orientationOf = model.orientationOf.map((stands, block) =>
          hung.has(block) ? random.below(8) : stands,
        );
        const typeAt = model.typeAt.map((type) => (type < 0 ? type : random.below(model.typeRim.length)));
        const moves = movesBetween(project, { blockIn, orientationOf, typeAt });
        const then = wallModel(moved(project, moves), model.cloths);
        expect(then.blockIn).toEqual(blockIn);
        expect(then.orientationOf).toEqual(orientationOf);
        expect(then.typeAt).toEqual(typeAt);
        const elsewhere = blockIn.filter((block, cell) => block !== model.blockIn[cell]).length;
        expect(moves.filter((move) => move.kind === 'swap').length).toBeLessThanOrEqual(
          Math.max(0, elsewhere - 1),
        );
      }),
      { numRuns: runs(8, 40) },
    );
  });
});

/** An awkward top with wedges to spare, some blocks pinned and some sewn as far as they come. */
function partlySewn(seed: number, perBlock: 6 | 8 | 10 | 12): Project {
  const project = awkwardTop(seed, perBlock);
  const random = dice(seed + 1);
  for (const block of project.blocks) {
    if (block.places.includes(null)) continue;
    block.progress = (['planned', 'octagon', 'squared', 'joined'] as const)[random.below(4)]!;
  }
  for (const cell of project.wall.cells) if (cell && random.below(5) === 0) cell.pinned = true;
  for (const row of wedgeLedger(project)) {
    row.set.cut = { up: row.used.up + random.below(2), down: row.used.down + random.below(2) };
  }
  return project;
}

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findingChoices } from '../../../src/arrange/choices/evenChoices';
import { decisionsOf } from '../../../src/arrange/decisions';
import { BlockLaying } from '../../../src/arrange/live/blockLaying';
import { costTables } from '../../../src/arrange/live/costTables';
import { LiveWall } from '../../../src/arrange/live/liveWall';
import { movesBetween } from '../../../src/arrange/movesBetween';
import { termScales } from '../../../src/balance/score/termScales';
import { evaluateTerms } from '../../../src/balance/score/terms';
import { DEFAULT_WEIGHTS, weighted } from '../../../src/balance/score/weights';
import { wallModel } from '../../../src/balance/wall/wallModel';
import { clothTable } from '../../../src/cloth/cloths';
import { moved } from '../../../src/model/moves';
import type { Project } from '../../../src/model/project';
import { atOnce } from '../../../src/model/work/parts';
import { dice, scrappyTop } from '../../balance/tops';
import { runs } from '../../runs';
import { ruledTop } from '../awkwardTop';
import { arrange } from '../toTheEnd';

const SCOPES = { swap: true, turn: true, shiftCorners: false, trade: true, strips: false };

function underWay(project: Project) {
  const model = wallModel(project, clothTable(project.fabrics));
  const scales = termScales(model);
  const decisions = decisionsOf(project, model, SCOPES);
  const wall = new LiveWall(costTables(model, scales, DEFAULT_WEIGHTS), decisions.spare);
  const full = () => {
    const then = moved(project, movesBetween(project, wall));
    return weighted(evaluateTerms(scales, wallModel(then, model.cloths)), DEFAULT_WEIGHTS);
  };
  return { model, decisions, wall, full, choices: atOnce(findingChoices(wall, decisions)) };
}

/** Wedges by type, those that hang and those left over together. */
function allWedges({ typeAt, spare }: LiveWall): number[] {
  const counts = [...spare];
  for (const type of typeAt) counts[type]! += 1;
  return counts;
}

describe('choices of wedges for whole blocks', () => {
  it('are laid as the score says, and no wedge is lost, one too many or of another tip', () => {
    let given = 0;
    let refused = 0;
    let short = 0;
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e6 }), (seed) => {
        const project = scrappyTop({ rows: 2, columns: 3, seed, perBlock: seed % 2 ? 8 : 6, sets: 5 });
        // Of one set few wedges are left over.
        project.stripSets[0]!.length = 40;
        const { model, decisions, wall, full, choices } = underWay(project);
        if (!choices) return;
        const random = dice(seed);
        const sorts = Uint8Array.from(wall.typeAt, (type) => 1 + (type % 2));
        const laying = new BlockLaying(wall, sorts);
        const all = allWedges(wall);
        const costs = new Float64Array(choices.count);
        const tips = Array.from(wall.typeAt, (type) => type % 2);
        for (let change = 0; change < 40; change++) {
          const [cell, next] = [random.below(6), random.below(6)];
          if (cell !== next && change % 4 === 0) wall.swap(cell, next, 0, 0, wall.swapCost(cell, next, 0, 0));
          const block = choices.blocks[random.below(choices.blocks.length)]!;
          const choice = random.below(choices.count);
          const most = change % 3 === 0 ? 9 : 0.2 * random.part() - 0.1;
          const was = { types: [...wall.typeAt], spare: [...wall.spare], cost: wall.cost };
          wall.choiceCosts(block, choices, costs);
          if (wall.giveAndLay(block, { choices, choice, spread: costs[choice]! }, most, laying)) {
            given += 1;
            expect(wall.cost - was.cost).toBeLessThanOrEqual(most + 1e-9);
            const held = wall.typeAt.slice(block * model.perBlock, (block + 1) * model.perBlock);
            const wanted = choices.types.slice(choice * model.perBlock, (choice + 1) * model.perBlock);
            expect(held.sort()).toEqual(wanted.sort());
          } else {
            refused += 1;
            if (most === 9) short += 1;
            expect({ types: [...wall.typeAt], spare: [...wall.spare], cost: wall.cost }).toEqual(was);
          }
          // Prices of wedges are worked out here, and must not be out of date below.
          for (const place of decisions.tradable[0]) wall.tradeCost(place, decisions.tradable[0][0]!);
          expect(Math.min(...wall.spare)).toBeGreaterThanOrEqual(0);
          if (change % 8 === 7) {
            expect(wall.cost).toBeCloseTo(full(), 8);
            const [place, other] = [decisions.tradable[0][0]!, decisions.tradable[0].at(-1)!];
            expect(wall.tradeCost(place, other)).toBeCloseTo(tradeInFull(wall, place, other, full), 8);
          }
        }
        expect(allWedges(wall)).toEqual(all);
        expect(Array.from(wall.typeAt, (type) => type % 2)).toEqual(tips);
        expect(decisions.tradable[0]!.length).toBe(3 * model.perBlock);
      }),
      { numRuns: runs(6, 40) },
    );
    expect(given).toBeGreaterThan(20);
    expect(refused).toBeGreaterThan(20);
    expect(short).toBeGreaterThan(0);
  });

  it('leave blocks alone whose tips do not take turns, as in a whole shuffle', () => {
    const project = scrappyTop({ rows: 2, columns: 3, seed: 1, sets: 5 });
    for (const block of project.blocks.slice(0, 2))
      [block.places[1]!.tip, block.places[4]!.tip] = ['up', 'down'];
    expect(Array.from(underWay(project).choices!.blocks)).toEqual([2, 3, 4, 5]);
    const { moves } = arrange(project, { seed: 1, scopes: SCOPES, budget: { steps: 8000 } });
    const tips = ({ blocks }: Project) => blocks.map(({ places }) => places.map((place) => place!.tip));
    expect(tips(moved(project, moves))).toEqual(tips(project));
  });

  it('are none where figures do not add up, where wedges are short, or where blocks have wedges that stay', () => {
    expect(underWay(ruledTop(1, 8)).choices).toBeNull();
    const few = scrappyTop({ rows: 2, columns: 3, seed: 1, sets: 5 });
    for (const set of few.stripSets) set.length = 30;
    expect(underWay(few).choices).toBeNull();
    const sewn = scrappyTop({ rows: 1, columns: 2, seed: 1, sets: 5 });
    for (const block of sewn.blocks) block.progress = 'octagon';
    expect(underWay(sewn).choices).toBeNull();
    const free = underWay(scrappyTop({ rows: 1, columns: 2, seed: 1, sets: 5 }));
    expect(free.choices!.count).toBeGreaterThan(0);
  });
});

/** What a trade adds by the whole score, before and after. */
function tradeInFull(wall: LiveWall, place: number, other: number, full: () => number): number {
  const before = full();
  const swap = () => {
    const type = wall.typeAt[place]!;
    wall.typeAt[place] = wall.typeAt[other]!;
    wall.typeAt[other] = type;
  };
  swap();
  const after = full();
  swap();
  return after - before;
}

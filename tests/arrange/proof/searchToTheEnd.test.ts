import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decisionsOf } from '../../../src/arrange/decisions';
import { costTables } from '../../../src/arrange/live/costTables';
import { movesBetween } from '../../../src/arrange/movesBetween';
import { contactsOf } from '../../../src/arrange/proof/contactTables';
import { SearchToTheEnd } from '../../../src/arrange/proof/searchToTheEnd';
import { spreadOf } from '../../../src/arrange/proof/spreadAssignment';
import { spreadCost } from '../../../src/arrange/proof/wallAssignment';
import type { Intent } from '../../../src/balance/score/intent';
import { termScales } from '../../../src/balance/score/termScales';
import { evaluateTerms } from '../../../src/balance/score/terms';
import { DEFAULT_WEIGHTS, weighted } from '../../../src/balance/score/weights';
import { wallModel } from '../../../src/balance/wall/wallModel';
import { clothTable } from '../../../src/cloth/cloths';
import { moved } from '../../../src/model/moves';
import { COLOUR_INTENTS, type Project, VALUE_INTENTS } from '../../../src/model/project';
import { dice, scrappyTop } from '../../balance/tops';
import { runs } from '../../runs';
import { allPairs, leastOfAll } from '../allPairs';
import { arrange, bestOf, lowerBound } from '../toTheEnd';

const SCOPES = { swap: true, turn: true, shiftCorners: false, trade: false, strips: false } as const;

function proving(project: Project, intent: Intent, shiftCorners = false) {
  const model = wallModel(project, clothTable(project.fabrics));
  const scales = termScales(model, intent);
  const tables = costTables(model, scales, DEFAULT_WEIGHTS);
  const decisions = decisionsOf(project, model, { ...SCOPES, shiftCorners });
  return { model, scales, contacts: contactsOf(tables, decisions), spread: spreadOf(tables) };
}

const intents = fc.record({
  value: fc.constantFrom(...VALUE_INTENTS),
  colour: fc.constantFrom(...COLOUR_INTENTS),
});

/** Searches from nothing known to the end; what it finds is hung in the quilt and judged anew. */
function searched(project: Project, desk: ReturnType<typeof proving>): number | null {
  const { contacts, spread, model, scales } = desk;
  const search = SearchToTheEnd.of(contacts, spread, 1e9);
  if (!search) return null;
  while (!search.ended) search.advance();
  const hung = wallModel(moved(project, movesBetween(project, search.found!)), model.cloths);
  expect(weighted(evaluateTerms(scales, hung), DEFAULT_WEIGHTS)).toBeCloseTo(search.found!.cost, 8);
  expect(search.bound).toBe(search.found!.cost);
  return search.found!.cost;
}

describe('the search to the end', () => {
  it('finds the best of all 2,949,120 ways to hang six blocks, gone through one by one', () => {
    const project = scrappyTop({ rows: 3, columns: 2, seed: 3, fabrics: 11, sets: 5 });
    const { least, count } = leastOfAll(allPairs(project));
    expect(count).toBe(720 * 4 ** 6);
    const desk = proving(project, { value: 'scattered', colour: 'scattered' });
    expect(searched(project, desk)).toBeCloseTo(least, 8);
  });

  it('finds what weighing every order finds, whatever is wanted, with sashing, pinned blocks, corners turned and by a rule', () => {
    let ruled = 0;
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e6 }), intents, fc.boolean(), (seed, intent, shiftCorners) => {
        const project = scrappyTop({ rows: 3, columns: 2, seed, fabrics: 5 + (seed % 12), sets: 5 });
        project.setting.cornerFabric = 'c0';
        if (seed % 3 === 0) project.setting.cornerRule = { kind: 'checkerboard', fabric: 'c1' };
        if (seed % 4 === 0) project.wall.cells[seed % 6]!.pinned = true;
        if (seed % 5 === 0)
          project.setting.sashing = { ...project.setting.sashing, where: 'around', fabric: 'c1' };
        if (seed % 7 === 0) project.blocks[seed % 6]!.places[1] = null;
        const desk = proving(project, intent, shiftCorners);
        const found = searched(project, desk);
        if (found === null) expect(seed % 3).toBe(0);
        else expect(found).toBeCloseTo(bestOf(desk.contacts, desk.spread)!.cost, 8);
        if (found !== null && seed % 3 === 0) ruled += 1;
      }),
      { numRuns: runs(10, 40) },
    );
    expect(ruled).toBeGreaterThan(0);
  });

  it('bounds no layout of twelve blocks too high, wherever it is stopped', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e6 }), intents, (seed, intent) => {
        const project = scrappyTop({ rows: 3, columns: 4, seed });
        const { contacts, spread, model, scales } = proving(project, intent);
        const random = dice(seed);
        const blockIn = model.blockIn.slice();
        for (let at = 11; at > 0; at--) {
          const other = random.below(at + 1);
          [blockIn[at], blockIn[other]] = [blockIn[other]!, blockIn[at]!];
        }
        const cellOf = model.cellOf.slice();
        blockIn.forEach((block, cell) => {
          cellOf[block] = cell;
        });
        const score = weighted(evaluateTerms(scales, { ...model, blockIn, cellOf }), DEFAULT_WEIGHTS);
        expect(spreadCost(spread, blockIn) + contacts.constant).toBeLessThanOrEqual(score + 1e-9);
        const search = SearchToTheEnd.of(contacts, spread, score)!;
        for (let more = 0; more < 4; more++) search.advance();
        expect(search.bound).toBeLessThanOrEqual(score + 1e-9);
        expect(search.bound).toBeLessThanOrEqual(search.found?.cost ?? score);
      }),
      { numRuns: runs(5, 20) },
    );
  });

  it('bounds no layout of 18 or 20 blocks above what a shuffle finds, even where a block is pinned', () => {
    const walls = [
      [3, 6, 23],
      [4, 5, 22],
    ] as const;
    for (const [rows, columns, seed] of walls.slice(0, runs(1, 2))) {
      const project = scrappyTop({ rows, columns, seed });
      project.wall.cells[2]!.pinned = seed === 23;
      const { after, bound, verdict } = arrange(project, {
        seed,
        scopes: SCOPES,
        budget: { steps: 40_000 },
      });
      expect(bound).toBeLessThanOrEqual(after.total + 1e-9);
      expect(verdict.kind).toBe('within');
      // Above the seams inside the blocks by more than projection alone would be.
      const { contacts, spread } = proving(project, { value: 'scattered', colour: 'scattered' });
      expect(bound).toBeGreaterThan(lowerBound(contacts, spread) + 0.1);
    }
  });
});

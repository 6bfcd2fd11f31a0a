import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assignmentCost } from '../../../src/arrange/assignment/problem';
import { AssignmentSearch } from '../../../src/arrange/assignment/search';
import { decisionsOf } from '../../../src/arrange/decisions';
import { costTables } from '../../../src/arrange/live/costTables';
import { spreadOf } from '../../../src/arrange/proof/spreadAssignment';
import { ALL_SCOPES } from '../../../src/arrange/score';
import { layoutOf } from '../../../src/arrange/search/layout';
import { LayoutSearch } from '../../../src/arrange/search/layoutSearch';
import { searchFrom } from '../../../src/arrange/search/search';
import { termScales } from '../../../src/balance/score/termScales';
import { evaluateTerms } from '../../../src/balance/score/terms';
import { type Terms, weighted } from '../../../src/balance/score/weights';
import { wallModel } from '../../../src/balance/wall/wallModel';
import { clothTable } from '../../../src/cloth/cloths';
import { COLOUR_INTENTS, type Preferences, type Project, VALUE_INTENTS } from '../../../src/model/project';
import { dice, scrappyTop } from '../../balance/tops';
import { runs } from '../../runs';
import { awkwardTop } from '../awkwardTop';

/** Weights of what the layout alone decides; the whole top's weight is no part of the assignment. */
function spreadWeights(valueSpread: number, colourSpread: number, fabricSpread: number): Terms {
  return { clashLength: 0, lookAlikes: 0, valueSpread, colourSpread, fabricSpread, wholeTopWeight: 0 };
}

const AT_THE_WALL = { ...ALL_SCOPES, trade: false, strips: false };

function deskFor(project: Project, weights: Terms, intent?: Preferences['intent']) {
  const model = wallModel(project, clothTable(project.fabrics));
  const scales = termScales(model, intent);
  const tables = costTables(model, scales, weights);
  const decisions = decisionsOf(project, model, AT_THE_WALL);
  return { model, scales, tables, decisions, spread: spreadOf(tables) };
}

describe('the layout of a wall as an assignment', () => {
  it("adds up to the analyser's own spread terms, whatever hangs where, is held, or is wanted", () => {
    const weight = fc.integer({ min: 0, max: 4 });
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 1e6 }),
        fc.tuple(weight, weight, weight),
        fc.constantFrom(...VALUE_INTENTS),
        fc.constantFrom(...COLOUR_INTENTS),
        (seed, [value, colour, fabric], wanted, families) => {
          const weights = spreadWeights(value, colour, fabric);
          const intent = { value: wanted, colour: families };
          const project = awkwardTop(seed, 8);
          // Corners by a rule make a block another one in another cell, which no table of blocks and cells can hold.
          project.setting.cornerRule = null;
          const { model, scales, decisions, spread } = deskFor(project, weights, intent);
          const random = dice(seed);
          const open = decisions.cells.filter(() => random.below(3) > 0);
          const { problem, cells, blocks, constant } = layoutOf(spread, model.blockIn, open);
          const places = Int32Array.from(cells.keys()).sort(() => random.part() - 0.5);
          const blockIn = model.blockIn.slice();
          places.forEach((place, item) => {
            blockIn[cells[place]!] = blocks[item]!;
          });
          const judged = weighted(evaluateTerms(scales, { ...model, blockIn }), weights);
          expect(constant + assignmentCost(problem, places)).toBeCloseTo(judged, 8);
        },
      ),
      { numRuns: runs(10, 60) },
    );
  });

  it('is found by the same engine as the published grids: the shuffle begins with its very answer', () => {
    for (const seed of [1, 2, 3]) {
      const project = scrappyTop({ rows: 4, columns: 5, seed });
      const desk = deskFor(project, spreadWeights(1, 0.5, 1));
      const layout = layoutOf(desk.spread, desk.model.blockIn, desk.decisions.cells);
      const engine = new AssignmentSearch(layout.problem, seed);
      const stage = new LayoutSearch(desk.spread, desk.model.blockIn, desk.decisions.cells, seed);
      let runs = 0;
      while (!stage.ended) {
        runs += 1;
        stage.advance();
        engine.advance(20 * layout.cells.length);
      }
      engine.places.forEach((place, item) => {
        expect(stage.blockIn[layout.cells[place]!]).toBe(layout.blocks[item]!);
      });
      const search = searchFrom(project, desk.tables, desk.decisions, seed);
      // No change has been tried yet when the layout ends.
      for (let run = 0; run < runs; run++) search.advance(0);
      expect(search.best.cost).toBeCloseTo(engine.cost + layout.constant, 8);
      expect(Array.from(search.best.blockIn)).toEqual(Array.from(stage.blockIn));
    }
  });

  it('moves no pinned block and fills no empty cell, on walls laid out whole and in groups', () => {
    for (const [rows, columns] of [
      [4, 5],
      [12, 11],
    ] as const) {
      const project = scrappyTop({ rows, columns, seed: 4 });
      project.wall.cells[2] = null;
      project.wall.cells[7]!.pinned = true;
      const weights = spreadWeights(1, 0.5, 1);
      const { model, scales, decisions, spread } = deskFor(project, weights);
      const stage = new LayoutSearch(spread, model.blockIn, decisions.cells, 5);
      const again = new LayoutSearch(spread, model.blockIn, decisions.cells, 5);
      while (!stage.ended) {
        expect(stage.advance()).toBeGreaterThan(0);
        again.advance();
      }
      expect(again.blockIn).toEqual(stage.blockIn);
      expect(stage.blockIn[2]).toBe(-1);
      expect(stage.blockIn[7]).toBe(model.blockIn[7]);
      expect(stage.blockIn.toSorted()).toEqual(model.blockIn.toSorted());
      const score = (blockIn: Int32Array) => weighted(evaluateTerms(scales, { ...model, blockIn }), weights);
      expect(score(stage.blockIn)).toBeLessThan(score(model.blockIn) / 2);
    }
  });
});

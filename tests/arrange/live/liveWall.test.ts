import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decisionsOf } from '../../../src/arrange/decisions';
import { costTables } from '../../../src/arrange/live/costTables';
import { LiveWall } from '../../../src/arrange/live/liveWall';
import { movesBetween } from '../../../src/arrange/movesBetween';
import { ALL_SCOPES } from '../../../src/arrange/score';
import { termScales } from '../../../src/balance/score/termScales';
import { evaluateTerms } from '../../../src/balance/score/terms';
import { type Terms, weighted } from '../../../src/balance/score/weights';
import { wallModel } from '../../../src/balance/wall/wallModel';
import { clothTable } from '../../../src/cloth/cloths';
import { moved } from '../../../src/model/moves';
import { COLOUR_INTENTS, VALUE_INTENTS } from '../../../src/model/project';
import { dice } from '../../balance/tops';
import { runs } from '../../runs';
import { awkwardTop, ruledTop } from '../awkwardTop';

const weights: fc.Arbitrary<Terms> = fc.record({
  clashLength: fc.integer({ min: 0, max: 4 }),
  lookAlikes: fc.integer({ min: 0, max: 4 }),
  valueSpread: fc.integer({ min: 0, max: 4 }),
  colourSpread: fc.integer({ min: 0, max: 4 }),
  fabricSpread: fc.integer({ min: 0, max: 4 }),
  wholeTopWeight: fc.integer({ min: 0, max: 4 }),
});

describe('the score kept up to date while a wall is arranged', () => {
  it.each([
    ['with corners of their own', awkwardTop],
    ['with corners by a rule', ruledTop],
  ])(
    'is the score of the moved project, whatever is turned, exchanged, traded and replaced, %s',
    (_, topOf) => {
      fc.assert(
        fc.property(
          fc.integer({ min: 0, max: 1e6 }),
          fc.constantFrom(6, 8, 10, 12),
          weights,
          fc.constantFrom(...VALUE_INTENTS),
          fc.constantFrom(...COLOUR_INTENTS),
          (seed, perBlock, wanted, value, colour) => {
            const project = topOf(seed, perBlock as 8);
            const model = wallModel(project, clothTable(project.fabrics));
            const scales = termScales(model, { value, colour });
            const decisions = decisionsOf(project, model, ALL_SCOPES);
            const wall = new LiveWall(costTables(model, scales, wanted), decisions.spare);
            const full = () => {
              const then = moved(project, movesBetween(project, wall));
              return weighted(evaluateTerms(scales, wallModel(then, model.cloths)), wanted);
            };
            expect(wall.cost).toBeCloseTo(full(), 8);
            const random = dice(seed);
            for (let round = 0; round < 12; round++) {
              for (let change = 0; change < 5; change++) randomChange(wall, decisions, random);
              expect(wall.cost).toBeCloseTo(full(), 8);
            }
          },
        ),
        { numRuns: runs(12, 60) },
      );
    },
  );
});

function randomChange(
  wall: LiveWall,
  decisions: ReturnType<typeof decisionsOf>,
  random: ReturnType<typeof dice>,
) {
  const { cells, orientations, tradable, spare } = decisions;
  const orientation = (block: number) => orientations[block]![random.below(orientations[block]!.length)]!;
  const places = tradable[random.below(2)]!;
  const place = places[random.below(places.length)]!;
  switch (random.below(4)) {
    case 0: {
      const block = random.below(orientations.length);
      if (orientations[block]!.length > 1) wall.turn(block, orientation(block));
      return;
    }
    case 1: {
      const cell = cells[random.below(cells.length)]!;
      const other = cells[random.below(cells.length)]!;
      if (cell === other) return;
      const turns = [orientation(wall.blockIn[cell]!), orientation(wall.blockIn[other]!)] as const;
      wall.swap(cell, other, ...turns, wall.swapCost(cell, other, ...turns));
      return;
    }
    case 2: {
      const other = places[random.below(places.length)]!;
      if (place !== other) wall.trade(place, other, wall.tradeCost(place, other));
      return;
    }
    default: {
      const type = random.below(spare.length / 2) * 2 + (wall.typeAt[place]! % 2);
      if (wall.spare[type]! > 0) wall.replace(place, type, wall.replaceCost(place, type));
    }
  }
}

import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { describe, expect, it } from 'vitest';
import { findingChoices } from '../../../src/arrange/choices/evenChoices';
import { decisionsOf } from '../../../src/arrange/decisions';
import { BlockLaying } from '../../../src/arrange/live/blockLaying';
import { costTables } from '../../../src/arrange/live/costTables';
import { LiveWall } from '../../../src/arrange/live/liveWall';
import { WholeBlocks } from '../../../src/arrange/search/wholeBlocks';
import { termScales } from '../../../src/balance/score/termScales';
import { DEFAULT_WEIGHTS } from '../../../src/balance/score/weights';
import { wallModel } from '../../../src/balance/wall/wallModel';
import { clothTable } from '../../../src/cloth/cloths';
import { atOnce } from '../../../src/model/work/parts';
import { scrappyTop } from '../../balance/tops';

const SCOPES = { swap: true, turn: true, shiftCorners: false, trade: true, strips: false };
/** The score counts no contact here, so that a choice is given by its spread alone. */
const EVEN = { ...DEFAULT_WEIGHTS, clashLength: 0, lookAlikes: 0 };

/** One block by itself: what each of its choices costs does not depend on any other. */
function oneBlock() {
  const project = scrappyTop({ rows: 1, columns: 1, seed: 4, sets: 4 });
  const model = wallModel(project, clothTable(project.fabrics));
  const decisions = decisionsOf(project, model, SCOPES);
  const wall = new LiveWall(costTables(model, termScales(model), EVEN), decisions.spare);
  const choices = atOnce(findingChoices(wall, decisions))!;
  const laying = new BlockLaying(
    wall,
    Uint8Array.from(wall.typeAt, (type) => 1 + (type % 2)),
  );
  return { wall, choices, whole: new WholeBlocks(wall, choices, laying, xoroshiro128plus(1)) };
}

describe('whole blocks given other wedges', () => {
  it('get the best choice where it is cold', () => {
    const { wall, choices, whole } = oneBlock();
    const costs = new Float64Array(choices.count);
    wall.choiceCosts(0, choices, costs);
    const best = wall.cost + Math.min(0, ...costs);
    whole.tryOne(1e-9);
    expect(wall.cost).toBeCloseTo(best, 9);
  });

  it('get each choice as often as e to the power of −cost / temperature says', () => {
    const { wall, choices, whole } = oneBlock();
    const { cost } = wall;
    const costs = new Float64Array(choices.count);
    wall.choiceCosts(0, choices, costs);
    const spread = Math.max(...costs) - Math.min(...costs);
    const temperature = spread / 3;
    const parts = costs.map((one) => Math.exp(-one / temperature));
    const all = parts.reduce((sum, part) => sum + part, 0);
    const mean = parts.reduce((sum, part, at) => sum + (part / all) * (cost + costs[at]!), 0);
    const square = parts.reduce((sum, part, at) => sum + (part / all) * (cost + costs[at]! - mean) ** 2, 0);
    const draws = 4000;
    let sum = 0;
    let squares = 0;
    for (let draw = 0; draw < draws; draw++) {
      whole.tryOne(temperature);
      sum += wall.cost / draws;
      squares += (wall.cost - mean) ** 2 / draws;
    }
    // Four standard errors of the mean.
    expect(Math.abs(sum - mean)).toBeLessThan(4 * Math.sqrt(square / draws));
    expect(squares / square).toBeGreaterThan(0.85);
    expect(squares / square).toBeLessThan(1.15);
  });
});

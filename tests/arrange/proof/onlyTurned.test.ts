import { describe, expect, it } from 'vitest';
import { DEFAULT_WEIGHTS, weighted } from '../../../src/balance/score/weights';
import { COLOUR_INTENTS, VALUE_INTENTS } from '../../../src/model/project';
import { scrappyTop } from '../../balance/tops';
import { runs } from '../../runs';
import { arrange } from '../toTheEnd';

const SCOPES = { swap: false, turn: true, shiftCorners: true, trade: false, strips: false } as const;

describe('the bound where every block stays in its cell', () => {
  it('counts the whole spread, which no turn changes, and is never above what a shuffle finds', () => {
    for (let seed = 1; seed <= runs(4, 40); seed++) {
      const project = scrappyTop({ rows: 6, columns: 6 + (seed % 2), seed });
      project.preferences.intent = {
        value: VALUE_INTENTS[seed % VALUE_INTENTS.length]!,
        colour: COLOUR_INTENTS[seed % COLOUR_INTENTS.length]!,
      };
      project.setting.cornerFabric = 'c0';
      if (seed % 3 === 0) project.setting.cornerRule = { kind: 'checkerboard', fabric: 'c1' };
      if (seed % 4 === 0) project.wall.cells[seed % 36] = null;
      const { after, bound } = arrange(project, { seed, scopes: SCOPES, budget: { steps: 20_000 } });
      const spread = weighted({ ...after.terms, clashLength: 0, lookAlikes: 0 }, DEFAULT_WEIGHTS);
      expect(bound).toBeGreaterThanOrEqual(spread - 1e-9);
      expect(bound).toBeLessThanOrEqual(after.total + 1e-9);
    }
  });
});

import process from 'node:process';
import { describe, expect, it } from 'vitest';
import { scrappyTop } from '../../balance/tops';
import { allPairs } from '../allPairs';
import { leastOfOrders } from '../leastOfOrders';
import { arrange } from '../toTheEnd';

const SCOPES = { swap: true, turn: true, shiftCorners: false, trade: false, strips: false } as const;

// Half a minute each: `npm run test:long`.
describe.runIf(process.env.LONG_TESTS === '1')('what is proved of twelve blocks', () => {
  // Rims of one fabric must meet on the twentieth.
  it.each([1, 2, 3, 4, 5, 6, 7, 8, 9, 20])(
    'is the least of all orders, gone through one by one: top %i',
    (seed) => {
      const project = scrappyTop({ rows: 3, columns: 4, seed });
      const { after, verdict } = arrange(project, { seed: 1, scopes: SCOPES, budget: { steps: 200_000 } });
      const { least, count } = leastOfOrders(allPairs(project), after.total + 1e-6);
      expect(count).toBe(479_001_600);
      expect(verdict.kind).toBe('proved');
      expect(after.total).toBeCloseTo(least, 7);
    },
  );
});

// Checks proofs of twelve blocks by going through all 479,001,600 orders, one by one (tests/arrange/leastOfOrders.ts): no order,
// with all turns, comes below what was proved. `npx tsx bench/everyOrder.ts` checks ten tops, `… 20` the twentieth; half a
// minute for each.
import process from 'node:process';
import { allPairs } from '../tests/arrange/allPairs';
import { leastOfOrders } from '../tests/arrange/leastOfOrders';
import { arrange } from '../tests/arrange/toTheEnd';
import { scrappyTop } from '../tests/balance/tops';

const scopes = { swap: true, turn: true, shiftCorners: false, trade: false, strips: false };
const seeds = process.argv.slice(2).map(Number);
for (const seed of seeds.length > 0 ? seeds : [1, 2, 3, 4, 5, 6, 7, 8, 9, 20]) {
  const project = scrappyTop({ rows: 3, columns: 4, seed });
  const { after, verdict } = arrange(project, { seed: 1, scopes, budget: { steps: 200_000 } });
  const { least, count } = leastOfOrders(allPairs(project), after.total + 1e-6);
  const same = Math.abs(after.total - least) < 1e-7;
  console.log(
    `top ${seed}: ${verdict.kind} at ${after.total.toFixed(6)}; least of ${count} orders ${least.toFixed(6)} ${same ? 'the same' : 'NOT THE SAME'}`,
  );
}

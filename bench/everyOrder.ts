// Checks proofs of twelve blocks by going through all 479,001,600 orders, one by one (tests/arrange/leastOfOrders.ts): no order,
// whatever the turns, comes below what was proved. `npx tsx bench/everyOrder.ts 10`, some half a minute for each top.
import process from 'node:process';
import { allPairs } from '../tests/arrange/allPairs';
import { leastOfOrders } from '../tests/arrange/leastOfOrders';
import { arrange } from '../tests/arrange/toTheEnd';
import { scrappyTop } from '../tests/balance/tops';

const scopes = { swap: true, turn: true, shiftCorners: false, trade: false, strips: false };
for (let seed = 1; seed <= Number(process.argv[2] ?? 10); seed++) {
  const project = scrappyTop({ rows: 3, columns: 4, seed });
  const { after, verdict } = arrange(project, { seed: 1, scopes, budget: { steps: 200_000 } });
  const { least, count } = leastOfOrders(allPairs(project));
  const same = Math.abs(after.total - least) < 1e-7;
  console.log(
    `top ${seed}: ${verdict.kind} at ${after.total.toFixed(6)}; least of ${count} orders ${least.toFixed(6)} ${same ? 'the same' : 'NOT THE SAME'}`,
  );
}

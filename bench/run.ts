// npm run bench: a row for every figure that is asked for, from samples, in three minutes at most on two cores that do nothing else.
// `npm run bench -- photo fabric` measures all there is of what is named, `npm run bench -- all` everything. Ends with status 1 if a
// mark is missed.
import process from 'node:process';
import { benchArrange } from './arrange';
import { benchAssignment } from './assignment';
import { benchBalance } from './balance';
import { benchComposing } from './composing';
import { benchFabric } from './fabric';
import { benchFelt } from './felt';
import { benchPhoto } from './photo';
import { benchProof } from './proof';
import type { BenchRow, Extent } from './row';

type Bench = (extent: Extent) => readonly BenchRow[] | Promise<readonly BenchRow[]>;

/** What is measured, one after another, so that nothing disturbs the clock. A bench returns its lines of the table. */
const BENCHES: Readonly<Record<string, Bench>> = {
  balance: benchBalance,
  felt: benchFelt,
  composing: benchComposing,
  arrange: benchArrange,
  proof: benchProof,
  assignment: benchAssignment,
  fabric: benchFabric,
  photo: benchPhoto,
};
/** What is sampled where nothing is named. */
const USUAL = ['felt', 'balance', 'proof', 'assignment', 'fabric', 'photo'];

const line = (cells: readonly string[]) =>
  `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`;

/** Measures and prints; whether all marks are reached. */
async function measure(names: readonly string[], extent: Extent): Promise<boolean> {
  const rows: BenchRow[] = [];
  for (const name of names) {
    const start = performance.now();
    rows.push(...(await BENCHES[name]!(extent)));
    console.error(`${name}: ${((performance.now() - start) / 1000).toFixed(0)} s`);
  }
  console.log(line(['name', 'to reach', 'measured', 'ok']));
  console.log(line(['---', '---', '---', '---']));
  for (const { name, toReach, measured, ok } of rows)
    console.log(line([name, toReach, measured, ok ? 'yes' : 'no']));
  return rows.every((row) => row.ok);
}

const named = process.argv.slice(2);
const names = named.includes('all') ? Object.keys(BENCHES) : named.length > 0 ? named : USUAL;
const unknown = names.filter((name) => !(name in BENCHES));
if (unknown.length > 0) {
  console.error(
    `There is no bench of ${unknown.join(', ')}. There are: ${Object.keys(BENCHES).join(', ')}, all.`,
  );
  process.exitCode = 2;
} else {
  const start = performance.now();
  const good = await measure(names, named.length > 0 ? 'all' : 'sample');
  console.log(`\n${((performance.now() - start) / 1000).toFixed(0)} s`);
  process.exitCode = good ? 0 : 1;
}

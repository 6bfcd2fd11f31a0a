// npm run bench: measures everything that has a mark to reach and prints one table. Ends with status 1 if a mark is missed.
import process from 'node:process';
import { benchArrange } from './arrange';
import { benchAssignment } from './assignment';
import { benchBalance } from './balance';
import { benchComposing } from './composing';
import { benchFabric } from './fabric';
import { benchPhoto } from './photo';
import { benchProof } from './proof';
import type { BenchRow } from './row';
import { benchWallFrames } from './wallFrames';

/** What is measured, one after another, so that nothing disturbs the clock. A bench returns its lines of the table. */
const BENCHES: readonly (() => readonly BenchRow[] | Promise<readonly BenchRow[]>)[] = [
  benchBalance,
  benchComposing,
  benchArrange,
  benchProof,
  benchAssignment,
  benchWallFrames,
  benchFabric,
  benchPhoto,
];

const rows: BenchRow[] = [];
for (const bench of BENCHES) rows.push(...(await bench()));

const line = (cells: readonly string[]) =>
  `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`;
console.log(line(['name', 'to reach', 'measured', 'ok']));
console.log(line(['---', '---', '---', '---']));
for (const { name, toReach, measured, ok } of rows)
  console.log(line([name, toReach, measured, ok ? 'yes' : 'no']));
process.exitCode = rows.every((row) => row.ok) ? 0 : 1;

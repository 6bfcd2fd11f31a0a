// One core's share of the assignment bench, as a process of its own: a published grid, from one seed, for a given time.
import process from 'node:process';
import { solveAssignment } from '../src/arrange/assignment/solve';
import { qaplib } from '../tests/arrange/qaplib';

export interface AssignmentShare {
  readonly cost: number;
  readonly iterations: number;
}

const [name, seed, milliseconds] = process.argv.slice(2);
const { problem, best } = qaplib(name!);
const { cost, iterations } = solveAssignment({
  ...problem,
  seed: Number(seed),
  budget: { milliseconds: Number(milliseconds) },
  now: () => performance.now(),
  target: best,
});
process.send?.({ cost, iterations } satisfies AssignmentShare);

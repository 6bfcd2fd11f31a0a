// Before every file of tests: laws that name no number of cases are tried fewer times each day, and all on the same cases (runs.ts).
import fc from 'fast-check';
import { CASES, runs } from './runs';

fc.configureGlobal({ ...fc.readConfigureGlobal(), ...CASES, numRuns: runs(14, 100) });

// Before every file of tests: laws that name no number of cases are tried fewer times each day (runs.ts).
import fc from 'fast-check';
import { runs } from './runs';

fc.configureGlobal({ ...fc.readConfigureGlobal(), numRuns: runs(30, 100) });

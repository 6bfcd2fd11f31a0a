// The worker that makes strip sets. cutting/sets/randomSets.ts decides everything.
import { makeSets } from '../../cutting/sets/randomSets';
import { serve } from '../workers/protocol';
import type { SetsJobs } from './setsJobs';

serve<SetsJobs>({ make: makeSets });

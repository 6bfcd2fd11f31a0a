// The worker in which sets are made beside the page. What is decided is in cutting/sets/randomSets.ts.
import { makeSets } from '../../cutting/sets/randomSets';
import { serve } from '../workers/protocol';
import type { SetsJobs } from './setsJobs';

serve<SetsJobs>({ make: makeSets });

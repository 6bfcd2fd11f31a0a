// The worker in which the balance is worked out beside the page. What is decided is in analyst.ts.
import { serve } from '../workers/protocol';
import type { AnalysisJobs } from './analysisJobs';
import { Analyst } from './analyst';

serve<AnalysisJobs>(new Analyst());

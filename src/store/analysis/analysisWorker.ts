// The worker that computes the balance. analyst.ts decides everything.
import { serve } from '../workers/protocol';
import type { AnalysisJobs } from './analysisJobs';
import { Analyst } from './analyst';

serve<AnalysisJobs>(new Analyst());

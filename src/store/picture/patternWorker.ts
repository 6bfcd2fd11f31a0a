// The worker that lays out the pattern and makes its file, so that the page stays free. patternAnswers.ts does the work.
import { serve } from '../workers/protocol';
import { PATTERN_ANSWERS } from './patternAnswers';
import type { PatternJobs } from './patternJobs';

serve<PatternJobs>(PATTERN_ANSWERS);

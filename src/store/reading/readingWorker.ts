// The worker that reads project files.
import { serve } from '../workers/protocol';
import { READING } from './readingAnswers';
import type { ReadingJobs } from './readingJobs';

serve<ReadingJobs>(READING);

// The worker that decodes and reads photographs, in parts, so that a stop is heard. photoAnswers.ts has its jobs.
import { serve } from '../workers/protocol';
import { photoAnswers } from './photoAnswers';
import type { PhotoJobs } from './photoJobs';

serve<PhotoJobs>(photoAnswers());

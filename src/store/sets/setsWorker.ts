// The worker that makes strip sets, in parts, so that it is heard of and ends at once. cutting/sets/randomSets.ts decides everything.
import { makingSets } from '../../cutting/sets/randomSets';
import { serve } from '../workers/protocol';
import type { SetsJobs } from './setsJobs';

serve<SetsJobs>({
  make: (making, work) =>
    work.run(makingSets(making), (share, due) => {
      if (due) work.tell(share);
    }),
});

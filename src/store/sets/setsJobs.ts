// The messages of the worker that makes sets; workers/protocol.ts has the protocol.
import type { MadeSets, MakingShare, SetMaking } from '../../cutting/sets/randomSets';

export interface SetsJobs {
  readonly make: { readonly ask: SetMaking; readonly progress: MakingShare; readonly answer: MadeSets };
}

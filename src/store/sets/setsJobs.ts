// The messages of the worker that makes sets; workers/protocol.ts has the protocol.
import type { MadeSets, SetMaking } from '../../cutting/sets/randomSets';

export interface SetsJobs {
  readonly make: { readonly ask: SetMaking; readonly progress: never; readonly answer: MadeSets };
}

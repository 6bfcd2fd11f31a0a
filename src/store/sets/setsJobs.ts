// What the worker that makes sets is asked and answers; see workers/protocol.ts.
import type { MadeSets, SetMaking } from '../../cutting/sets/randomSets';

export interface SetsJobs {
  readonly make: { readonly ask: SetMaking; readonly progress: never; readonly answer: MadeSets };
}

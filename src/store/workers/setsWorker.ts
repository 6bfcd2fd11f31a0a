// The shell in which sets are made beside the page, which stays free meanwhile. What is decided is in cutting/randomSets.ts.
import { makeSets, type SetMaking } from '../../cutting/sets/randomSets';
import type { MadeOrReason } from './setsMessages';

self.onmessage = (event: MessageEvent<SetMaking>) => {
  try {
    tell({ made: makeSets(event.data) });
  } catch (error) {
    tell({ reason: error instanceof Error ? error.message : String(error) });
  }
};

function tell(message: MadeOrReason): void {
  self.postMessage(message);
}
